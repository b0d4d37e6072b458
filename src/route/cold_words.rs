//! The cold treatment in words.

use super::explain::{Explanation, refused};
use super::known::Known;
use super::outcome::{Outcome, SnapOutcome};
use super::sentence::{NumberKey, Part, Sentence, Tone};
use super::sentences::place_words;
use super::verdict::HARDENED;
use crate::units::{
    TemperatureScale, format_duration_s, format_hrc, format_percent, format_temperature,
};
use recalesce_texts::route::cold as texts;
use recalesce_texts::route::explain::{KNOWN, SOURCE};

/// Retained austenite that would be told as none, volume fraction.
const NONE_LEFT: f64 = 5e-4;

/// What the cold bath does to the piece, and whether it is worth it; what a snap temper before it
/// costs.
pub(super) fn cold_sentence(outcome: &Outcome) -> Option<Sentence> {
    let edge = outcome.judged_edge();
    let cold = outcome.judged_cold()?;
    if cold.austenite_before < NONE_LEFT {
        // None is left either where all has turned into something soft.
        let quenched = outcome.quench.transformed.given();
        let is_hard = edge.is_some()
            || quenched.is_none_or(|quenched| quenched.hardened_fraction >= HARDENED);
        let tone = if is_hard { Tone::Holds } else { Tone::Narrow };
        return Some(Sentence::new(tone).say(texts::NO_AUSTENITE, &[]));
    }
    // What stands behind a number is told of the place that decides.
    let number_of = |key, text| match edge {
        Some(_) => Part::Text(text),
        None => Part::Number(text, key),
    };
    let number = |name, text| (name, number_of(NumberKey::ColdTreatment, text));
    let after = number("after", format_percent(cold.austenite_after));
    let gain = number("gain", format_hrc(cold.gain_hrc.max(0.0)));
    let lost = format_percent(10.0 * cold.austenite_lost_per_min);
    let (tone, text, parts) = match (cold.is_planned, cold.is_worth_it) {
        // A snap temper has stabilised what waiting would.
        (true, true) if cold.snap.is_some() => (Tone::Holds, texts::WORTH_DOING, vec![after, gain]),
        (true, true) => {
            let parts = vec![after, gain, number("lost", lost)];
            (Tone::Holds, texts::WORTH_DOING_SOON, parts)
        }
        (true, false) if !cold.is_kept => (Tone::Holds, texts::TEMPERED_AWAY, vec![after, gain]),
        (true, false) => (Tone::Holds, texts::ADDS_LITTLE, vec![after, gain]),
        (false, true) => (Tone::Narrow, texts::WOULD_ADD, vec![after, gain]),
        (false, false) if !cold.is_kept => (Tone::Holds, texts::TEMPER_DOES_IT, vec![]),
        (false, false) => (Tone::Holds, texts::NOT_WORTH_IT, vec![gain]),
    };
    let before = format_percent(cold.austenite_before);
    let before = ("before", number_of(NumberKey::RetainedAustenite, before));
    let sentence = Sentence::new(tone);
    let left = match edge {
        Some(edge) => {
            let place = ("place", Part::Text(place_words(edge.place).to_owned()));
            sentence.say(texts::AUSTENITE_LEFT_AT, &[place, before])
        }
        None => sentence.say(texts::AUSTENITE_LEFT, &[before]),
    };
    let told = left.say(text, &parts);
    Some(match &cold.snap {
        Some(snap) => {
            let left = number("left", format_percent(snap.austenite_without));
            told.say(texts::WITHOUT_SNAP, &[left])
        }
        None => told,
    })
}

/// What stands behind the numbers of the cold bath.
pub(super) fn cold_treatment(outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    match &outcome.cold {
        Known::Given(cold) => Explanation {
            title: texts::TITLE.to_owned(),
            figure: format!("+{}", format_hrc(cold.gain_hrc.max(0.0))),
            band: if cold.is_planned {
                texts::PLANNED
            } else {
                texts::NOT_PLANNED
            }
            .to_owned(),
            equation: texts::law(
                &format_temperature(cold.temperature_c, scale),
                &format_percent(cold.austenite_before),
                &format_percent(cold.austenite_after),
            ),
            rows: [(
                texts::WAITING_LONGER,
                texts::each_ten_minutes(
                    &format_percent(10.0 * cold.austenite_lost_per_min),
                    &format_hrc(10.0 * cold.gain_lost_hrc_per_min),
                ),
            )]
            .into_iter()
            .chain(
                cold.snap
                    .as_ref()
                    .map(|snap| (texts::SNAP_TEMPER, snap_words(snap, scale))),
            )
            .chain([
                (SOURCE, texts::BASIS.to_owned()),
                (KNOWN, texts::ERROR.to_owned()),
            ])
            .collect(),
        },
        Known::Refused { refused: reason } => refused(texts::TITLE, reason.words(scale)),
    }
}

/// What a snap temper does, and how far that is known.
fn snap_words(snap: &SnapOutcome, scale: TemperatureScale) -> String {
    let [least, most] = snap.austenite_between.map(format_percent);
    texts::snap(
        &format_duration_s(60.0 * snap.time_min),
        &format_temperature(snap.temperature_c, scale),
        &format_hrc(snap.takes_hrc.max(0.0)),
        [&least, &most],
        &format_percent(snap.austenite_without),
    )
}
