//! Words of the furnace.

pub(crate) const CHECKED_HOW: &str = "against a reference, or the band above already holds it";
pub(crate) const CLASS_1: &str = "Type K, class 1";
pub(crate) const CLASS_1_HOW: &str = "the closer tolerance: 0.4 % of the reading";
pub(crate) const CLASS_2: &str = "Type K, class 2";
pub(crate) const CLASS_2_HOW: &str = "what most furnaces come with: 0.75 % of the reading";
pub(crate) const BAND: &str = "The piece may be this far from the reading";
pub(crate) const CONTROL: &str = "Control and evenness. A small kiln wanders ";
pub(crate) const END_TO_END: &str = " from end to end.";
pub(crate) const OFFSET: &str = "The piece is hotter than the furnace reads by";

#[inline]
pub(crate) fn let_it_read(wanted: &str, reading: &str, within: &str) -> String {
    format!("For {wanted} let it read {reading}. The piece is then within {within}.")
}

pub(crate) const CHECKED: &str = "Checked";
pub(crate) const WANDERS_C: &str = "10 to 25 °C";
pub(crate) const WANDERS_F: &str = "18 to 45 °F";
pub(crate) const THERMOCOUPLE: &str = "Thermocouple";
pub(crate) const THERMOCOUPLES: &str = "Thermocouples";
pub(crate) const SURVEY: &str = "Survey";

#[inline]
pub(crate) fn by_what_is_taught(words: &str) -> String {
    format!("By what the logbook has taught: {words}")
}
