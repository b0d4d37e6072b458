//! What a run has, and what is wrong with it as it is typed or read.

/// In place of a grade.
pub use super::super::route::plan::OWN_STEEL;

/// After which step a hardness was read.
pub const AS_QUENCHED: &str = "as quenched";
pub const AFTER_COLD: &str = "after the cold";
pub const AS_TEMPERED: &str = "as tempered";

/// Two runs side by side: what each line is.
pub const DAY: &str = "Day";
pub const PIECE: &str = "Piece";
pub const PREDICTED: &str = "Predicted, HRC";
pub const PREDICTED_AT: &str = "Predicted at";
pub const PREDICTED_AS_TAUGHT: &str = "Predicted with what the logbook had taught";
pub const YES: &str = "yes";
pub const NO: &str = "no";
pub const MEASURED: &str = "Measured, HRC";
pub const DIFFERENCE: &str = "Measured less predicted, HRC";
pub const READINGS: &str = "Readings";
pub const GRAIN: &str = "Grain by fracture, ASTM number";
pub const AUSTENITE: &str = "Retained austenite, vol %";
pub const COUPON: &str = "Coupon";
pub const BEFORE_DONE: &str = "Before hardening, done";
pub const SOAK_DONE: &str = "Soak, done";
pub const QUENCH_DONE: &str = "Quench, done";
pub const COLD_AND_TEMPER_DONE: &str = "Cold and temper, done";
pub const NOTES: &str = "Notes";

/// Values outside what is allowed; each comes with its unit, `least` without.
#[inline]
pub fn reading_outside(value: &str, least: &str, most: &str) -> String {
    format!("A reading of {value} is outside {least} to {most}.")
}

#[inline]
pub fn grain_outside(number: &str, least: &str, most: &str) -> String {
    format!("Grain by fracture of number {number} is outside {least} to {most}.")
}

#[inline]
pub fn austenite_outside(value: &str, least: &str, most: &str) -> String {
    format!("Retained austenite of {value} is outside {least} to {most}.")
}

#[inline]
pub fn result_outside(value: &str, least: &str, most: &str) -> String {
    format!("A result of {value} is outside {least} to {most}.")
}

#[inline]
pub fn prediction_outside(value: &str, least: &str, most: &str) -> String {
    format!("A prediction of {value} is outside {least} to {most}.")
}

#[inline]
pub fn band_outside(value: &str, least: &str, most: &str) -> String {
    format!("A band of {value} is outside {least} to {most}.")
}

pub const NOT_TWO_PLACES: &str =
    "A prediction of what is reached from outside is told beside one of another place.";

#[inline]
pub fn no_place(shown: &str, known: &str) -> String {
    format!("“{shown}” is no place of a piece; known are {known}.")
}

#[inline]
pub fn too_long(found: usize, most: usize) -> String {
    format!("{found} characters; {most} are allowed.")
}

#[inline]
pub fn too_many(found: usize, most: usize) -> String {
    format!("There are {found}; {most} are allowed.")
}

#[inline]
pub fn no_day(shown: &str, first_year: u16, last_year: u16) -> String {
    format!("“{shown}” is no day of the years {first_year} to {last_year}. Write it as 2026-11-27.")
}

/// `advice` is one of those that follow.
#[inline]
pub fn no_number(shown: &str, advice: &str) -> String {
    format!("“{shown}” is not a number. {advice}")
}

pub const WRITE_READING: &str = "Write a reading such as 61.5.";
pub const WRITE_RESULT: &str = "Write a result such as 120.";
pub const WRITE_GRAIN: &str = "Write a grain number such as 8.";
pub const WRITE_SHARE: &str = "Write a share such as 12.";
pub const WRITE_TEST: &str = "Write what was tested.";
