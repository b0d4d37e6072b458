//! Words in tables for spreadsheets, as the page shows them. Heads and cells of the logbook's file are words of
//! its format and stand with it.

/// In place of a unit, for what is told as a factor.
pub const FACTOR: &str = "factor";
