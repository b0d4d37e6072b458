//! Cost of the transformation room for one austenite.

use criterion::Criterion;
use recalesce::steel::Composition;
use recalesce::transform::{Austenite, Kinetics, end_quench};
use std::hint::black_box;

fn cr_mo() -> Austenite {
    Austenite {
        composition: Composition {
            c: 0.40,
            mn: 0.85,
            si: 0.25,
            cr: 0.95,
            mo: 0.20,
            ..Composition::default()
        },
        grain_astm: 8.0,
        undissolved_carbide_volume_fraction: 0.0,
    }
}

fn transform(c: &mut Criterion) {
    let a = cr_mo();
    let Ok(kinetics) = Kinetics::new(&a) else {
        return;
    };
    // Newtonian cooling with 200 points.
    let time_s: Vec<f64> = (0..200).map(|i| 0.2 * f64::from(i)).collect();
    let temperature_c: Vec<f64> = time_s
        .iter()
        .map(|t| 40.0 + 800.0 * (-t / 10.0).exp())
        .collect();
    c.bench_function("kinetics of an austenite", |b| {
        b.iter(|| Kinetics::new(black_box(&a)));
    });
    c.bench_function("along 200 points", |b| {
        b.iter(|| kinetics.along(black_box(&time_s), black_box(&temperature_c)));
    });
    c.bench_function("slowest factor", |b| {
        b.iter(|| kinetics.slowest_factor(black_box(&time_s), black_box(&temperature_c), 0.95));
    });
    c.bench_function("critical cooling", |b| {
        b.iter(|| kinetics.critical_cooling(black_box(0.95)));
    });
    c.bench_function("isothermal diagram", |b| b.iter(|| kinetics.isothermal()));
    c.bench_function("end quench", |b| {
        b.iter(|| end_quench(black_box(&a.composition), 8.0));
    });
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args();
    transform(&mut criterion);
    criterion.final_summary();
}
