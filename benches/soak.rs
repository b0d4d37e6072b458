//! Time for the critical temperatures, the equilibrium limit, a whole soak with its history, and the
//! phase map, of a low-alloy and of a high-alloy steel.

#![allow(
    missing_docs,
    reason = "the benchmark macros write functions without them"
)]

use criterion::{Criterion, criterion_group, criterion_main};
use recalesce::phases::{critical_temperatures, phase_map, soak_limit};
use recalesce::soak::{StartingStructure, soak};
use recalesce::steel::find;
use std::hint::black_box;

fn bench(c: &mut Criterion) {
    for (name, soak_c) in [("52100", 830.0), ("A2", 955.0)] {
        let Ok(grade) = find(name) else { continue };
        let steel = grade.nominal;
        c.bench_function(&format!("critical temperatures, {name}"), |b| {
            b.iter(|| critical_temperatures(black_box(&steel)));
        });
        c.bench_function(&format!("soak limit, {name}"), |b| {
            b.iter(|| soak_limit(black_box(&steel), black_box(soak_c)));
        });
        c.bench_function(&format!("soak with history, {name}"), |b| {
            let start = StartingStructure::Spheroidised;
            b.iter(|| soak(black_box(&steel), start, black_box(soak_c), 900.0, 3600.0));
        });
        c.bench_function(&format!("phase map, {name}"), |b| {
            b.iter(|| phase_map(black_box(&steel)));
        });
    }
}

criterion_group!(benches, bench);
criterion_main!(benches);
