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
pub(crate) const HOLDS: &str = "holds";
pub(crate) const MISSES: &str = "misses";
pub(crate) const SOAK: &str = "soak";
pub(crate) const QUENCH: &str = "quench";
pub(crate) const SNAP: &str = "snap";
pub(crate) const COLD: &str = "cold";
pub(crate) const TEMPER: &str = "temper";
pub(crate) const AUSTENITE: &str = "austenite";
pub(crate) const MARTENSITE: &str = "martensite";
pub(crate) const CARBIDE: &str = "carbide";
pub(crate) const PEARLITE: &str = "pearlite";
pub(crate) const BAINITE: &str = "bainite";
pub(crate) const FERRITE: &str = "ferrite";
pub(crate) const OUTCOME: &str = "Outcome";
