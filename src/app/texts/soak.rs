//! Words of the soak.

pub(crate) const SOAK_RECEIVES: &str = "how much carbon goes into solution";
pub(crate) const TEMPERATURE_OF_PIECE: &str = "Temperature of the piece";
pub(crate) const TIME_AT_TEMPERATURE: &str = "Time at temperature";
pub(crate) const COUNTED_FROM: &str = "Counted from when the piece has the colour of the furnace.";
pub(crate) const STRUCTURE_BEFORE: &str = "Structure before hardening";
pub(crate) const AFTER_THE: &str = ", after the ";
pub(crate) const STEP_BEFORE: &str = "step before";

#[inline]
pub(crate) fn steps_before(n: usize) -> String {
    format!("{n} steps before")
}

pub(crate) const SOAK_TEMPERATURE: &str = "Soak temperature";
pub(crate) const SOAK_TIME: &str = "Soak time";
pub(crate) const MAP_COMING: &str = "The map of this steel is being computed.";
pub(crate) const WHILE_IT_SOAKS: &str = "While it soaks at ";
pub(crate) const PHASES_AS_TABLE: &str = "The phases as a table";

#[inline]
pub(crate) fn in_the_end_at(temperature: &str) -> String {
    format!("In the end at {temperature}")
}

pub(crate) const SHARE_OF_MASS: &str = "Share of the mass";

#[inline]
pub(crate) fn stable_phases(carbon: &str) -> String {
    format!("Stable phases with {carbon} % carbon")
}

pub(crate) const PHASE: &str = "Phase";
pub(crate) const TEMPERATURE: &str = "Temperature";
pub(crate) const PHASES: &str = "Phases";
pub(crate) const FROM: &str = ", from ";
pub(crate) const FOR: &str = " for ";
