//! Where a route departs from the handbook.

#[inline]
pub fn up_to(before: &str, most: &str, after: &str) -> String {
    format!("{before}up to {most}{after}")
}

#[inline]
pub fn handbook(what: &str) -> String {
    format!("handbook: {what}")
}

#[inline]
pub fn handbook_range(least: &str, most: &str) -> String {
    format!("handbook: {least} to {most}")
}

pub const QUENCH: &str = "Quench";

#[inline]
pub fn temper(number: usize) -> String {
    format!("Temper\u{a0}{number}")
}

/// `handbook` is what the handbook has, as [`handbook`] and [`handbook_range`] say it.
#[inline]
pub fn departs(step: &str, handbook: &str) -> String {
    format!("{step} departs from the {handbook}.")
}
