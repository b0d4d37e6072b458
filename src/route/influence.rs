//! What moves the final hardness: one thing changed at a time, everything else as planned.

use super::hardening::{Hardening, Tempering};
use super::outcome::{Influence, InfluenceKind, Outcome};
use super::plan::Route;
use super::run::{quenching, soak_at};
use crate::heat::{Cooled, Medium, Section, cool};

/// The changes that are tried.
const TEMPER_STEP_K: f64 = 10.0;
const SOAK_STEP_MIN: f64 = 5.0;
const THICKNESS_STEP_MM: f64 = 1.0;

/// Hardness after the last step of a route whose piece has cooled along the curves given.
fn final_hrc(route: &Route, soak_c: f64, soak_min: f64, cooled: &Cooled) -> Option<f64> {
    let soaked = soak_at(route, soak_c, soak_min).ok()?;
    let hardening = Hardening::of(route, &soaked).ok()?;
    let mut piece = hardening.quench(cooled.slowest()?).ok()?;
    if let Some(cold) = &route.cold {
        piece = hardening.cold(&piece, cold).ok()?;
    }
    if route.tempers.is_empty() {
        return piece.hardness.hrc();
    }
    let tempering = Tempering::of(route, &soaked, Some(&piece)).ok()?;
    tempering.stages().last()?.hardness?.hrc()
}

/// The influences on the final hardness, as far as the models reach.
pub(super) fn influences(
    route: &Route,
    medium: &Medium,
    cooled: &Cooled,
    outcome: &Outcome,
) -> Vec<Influence> {
    let Some(planned_hrc) = outcome
        .stages
        .last()
        .and_then(|stage| stage.hardness?.hrc())
    else {
        return Vec::new();
    };
    let (soak_c, soak_min) = (route.soak.temperature_c, route.soak.time_min);
    let mut found = Vec::new();
    let mut note = |kind, low: Option<f64>, high: Option<f64>| {
        if low.is_some() || high.is_some() {
            found.push(Influence {
                kind,
                less_hrc: low.map(|hrc| hrc - planned_hrc),
                more_hrc: high.map(|hrc| hrc - planned_hrc),
            });
        }
    };
    if !route.tempers.is_empty() {
        let shifted = |shift_k: f64| {
            let mut route = route.clone();
            for temper in &mut route.tempers {
                temper.temperature_c += shift_k;
            }
            final_hrc(&route, soak_c, soak_min, cooled)
        };
        note(
            InfluenceKind::TemperTemperature {
                step_k: TEMPER_STEP_K,
            },
            shifted(-TEMPER_STEP_K),
            shifted(TEMPER_STEP_K),
        );
    }
    if route.cold.is_some() {
        let without = Route {
            cold: None,
            ..route.clone()
        };
        note(
            InfluenceKind::NoCold,
            final_hrc(&without, soak_c, soak_min, cooled),
            None,
        );
    }
    let thicker = Route {
        section: thicker(&route.section),
        ..route.clone()
    };
    if let Ok(cooled) = cool(&quenching(&thicker, medium)) {
        note(
            InfluenceKind::Thickness {
                step_mm: THICKNESS_STEP_MM,
            },
            None,
            final_hrc(&thicker, soak_c, soak_min, &cooled),
        );
    }
    if route.furnace_band_k > 0.0 {
        note(
            InfluenceKind::Furnace {
                step_k: route.furnace_band_k,
            },
            final_hrc(route, soak_c - route.furnace_band_k, soak_min, cooled),
            final_hrc(route, soak_c + route.furnace_band_k, soak_min, cooled),
        );
    }
    note(
        InfluenceKind::SoakTime {
            step_min: SOAK_STEP_MIN,
        },
        final_hrc(
            route,
            soak_c,
            (soak_min - SOAK_STEP_MIN).max(0.5 * soak_min),
            cooled,
        ),
        final_hrc(route, soak_c, soak_min + SOAK_STEP_MIN, cooled),
    );
    found
}

/// The section one step thicker.
fn thicker(section: &Section) -> Section {
    match *section {
        Section::Plate { thickness_mm } => Section::Plate {
            thickness_mm: thickness_mm + THICKNESS_STEP_MM,
        },
        Section::Round { diameter_mm } => Section::Round {
            diameter_mm: diameter_mm + THICKNESS_STEP_MM,
        },
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
        } => Section::Blade {
            edge_mm,
            spine_mm: spine_mm + THICKNESS_STEP_MM,
            height_mm,
        },
    }
}
