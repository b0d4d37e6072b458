//! From the outcome to the plain data that charts take. No geometry and no physics here.

use super::state::{Bench, Stage};
use crate::chart::{
    Constituent, CoolingTrace, HistoryPoint, InfluenceRow, Labels, LadderRow, Margin, Outline,
    ProductCurves, QuenchData, Role, RouteData, RouteStep, RouteStrip, Scene, SectionData,
    SoakHistoryData, SoakMapData, TemperData, TemperPoint, Verdict, glow, hardness_ladder,
    influence_chart, oxide, quench_chart, route_strip, section_view, soak_history, soak_map,
    temper_chart,
};
use crate::heat::{CoolingCurve, Place, Section};
use crate::route::{self, InfluenceKind, Outcome, Route, Step};
use crate::transform::{Fractions, Product};
use crate::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_fixed, format_length, format_percent,
    format_temperature, format_temperature_band,
};
use leptos::prelude::*;

/// A colour as CSS.
fn css([r, g, b]: [u8; 3]) -> String {
    format!("rgb({r} {g} {b})")
}

/// Displayed colour of steel in the dim shop.
pub(crate) fn glow_css(temperature_c: f64) -> String {
    css(glow::glow_srgb(temperature_c))
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

const fn constituent(product: Product) -> Constituent {
    match product {
        Product::Ferrite => Constituent::Ferrite,
        Product::Pearlite => Constituent::Pearlite,
        Product::Bainite => Constituent::Bainite,
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

/// The phase map with the soak on it. It needs the map alone: the soak handle can be dragged even
/// where the rest of the route has no outcome.
pub(crate) fn soak_map_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let map = bench.map.get();
    let map = map.given()?;
    let labels = labels(bench);
    let route = bench.route.get();
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
    let (mut a3, mut acm) = (map.a3.clone(), map.acm.clone());
    if let Some(&[carbon_wt, c]) = acm.first()
        && c > map.a1_upper_c
    {
        // High alloy: ferrite and carbide both go well above A1. Down from there the two fields
        // beside austenite meet in the three-phase field, drawn as one line.
        a3.push([carbon_wt, map.a1_upper_c]);
        acm.insert(0, [carbon_wt, map.a1_upper_c]);
    }
    Some(soak_map(
        &SoakMapData {
            a3,
            acm,
            a1_c: map.a1_c,
            a1_upper_c: map.a1_upper_c,
            bulk_carbon_wt: route.composition.c,
            soak_c,
            wander_k: route.furnace_band_k,
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
    let point = |p: &crate::soak::SoakPoint| HistoryPoint {
        time_s: p.time_s,
        carbon_wt: p.carbon_wt,
        carbide_volume_fraction: p.carbide_volume_fraction,
        grain_astm: p.grain_astm,
    };
    let history: Vec<_> = outcome.soak.history.iter().map(point).collect();
    let end_s = history.last()?.time_s;
    Some(soak_history(
        &SoakHistoryData {
            history,
            now: point(&outcome.soak.end),
            end_s,
            soak_c: bench.route.with(|r| r.soak.temperature_c),
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
        (Place::Surface | Place::SpineSurface, false) => (Role::Surface, "surface"),
        (Place::Edge, false) => (Role::Edge, "edge"),
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
            name: route::inside_a_sentence(&next.title),
            points: points(&next.curve),
        });
    }
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
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
        } => (
            Outline::Blade {
                edge_mm,
                spine_mm,
                height_mm,
            },
            height_mm,
        ),
    };
    let certain_mm =
        transformed
            .hardened_depth_mm
            .unwrap_or(if is_through { whole_mm } else { 0.0 });
    let rest = &transformed.fractions;
    let (core, words) = [
        (Constituent::Pearlite, rest.pearlite, "pearlite"),
        (Constituent::Bainite, rest.bainite, "bainite"),
        (Constituent::Ferrite, rest.ferrite, "ferrite"),
    ]
    .into_iter()
    .max_by(|a, b| a.1.total_cmp(&b.1))
    .map_or((Constituent::Pearlite, ""), |(c, _, w)| (c, w));
    let note = if is_through {
        String::new()
    } else {
        format!(
            "the core holds {} {words}",
            format_percent(1.0 - transformed.hardened_fraction)
        )
    };
    Some(section_view(
        &SectionData {
            outline,
            certain_mm,
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

/// What else would still harden this piece, in words.
pub(crate) fn still_does(bench: Bench) -> Option<String> {
    let outcome = bench.outcome()?;
    let transformed = outcome.quench.transformed.given()?;
    let medium = transformed.slowest_medium.as_ref().map_or_else(
        || "No quenchant of the list hardens it through.".to_owned(),
        |slowest| {
            format!(
                "Slowest quenchant that still hardens it: {}.",
                route::inside_a_sentence(&slowest.title)
            )
        },
    );
    let thickest = transformed.thickest_mm.map_or_else(String::new, |mm| {
        let shape = match bench.route.with(|r| r.section) {
            Section::Round { .. } => "round",
            Section::Plate { .. } | Section::Blade { .. } => "flat section",
        };
        format!(
            " Thickest {shape} that this quench hardens: {}.",
            format_length(mm, bench.length.get())
        )
    });
    Some(medium + &thickest)
}

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

/// Why there is no temper chart.
pub(crate) fn no_temper(bench: Bench) -> String {
    if bench.route.with(|r| r.tempers.is_empty()) {
        return "No temper is planned. Set how many, and the chart starts from there.".to_owned();
    }
    bench
        .outcome()
        .and_then(|outcome| outcome.temper.refusal().map(str::to_owned))
        .unwrap_or_else(|| "This temper lies outside what the model knows.".to_owned())
}

/// Why there is no phase map.
pub(crate) fn no_map(bench: Bench) -> String {
    bench
        .map
        .with(|map| map.refusal().map(str::to_owned))
        .unwrap_or_default()
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
                    format!("temper {}", format_temperature_band(step_k, scale))
                }
                InfluenceKind::NoCold => "cold bath left out".to_owned(),
                InfluenceKind::Thickness { step_mm } => {
                    format!("section +{}", format_length(step_mm, unit))
                }
                InfluenceKind::Furnace { step_k } => {
                    format!("furnace {}", format_temperature_band(step_k, scale))
                }
                InfluenceKind::SoakTime { step_min } => {
                    format!("soak ±{}", format_duration_s(60.0 * step_min))
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
                    Step::Quench => "after quench".to_owned(),
                    Step::Cold => "after cold".to_owned(),
                    Step::Temper(n) => format!("after temper {n}"),
                },
                hrc: stage.hardness?.hrc()?,
                band_hrc: stage.band_hrc,
            })
        })
        .collect();
    (!rows.is_empty())
        .then(|| hardness_ladder(&rows, Some([target.least_hrc, target.most_hrc]), width))
}

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
    let mut soak = hold(route.soak.temperature_c, 60.0 * route.soak.time_min);
    // The soak ends in the quench, not in a slow cool.
    soak.truncate(14);
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
            line: super::panels::piece::medium_words(&route.quench.medium),
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

/// The answer of a stage for its tab on the phone.
pub(crate) fn answer(bench: Bench, stage: Stage) -> String {
    let scale = bench.scale.get();
    match stage {
        Stage::Soak => bench
            .route
            .with(|r| format_temperature(r.soak.temperature_c, scale)),
        Stage::Quench => bench
            .outcome()
            .and_then(|o| {
                let seconds = o.quench.transformed.given()?.margin.seconds;
                Some(if seconds >= 0.0 {
                    format!("{} to spare", route::margin_words(seconds))
                } else {
                    format!("misses by {}", route::margin_words(seconds))
                })
            })
            .unwrap_or_else(|| "no number".to_owned()),
        Stage::Temper => bench.route.with(|r| {
            r.tempers.first().map_or_else(
                || "none".to_owned(),
                |t| format_temperature(t.temperature_c, scale),
            )
        }),
    }
}

/// Four figures for the phone's dock: term, figure, unit.
pub(crate) fn figures(bench: Bench) -> Vec<(&'static str, String, String)> {
    let Some(outcome) = bench.outcome() else {
        return Vec::new();
    };
    let none = || ("–".to_owned(), String::new());
    let margin = outcome.quench.transformed.given().map_or_else(none, |t| {
        let words = route::margin_words(t.margin.seconds);
        let sign = if t.margin.seconds < 0.0 {
            "\u{2212}"
        } else {
            ""
        };
        let (figure, unit) = words.split_once('\u{a0}').unwrap_or((&words, ""));
        (format!("{sign}{figure}"), unit.to_owned())
    });
    let last = outcome.stages.last();
    let austenite = last
        .and_then(|stage| stage.fractions)
        .map_or_else(none, |f| {
            let words = format_percent(f.austenite);
            let (figure, unit) = words.split_once('\u{a0}').unwrap_or((&words, ""));
            (figure.to_owned(), unit.to_owned())
        });
    let hardness = last
        .and_then(|stage| Some((stage.hardness?.hrc()?, stage.band_hrc)))
        .map_or_else(none, |(hrc, band)| {
            (format_fixed(hrc, 1), format!("±{}", format_fixed(band, 1)))
        });
    vec![
        (
            "dissolved",
            format_fixed(outcome.soak.end.carbon_wt, 2),
            "%\u{a0}C".to_owned(),
        ),
        ("margin", margin.0, margin.1),
        ("austenite", austenite.0, austenite.1),
        ("hardness", hardness.0, hardness.1),
    ]
}
