//! Words of the soak.

pub const SOAK_RECEIVES: &str = "how much carbon goes into solution";
pub const TEMPERATURE_OF_PIECE: &str = "Temperature of the piece";
pub const TIME_AT_TEMPERATURE: &str = "Time at temperature";
pub const COUNTED_FROM: &str = "Counted from when the piece has the colour of the furnace.";
pub const STRUCTURE_BEFORE: &str = "Structure before hardening";
pub const AFTER_THE: &str = " after the ";
pub const STEP_BEFORE: &str = "step before";

#[inline]
pub fn steps_before(n: usize) -> String {
    format!("{n} steps before")
}

pub const SOAK_TEMPERATURE: &str = "Soak temperature";
pub const SOAK_TIME: &str = "Soak time";
pub const MAP_COMING: &str = "The map of this steel is being computed.";
pub const WHILE_IT_SOAKS: &str = "While it soaks at ";
pub const PHASES_AS_TABLE: &str = "The phases as a table";

#[inline]
pub fn in_the_end_at(temperature: &str) -> String {
    format!("In the end at {temperature}")
}

pub const SHARE_OF_MASS: &str = "Share of the mass";

#[inline]
pub fn stable_phases(carbon: &str) -> String {
    format!("Stable phases with {carbon} % carbon")
}

pub const PHASE: &str = "Phase";
pub const TEMPERATURE: &str = "Temperature";
pub const PHASES: &str = "Phases";
pub const FROM: &str = " from ";
pub const FOR: &str = " for ";
