//! Words in the cells of tables for spreadsheets. Heads of the logbook's columns are names of its format
//! and stand with it.

/// In place of a unit, for what is told as a factor.
pub const FACTOR: &str = "factor";

/// The shape of a section, and where it has several sizes, what they are.
pub const PLATE: &str = "plate";
pub const ROUND: &str = "round";
pub const SQUARE: &str = "square";
pub const BLADE: &str = "blade: edge; spine; height";

pub const OWN_QUENCHANT: &str = "own quenchant";

/// A quenchant at another temperature than listed.
#[inline]
pub fn quenchant_at(listed: &str, bath_c: f64) -> String {
    format!("{listed} at {bath_c} °C")
}
