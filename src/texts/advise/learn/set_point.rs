//! What a furnace or an oven whose offset was learnt is to be set to, or why that is not told.

#[inline]
pub fn no_hotter(wanted: &str, furnace: &str, reading: &str, set: &str, reached: &str) -> String {
    format!(
        "To have {wanted} at the piece, {furnace} would have to read {reading}, and can be set no hotter than {set}: the piece is at {reached} then."
    )
}

#[inline]
pub fn no_cooler(wanted: &str, furnace: &str, reading: &str, set: &str, reached: &str) -> String {
    format!(
        "To have {wanted} at the piece, {furnace} would have to read {reading}, and can be set no cooler than {set}: the piece is at {reached} then."
    )
}

#[inline]
pub fn right_as_planned(set: &str, reached: &str) -> String {
    format!("Set to {set}, as planned, the piece comes to {reached}.")
}

#[inline]
pub fn off_as_planned(planned: &str, reached: &str, set: &str, wanted: &str) -> String {
    format!(
        "Set to {planned}, as planned, the piece comes to {reached}, and the numbers count with that; {set} would give {wanted}."
    )
}

#[inline]
pub fn how_sure(band: &str) -> String {
    format!(
        "That offset is known within {band}, nine in ten, and how evenly it heats comes on top. Check it with a second thermocouple first."
    )
}

#[inline]
pub fn not_told_from(other: &str) -> String {
    format!(
        "What to set is not told: the measurements do not tell this from {other}. A survey with a second thermocouple would: enter it with the furnace under Decide, and read the logbook again."
    )
}

pub const READ_AGAIN: &str =
    "What to set is told, with how sure that is, once the logbook is read again.";

#[inline]
pub fn temper_comes_to(asked: &str, reached: &str) -> String {
    format!("asked for {asked} the piece comes to {reached}")
}

/// Begins with a temper, still without its capital.
#[inline]
pub fn tempers_come_to(tempers: &[String]) -> String {
    format!("{}, and the numbers count with that.", tempers.join("; "))
}

#[inline]
pub fn ask_for_more(size: &str) -> String {
    format!("For a temperature at the piece ask for {size} more.")
}

#[inline]
pub fn ask_for_less(size: &str) -> String {
    format!("For a temperature at the piece ask for {size} less.")
}
