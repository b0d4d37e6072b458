//! The quench: cooling curves over transformation curves, and where the section hardens.

use super::{constituent, labels, points};
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::chart::{
    BathChange, Constituent, CoolingTrace, Margin, Outline, ProductCurves, QuenchData, Role, Scene,
    SectionData, Verdict, quench_chart, section_view,
};
use recalesce::heat::{CoolingCurve, Grind, Place, Section};
use recalesce::route;
use recalesce::units::format_percent;
use recalesce_texts::page as texts;

const fn verdict(verdict: route::Verdict) -> Verdict {
    match verdict {
        route::Verdict::Holds => Verdict::Holds,
        route::Verdict::Narrow => Verdict::Narrow,
        route::Verdict::Misses => Verdict::Misses,
    }
}

/// The name of a place and its part on the chart; places between edge and spine are left out.
fn trace_of(curve: &CoolingCurve, is_deciding: bool) -> Option<CoolingTrace> {
    let (role, name) = match (curve.place, is_deciding) {
        (place, true) => (Role::Main, route::place_name(place)),
        (Place::Surface | Place::SpineSurface, false) => (Role::Surface, texts::charts::SURFACE),
        (Place::Edge, false) => (Role::Edge, texts::charts::CUTTING_EDGE),
        _ => return None,
    };
    Some(CoolingTrace {
        role,
        name: name.to_owned(),
        points: points(curve),
    })
}

/// Cooling curves over transformation curves.
pub(crate) fn quench_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let quench = &outcome.quench;
    let transformed = quench.transformed.given();
    let mut cooling: Vec<CoolingTrace> = quench
        .curves
        .iter()
        .enumerate()
        .filter_map(|(i, curve)| trace_of(curve, i == quench.deciding))
        .collect();
    if let Some(next) = transformed.and_then(|t| t.next_slower.as_ref()) {
        cooling.push(CoolingTrace {
            role: Role::Slower,
            name: route::inside_a_sentence(&next.title.words(bench.scale.get())),
            points: points(&next.curve),
        });
    }
    let shown = bench.shown();
    let changes = quench
        .changes_s
        .iter()
        .zip(&shown.quench.then)
        .filter_map(|(&time_s, next)| {
            let title = next.medium.resolve().ok()?.title.words(bench.scale.get());
            Some(BathChange {
                time_s,
                temperature_c: quench.deciding_curve()?.temperature_at_s(time_s)?,
                name: texts::charts::into_bath(&route::inside_a_sentence(&title)),
            })
        })
        .collect();
    let products = transformed.map_or_else(Vec::new, |t| {
        // The chart's time runs from the furnace, that of the isothermal curves from A1.
        let from_a1 = |curve: &[[f64; 2]]| {
            curve
                .iter()
                .map(|&[t_s, c]| [t_s + t.margin.clock_s, c])
                .collect::<Vec<_>>()
        };
        t.isothermal
            .products
            .iter()
            .map(|curves| ProductCurves {
                product: constituent(curves.product),
                start: from_a1(&curves.start),
                finish: from_a1(&curves.finish),
                nose: [curves.nose_s + t.margin.clock_s, curves.nose_c],
            })
            .collect()
    });
    let margin = transformed.map(|t| Margin {
        nose_c: t.margin.nose_c,
        nose_s: t.margin.arrival_s + t.margin.seconds,
        arrival_s: t.margin.arrival_s,
        verdict: verdict(t.margin.verdict),
    });
    let soak_c = shown.soak.temperature_c;
    let cold_c = shown.cold.map(|cold| cold.temperature_c);
    Some(quench_chart(
        &QuenchData {
            products,
            cooling,
            changes,
            ms_c: transformed.map(|t| t.ms_c),
            m50_c: transformed.map(|t| t.m50_c),
            m90_c: transformed.map(|t| t.m90_c),
            a1_c: outcome.critical.a1_c,
            soak_c,
            cold_c,
            margin,
        },
        &labels(bench),
        [width, height],
    ))
}

/// Where the section hardens.
pub(crate) fn section_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let transformed = outcome.quench.transformed.given()?;
    let section = bench.shown().section;
    let is_through = transformed.hardened_fraction >= route::HARDENED;
    let (outline, whole_mm) = match section {
        Section::Plate { thickness_mm } => (Outline::Plate { thickness_mm }, 0.5 * thickness_mm),
        Section::Round { diameter_mm } => (Outline::Round { diameter_mm }, 0.5 * diameter_mm),
        Section::Square { side_mm } => (Outline::Square { side_mm }, 0.5 * side_mm),
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            grind,
        } => (
            Outline::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                is_convex: grind == Grind::Convex,
            },
            height_mm,
        ),
    };
    let hardened_mm =
        transformed
            .hardened_depth_mm
            .unwrap_or(if is_through { whole_mm } else { 0.0 });
    let rest = &transformed.fractions;
    let (core, share, words) = [
        (
            Constituent::Pearlite,
            rest.pearlite,
            texts::charts::PEARLITE,
        ),
        (Constituent::Bainite, rest.bainite, texts::charts::BAINITE),
        (Constituent::Ferrite, rest.ferrite, texts::charts::FERRITE),
    ]
    .into_iter()
    .max_by(|a, b| a.1.total_cmp(&b.1))
    .unwrap_or((Constituent::Pearlite, 0.0, ""));
    let note = if is_through {
        String::new()
    } else {
        texts::charts::core_holds(&format_percent(share), words)
    };
    Some(section_view(
        &SectionData {
            outline,
            hardened_mm,
            is_certain: transformed.margin.verdict == route::Verdict::Holds,
            core,
            core_hardened: transformed.hardened_fraction,
            note,
        },
        &labels(bench),
        [width, height],
    ))
}
