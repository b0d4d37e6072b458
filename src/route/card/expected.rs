//! What the piece should come to: hardness after each step, and how far it hardens.

use super::words::{between_words, hardness_words};
use super::{Depth, Expected, Units};
use crate::hardness::Hardness;
use crate::heat::{Place, Section};
use crate::route::known::Known;
use crate::route::outcome::{Outcome, Stage, Step};
use crate::route::plan::Route;
use crate::route::sentences::{margin_words, place_name};
use crate::route::verdict::HARDENED;
use crate::units::{
    TemperatureScale, format_fixed, format_length, format_percent, format_temperature,
};
use recalesce_texts::route::{card as texts, plan as plan_texts};

/// A number that is unknown.
const UNKNOWN: &str = "–";

/// The piece after a step, where the target is laid against it, if it could be computed.
pub(super) fn stage(outcome: &Outcome, step: Step) -> Option<&Stage> {
    let mut stages = outcome.judged_stages().iter();
    stages.find(|stage| stage.step == step)
}

/// The number of a stage, and between which it is nine times in ten.
pub(super) fn stage_words(stage: &Stage) -> Option<(String, String)> {
    let hardness = stage.hardness?;
    let between = match hardness.hrc() {
        Some(_) => {
            let [least, most] = stage.hrc_range()?;
            texts::between(&format_fixed(least, 1), &format_fixed(most, 1))
        }
        // The band is in HRC, whose numbers are carried on below their scale.
        None => {
            let harder = Hardness::from_hrc_carried(hardness.hrc_carried() + stage.sides_hrc()[1]);
            between_words(hardness, harder.hv - hardness.hv)
        }
    };
    Some((hardness_words(hardness), between))
}

/// Hardness after the quench, the cold bath and each temper. Steps before hardening have theirs in
/// their rows.
pub(super) fn expected(route: &Route, outcome: &Outcome) -> Vec<Expected> {
    let row = |after: String, words: Option<(String, String)>| {
        let (hardness, nine_in_ten) =
            words.unwrap_or_else(|| (UNKNOWN.to_owned(), UNKNOWN.to_owned()));
        Expected {
            after,
            hardness,
            nine_in_ten,
        }
    };
    let place = outcome.judged_place().map(place_name);
    let one = |name: String, step: Step| {
        let name = place.map_or_else(|| name.clone(), |place| texts::expected::at(&name, place));
        row(name, stage(outcome, step).and_then(stage_words))
    };
    let other = other_place(outcome).map(|(place, last)| {
        let name = match last.step {
            Step::Temper(n) => plan_texts::temper(n),
            Step::Cold => texts::expected::COLD.to_owned(),
            Step::Soak | Step::Quench | Step::Snap => texts::expected::QUENCH.to_owned(),
        };
        let name = texts::expected::at(&name, place_name(place));
        row(name, stage_words(last))
    });
    let snap = route
        .cold
        .and_then(|cold| cold.snap)
        .map(|_| one(texts::expected::SNAP_TEMPER.to_owned(), Step::Snap));
    let cold = route
        .cold
        .is_some()
        .then(|| one(texts::expected::COLD.to_owned(), Step::Cold));
    let tempers = (1..=route.tempers.len()).map(|n| one(plan_texts::temper(n), Step::Temper(n)));
    std::iter::once(one(texts::expected::QUENCH.to_owned(), Step::Quench))
        .chain(snap)
        .chain(cold)
        .chain(tempers)
        .chain(other)
        .collect()
}

/// The other place, of a piece that does not harden through, after its last step: the one that decides beside an
/// edge, a surface beside the inside.
fn other_place(outcome: &Outcome) -> Option<(Place, &Stage)> {
    let outside = outcome.outside.as_ref()?;
    match outcome.judged_edge() {
        Some(_) => Some((outcome.quench.named_place()?, outcome.stages.last()?)),
        None => Some((outside.place, outside.last()?)),
    }
}

/// Why a hardness is unknown, where one is.
pub(super) fn unknown(outcome: &Outcome, scale: TemperatureScale) -> Option<String> {
    let prior = outcome.prior.iter().map(|done| done.state.refusal());
    let quench = std::iter::once(outcome.quench.transformed.refusal());
    let is_tempered = outcome
        .stages
        .iter()
        .any(|stage| matches!(stage.step, Step::Temper(_)) && stage.hardness.is_some());
    let temper = std::iter::once(outcome.temper.refusal().filter(|_| !is_tempered));
    prior
        .chain(quench)
        .chain(temper)
        .flatten()
        .next()
        .map(|refusal| refusal.words(scale))
}

/// How far the piece hardens.
pub(super) fn depth(route: &Route, outcome: &Outcome, units: Units) -> Depth {
    let title = match route.section {
        Section::Blade { .. } => texts::expected::HARDENED_HEIGHT,
        _ => texts::expected::HARDENED_DEPTH,
    };
    let words = match &outcome.quench.transformed {
        Known::Refused { refused } => refused.words(units.scale),
        Known::Given(quenched) => {
            let place = outcome
                .quench
                .deciding_curve()
                .map_or(Place::Centre, |curve| curve.place);
            let margin = &quenched.margin;
            let (place, size) = (place_name(place), margin_words(margin.seconds));
            let range = margin.range_words();
            let mut words = if margin.seconds >= 0.0 {
                texts::expected::margin(place, &size, &range)
            } else {
                texts::expected::misses(place, &size, &range)
            };
            if let Some(bath_c) = quenched.held_c {
                words += &texts::expected::held_in_bath(
                    &format_temperature(bath_c, units.scale),
                    &format_percent(quenched.fractions.bainite),
                );
            } else if quenched.hardened_fraction < HARDENED {
                words +=
                    &texts::expected::part_hardens(&format_percent(quenched.hardened_fraction));
            }
            if let Some(thickest_mm) = quenched.thickest_mm {
                let thickest = format_length(thickest_mm, units.length);
                words += &if margin.seconds < 0.0 {
                    texts::expected::would_harden_up_to(&thickest)
                } else {
                    texts::expected::thicker_takes_faster(&thickest)
                };
            }
            if margin.seconds < 0.0
                && let Some(slowest) = &quenched.slowest_medium
            {
                let medium = slowest.title.words(units.scale);
                words += &if slowest.may_crack {
                    texts::expected::would_harden_or_crack(&medium)
                } else {
                    texts::expected::would_harden(&medium)
                };
            }
            words
        }
    };
    Depth { title, words }
}
