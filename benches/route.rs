//! One recompute of the page: the whole outcome of a route, and what each part of it takes.
//! Figures are in `benches/README.md`.

#![allow(
    missing_docs,
    reason = "the benchmark macros write functions without them"
)]

use criterion::{Criterion, criterion_group, criterion_main};
use recalesce::heat::{MediumChoice, Quenching, Section, cool, medium};
use recalesce::phases::phase_map;
use recalesce::route::{
    Deviation, Prepared, Route, TrialSteel, bath_to_pass, explain, quench_table, run, sentences,
    trial,
};
use recalesce::soak::soak;
use recalesce::transform::{Austenite, Kinetics};
use recalesce::units::TemperatureScale;
use std::hint::black_box;

fn plate(grade: &str, thickness_mm: f64, quenchant: &str) -> Route {
    let mut route = Route::example();
    if let Ok(grade) = recalesce::steel::find(grade) {
        route.take_grade(grade);
    }
    route.section = Section::Plate { thickness_mm };
    route.quench.medium = MediumChoice::Named(quenchant.to_owned());
    route
}

fn whole_routes(c: &mut Criterion) {
    let mut group = c.benchmark_group("route");
    let round = Route {
        section: Section::Round { diameter_mm: 12.0 },
        ..plate("4140", 3.0, "oil_fast")
    };
    for (name, route) in [
        ("blade", Route::example()),
        ("plate", plate("52100", 3.0, "oil_medium")),
        ("plate, lean", plate("1095", 3.0, "oil_fast")),
        ("round", round),
        ("plate, air", plate("O1", 6.0, "air_still")),
    ] {
        group.bench_function(name, |b| b.iter(|| run(black_box(&route))));
        if let Ok(prepared) = Prepared::of(&route) {
            group.bench_function(format!("{name}, steel prepared"), |b| {
                b.iter(|| prepared.run(black_box(&route)));
            });
        }
        let planned = Deviation::default();
        group.bench_function(format!("{name}, trial"), |b| {
            b.iter(|| trial(black_box(&route), &planned));
        });
        if let Ok(steel) = TrialSteel::of(&route) {
            group.bench_function(format!("{name}, trial, steel prepared"), |b| {
                b.iter(|| steel.trial(black_box(&route), &planned));
            });
        }
    }
    let route = Route::example();
    if let Ok(outcome) = run(&route) {
        let curve = &outcome.quench.curves[outcome.quench.deciding];
        group.bench_function("blade, dragged to a time", |b| {
            b.iter(|| bath_to_pass(black_box(&route), curve, 540.0, 4.0))
        });
        group.bench_function("sentences", |b| {
            b.iter(|| {
                sentences(
                    black_box(&route),
                    black_box(&outcome),
                    TemperatureScale::Celsius,
                )
            })
        });
        group.bench_function("an opened number", |b| {
            b.iter(|| {
                explain(
                    recalesce::route::NumberKey::Margin,
                    black_box(&route),
                    black_box(&outcome),
                    TemperatureScale::Celsius,
                )
            })
        });
    }
    group.finish();
}

fn parts(c: &mut Criterion) {
    let mut group = c.benchmark_group("route part");
    let route = Route::example();
    let steel = &route.composition;
    group.bench_function("table of quenches", |b| {
        b.iter(|| quench_table(black_box(&route)))
    });
    group.bench_function("phase map", |b| b.iter(|| phase_map(black_box(steel))));
    group.bench_function("soak", |b| {
        b.iter(|| soak(black_box(steel), route.start, 830.0, 720.0, 1800.0))
    });
    let (Ok(soaked), Some(oil)) = (
        soak(steel, route.start, 830.0, 720.0, 1800.0),
        medium("oil_medium"),
    ) else {
        return;
    };
    let quench = |section| Quenching {
        section,
        medium: oil,
        agitation: 1.2,
        start_c: 830.0,
        air_delay_s: 1.0,
        end_c: 20.0,
        then: &[],
        martensite_start_c: None,
    };
    let blade = quench(route.section);
    let plate = quench(Section::Plate { thickness_mm: 4.0 });
    group.bench_function("cooling of the blade", |b| {
        b.iter(|| cool(black_box(&blade)))
    });
    group.bench_function("cooling of its plate", |b| {
        b.iter(|| cool(black_box(&plate)))
    });
    let austenite = Austenite {
        composition: soaked.dissolved,
        grain_astm: soaked.end.grain_astm,
        undissolved_carbide_volume_fraction: soaked.end.carbide_volume_fraction,
    };
    group.bench_function("kinetics", |b| {
        b.iter(|| Kinetics::new(black_box(&austenite)))
    });
    if let (Ok(kinetics), Ok(cooled)) = (Kinetics::new(&austenite), cool(&blade))
        && let Some(curve) = cooled.slowest()
    {
        group.bench_function("along the curve", |b| {
            b.iter(|| kinetics.along(black_box(&curve.time_s), &curve.temperature_c))
        });
        group.bench_function("slowest factor", |b| {
            b.iter(|| kinetics.slowest_factor(black_box(&curve.time_s), &curve.temperature_c, 0.95))
        });
        group.bench_function("isothermal diagram", |b| b.iter(|| kinetics.isothermal()));
    }
    group.finish();
}

criterion_group!(benches, whole_routes, parts);
criterion_main!(benches);
