//! Time for the equilibrium limit, a whole soak with its history, and the phase map.

use criterion::{Criterion, criterion_group, criterion_main};
use recalesce::phases::{phase_map, soak_limit};
use recalesce::soak::{StartingStructure, soak};
use recalesce::steel::Composition;
use std::hint::black_box;

fn bench(c: &mut Criterion) {
    let steel = Composition {
        c: 1.0,
        mn: 0.35,
        si: 0.25,
        cr: 1.45,
        ..Composition::default()
    };
    c.bench_function("soak limit", |b| {
        b.iter(|| soak_limit(black_box(&steel), black_box(830.0)));
    });
    c.bench_function("soak with history", |b| {
        let start = StartingStructure::Spheroidised;
        b.iter(|| soak(black_box(&steel), start, black_box(830.0), 900.0, 3600.0));
    });
    c.bench_function("phase map", |b| b.iter(|| phase_map(black_box(&steel))));
}

criterion_group!(benches, bench);
criterion_main!(benches);
