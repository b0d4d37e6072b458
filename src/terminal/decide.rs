//! Questions that decide: which route to take, how sure it is, and what it hangs on.

use super::asked::Asked;
use super::catalogue::{Question, needed, optional};
use super::learnt;
use super::refusal::Refusal;
use super::whole_route::route_of;
use crate::advise::{
    FindRun, Shop, Sought, Tolerances, USUAL_CASES, USUAL_ROWS, sensitivity, spread,
};
use serde::Serialize;
use serde_json::{Map, Value};

pub(super) const QUESTIONS: &[Question] = &[FIND, SPREAD, SENSITIVITY];

const FIND: Question = Question {
    name: "find",
    asks: "Which route with what the shop owns gives this piece the hardness that its use asks for?",
    of_steel: false,
    fields: &[
        needed(
            "route",
            "the piece as a route: its steel, structure, steps before hardening, section and time in air count; later baths are dropped",
        ),
        needed(
            "shop",
            "{furnaces: [{name, least_c, most_c, band_k, offset_k?, thermocouple?, holds?}], quenchants: \
             [{medium, agitation?}], colds?: [{name, temperature_c}], temper_oven?: {least_c, most_c, band_k}, \
             tester?: {error_hrc}}. least_c, most_c: °C as the furnace reads, 20 to 1300, of the oven 20 to \
             750; band_k: K either way, 0 to 100; offset_k: piece hotter than the reading, K, -100 to 100; \
             thermocouple: checked, type_k_class1 or type_k_class2; a forge has holds: false; agitation: 0.1 \
             to 5; temperature_c of colds: °C, -200 to 20; error_hrc: 0.2 to 10",
        ),
        needed(
            "sought",
            "{target: {least_hrc, most_hrc}, use: edge, spring, wear or impact, limits?: {most_austenite, \
             least_grain_astm, no_cold, longest_h}}. Hardness in HRC; most_austenite: volume fraction, 0 to 1; \
             least_grain_astm: ASTM number, -2 to 15; no_cold: true rules cold steps out; longest_h: soak, cold \
             and tempers together, h, 0.1 to 1000",
        ),
        optional("tolerances", TOLERANCES, "{}"),
        optional(
            "seed",
            "whole number, 0 to 4294967295: the same one gives the same chances",
            "the route's",
        ),
        learnt::FIELD,
    ],
    answers: &[
        (
            "routes",
            "up to ten, the best first: {route, hrc, band_hrc (nine in ten), chance (of a sample that takes a blade \
             as the plate of its spine; null where a limit cannot be checked), not_checked (what the models do \
             not tell), margin_factor, austenite, grain_astm, points (an order only), time_h, may_crack, \
             embrittles, reason}. Ask `route` for what can hurt: water, brine, dry ice",
        ),
        (
            "trade_off",
            "hardness against toughness_points (an order only), each with not_checked and its route",
        ),
        ("tried", "routes that were computed"),
        (
            "nearest",
            "where none was found: {limit, nearest, words}: of the limits that stand in the way alone the first on \
             the route, else the first that no route keeps to; and what would help",
        ),
        learnt::ANSWER,
    ],
    example: r#"{"question":"find","shop":{"furnaces":[{"name":"kiln","least_c":100,"most_c":1100,"band_k":8}],"quenchants":[{"medium":"oil_medium"},{"medium":"oil_fast"}]},"sought":{"target":{"least_hrc":60,"most_hrc":62},"use":"edge"},"route":{"piece":"marking knife","grade":"52100","start":"spheroidised","section":{"shape":"plate","thickness_mm":3},"furnace_band_k":8,"soak":{"temperature_c":845,"time_min":12},"quench":{"medium":"oil_fast"},"target":{"least_hrc":60,"most_hrc":62}}}"#,
    answer: find_route,
};

const SPREAD: Question = Question {
    name: "spread",
    asks: "How sure is a route, over what is open about furnace, steel, piece, quenchant and models?",
    of_steel: false,
    fields: &[
        needed(
            "route",
            "the route, as a saved file has it; with a grade it may lack the composition",
        ),
        optional("tolerances", TOLERANCES, "{}"),
        optional("cases", "16 to 16384; a power of two fills evenly", "256"),
        optional(
            "seed",
            "whole number, 0 to 4294967295: the same one gives the same cases",
            "the route's",
        ),
        learnt::FIELD,
    ],
    answers: &[
        ("seed", "as asked, or the route's"),
        ("cases", "cases with an outcome"),
        (
            "refused",
            "cases without: too cold to harden, or outside the models",
        ),
        (
            "too_cold",
            "of these the ones below A1: they do not harden and miss the target",
        ),
        (
            "outside_models",
            "cases whose hardness after the last step the models do not tell",
        ),
        (
            "inputs",
            "what was open, each independent of the others: law, unit, source",
        ),
        (
            "carbon_wt",
            "in solution: {mean, sd, p05, p25, p50, p75, p95}, as all that follow",
        ),
        ("grain_astm", "grain number"),
        (
            "margin_factor",
            "the quench may be slower by this factor and still harden",
        ),
        (
            "hardens_part",
            "part in which the slowest place hardens: of the cases with a margin_factor and those too cold",
        ),
        ("quenched_hrc", "as quenched"),
        (
            "quenched_martensite, quenched_austenite",
            "volume fractions as quenched",
        ),
        ("final_hrc, final_austenite", "after the last step"),
        (
            "meets_target_part",
            "part whose hardness lies in the target: of all cases but those outside the models",
        ),
        learnt::ANSWER,
    ],
    example: r#"{"question":"spread","seed":7,"tolerances":{"temper_band_k":5},"route":{"piece":"marking knife","grade":"52100","start":"spheroidised","section":{"shape":"plate","thickness_mm":3},"furnace_band_k":8,"thermocouple":"type_k_class2","soak":{"temperature_c":845,"time_min":12},"quench":{"medium":"oil_fast"},"tempers":[{"temperature_c":180,"time_min":120}],"target":{"least_hrc":61,"most_hrc":63}}}"#,
    answer: spread_of,
};

