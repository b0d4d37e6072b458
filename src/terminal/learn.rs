//! The question of a logbook: what it teaches about the shop.

use super::asked::Asked;
use super::catalogue::{Question, needed, optional};
use super::decide::object;
use super::learnt;
use super::refusal::Refusal;
use super::whole_route::route_of;
use crate::advise::{LoggedRun, Shop, learn};
use crate::save::logbook::{Run, check_run};
use serde_json::{Map, Value};

pub(super) const QUESTIONS: &[Question] = &[Question {
    name: "learn",
    asks: "What does the logbook teach about furnace, quenchant, heat, temper oven and tester?",
    of_steel: false,
    fields: &[
        needed(
            "runs",
            "list of runs as a logbook's file has them under `runs`: {id, day, route, readings, \
             austenite_vol_percent?, done?}; readings of {value, scale, after, place?}",
        ),
        optional(
            "shop",
            "as for `find`: tells the furnaces apart by band and thermocouple of the route, and the \
             error of the tester",
            "one furnace, a tester good to 1 HRC",
        ),
        optional(
            "route",
            "the route to predict, as for `route`",
            "that of the newest run",
        ),
    ],
    answers: &[
        (
            "unknowns",
            "list of {kind, of, unit, before, after, runs, narrower_part, tempers_c?, source, words}; before and after: \
             {mean, least, most}, nine in ten; quench_severity and hardenability are factors, on heat \
             transfer and on the time of the nose",
        ),
        (
            "entangled",
            "pairs that the measurements do not tell apart: {unknowns: places in the list, \
             correlation, words}",
        ),
        (
            "compared",
            "what was measured: {run, name, what, measured, readings, before, after, weight, \
             is_outlier, is_told_otherwise}; run: place in `runs`, from 0; before and after: what \
             should be read; weight 0 to 1",
        ),
        (
            "not_used",
            "what teaches nothing: {run, name, field, reason}",
        ),
        (
            "prediction",
            "finished hardness of the next piece of the route, HRC: before, after; left out where the \
             models do not tell it",
        ),
        (
            "next",
            "what could be measured next, that which teaches most first: {measure, band_hrc (half of \
             the band of that hardness after it), narrower_hrc, words}",
        ),
        (
            "learnt",
            "all of it as `route`, `find`, `spread` and `sensitivity` take it: {furnaces, learnt: [{kind, owner, value, \
             left_part, runs, tempers_c?, half_band?, entangled_with?}]}; half_band: how far it may be off either way, \
             nine in ten, K or HRC, none for factors; entangled_with: the kinds that it is not told apart from",
        ),
    ],
    example: r#"{"question":"learn","runs":[{"id":"knife-1","day":"2026-03-14","route":{"piece":"marking knife","grade":"52100","composition":{"c":1.0,"mn":0.35,"si":0.25,"cr":1.45},"start":"spheroidised","section":{"shape":"plate","thickness_mm":3},"furnace_band_k":8,"soak":{"temperature_c":845,"time_min":12},"quench":{"medium":"oil_fast"},"tempers":[{"temperature_c":180,"time_min":120}],"target":{"least_hrc":61,"most_hrc":63}},"readings":[{"value":64,"scale":"hrc","after":"quench"},{"value":60.5,"scale":"hrc","after":"temper"}]}]}"#,
    answer: learn_from,
}];

fn learn_from(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let runs: Vec<Run> = asked.value("runs")?;
    for (place, run) in runs.iter().enumerate() {
        check_run(run).map_err(|fault| Refusal::Field {
            field: "runs".to_owned(),
            fault: format!("[{place}].{fault}"),
        })?;
    }
    let newest = runs.iter().max_by_key(|run| &run.day);
    let route = if asked.has("route") {
        Some(route_of(asked)?)
    } else {
        newest.map(|run| run.route.clone())
    };
    let logged: Vec<LoggedRun> = runs.iter().map(Run::logged).collect();
    let shop = asked.optional::<Shop>("shop")?;
    let learned = learn(&logged, shop.as_ref(), route.as_ref())?;
    let mut reply = object(&learned)?;
    reply.extend([learnt::as_field(&learned)?]);
    Ok(reply)
}
