//! What to see to before the first step, and what else can go wrong.

use crate::route::caution_words::{Caution, caution_text};
use crate::route::outcome::Outcome;
use crate::route::plan::Route;
use crate::route::prior::step_cautions;
use crate::units::TemperatureScale;

/// What hot metal brings to every route. Common practice, no source.
const HOT_METAL: [&str; 2] = [
    "Tongs, bath and the way to it cleared before the furnace is opened; black steel still burns.",
    "Face shield, dry leather gloves, cotton or wool clothes.",
];
/// What cleaning and grinding bring to every route. Common practice, no source.
const GRINDING: &str =
    "Scale and grinding dust: eyes covered, a respirator, sparks away from oil and solvents.";

/// What to see to before the first step.
pub(super) fn before_start(outcome: &Outcome, scale: TemperatureScale) -> Vec<String> {
    let hazards = outcome
        .cautions
        .iter()
        .filter(|caution| matches!(caution, Caution::Hazard { .. }))
        .map(|caution| caution_text(caution, scale));
    HOT_METAL
        .into_iter()
        .map(str::to_owned)
        .chain(hazards)
        .chain([GRINDING.to_owned()])
        .collect()
}

/// What else can go wrong: with the steps before hardening, then with the rest of the route.
pub(super) fn mind(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Vec<String> {
    let of_outcome = outcome
        .cautions
        .iter()
        .filter(|caution| !matches!(caution, Caution::Hazard { .. }))
        .map(|caution| caution_text(caution, scale));
    step_cautions(route, outcome, scale)
        .into_iter()
        .chain(of_outcome)
        .collect()
}
