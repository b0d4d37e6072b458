//! From the outcome to the plain data that charts take. No geometry and no physics here.

mod hardenability;
mod own;
mod phases;
mod replay;
mod strip;
mod words;

pub(crate) use hardenability::{continuous_scene, end_quench_scene, short_hardness};
pub(crate) use own::{probe_scene, transfer_scene};
pub(crate) use phases::{own_fields, soak_phases};
use recalesce_texts::page as texts;
pub(crate) use replay::replay_scene;
pub(crate) use strip::{blocks, strip};
pub(crate) use words::{answer, figures, no_map, no_temper, still_does};

use super::state::Bench;
use leptos::prelude::*;
use recalesce::chart::{
    BathChange, Constituent, CoolingTrace, HistoryPoint, InfluenceRow, Labels, LadderRow, Margin,
    Outline, ProductCurves, QuenchData, Role, Scene, SectionData, SoakHistoryData, SoakMapData,
    TemperData, TemperPoint, Verdict, glow, hardness_ladder, influence_chart, oxide, quench_chart,
    section_view, soak_history, soak_map, temper_chart,
};
use recalesce::heat::{CoolingCurve, Grind, Place, Section};
use recalesce::phases::PhaseMap;
use recalesce::route::{self, InfluenceKind, Step};
use recalesce::transform::{Forming, Fractions};
use recalesce::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_length, format_percent,
    format_temperature_band,
};

/// A colour as CSS.
fn css([r, g, b]: [u8; 3]) -> String {
    format!("rgb({r} {g} {b})")
}

/// Displayed colour of steel in the dim shop.
pub(crate) fn glow_css(temperature_c: f64) -> String {
    css(glow::glow_srgb(temperature_c))
}

/// Whether steel glows in the dim shop.
pub(crate) fn glows(temperature_c: f64) -> bool {
    glow::glow(temperature_c).is_some()
}

/// Oxide colour of bright steel after a temper.
pub(crate) fn oxide_css(temperature_c: f64) -> String {
    oxide::oxide_srgb(temperature_c).map_or_else(|| "var(--steel)".to_owned(), css)
}

/// How the user wants quantities on charts.
fn labels(bench: Bench) -> Labels {
    let mut labels = Labels::METRIC;
    if bench.scale.get() == TemperatureScale::Fahrenheit {
        labels.temperature = |c| TemperatureScale::Fahrenheit.of_celsius(c);
        labels.temperature_unit = "°F";
    }
    if bench.length.get() == LengthUnit::Inch {
        labels.length = |mm| LengthUnit::Inch.of_mm(mm);
        labels.length_unit = "in";
        labels.length_decimals = 3;
    }
    labels
}

const fn constituent(forming: Forming) -> Constituent {
    match forming {
        Forming::GrainBoundaryCarbide => Constituent::Carbide,
        Forming::Ferrite => Constituent::Ferrite,
        Forming::Pearlite => Constituent::Pearlite,
        Forming::Bainite => Constituent::Bainite,
    }
}

const fn verdict(verdict: route::Verdict) -> Verdict {
    match verdict {
        route::Verdict::Holds => Verdict::Holds,
        route::Verdict::Narrow => Verdict::Narrow,
        route::Verdict::Misses => Verdict::Misses,
    }
}

/// Constituents in the order of the bars.
pub(crate) fn amounts(fractions: &Fractions) -> Vec<(Constituent, f64)> {
    vec![
        (Constituent::Martensite, fractions.martensite),
        (Constituent::Austenite, fractions.austenite),
        (Constituent::Carbide, fractions.carbide),
        (Constituent::Pearlite, fractions.pearlite),
        (Constituent::Bainite, fractions.bainite),
        (Constituent::Ferrite, fractions.ferrite),
    ]
}

/// Where the axis of the map has A1 until that of the steel is known, °C.
const USUAL_A1_C: f64 = 730.0;

/// The phase map with the soak on it, none where this steel has no map. It needs neither the map,
/// which may still be coming, nor an outcome: the soak handle can be dragged before there are any.
pub(crate) fn soak_map_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let mapped = bench.mapped.get();
    if mapped.refusal.is_some() {
        return None;
    }
    let map = mapped.map.as_deref();
    let labels = labels(bench);
    let route = bench.real.get();
    let outcome = bench.outcome();
    let soak = outcome.as_ref().map(|o| &o.soak);
    let dissolved_wt = soak.map_or(0.0, |s| s.end.carbon_wt);
    let possible_wt = soak.map_or(dissolved_wt, |s| s.limit.austenite.c);
    let soak_c = route.soak.temperature_c;
    let path = soak.map_or_else(Vec::new, |s| {
        let reached = s.history.iter().take_while(|p| p.time_s <= s.end.time_s);
        let mut path: Vec<[f64; 2]> = reached.map(|p| [p.carbon_wt, soak_c]).collect();
        path.push([s.end.carbon_wt, soak_c]);
        path
    });
    let line =
        |of: fn(&PhaseMap) -> &Vec<[f64; 2]>| map.map_or_else(Vec::new, |map| of(map).clone());
    let of_outcome = outcome.as_ref().map(|o| o.critical.a1_c);
    let a1_c = map.map(|map| map.a1_c).or(of_outcome).unwrap_or(USUAL_A1_C);
    Some(soak_map(
        &SoakMapData {
            fields: map.map_or_else(Vec::new, |map| {
                map.fields.iter().map(phases::map_field).collect()
            }),
            boundaries: map.map_or_else(Vec::new, |map| {
                map.boundaries.iter().map(|b| b.points.clone()).collect()
            }),
            range_c: PhaseMap::RANGE_C,
            a3: line(|map| &map.a3),
            acm: line(|map| &map.acm),
            a1_lower: line(|map| &map.a1_lower),
            a1_upper: line(|map| &map.a1_upper),
            a1_c,
            bulk_carbon_wt: route.composition.c,
            soak_c,
            wander_k: route.soak_band_k(),
            dissolved_wt,
            possible_wt,
            path,
        },
        &labels,
        [width, height],
    ))
}

