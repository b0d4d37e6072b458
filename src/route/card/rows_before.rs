//! Rows of the steps before hardening.

use super::ramp::ramp_words;
use super::words::{bath_words, furnace_set, furnace_words, hardness_words, hold_words};
use super::{CardRow, StepColour, Units};
use crate::heat::{Family, MediumChoice};
use crate::route::outcome::Outcome;
use crate::route::plan::Route;
use crate::route::prior::{PriorOutcome, PriorStep, SlowCooling, Work};
use crate::soak::Network;
use crate::units::{format_temperature, format_temperature_band, format_temperature_difference};
use recalesce_texts::route::card::before as texts;

/// Steel without ferrite holds no magnet, and ferrite loses it here, °C; a magnet is seen to let go
/// at 750 to 785 °C (common practice, no source).
pub(super) const MAGNET_LETS_GO_C: f64 = 785.0;

/// How far off the heat of a forge is that is judged by its glow, K either way. Common practice, no
/// source.
const BY_EYE_K: f64 = 25.0;

/// Martensite and austenite for which a piece is cooled to hand warm, volume fraction.
const WORTH_WAITING: f64 = 0.05;

/// The rows, in the order of the route.
pub(super) fn rows(route: &Route, outcome: &Outcome, units: Units) -> Vec<CardRow> {
    let last_heated = route
        .prior
        .iter()
        .rposition(|step| matches!(step.work, Work::Normalise | Work::Refine));
    route
        .prior
        .iter()
        .enumerate()
        .map(|(i, step)| {
            let done = outcome.prior.get(i);
            let mut row = row(route, step, done, units);
            row.look_for += network_words(route, outcome, i);
            if last_heated == Some(i) {
                row.look_for += texts::STRAIGHTEN_RED;
            }
            row
        })
        .collect()
}

/// What a network of carbide asks for, told where it begins.
fn network_words(route: &Route, outcome: &Outcome, at: usize) -> &'static str {
    let has_network = |done: &PriorOutcome| {
        let state = done.state.given();
        state.is_some_and(|state| state.network == Network::Continuous)
    };
    let now = outcome.prior.get(at).is_some_and(has_network);
    let before = at.checked_sub(1).and_then(|i| outcome.prior.get(i));
    if !now || before.is_some_and(has_network) {
        return "";
    }
    let is_normalised = route
        .prior
        .get(at)
        .is_some_and(|step| step.work == Work::Normalise);
    if !outcome.prior.last().is_some_and(has_network) {
        texts::NETWORK_FOR_NOW
    } else if is_normalised {
        texts::NETWORK_COOL_FASTER
    } else {
        texts::NETWORK_NORMALISE
    }
}

fn row(route: &Route, step: &PriorStep, done: Option<&PriorOutcome>, units: Units) -> CardRow {
    let band_k = route.band_k_at(step.temperature_c);
    let (set, detail) = match step.work {
        Work::Forge { finish_c, heats } => (
            format_temperature(step.temperature_c, units.scale),
            texts::forged(
                &format_temperature_band(band_k.max(BY_EYE_K), units.scale),
                &format_temperature(finish_c, units.scale),
                heats,
                &hold_words(step.time_min),
            ),
        ),
        _ => {
            let held = furnace_words(band_k, step.time_min, units);
            furnace_set(route, step.temperature_c, held, units)
        }
    };
    let state = done.and_then(|done| done.state.given());
    let is_above_a1 = done.is_some_and(|done| done.heated.is_some());
    let mut look_for = check_words(step, is_above_a1).to_owned();
    look_for += &ramp_words(route, step.temperature_c, units);
    look_for += " ";
    // Steel that still turns far below red has to be let turn before it is heated again.
    let turns_late = state.is_none_or(|state| {
        state
            .fractions
            .is_none_or(|x| x.martensite + x.austenite > WORTH_WAITING)
    });
    look_for += &cooling_words(&step.cooling, turns_late, units);
    if let Some(worked_by) = state.and_then(|state| state.worked_by()) {
        look_for += &texts::cold_it(worked_by.words());
    }
    CardRow {
        title: step.work.title().to_owned(),
        set,
        detail,
        colour: Some(StepColour::Glow(step.temperature_c)),
        look_for,
        after: state.and_then(|state| Some(hardness_words(state.hardness?))),
        cautions: Vec::new(),
    }
}

/// What to look for while the piece is hot.
fn check_words(step: &PriorStep, is_above_a1: bool) -> &'static str {
    let is_past_magnet = step.temperature_c >= MAGNET_LETS_GO_C;
    match step.work {
        Work::Forge { .. } => texts::BACK_INTO_FIRE,
        Work::Normalise => texts::UP_EVENLY,
        Work::Refine => texts::EVEN_COLOUR,
        Work::SlowAnneal if is_past_magnet => texts::COUNT_PAST_MAGNET,
        Work::SlowAnneal => texts::COUNT_AT_HEAT,
        Work::SubcriticalAnneal | Work::StressRelief if !is_above_a1 => texts::TRUST_THERMOCOUPLE,
        Work::SubcriticalAnneal | Work::StressRelief => texts::ABOVE_A1,
    }
}

fn cooling_words(cooling: &SlowCooling, turns_late: bool, units: Units) -> String {
    match cooling {
        SlowCooling::Medium { medium } => medium_cooling_words(medium, turns_late, units),
        SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        } => texts::lead_furnace_down(
            &format_temperature_difference(*rate_k_per_h, units.scale),
            &format_temperature(*until_c, units.scale),
        ),
    }
}

fn medium_cooling_words(medium: &MediumChoice, turns_late: bool, units: Units) -> String {
    let is_air = medium
        .resolve()
        .is_ok_and(|medium| medium.family == Family::Air);
    let (words, bath) = bath_words(medium, units.scale);
    match bath {
        Some(bath) => texts::cool_in_bath(&words, &bath),
        None if is_air && turns_late => texts::cool_until_hand_warm(&words),
        None if is_air => texts::cool_until_black(&words),
        None => texts::cool_in(&words),
    }
}
