//! Deciding: how sure a route is, what it hangs on, and finding one.

#![allow(
    missing_docs,
    reason = "the benchmark macros write functions without them"
)]

use criterion::{Criterion, criterion_group, criterion_main};
use recalesce::advise::{
    Furnace, Limits, Purpose, Quenchant, Shop, Sought, Tolerances, USUAL_CASES, find, sensitivity,
    spread,
};
use recalesce::heat::{MediumChoice, Section};
use recalesce::route::{Route, Thermocouple};
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
    group.finish();
}

criterion_group!(benches, decisions);
criterion_main!(benches);