/// What happens while it soaks.
pub(crate) fn soak_history_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let point = |p: &recalesce::soak::SoakPoint| HistoryPoint {
        time_s: p.time_s,
        carbon_wt: p.carbon_wt,
        carbide_volume_fraction: p.carbide_volume_fraction,
        grain_astm: p.grain_astm,
    };
    let history: Vec<_> = outcome.soak.history.iter().map(point).collect();
    let end_s = history.last()?.time_s;
    let heating = &outcome.heating;
    let to_soak = |&[time_s, core_c]: &[f64; 2]| [time_s - heating.core_at_temperature_s, core_c];
    Some(soak_history(
        &SoakHistoryData {
            history,
            now: point(&outcome.soak.end),
            end_s,
            soak_c: bench.real.with(|r| r.soak.temperature_c),
            heating: heating.core.iter().map(to_soak).collect(),
        },
        &labels(bench),
        [width, height],
    ))
}

fn points(curve: &CoolingCurve) -> Vec<[f64; 2]> {
    curve
        .time_s
        .iter()
        .zip(&curve.temperature_c)
        .map(|(&t, &c)| [t, c])
        .collect()
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
    let later = bench.route.with(|r| r.quench.then.clone());
    let changes = quench
        .changes_s
        .iter()
        .zip(&later)
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
    let (soak_c, cold_c) = bench
        .route
        .with(|r| (r.soak.temperature_c, r.cold.map(|c| c.temperature_c)));
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
    let section = bench.route.with(|r| r.section);
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
    let (core, words) = [
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
    .map_or((Constituent::Pearlite, ""), |(c, _, w)| (c, w));
    let note = if is_through {
        String::new()
    } else {
        texts::charts::core_holds(&format_percent(1.0 - transformed.hardened_fraction), words)
    };
    Some(section_view(
        &SectionData {
            outline,
            hardened_mm,
            is_certain: transformed.margin.verdict == route::Verdict::Holds,
            core,
            note,
        },
        &labels(bench),
        [width, height],
    ))
}

/// The temper chart reaches to at least this temperature, °C, and so far above the temper, K.
const LEAST_TEMPER_END_C: f64 = 400.0;
const ROOM_ABOVE_TEMPER_K: f64 = 110.0;

/// Hardness against tempering temperature.
pub(crate) fn temper_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let temper = outcome.temper.given()?;
    let (target, first_c) = bench
        .route
        .with(|r| (r.target, r.tempers.first().map(|t| t.temperature_c)));
    let temper_c = first_c?;
    let hrc = temper.hrc_at(temper_c)?;
    let shown_to_c = (temper_c + ROOM_ABOVE_TEMPER_K).max(LEAST_TEMPER_END_C);
    Some(temper_chart(
        &TemperData {
            curve: temper
                .curve
                .iter()
                .filter(|p| p.temperature_c <= shown_to_c)
                .map(|p| TemperPoint {
                    temperature_c: p.temperature_c,
                    hrc: p.hrc,
                    band_hrc: p.band_hrc,
                })
                .collect(),
            target_hrc: Some([target.least_hrc, target.most_hrc]),
            embrittling_c: Some(temper.embrittling_c),
            temper_c,
            hrc,
        },
        &labels(bench),
        [width, height],
    ))
}

/// What moves the final hardness.
pub(crate) fn influences_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let (scale, unit) = (bench.scale.get(), bench.length.get());
    let rows: Vec<InfluenceRow> = outcome
        .influences
        .iter()
        .map(|influence| InfluenceRow {
            label: match influence.kind {
                InfluenceKind::TemperTemperature { step_k } => {
                    texts::charts::temper_by(&format_temperature_band(step_k, scale))
                }
                InfluenceKind::NoCold => texts::charts::COLD_LEFT_OUT.to_owned(),
                InfluenceKind::Thickness { step_mm } => {
                    texts::charts::section_by(&format_length(step_mm, unit))
                }
                InfluenceKind::Furnace { step_k } => {
                    texts::charts::furnace_by(&format_temperature_band(step_k, scale))
                }
                InfluenceKind::SoakTime { step_min } => {
                    texts::charts::soak_by(&format_duration_s(60.0 * step_min))
                }
            },
            less_hrc: influence.less_hrc,
            more_hrc: influence.more_hrc,
        })
        .collect();
    (!rows.is_empty()).then(|| influence_chart(&rows, [width, height]))
}

/// Hardness after each step.
pub(crate) fn ladder_scene(bench: Bench, width: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let target = bench.route.with(|r| r.target);
    let rows: Vec<LadderRow> = outcome
        .stages
        .iter()
        .filter_map(|stage| {
            Some(LadderRow {
                label: match stage.step {
                    Step::Soak => return None,
                    Step::Quench => texts::charts::AFTER_QUENCH.to_owned(),
                    Step::Snap => texts::charts::AFTER_SNAP.to_owned(),
                    Step::Cold => texts::charts::AFTER_COLD.to_owned(),
                    Step::Temper(n) => texts::charts::after_temper(n),
                },
                hrc: stage.hardness?.hrc()?,
                band_hrc: stage.band_hrc,
            })
        })
        .collect();
    (!rows.is_empty())
        .then(|| hardness_ladder(&rows, Some([target.least_hrc, target.most_hrc]), width))
}
