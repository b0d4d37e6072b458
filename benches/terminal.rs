//! The terminal program: lines in, lines out, on all cores.

#![allow(
    missing_docs,
    reason = "the benchmark macros write functions without them"
)]

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use recalesce::heat::{MediumChoice, Section};
use recalesce::route::Route;
use recalesce::terminal::answer_all;
use serde_json::json;
use std::hint::black_box;

/// Whole routes of a plate, each another thickness.
fn routes(count: u32) -> String {
    let line = |number: u32| {
        let mut route = Route::example();
        route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
        route.cold = None;
        route.section = Section::Plate {
            thickness_mm: 2.0 + 0.01 * f64::from(number),
        };
        json!({"question": "route", "id": number, "route": route}).to_string() + "\n"
    };
    (0..count).map(line).collect()
}

/// Small questions, so that what is left is reading, order and writing.
fn martensite(count: u32) -> String {
    let line = |number: u32| {
        let c = 0.6 + 0.0001 * f64::from(number);
        json!({"question": "martensite", "composition": {"c": c, "mn": 0.7}, "quench_end_c": 20})
            .to_string()
            + "\n"
    };
    (0..count).map(line).collect()
}

fn throughput(c: &mut Criterion) {
    let mut group = c.benchmark_group("terminal");
    group.sample_size(10);
    for (name, lines, count) in [
        ("whole routes of a plate", routes(64), 64),
        ("questions of martensite", martensite(1000), 1000),
    ] {
        group.throughput(Throughput::Elements(count));
        group.bench_function(name, |b| {
            b.iter(|| answer_all(black_box(lines.as_bytes()), std::io::sink()));
        });
    }
    group.finish();
}

criterion_group!(benches, throughput);
criterion_main!(benches);