const SENSITIVITY: Question = Question {
    name: "sensitivity",
    asks: "What matters most: how does the spread of a route divide up among what is open?",
    of_steel: false,
    fields: &[
        needed(
            "route",
            "as for `spread`; a blade is taken as the plate of its spine",
        ),
        optional("tolerances", TOLERANCES, "{}"),
        optional(
            "rows",
            "pairs of cases, 16 to 8192, rounded up to eights, each with one more case for everything open",
            "256",
        ),
        optional(
            "seed",
            "whole number, 0 to 4294967295: the same one gives the same cases",
            "the route's",
        ),
        learnt::FIELD,
    ],
    answers: &[
        ("seed, rows, refused, inputs", "as for `spread`"),
        (
            "quantities",
            "of final_hrc, quenched_hrc and final_austenite those that vary: sd; shares, that which does \
             most first, of {input, first, first_error, total, total_error}: indices of Sobol with standard \
             errors, by itself (Saltelli 2010) and with all that it does together with others (Jansen 1999); \
             words",
        ),
        learnt::ANSWER,
    ],
    example: r#"{"question":"sensitivity","rows":64,"route":{"piece":"marking knife","grade":"52100","start":"spheroidised","section":{"shape":"plate","thickness_mm":3},"furnace_band_k":15,"soak":{"temperature_c":845,"time_min":12},"quench":{"medium":"oil_fast"},"tempers":[{"temperature_c":180,"time_min":120}],"target":{"least_hrc":61,"most_hrc":63}}}"#,
    answer: sensitivity_of,
};

const TOLERANCES: &str = "{temper_band_k, thickness_band_mm, certificate_part}: how far the temper may be off, \
     K either way, 0 to 100 (left out: as the furnace); every thickness, mm either way, 0 to 5 (0.1); contents of a certificate, as a \
     part of them, 0 to 0.5 (0.03)";

fn spread_of(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let route = learnt::taught_route(asked)?;
    let found = spread(
        &route,
        &asked
            .optional::<Tolerances>("tolerances")?
            .unwrap_or_default(),
        asked.optional("cases")?.unwrap_or(USUAL_CASES),
        asked.optional("seed")?.unwrap_or(route.seed),
    )?;
    let mut reply = object(&found)?;
    learnt::say(asked, std::iter::once(&route), &mut reply)?;
    Ok(reply)
}

fn find_route(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let route = route_of(asked)?;
    let correction = learnt::correction_of(asked)?;
    let mut run = FindRun::taught(
        &route,
        &asked.value::<Shop>("shop")?,
        &asked.value::<Sought>("sought")?,
        &asked
            .optional::<Tolerances>("tolerances")?
            .unwrap_or_default(),
        asked.optional("seed")?.unwrap_or(route.seed),
        &correction,
    )?;
    while run.step() {}
    let found = run.so_far()?;
    let mut reply = object(&found)?;
    let routes = found.routes.iter().map(|found| &found.route);
    learnt::say(asked, routes, &mut reply)?;
    Ok(reply)
}

fn sensitivity_of(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let route = learnt::taught_route(asked)?;
    let found = sensitivity(
        &route,
        &asked
            .optional::<Tolerances>("tolerances")?
            .unwrap_or_default(),
        asked.optional("rows")?.unwrap_or(USUAL_ROWS),
        asked.optional("seed")?.unwrap_or(route.seed),
    )?;
    let mut reply = object(&found)?;
    learnt::say(asked, std::iter::once(&route), &mut reply)?;
    Ok(reply)
}

/// The fields of an answer that is one object.
pub(super) fn object(answer: &impl Serialize) -> Result<Map<String, Value>, Refusal> {
    match serde_json::to_value(answer)? {
        Value::Object(fields) => Ok(fields),
        _ => Ok(Map::new()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A line that has lost its continuation leaves a run of spaces in the help.
    #[test]
    fn no_text_has_runs_of_spaces() {
        for question in QUESTIONS {
            let fields = question.fields.iter().map(|field| field.meaning);
            let answers = question.answers.iter().map(|(_, meaning)| *meaning);
            for text in fields.chain(answers) {
                assert!(!text.contains("  "), "{}: {text}", question.name);
            }
        }
    }
}
