//! The question about a whole route.

use super::asked::Asked;
use super::catalogue::{Question, needed};
use super::refusal::Refusal;
use crate::route::Route;
use serde_json::{Map, Value};

pub(super) const QUESTIONS: &[Question] = &[Question {
    name: "route",
    asks: "What comes of a whole route: soak, quench, cold treatment, tempers?",
    of_steel: false,
    fields: &[needed("route", "the route, as a saved file has it")],
    answers: &[],
    example: r#"{"question":"route","route":{"piece":"marking knife","composition":{"c":1.0,"mn":0.35,"si":0.25,"cr":1.45},"start":"spheroidised","section":{"shape":"plate","thickness_mm":3},"furnace_band_k":8,"soak":{"temperature_c":845,"time_min":12},"quench":{"medium":"oil_fast","agitation":1,"air_delay_s":1,"end_c":20},"tempers":[{"temperature_c":180,"time_min":120}],"target":{"least_hrc":61,"most_hrc":63}}}"#,
    answer: route,
}];

fn route(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let route: Route = asked.value("route")?;
    crate::route::validate(&route)?;
    Err(Refusal::NotYet("whole routes are not computed here"))
}
