//! The route strip: each step as a block with its own time.

use super::{labels, points};
use crate::app::state::{Bench, Stage};
use crate::chart::{RouteData, RouteStep, RouteStrip, route_strip};
use crate::route::{Outcome, Route};
use crate::units::{format_duration_s, format_temperature};
use leptos::prelude::*;

/// A hold with its way up and down, `[time s, temperature °C]`: drawn, not computed.
fn hold(level_c: f64, time_s: f64) -> Vec<[f64; 2]> {
    const ROOM_C: f64 = 20.0;
    let ramp_s = 0.18 * time_s;
    let eased = |from_c: f64, to_c: f64, start_s: f64| {
        (0..=12).map(move |i| {
            let part = f64::from(i) / 12.0;
            let way = 1.0 - (-4.0 * part).exp();
            [start_s + part * ramp_s, from_c + (to_c - from_c) * way]
        })
    };
    let mut curve: Vec<[f64; 2]> = eased(ROOM_C, level_c, 0.0).collect();
    curve.push([ramp_s + time_s, level_c]);
    curve.extend(eased(level_c, ROOM_C, ramp_s + time_s));
    curve
}

/// A block of the strip: its stage, title and line of settings.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Block {
    pub(crate) stage: Stage,
    pub(crate) title: String,
    pub(crate) line: String,
    points: Vec<[f64; 2]>,
    weight: f64,
}

/// The steps of the route in order.
pub(crate) fn blocks(bench: Bench, route: &Route, outcome: Option<&Outcome>) -> Vec<Block> {
    let scale = bench.scale.get();
    let held = |temperature_c: f64, time_min: f64| {
        format!(
            "{}, {}",
            format_temperature(temperature_c, scale),
            format_duration_s(60.0 * time_min)
        )
    };
    let mut soak = outcome.map_or_else(Vec::new, |o| o.heating.core.clone());
    let at_temperature_s = soak.last().map_or(0.0, |p| p[0]);
    soak.push([
        at_temperature_s + 60.0 * route.soak.time_min,
        route.soak.temperature_c,
    ]);
    let quench = outcome
        .and_then(|o| o.quench.deciding_curve())
        .map_or_else(Vec::new, |curve| {
            let until_s = curve.time_to_c(120.0).unwrap_or(30.0).clamp(2.0, 4000.0);
            points(curve)
                .into_iter()
                .take_while(|p| p[0] <= 1.4 * until_s)
                .collect()
        });
    let mut all = vec![
        Block {
            stage: Stage::Soak,
            title: "Soak".to_owned(),
            line: held(route.soak.temperature_c, route.soak.time_min),
            points: soak,
            weight: 1.25,
        },
        Block {
            stage: Stage::Quench,
            title: "Quench".to_owned(),
            line: crate::app::panels::piece::bath_words(&route.quench, scale),
            points: quench,
            weight: 1.25,
        },
    ];
    if let Some(cold) = &route.cold {
        all.push(Block {
            stage: Stage::Quench,
            title: "Cold".to_owned(),
            line: held(cold.temperature_c, cold.time_min),
            points: hold(cold.temperature_c, 60.0 * cold.time_min),
            weight: 1.0,
        });
    }
    for (i, temper) in route.tempers.iter().enumerate() {
        all.push(Block {
            stage: Stage::Temper,
            title: if route.tempers.len() > 1 {
                format!("Temper {}", i + 1)
            } else {
                "Temper".to_owned()
            },
            line: held(temper.temperature_c, temper.time_min),
            points: hold(temper.temperature_c, 60.0 * temper.time_min),
            weight: 1.0,
        });
    }
    all
}

/// The strip and the places of its blocks.
pub(crate) fn strip(bench: Bench, width: f64, height: f64) -> RouteStrip {
    let route = bench.route.get();
    let outcome = bench.outcome();
    let stage = bench.stage.get();
    let steps = blocks(bench, &route, outcome.as_deref())
        .into_iter()
        .map(|block| RouteStep {
            points: block.points,
            weight: block.weight,
            selected: block.stage == stage && block.title != "Cold",
            note: None,
        })
        .collect();
    let a1_c = outcome.map_or(727.0, |o| o.critical.a1_c);
    route_strip(&RouteData { steps, a1_c }, &labels(bench), [width, height])
}
