//! Deciding: how sure a route is, what it hangs on, finding one, and learning from a logbook.

#![allow(
    missing_docs,
    reason = "the benchmark macros write functions without them"
)]

use criterion::{Criterion, criterion_group, criterion_main};
use recalesce::advise::{
    Furnace, Limits, LoggedReading, LoggedRun, Purpose, Quenchant, Shop, Sought, Tolerances,
    USUAL_CASES, find, learn, sensitivity, spread,
};
use recalesce::hardness::Scale;
use recalesce::heat::{MediumChoice, Section};
use recalesce::route::{Route, Step, Thermocouple};
use std::hint::black_box;

/// A kiln and three oils.
fn shop() -> Shop {
    Shop {
        furnaces: vec![Furnace {
            name: "kiln".to_owned(),
            least_c: 100.0,
            most_c: 1100.0,
            band_k: 8.0,
            offset_k: 0.0,
            thermocouple: Thermocouple::TypeKClass2,
            holds: true,
        }],
        quenchants: ["oil_fast", "oil_medium", "water20"]
            .map(|name| Quenchant {
                medium: MediumChoice::Named(name.to_owned()),
                agitation: 1.0,
            })
            .to_vec(),
        ..Shop::default()
    }
}

/// Twenty pieces of two thicknesses, each read as quenched and as tempered.
fn logbook(route: &Route) -> Vec<LoggedRun> {
    let reading = |value, after| LoggedReading {
        value,
        scale: Scale::Hrc,
        place: String::new(),
        after,
    };
    (0..20)
        .map(|i| LoggedRun {
            name: format!("run {i}"),
            route: Route {
                section: Section::Plate {
                    thickness_mm: if i % 2 == 0 { 4.0 } else { 8.0 },
                },
                ..route.clone()
            },
            readings: vec![
                reading(63.0 + 0.1 * f64::from(i % 5), Step::Quench),
                reading(
                    59.0 + 0.1 * f64::from(i % 4),
                    Step::Temper(route.tempers.len()),
                ),
            ],
            austenite_vol_percent: None,
            fracture_grain_astm: None,
            is_told_otherwise: false,
        })
        .collect()
}

fn decisions(c: &mut Criterion) {
    let mut group = c.benchmark_group("decide");
    group.sample_size(10);
    let blade = Route::example();
    let plate = Route {
        section: Section::Plate { thickness_mm: 4.0 },
        ..blade.clone()
    };
    let tolerances = Tolerances::default();
    let sought = Sought {
        target: blade.target,
        purpose: Purpose::Edge,
        limits: Limits::default(),
    };
    let shop = shop();
    for (name, route) in [("blade", &blade), ("plate", &plate)] {
        group.bench_function(format!("spread of a {name}"), |b| {
            b.iter(|| spread(black_box(route), &tolerances, USUAL_CASES, 1));
        });
        group.bench_function(format!("sensitivity of a {name}, 64 pairs"), |b| {
            b.iter(|| sensitivity(black_box(route), &tolerances, 64, 1));
        });
        group.bench_function(format!("search for a {name}"), |b| {
            b.iter(|| find(black_box(route), &shop, &sought, &tolerances, 1));
        });
    }
    let runs = logbook(&plate);
    group.bench_function("learning from twenty runs of two plates", |b| {
        b.iter(|| learn(black_box(&runs), Some(&shop), Some(&plate)));
    });
    group.finish();
}

criterion_group!(benches, decisions);
criterion_main!(benches);
