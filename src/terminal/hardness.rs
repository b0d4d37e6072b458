//! Questions about hardness: as quenched, tempered, and from scale to scale.

use super::asked::Asked;
use super::catalogue::{Question, needed};
use super::refusal::Refusal;
use serde_json::{Map, Value};

pub(super) const QUESTIONS: &[Question] = &[
    Question {
        name: "as_quenched",
        asks: "How hard is the steel as quenched? All of it counts as dissolved.",
        of_steel: true,
        fields: &[needed("martensite", "fraction of martensite, 0 to 1")],
        answers: &[("hrc", "Rockwell C"), ("hv", "Vickers")],
        example: r#"{"question":"as_quenched","grade":"4140","martensite":0.9}"#,
        answer: as_quenched,
    },
    Question {
        name: "temper",
        asks: "How hard is fully quenched steel after one or more tempers?",
        of_steel: true,
        fields: &[needed("steps", "list of {temperature_c, time_s}, in order")],
        answers: &[
            ("hrc", "Rockwell C after the last"),
            ("band_hrc", "error to expect, HRC"),
        ],
        example: r#"{"question":"temper","grade":"4140","steps":[{"temperature_c":540,"time_s":7200}]}"#,
        answer: temper,
    },
    Question {
        name: "convert",
        asks: "What is a hardness on another scale?",
        of_steel: false,
        fields: &[
            needed("from", "scale: hrc, hv or hbw"),
            needed("value", "hardness on that scale"),
            needed("to", "scale: hrc, hv or hbw"),
        ],
        answers: &[("value", "hardness on the other scale")],
        example: r#"{"question":"convert","from":"hrc","value":60,"to":"hv"}"#,
        answer: convert,
    },
];

fn as_quenched(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    asked.steel()?;
    Err(Refusal::NotYet("as-quenched hardness"))
}

fn temper(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    asked.steel()?;
    Err(Refusal::NotYet("tempered hardness"))
}

fn convert(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    asked.optional_number("value", (0.0, 2000.0), "")?;
    Err(Refusal::NotYet("conversion of hardness"))
}
