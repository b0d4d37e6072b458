//! The cold treatment in words.

use super::explain::{Explanation, KNOWN, SOURCE, refused};
use super::known::Known;
use super::outcome::{Outcome, SnapOutcome};
use super::sentences::{NumberKey, Sentence, Tone};
use crate::units::{
    TemperatureScale, format_duration_s, format_hrc, format_percent, format_temperature,
};

/// Retained austenite that would be told as none, volume fraction.
const NONE_LEFT: f64 = 5e-4;

/// What the cold bath does to the piece, and whether it is worth it; what a snap temper before it
/// costs.
pub(super) fn cold_sentence(outcome: &Outcome) -> Option<Sentence> {
    let cold = outcome.cold.given()?;
    if cold.austenite_before < NONE_LEFT {
        let said = "No austenite is left that a cold bath could turn.".to_owned();
        return Some(Sentence::new(Tone::Holds).text_part(said));
    }
    let start = Sentence::new(Tone::Holds)
        .number(
            format_percent(cold.austenite_before),
            NumberKey::RetainedAustenite,
        )
        .text_part(" austenite is left.");
    let gain = format_hrc(cold.gain_hrc.max(0.0));
    let after = format_percent(cold.austenite_after);
    let told = match (cold.is_planned, cold.is_worth_it) {
        (true, true) => {
            let worth = start
                .text_part(" The cold bath brings it to ")
                .number(after, NumberKey::ColdTreatment)
                .text_part(" and adds ")
                .number(gain, NumberKey::ColdTreatment);
            if cold.snap.is_some() {
                // It has stabilised what waiting would.
                worth.text_part(": worth doing.")
            } else {
                worth
                    .text_part(": worth doing; every ten minutes more before the bath leave ")
                    .number(
                        format_percent(10.0 * cold.austenite_lost_per_min),
                        NumberKey::ColdTreatment,
                    )
                    .text_part(" more austenite.")
            }
        }
        (true, false) => start
            .text_part(" The cold bath brings it to ")
            .number(after, NumberKey::ColdTreatment)
            .text_part(" and adds only ")
            .number(gain, NumberKey::ColdTreatment)
            .text_part("."),
        (false, true) => Sentence {
            tone: Tone::Narrow,
            ..start
        }
        .text_part(" A cold bath would bring it to ")
        .number(after, NumberKey::ColdTreatment)
        .text_part(" and add ")
        .number(gain, NumberKey::ColdTreatment)
        .text_part("."),
        (false, false) => start
            .text_part(" Not worth a cold bath: it would add ")
            .number(gain, NumberKey::ColdTreatment)
            .text_part("."),
    };
    Some(match &cold.snap {
        Some(snap) => told
            .text_part(" Without the snap temper ")
            .number(
                format_percent(snap.austenite_without),
                NumberKey::ColdTreatment,
            )
            .text_part(
                " would be left: it is worth that where the piece may crack on its way into the cold.",
            ),
        None => told,
    })
}

/// What stands behind the numbers of the cold bath.
pub(super) fn cold_treatment(outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    match &outcome.cold {
        Known::Given(cold) => Explanation {
            title: "Cold treatment".to_owned(),
            figure: format!("+{}", format_hrc(cold.gain_hrc.max(0.0))),
            band: if cold.is_planned {
                "planned".to_owned()
            } else {
                "not planned".to_owned()
            },
            equation: format!(
                "the same law down to {}, less what waiting has stabilised\n{} → {} austenite",
                format_temperature(cold.temperature_c, scale),
                format_percent(cold.austenite_before),
                format_percent(cold.austenite_after)
            ),
            rows: [(
                    "waiting longer",
                    format!(
                        "each further ten minutes keep {} of austenite and cost {}",
                        format_percent(10.0 * cold.austenite_lost_per_min),
                        format_hrc(10.0 * cold.gain_lost_hrc_per_min)
                    ),
                )]
            .into_iter()
            .chain(cold.snap.as_ref().map(|snap| ("snap temper", snap_words(snap, scale))))
            .chain([
                (SOURCE, "trend of Harris & Cohen (1949); the numbers of the stabilisation are from memory".to_owned()),
                (KNOWN, "show as a trend".to_owned()),
            ])
            .collect(),
        },
        Known::Refused { refused: reason } => refused("Cold treatment", reason.words(scale)),
    }
}

/// What a snap temper does, and how far that is known.
fn snap_words(snap: &SnapOutcome, scale: TemperatureScale) -> String {
    let [least, most] = snap.austenite_between.map(format_percent);
    format!(
        "{} at {} stabilises as a long wait does, and takes {} before the cold; after the cold {} to \
         {} austenite instead of {}: common practice, no source; how much is stabilised is carried \
         on from waits, and may be twice that (expert value)",
        format_duration_s(60.0 * snap.time_min),
        format_temperature(snap.temperature_c, scale),
        format_hrc(snap.takes_hrc.max(0.0)),
        least,
        most,
        format_percent(snap.austenite_without),
    )
}
