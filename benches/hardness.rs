//! Time of the temper curve, of one mixture and of one conversion.

use criterion::Criterion;
use recalesce::hardness::{AsQuenched, Scale, convert, mixture, temper_curve};
use recalesce::steel::Composition;
use std::hint::black_box;

fn main() {
    let mut c = Criterion::default().configure_from_args();
    let steel = Composition {
        c: 0.98,
        mn: 0.35,
        si: 0.25,
        cr: 1.5,
        ..Composition::default()
    };
    let start = AsQuenched::fully_martensitic(&steel);
    let temperatures_c: Vec<f64> = (0..60).map(|i| 100.0 + 10.0 * f64::from(i)).collect();
    c.bench_function("temper curve, 60 temperatures", |b| {
        b.iter(|| temper_curve(&start, black_box(&steel), &temperatures_c, 7200.0, 2));
    });
    c.bench_function("mixture", |b| {
        b.iter(|| mixture(black_box(&steel), &start.constituents, &start.formed));
    });
    c.bench_function("conversion HV to HBW", |b| {
        b.iter(|| convert(Scale::Hv, black_box(650.0), Scale::Hbw));
    });
    c.final_summary();
}
