//! Words of the route strip.

pub(crate) const STEP_TAKEN_OUT: &str = "The step is taken out of the route.";
pub(crate) const HOW_TO_MOVE_A_STEP: &str =
    "Drag, or Alt and an arrow, moves it; + adds another; Delete takes it out";
pub(crate) const STEPS_BEFORE: &str = "Steps before hardening";
pub(crate) const STEPS_BEFORE_LISTED: &str =
    "Steps before hardening: forge, normalise, refine, anneal";
pub(crate) const ONE_MORE_TEMPER: &str = "One more temper";
pub(crate) const SOAK: &str = "Soak";
pub(crate) const QUENCH: &str = "Quench";
pub(crate) const COLD: &str = "Cold";

#[inline]
pub(crate) fn temper(n: usize) -> String {
    format!("Temper {n}")
}

pub(crate) const TEMPER: &str = "Temper";
pub(crate) const ANNEAL: &str = "Anneal";
pub(crate) const RELIEVE: &str = "Relieve";
pub(crate) const ROUTE: &str = "Route";
pub(crate) const GLOW_BACK: &str = "glow-back";
