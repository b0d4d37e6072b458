//! Words of the furnace.

pub const CHECKED_HOW: &str = "against a reference, or the band above already holds it";
pub const CLASS_1: &str = "Type K, class 1";
pub const CLASS_1_HOW: &str = "the closer tolerance: 0.4 % of the reading";
pub const CLASS_2: &str = "Type K, class 2";
pub const CLASS_2_HOW: &str = "what most furnaces come with: 0.75 % of the reading";
pub const BAND: &str = "The piece may be this far from the reading";
pub const CONTROL: &str = "Control and evenness. A small kiln wanders ";
pub const END_TO_END: &str = " from end to end.";
pub const OFFSET: &str = "The piece is hotter than the furnace reads by";

#[inline]
pub fn let_it_read(wanted: &str, reading: &str, within: &str) -> String {
    format!("For {wanted} let it read {reading}. The piece is then within {within}.")
}

pub const CHECKED: &str = "Checked";
pub const WANDERS_C: &str = "10 to 25 °C";
pub const WANDERS_F: &str = "18 to 45 °F";
pub const THERMOCOUPLE: &str = "Thermocouple";
pub const THERMOCOUPLES: &str = "Thermocouples";
pub const SURVEY: &str = "Survey";

#[inline]
pub fn by_what_is_taught(words: &str) -> String {
    format!("By what the logbook has taught: {words}")
}
