//! Words of the route strip.

pub const STEP_TAKEN_OUT: &str = "The step is taken out of the route.";
pub const HOW_TO_MOVE_A_STEP: &str =
    "Drag, or Alt and an arrow, moves it; + adds another; Delete takes it out";
pub const STEPS_BEFORE: &str = "Steps before hardening";
pub const STEPS_BEFORE_LISTED: &str = "Steps before hardening: forge, normalise, refine, anneal";
pub const ONE_MORE_TEMPER: &str = "One more temper";
pub const SOAK: &str = "Soak";
pub const QUENCH: &str = "Quench";
pub const COLD: &str = "Cold";

#[inline]
pub fn temper(n: usize) -> String {
    format!("Temper\u{a0}{n}")
}

pub const TEMPER: &str = "Temper";
pub const ANNEAL: &str = "Anneal";
pub const RELIEVE: &str = "Relieve";
pub const ROUTE: &str = "Route";
pub const GLOW_BACK: &str = "glow-back";
