//! Words of how far martensite has fallen after each temper, and how that comes about.

use super::hardness::MIXTURE;

pub const STAGE_VALIDITY: &str = "0.20 to 1.50 % C, low alloy, 100 to 700 °C, 10 s to 32 h";
pub const TRANSITION_CARBIDE: &str = "transition carbide";
pub const CEMENTITE: &str = "cementite";
pub const COARSENING: &str = "coarsening";

#[inline]
pub fn counted(element: &str) -> String {
    format!("{element} that counts")
}

pub const COUNTED_HOW: &str =
    "Tungsten counts as half its weight of molybdenum, vanadium up to 0.16 %.";
pub const HELD: &str = "What alloying holds against tempering";

#[inline]
pub fn whole_fall(stage: &str) -> String {
    format!("Whole fall by {stage}")
}

pub const ALLOYING_HOLDS: &str = "what alloying holds";

#[inline]
pub fn middle(stage: &str) -> String {
    format!("Middle of {stage}")
}

#[inline]
pub fn middle_how() -> String {
    format!(
        "A decimal logarithm of reduced seconds; silicon delays cementite, alloying and carbon delay coarsening. {COUNTED_HOW}"
    )
}

pub const REDUCED_BEFORE: &str = "reduced time before";
pub const REDUCED_IN_QUENCH: &str = "reduced time before, from the way down in the quench";

#[inline]
pub fn reduced(stage: &str, temper: usize) -> String {
    format!("Reduced time of {stage} after temper {temper}")
}

pub const TIME_OF_TEMPER: &str = "time of the temper";
pub const TEMPERATURE_OF_TEMPER: &str = "temperature of the temper";
pub const REDUCED_HOW: &str = "Time weighed by temperature: warmer counts for more.";

#[inline]
pub fn stage_fall(stage: &str, temper: usize) -> String {
    format!("Fall by {stage} after temper {temper}")
}

pub const WHOLE_FALL: &str = "whole fall";
pub const MIDDLE_OF_STAGE: &str = "middle of the stage";
pub const REDUCED_TIME: &str = "reduced time";

#[inline]
pub fn fall(temper: usize) -> String {
    format!("What tempering takes by temper {temper}")
}

#[inline]
pub fn alone(temper: usize) -> String {
    format!("Tempered martensite without austenite, after temper {temper}")
}

pub const MARTENSITE_BY_CARBON: &str = "hardness of martensite by its carbon";
pub const TEMPERING_TAKES: &str = "what tempering takes";
pub const USUAL_AUSTENITE_LEFT: &str = "usual austenite that is left";
pub const ALONE_HOW: &str = "The fall comes off the hardness of martensite by its carbon; HRC to HV by the standard's table.";

#[inline]
pub fn austenite(temper: usize) -> String {
    format!("Retained austenite after temper {temper}")
}

pub const HALF_LEFT_AFTER_HOUR: &str =
    "temperature at which half is left after an hour, by silicon";
pub const AUSTENITE_ERROR: &str = "the anchor and the shift by silicon are from memory";
pub const TEMPERED_ALONE: &str = "tempered martensite without austenite";
pub const FRESH_MARTENSITE: &str = "martensite that the cold has made after a snap temper";
pub const THAT_MARTENSITE: &str = "that martensite";
pub const TEMPERED_WITH_AUSTENITE: &str = "tempered martensite with its usual austenite";

#[inline]
pub fn mixture_how() -> String {
    format!("{MIXTURE} Austenite that has decomposed counts as tempered martensite.")
}

pub const PARAMETER_THAT_IS_READ: &str = "Hollomon-Jaffe parameter";
pub const TEMPER_OF_TABLE: &str = "temper of the table that has it";

#[inline]
pub fn table_how(grade: &str, time_h: f64) -> String {
    format!("Read in the tempering table of {grade}, {time_h:.0} h at temperature.")
}

#[inline]
pub fn parameter(temper: usize) -> String {
    format!("Hollomon-Jaffe parameter after temper {temper}")
}

pub const WENT_BEFORE: &str = "what went before, as time at this temperature";
