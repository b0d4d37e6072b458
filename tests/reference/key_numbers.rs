//! The reference routes, and the key numbers of their outcomes.
#![allow(unreachable_pub, reason = "a module of two test programs")]

use recalesce::route::{Margin, Neighbour, Outcome, PriorOutcome, Route, Stage, run};
use serde_json::{Value, json};

/// Routes of all shapes, media and grades, refusals among them.
pub const ROUTES: &str = include_str!("routes.json");
/// Their outcomes, computed natively, with the version of the models.
pub const OUTCOMES: &str = include_str!("outcomes.json");

/// Largest difference between two builds, relative.
const TOLERANCE: f64 = 1e-6;
/// Numbers below this are compared as if they were this large: the last digits of a fraction or a
/// time that is next to nothing mean nothing.
const SMALL: f64 = 1e-3;

/// What each route comes to now.
pub fn answers() -> Vec<Value> {
    let routes: Vec<Route> = serde_json::from_str(ROUTES).expect("routes as saved");
    routes
        .iter()
        .map(|route| match run(route) {
            Ok(outcome) => key_numbers(route, &outcome),
            Err(error) => json!({ "piece": route.piece, "refused": error.to_string() }),
        })
        .collect()
}

fn key_numbers(route: &Route, outcome: &Outcome) -> Value {
    let soak = &outcome.soak;
    let quench = match outcome.quench.transformed.given() {
        Some(quenched) => json!({
            "ms_c": quenched.ms_c,
            "m50_c": quenched.m50_c,
            "m90_c": quenched.m90_c,
            "hardened_fraction": quenched.hardened_fraction,
            "margin": margin(&quenched.margin),
            "next_slower": quenched.next_slower.as_ref().map(neighbour),
            "slowest_medium": quenched.slowest_medium.as_ref().map(neighbour),
            "thickest_mm": quenched.thickest_mm,
            "hardened_depth_mm": quenched.hardened_depth_mm,
            "places": quenched.places.iter().map(|told| json!({
                "place": told.place,
                "factor": told.margin.factor,
                "verdict": told.margin.verdict,
                "hardened_fraction": told.hardened_fraction,
                "cost": told.cost,
            })).collect::<Vec<_>>(),
            "noses_s": quenched.isothermal.products.iter().map(|p| p.nose_s).collect::<Vec<_>>(),
        }),
        None => json!({ "refused": outcome.quench.transformed.refusal() }),
    };
    let stage = |stage: &Stage| {
        json!({
            "step": stage.step,
            "fractions": stage.fractions,
            "hv": stage.hardness.map(|hardness| hardness.hv),
            "band_hrc": stage.band_hrc,
        })
    };
    let stages: Vec<Value> = outcome.stages.iter().map(stage).collect();
    let mut numbers = json!({
        "piece": route.piece,
        "carbon_wt": soak.end.carbon_wt,
        "limit_carbon_wt": soak.limit.austenite.c,
        "carbide_volume_fraction": soak.end.carbide_volume_fraction,
        "grain_astm": soak.end.grain_astm,
        "a1_c": outcome.critical.a1_c,
        "furnace": outcome.furnace,
        "curves": outcome.quench.curves.iter().map(|curve| json!({
            "place": curve.place,
            "to_540c_s": curve.time_to_c(540.0),
            "rate_at_700c_k_per_s": curve.rate_at_c(700.0),
            "end_c": curve.temperature_c.last(),
        })).collect::<Vec<_>>(),
        "quench": quench,
        "cold": outcome.cold,
        "stages": stages,
        "influences": outcome.influences,
        "meets_target_c": outcome.temper.given().map(|temper| &temper.meets_target_c),
        "cautions": outcome.cautions.len(),
    });
    if !outcome.prior.is_empty() {
        numbers["prior"] = outcome.prior.iter().map(prior).collect();
    }
    if let Some(outside) = &outcome.outside {
        numbers["outside"] = json!({
            "place": outside.place,
            "stages": outside.stages.iter().map(stage).collect::<Vec<_>>(),
            "cold": outside.cold,
        });
    }
    numbers
}

fn prior(step: &PriorOutcome) -> Value {
    json!({
        "heated": step.heated,
        "end_s": step.curve.as_ref().and_then(|curve| curve.time_s.last()),
        "state": step.state,
    })
}

fn margin(margin: &Margin) -> Value {
    json!({
        "verdict": margin.verdict,
        "factor": margin.factor,
        "seconds": margin.seconds,
        "seconds_band": margin.seconds_band,
        "nose_c": margin.nose_c,
        "arrival_s": margin.arrival_s,
        "product": margin.product,
    })
}

fn neighbour(neighbour: &Neighbour) -> Value {
    json!({
        "name": neighbour.name,
        "seconds": neighbour.seconds,
        "verdict": neighbour.verdict,
    })
}

/// Where outcomes differ from those written down, by their way through the list.
pub fn compare(written: &Value, now: &Value, way: &str, found: &mut Vec<String>) {
    match (written, now) {
        (Value::Number(a), Value::Number(b)) => {
            let (Some(a), Some(b)) = (a.as_f64(), b.as_f64()) else {
                found.push(format!("{way}: {a} and {b}"));
                return;
            };
            let scale = a.abs().max(b.abs()).max(SMALL);
            // A value that is not a number differs from all.
            if (a - b).abs() > TOLERANCE * scale || (a - b).is_nan() {
                found.push(format!("{way}: {a} and {b}"));
            }
        }
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            for (i, (a, b)) in a.iter().zip(b).enumerate() {
                compare(a, b, &format!("{way}[{i}]"), found);
            }
        }
        (Value::Object(a), Value::Object(b)) if a.len() == b.len() => {
            for (name, a) in a {
                let b = b.get(name).unwrap_or(&Value::Null);
                compare(a, b, &format!("{way}.{name}"), found);
            }
        }
        (a, b) if a == b => {}
        (a, b) => found.push(format!("{way}: {a} and {b}")),
    }
}
