//! Questions about hardness: as quenched, tempered, and from scale to scale.

use super::asked::{Asked, fields};
use super::catalogue::{Question, needed};
use super::refusal::Refusal;
use crate::hardness::{self, AS_QUENCHED_BAND_HRC, AsQuenched, TemperStep};
use serde_json::{Map, Value, json};

pub(super) const QUESTIONS: &[Question] = &[
    Question {
        name: "as_quenched",
        asks: "How hard is the steel as quenched? All of it counts as dissolved.",
        of_steel: true,
        fields: &[needed(
            "martensite",
            "volume fraction of martensite, 0.5 to 1",
        )],
        answers: &[
            ("hrc", "Rockwell C; null below 20, where the scale ends"),
            ("hv", "Vickers"),
            ("band_hrc", "nine in ten lie within so much of it, HRC"),
        ],
        example: r#"{"question":"as_quenched","grade":"4140","martensite":0.9}"#,
        answer: as_quenched,
    },
    Question {
        name: "temper",
        asks: "How hard is fully quenched steel after one or more tempers?",
        of_steel: true,
        fields: &[needed("steps", "list of {temperature_c, time_s}, in order")],
        answers: &[
            (
                "hrc",
                "Rockwell C after the last; null below 20, where the scale ends",
            ),
            ("hv", "Vickers after the last"),
            ("band_hrc", "nine in ten lie within so much of it, HRC"),
        ],
        example: r#"{"question":"temper","grade":"4140","steps":[{"temperature_c":540,"time_s":7200}]}"#,
        answer: temper,
    },
    Question {
        name: "convert",
        asks: "What is a hardness on another scale?",
        of_steel: false,
        fields: &[
            needed("from", "scale: hrc, hv, hbw, or hrb for soft steel"),
            needed("value", "hardness on that scale"),
            needed("to", "scale: hrc, hv, hbw or hrb"),
        ],
        answers: &[("value", "hardness on the other scale")],
        example: r#"{"question":"convert","from":"hrc","value":60,"to":"hv"}"#,
        answer: convert,
    },
];

fn as_quenched(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let hardness = hardness::as_quenched(&asked.steel()?, asked.value("martensite")?)?;
    Ok(fields([
        ("hrc", json!(hardness.hrc())),
        ("hv", json!(hardness.hv)),
        ("band_hrc", json!(AS_QUENCHED_BAND_HRC)),
    ]))
}

fn temper(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    const MOST_STEPS: usize = 100;
    let steel = asked.steel()?;
    let steps: Vec<TemperStep> = asked.value("steps")?;
    let quenched = AsQuenched::fully_martensitic(&steel);
    let after = if steps.len() > MOST_STEPS {
        None
    } else {
        hardness::temper(&quenched, &steel, &steps)?.pop()
    };
    let after = after.ok_or_else(|| Refusal::Field {
        field: "steps".to_owned(),
        fault: format!("{} steps; 1 to {MOST_STEPS} are allowed", steps.len()),
    })?;
    Ok(fields([
        ("hrc", json!(after.hardness.hrc())),
        ("hv", json!(after.hardness.hv)),
        ("band_hrc", json!(after.band_hrc)),
    ]))
}

fn convert(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let (from, to) = (asked.value("from")?, asked.value("to")?);
    let value = hardness::convert(from, asked.value("value")?, to)?;
    Ok(fields([("value", json!(value))]))
}
