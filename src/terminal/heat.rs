//! Questions about cooling: a piece in a quenchant, and the standard probe.

use super::asked::Asked;
use super::catalogue::{Question, needed, optional};
use super::refusal::Refusal;
use crate::heat::{MediumChoice, Section};
use serde_json::{Map, Value};

pub(super) const QUESTIONS: &[Question] = &[
    Question {
        name: "cooling",
        asks: "When does a piece in a quenchant pass given temperatures?",
        of_steel: false,
        fields: &[
            needed("section", "shape and size of the piece, see above"),
            needed("medium", "the quenchant, see above"),
            optional(
                "agitation",
                "factor on the heat transfer of the still bath",
                "1",
            ),
            optional(
                "air_delay_s",
                "time in air between furnace and bath, s",
                "0",
            ),
            needed(
                "start_c",
                "temperature of the piece as it leaves the furnace, °C",
            ),
            needed("at_c", "list of temperatures, °C"),
        ],
        answers: &[
            (
                "centre_time_s",
                "times from the furnace at which the centre passes each, s; null where it does not. \
                 Of a blade: the middle of the spine",
            ),
            (
                "surface_time_s",
                "the same for the surface; of a blade, the spine's",
            ),
            ("edge_time_s", "the same for the edge of a blade"),
            (
                "max_rate_k_per_s",
                "greatest cooling rate of the centre, K/s",
            ),
        ],
        example: r#"{"question":"cooling","section":{"shape":"plate","thickness_mm":3},"medium":"oil_fast","start_c":845,"at_c":[700,500,300,100]}"#,
        answer: cooling,
    },
    Question {
        name: "probe",
        asks: "How fast is a quenchant, by the standard 12.5 mm nickel-alloy probe from 850 °C?",
        of_steel: false,
        fields: &[needed("medium", "the quenchant, see above")],
        answers: &[
            (
                "max_rate_k_per_s",
                "greatest cooling rate of the centre, K/s",
            ),
            ("max_rate_at_c", "temperature at which it is greatest, °C"),
            ("rate_at_300c_k_per_s", "rate at 300 °C, K/s"),
            (
                "time_to_600c_s",
                "time to 600 °C, s; likewise 400 and 200 °C",
            ),
        ],
        example: r#"{"question":"probe","medium":"water20"}"#,
        answer: probe,
    },
];

fn cooling(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let _section: Section = asked.value("section")?;
    let _medium: MediumChoice = asked.value("medium")?;
    Err(Refusal::NotYet("cooling"))
}

fn probe(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let _medium: MediumChoice = asked.value("medium")?;
    Err(Refusal::NotYet("probe"))
}
