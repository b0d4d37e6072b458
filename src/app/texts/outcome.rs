//! Words of the outcome.

pub(crate) const LOOK_CLOSER: &str = "look closer";
pub(crate) const MADE_OF: &str = "What it is made of";
pub(crate) const RETAINED_AUSTENITE: &str = "retained austenite";

#[inline]
pub(crate) fn target_range(least: &str, most: &str) -> String {
    format!("target {least} to {most}")
}

pub(crate) const HARDNESS_HRC: &str = "Hardness, HRC";
pub(crate) const NO_HARDNESS: &str = "No hardness is known.";
pub(crate) const HOW_SURE_BY_PIECES: &str = "How sure, by pieces drawn";
pub(crate) const IN_USE: &str = "What it means in use";
