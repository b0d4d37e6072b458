//! Words of the charts and beside them.

pub(crate) const NOT_KNOWN: &str = "Not known for this steel.";
pub(crate) const CUTTING_EDGE: &str = "cutting edge";

#[inline]
pub(crate) fn core_holds(share: &str, words: &str) -> String {
    format!("the core holds {share} {words}")
}

pub(crate) const COLD_LEFT_OUT: &str = "cold bath left out";
pub(crate) const AFTER_QUENCH: &str = "after quench";
pub(crate) const AFTER_SNAP: &str = "after snap";
pub(crate) const AFTER_COLD: &str = "after cold";

#[inline]
pub(crate) fn after_temper(n: usize) -> String {
    format!("after temper {n}")
}

pub(crate) const NONE_HARDENS_THROUGH: &str = "No quenchant of the list hardens it through.";

#[inline]
pub(crate) fn slowest_still(medium: &str, how: &str) -> String {
    format!("Slowest quenchant that still hardens it, not stirred: {medium}{how}")
}

pub(crate) const SQUARE_BAR: &str = "square bar";
pub(crate) const FLAT_SECTION: &str = "flat section";

#[inline]
pub(crate) fn thickest(shape: &str, size: &str) -> String {
    format!(" Thickest {shape} that this quench hardens: {size}.")
}

pub(crate) const NO_TEMPER_PLANNED: &str =
    "No temper is planned. Set how many, and the chart starts from there.";
pub(crate) const OUTSIDE_TEMPER_MODEL: &str = "This temper lies outside what the model knows.";
pub(crate) const NO_STEPS: &str = "no steps";

#[inline]
pub(crate) fn to_spare(time: &str) -> String {
    format!("{time} to spare")
}

#[inline]
pub(crate) fn misses_by(time: &str) -> String {
    format!("misses by {time}")
}

pub(crate) const NO_NUMBER: &str = "no number";
pub(crate) const NOT_GIVEN_AWAY: &str = "This browser does not give the chart away as a file.";

#[inline]
pub(crate) fn save_named(what: &str) -> String {
    format!("Save the chart: {what}")
}

pub(crate) const SAVE: &str = "Save this chart";
pub(crate) const NO_TABLE_OFFERED: &str = "The table could not be offered as a file.";

#[inline]
pub(crate) fn save_table_named(what: &str) -> String {
    format!("Save the table as CSV: {what}")
}

pub(crate) const SAVE_TABLE: &str = "Save this table for a spreadsheet";
pub(crate) const YOUR_TEST: &str = "your test";
pub(crate) const ROUND: &str = "round";
pub(crate) const ONE_STEP: &str = "1 step";

#[inline]
pub(crate) fn steps(n: usize) -> String {
    format!("{n} steps")
}

pub(crate) const NONE: &str = "none";
pub(crate) const DISSOLVED: &str = "dissolved";
pub(crate) const MARGIN: &str = "margin";
pub(crate) const AUSTENITE: &str = "austenite";
pub(crate) const HARDNESS: &str = "hardness";
pub(crate) const COMPUTED: &str = "computed";
pub(crate) const PEARLITE: &str = "pearlite";
pub(crate) const BAINITE: &str = "bainite";
pub(crate) const FERRITE: &str = "ferrite";

#[inline]
pub(crate) fn temper_by(step: &str) -> String {
    format!("temper {step}")
}

#[inline]
pub(crate) fn section_by(step: &str) -> String {
    format!("section +{step}")
}

#[inline]
pub(crate) fn furnace_by(step: &str) -> String {
    format!("furnace {step}")
}

#[inline]
pub(crate) fn soak_by(step: &str) -> String {
    format!("soak ±{step}")
}

pub(crate) const CEMENTITE: &str = "cementite";
pub(crate) const SURFACE: &str = "surface";
