//! Words of the charts and beside them.

pub use super::super::constituents::{AUSTENITE, BAINITE, FERRITE, PEARLITE};

pub const NOT_KNOWN: &str = "Not known for this steel.";
pub const CUTTING_EDGE: &str = "cutting edge";
pub const SPINE: &str = "spine";

#[inline]
pub fn core_holds(share: &str, words: &str) -> String {
    format!("the core holds {share} {words}")
}

pub const COLD_LEFT_OUT: &str = "cold bath left out";
pub const AFTER_QUENCH: &str = "after quench";
pub const AFTER_SNAP: &str = "after snap";
pub const AFTER_COLD: &str = "after cold";

#[inline]
pub fn after_temper(n: usize) -> String {
    format!("after temper {n}")
}

#[inline]
pub fn into_bath(bath: &str) -> String {
    format!("into {bath}")
}

pub const NO_SLOWER_HARDENS: &str = "No slower quenchant of the list hardens it through.";
pub const NONE_HARDENS_THROUGH: &str = "No quenchant of the list hardens it through.";

#[inline]
pub fn slowest_still(medium: &str, how: &str) -> String {
    format!("Slowest quenchant of the list that still hardens it, as listed: {medium}{how}")
}

pub const SQUARE_BAR: &str = "square bar";
pub const FLAT_SECTION: &str = "flat section";

#[inline]
pub fn thickest(shape: &str, size: &str) -> String {
    format!(" Thickest {shape} that this quench hardens: {size}.")
}

pub const NO_TEMPER_PLANNED: &str =
    "No temper is planned. Set how many, and the chart starts from there.";
pub const OUTSIDE_TEMPER_MODEL: &str = "This temper lies outside what the model knows.";
pub const NO_STEPS: &str = "no steps";

#[inline]
pub fn to_spare(time: &str) -> String {
    format!("{time} to spare")
}

#[inline]
pub fn misses_by(time: &str) -> String {
    format!("misses by {time}")
}

pub const NO_NUMBER: &str = "no number";
pub const NOT_GIVEN_AWAY: &str = "This browser does not give the chart away as a file.";

#[inline]
pub fn save_named(what: &str) -> String {
    format!("Save the chart: {what}")
}

pub const SAVE: &str = "Save this chart";
pub const NO_TABLE_OFFERED: &str = "The table could not be offered as a file.";

#[inline]
pub fn save_table_named(what: &str) -> String {
    format!("Save the table as CSV: {what}")
}

pub const SAVE_TABLE: &str = "Save this table for a spreadsheet";
pub const YOUR_TEST: &str = "your test";
pub const ROUND: &str = "round";
pub const ONE_STEP: &str = "1 step";

#[inline]
pub fn steps(n: usize) -> String {
    format!("{n} steps")
}

pub const NONE: &str = "none";
pub const DISSOLVED: &str = "dissolved";
pub const MARGIN: &str = "margin";
pub const HARDNESS: &str = "hardness";
pub const EDGE_HARDNESS: &str = "edge hardness";
pub const COMPUTED: &str = "computed";

#[inline]
pub fn temper_by(step: &str) -> String {
    format!("temper {step}")
}

#[inline]
pub fn section_by(step: &str) -> String {
    format!("section +{step}")
}

#[inline]
pub fn furnace_by(step: &str) -> String {
    format!("furnace {step}")
}

#[inline]
pub fn soak_by(step: &str) -> String {
    format!("soak ±{step}")
}

pub const CEMENTITE: &str = "cementite";
pub const SURFACE: &str = "surface";
