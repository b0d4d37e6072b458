//! The route strip: each step as a block with its own time.

use super::{labels, points};
use crate::state::{Bench, Stage};
use leptos::prelude::*;
use recalesce::chart::{RouteData, RouteStep, RouteStrip, route_strip};
use recalesce::heat::CoolingCurve;
use recalesce::route::{
    Outcome, PriorOutcome, PriorStep, Route, SlowCooling, StepRef, Work, prior_line,
};
use recalesce::units::{TemperatureScale, format_duration_s, format_temperature};
use recalesce_texts::page as texts;

const ROOM_C: f64 = 20.0;
/// Points of a way up or down that is drawn.
const RAMP_POINTS: usize = 13;
/// A cooling is shown to here, °C.
const SHOWN_TO_C: f64 = 120.0;

/// A hold with its way up and down, `[time s, temperature °C]`: drawn, not computed.
fn hold(level_c: f64, time_s: f64) -> Vec<[f64; 2]> {
    let ramp_s = 0.18 * time_s;
    let eased = |from_c: f64, to_c: f64, start_s: f64| {
        (0..RAMP_POINTS).map(move |i| {
            let part = i as f64 / (RAMP_POINTS - 1) as f64;
            let way = 1.0 - (-4.0 * part).exp();
            [start_s + part * ramp_s, from_c + (to_c - from_c) * way]
        })
    };
    let mut curve: Vec<[f64; 2]> = eased(ROOM_C, level_c, 0.0).collect();
    curve.push([ramp_s + time_s, level_c]);
    curve.extend(eased(level_c, ROOM_C, ramp_s + time_s));
    curve
}

/// A step before hardening, `[time s, temperature °C]`: up and held as drawn, down as computed; and when it
/// glows back there, s.
fn prior_points(step: &PriorStep, outcome: Option<&PriorOutcome>) -> (Vec<[f64; 2]>, Option<f64>) {
    let time_s = 60.0 * step.time_min.max(1.0);
    let Some(curve) = outcome.and_then(|outcome| outcome.curve.as_ref()) else {
        return (hold(step.temperature_c, time_s), None);
    };
    let from_c = curve.temperature_c.first().copied().unwrap_or(0.0);
    let heats = match step.work {
        Work::Forge { heats, .. } => usize::from(heats.clamp(1, 4)),
        _ => 1,
    };
    let each_s = time_s / heats as f64;
    let mut all: Vec<[f64; 2]> = Vec::new();
    for _ in 0..heats {
        let begun_s = all.last().map_or(0.0, |p| p[0]);
        let up = hold(step.temperature_c, each_s);
        let held = up.len().saturating_sub(RAMP_POINTS);
        let start_c = all.last().map_or(ROOM_C, |p| p[1]);
        all.extend(up.iter().take(held).map(|p| {
            let way = (p[1] - ROOM_C) / (step.temperature_c - ROOM_C);
            [
                begun_s + p[0],
                start_c + way * (step.temperature_c - start_c),
            ]
        }));
        if from_c < step.temperature_c {
            let worked_s = all.last().map_or(0.0, |p| p[0]) + 0.6 * each_s;
            all.push([worked_s, from_c]);
        }
    }
    let end_s = all.last().map_or(0.0, |p| p[0]);
    let cold_s = curve.time_to_c(SHOWN_TO_C).unwrap_or(f64::INFINITY);
    let factor = match step.cooling {
        // A day in the furnace is drawn as long as the rest.
        SlowCooling::Furnace { .. } => (2.0 * time_s / cold_s).min(1.0),
        SlowCooling::Medium { .. } => 1.0,
    };
    let drawn_s = |time_s: f64| end_s + factor * time_s;
    let cooling = points(curve).into_iter().take_while(|p| p[0] <= cold_s);
    all.extend(cooling.map(|p| [drawn_s(p[0]), p[1]]));
    (all, glow_back_s(curve).map(drawn_s))
}

