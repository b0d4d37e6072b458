//! Time of an equilibrium, warm and cold, of the critical points and of the map.

#![allow(missing_docs, reason = "the macro makes a function without")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use recalesce::phases::{EquilibriumSeries, critical_points, equilibrium, phase_map};
use recalesce::steel::Composition;

fn steels() -> [(&'static str, Composition); 4] {
    let nothing = Composition::default();
    [
        (
            "0.45C 0.75Mn 0.22Si",
            Composition {
                c: 0.45,
                mn: 0.75,
                si: 0.22,
                ..nothing
            },
        ),
        (
            "1.0C 1.45Cr 0.35Mn 0.25Si",
            Composition {
                c: 1.0,
                mn: 0.35,
                si: 0.25,
                cr: 1.45,
                ..nothing
            },
        ),
        (
            "1.0C 5.1Cr 1.1Mo 0.2V 0.7Mn 0.3Si",
            Composition {
                c: 1.0,
                mn: 0.7,
                si: 0.3,
                cr: 5.1,
                mo: 1.1,
                v: 0.2,
                ..nothing
            },
        ),
        (
            "all eight",
            Composition {
                c: 0.9,
                mn: 1.0,
                si: 0.5,
                cr: 4.0,
                ni: 0.5,
                mo: 1.0,
                v: 0.5,
                w: 1.0,
                ..nothing
            },
        ),
    ]
}

fn points(criterion: &mut Criterion) {
    for (name, steel) in steels() {
        criterion.bench_function(&format!("cold point, {name}"), |b| {
            b.iter(|| equilibrium(black_box(&steel), black_box(800.0)));
        });
        criterion.bench_function(&format!("warm point, {name}"), |b| {
            let mut series = EquilibriumSeries::default();
            let mut step = 0_u32;
            b.iter(|| {
                // up and down between 700 and 1000 °C in steps of 5 K
                step = (step + 1) % 120;
                let place = f64::from(if step < 60 { step } else { 120 - step });
                series.at(black_box(&steel), 700.0 + 5.0 * place)
            });
        });
    }
}

fn maps(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("maps");
    group.sample_size(10);
    for (name, steel) in steels() {
        group.bench_function(format!("critical points, {name}"), |b| {
            b.iter(|| critical_points(black_box(&steel)));
        });
        group.bench_function(format!("map, {name}"), |b| {
            b.iter(|| phase_map(black_box(&steel)));
        });
    }
}

criterion_group!(benches, points, maps);
criterion_main!(benches);
