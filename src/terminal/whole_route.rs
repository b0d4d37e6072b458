//! The question about a whole route.

use super::asked::Asked;
use super::catalogue::{Question, needed};
use super::learnt;
use super::refusal::Refusal;
use crate::route::{Route, Sentence, run, sentences};
use crate::steel;
use crate::units::TemperatureScale;
use serde::Deserialize;
use serde_json::{Map, Value, json};

pub(super) const QUESTIONS: &[Question] = &[Question {
    name: "route",
    asks: "What comes of a whole route: soak, quench, cold treatment, tempers?",
    of_steel: false,
    fields: &[
        needed(
            "route",
            "the route, as a saved file has it; with a grade it may lack the composition",
        ),
        learnt::FIELD,
    ],
    answers: &[
        ("sentences", "the outcome in words"),
        ("critical", "A1, A3 or Acm"),
        (
            "soak",
            "carbon in solution, carbide, grain, and their course",
        ),
        ("furnace", "what the furnace's band makes of it"),
        (
            "quench",
            "cooling curves; transformed: isothermal curves, Ms, fractions, margin with verdict, the \
             same for every place, slowest quenchant that still does, thickest section",
        ),
        ("cold", "what a cold treatment does, planned or not"),
        ("stages", "fractions and hardness after each step"),
        (
            "outside",
            "of a piece that does not harden through: the same of its cutting edge or surface, with its \
             austenite and cold; of an edge temper and influences are told",
        ),
        (
            "temper",
            "hardness against tempering temperature, embrittling range",
        ),
        ("influences", "what moves the final hardness"),
        ("cautions", "what can go wrong or hurt"),
        learnt::ANSWER,
    ],
    example: r#"{"question":"route","route":{"piece":"marking knife","grade":"52100","start":"spheroidised","section":{"shape":"plate","thickness_mm":3},"furnace_band_k":8,"soak":{"temperature_c":845,"time_min":12},"quench":{"medium":"oil_fast","agitation":1,"air_delay_s":1,"end_c":20},"tempers":[{"temperature_c":180,"time_min":120}],"target":{"least_hrc":61,"most_hrc":63}}}"#,
    answer: route,
}];

/// The route of a question.
pub(super) fn route_of(asked: &Asked<'_>) -> Result<Route, Refusal> {
    let mut saved: Map<String, Value> = asked.value("route")?;
    if !saved.contains_key("composition")
        && let Some(Value::String(grade)) = saved.get("grade")
    {
        let nominal = steel::find(grade)?.nominal;
        saved.insert("composition".to_owned(), serde_json::to_value(nominal)?);
    }
    Route::deserialize(Value::Object(saved)).map_err(|e| Refusal::Field {
        field: "route".to_owned(),
        fault: e.to_string(),
    })
}

fn route(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let planned = learnt::taught_route(asked)?;
    let route = &*planned.as_taught();
    let outcome = run(route)?;
    let sentences: Vec<String> = sentences(route, &outcome, TemperatureScale::Celsius)
        .iter()
        .map(Sentence::text)
        .collect();
    let Value::Object(mut reply) = serde_json::to_value(outcome)? else {
        return Ok(Map::new());
    };
    reply.insert("sentences".to_owned(), json!(sentences));
    learnt::say(asked, std::iter::once(&planned), &mut reply)?;
    Ok(reply)
}