/// Where a curve glows back, s: it rises while it cools.
fn glow_back_s(curve: &CoolingCurve) -> Option<f64> {
    let points = curve.time_s.iter().zip(&curve.temperature_c);
    let rising = points
        .clone()
        .zip(points.skip(1))
        .find(|((_, before_c), (_, after_c))| *after_c > *before_c);
    rising.map(|((time_s, _), _)| *time_s)
}

/// A block of the strip: its step, the stage that shows its settings, title and line of settings.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Block {
    pub(crate) step: StepRef,
    pub(crate) stage: Stage,
    pub(crate) title: String,
    pub(crate) line: String,
    points: Vec<[f64; 2]>,
    weight: f64,
    note: Option<(f64, String)>,
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
    // Held as the curve before it was heated up: that may be of an earlier route.
    let held_at = bench.shown().soak;
    soak.push([
        at_temperature_s + 60.0 * held_at.time_min,
        held_at.temperature_c,
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
    let mut all = prior_blocks(route, outcome, scale);
    all.extend([
        Block {
            step: StepRef::Soak,
            note: None,
            stage: Stage::Soak,
            title: texts::strip::SOAK.to_owned(),
            line: held(route.soak.temperature_c, route.soak.time_min),
            points: soak,
            weight: 1.25,
        },
        Block {
            step: StepRef::Quench,
            note: None,
            stage: Stage::Quench,
            title: texts::strip::QUENCH.to_owned(),
            line: crate::panels::piece::bath_words(&route.quench, scale),
            points: quench,
            weight: 1.25,
        },
    ]);
    if let Some(cold) = &route.cold {
        all.extend(cold.snap.map(|snap| Block {
            step: StepRef::Snap,
            note: None,
            stage: Stage::Quench,
            title: texts::quench::SNAP_TEMPER.to_owned(),
            line: held(snap.temperature_c, snap.time_min),
            points: hold(snap.temperature_c, 60.0 * snap.time_min),
            weight: 1.0,
        }));
        all.push(Block {
            step: StepRef::Cold,
            note: None,
            stage: Stage::Quench,
            title: texts::strip::COLD.to_owned(),
            line: held(cold.temperature_c, cold.time_min),
            points: hold(cold.temperature_c, 60.0 * cold.time_min),
            weight: 1.0,
        });
    }
    for (i, temper) in route.tempers.iter().enumerate() {
        all.push(Block {
            step: StepRef::Temper(i),
            note: None,
            stage: Stage::Temper,
            title: if route.tempers.len() > 1 {
                texts::strip::temper(i + 1)
            } else {
                texts::strip::TEMPER.to_owned()
            },
            line: held(temper.temperature_c, temper.time_min),
            points: hold(temper.temperature_c, 60.0 * temper.time_min),
            weight: 1.0,
        });
    }
    all
}

fn prior_blocks(route: &Route, outcome: Option<&Outcome>, scale: TemperatureScale) -> Vec<Block> {
    let mut is_noted = false;
    let steps = route.prior.iter().enumerate();
    steps
        .map(|(i, step)| {
            let done = outcome.and_then(|outcome| outcome.prior.get(i));
            let (points, glow_back_s) = prior_points(step, done);
            let note = glow_back_s
                .filter(|_| !std::mem::replace(&mut is_noted, true))
                .map(|time_s| (time_s, texts::strip::GLOW_BACK.to_owned()));
            Block {
                step: StepRef::Prior(i),
                stage: Stage::Prior(i),
                title: strip_title(step.work).to_owned(),
                line: prior_line(step, scale),
                points,
                weight: 1.0,
                note,
            }
        })
        .collect()
}

/// The name of a step in the little room of its block.
const fn strip_title(work: Work) -> &'static str {
    match work {
        Work::SlowAnneal | Work::SubcriticalAnneal => texts::strip::ANNEAL,
        Work::StressRelief => texts::strip::RELIEVE,
        other => other.title(),
    }
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
            selected: block.stage == stage && !matches!(block.step, StepRef::Snap | StepRef::Cold),
            note: block.note,
        })
        .collect();
    let a1_c = outcome.map_or(727.0, |o| o.critical.a1_c);
    route_strip(&RouteData { steps, a1_c }, &labels(bench), [width, height])
}
