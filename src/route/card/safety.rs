//! What to see to before the first step, and what else can go wrong.

use crate::route::caution_words::{Caution, caution_text};
use crate::route::outcome::Outcome;
use crate::units::TemperatureScale;

/// What hot metal brings to every route. Common practice, no source.
const HOT_METAL: [&str; 2] = [
    "Tongs, bath and the way to it cleared before the furnace is opened.",
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

/// What else can go wrong, in the order of the route.
pub(super) fn mind(outcome: &Outcome, scale: TemperatureScale) -> Vec<String> {
    outcome
        .cautions
        .iter()
        .filter(|caution| !matches!(caution, Caution::Hazard { .. }))
        .map(|caution| caution_text(caution, scale))
        .collect()
}
