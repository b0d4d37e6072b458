//! Outside values and properties of the transformation room.

#![cfg(not(target_arch = "wasm32"))]
mod rows;

use proptest::prelude::*;
use recalesce::steel::Composition;
use recalesce::transform::{
    Austenite, ColdStep, Fractions, Kinetics, Product, along, cold_treated, critical_cooling,
    end_quench, isothermal, martensite_start_c, retained_austenite,
};
use rows::bar::{Band, bands};
use rows::isothermal_fit::family;
use rows::transform as transform_rows;
use rows::transform::rows;
use rows::{FACTOR, score};
use std::collections::BTreeMap;

fn group(row: &rows::Row) -> &str {
    if row.quantity.starts_with("Jominy") {
        "end-quench hardness"
    } else {
        &row.quantity
    }
}

/// Prints every group and every row out of tolerance: `cargo test --test transform -- --nocapture`.
#[test]
fn rows_out_of_tolerance_are_listed() {
    let rows = rows();
    let mut groups: BTreeMap<&str, Vec<&rows::Row>> = BTreeMap::new();
    for row in &rows {
        groups.entry(group(row)).or_default().push(row);
    }
    for (name, rows) in groups {
        let s = score(rows.iter().copied());
        let [bias, mean, rms] =
            [s.bias, s.mean, s.rms].map(|x| if name.ends_with(FACTOR) { x.exp() } else { x });
        println!(
            "{name}: {} rows, {} predicted, {} inside; bias {bias:.2} mean {mean:.2} rms {rms:.2}",
            rows.len(),
            s.predicted,
            s.inside,
        );
        for row in rows {
            if !row.is_inside() {
                println!(
                    "    out: {} | predicted {:.2?}, value {}, tolerance {} | {}",
                    row.case, row.predicted, row.value, row.tolerance, row.source
                );
            }
        }
    }
}

fn of<'a>(rows: &'a [rows::Row], name: &str) -> Vec<&'a rows::Row> {
    rows.iter().filter(|row| group(row) == name).collect()
}

/// Carbon at the head of a row's composition.
fn carbon(row: &rows::Row) -> f64 {
    let words = row.case.split(';').nth(1).unwrap_or_default();
    transform_rows::composition(words).c
}

#[test]
fn start_of_martensite_reaches_the_promised_error() {
    let rows = rows();
    let (low, high): (Vec<_>, Vec<_>) = of(&rows, "Ms").into_iter().partition(|r| carbon(r) < 0.7);
    let (low, high) = (score(low), score(high));
    println!("Ms under 0.7 C: {low:?}\nMs above: {high:?}");
    assert!(low.rms < 18.0 && high.rms < 33.0);
}

#[test]
fn end_quench_reaches_the_promised_error() {
    let rows = rows();
    let s = score(of(&rows, "end-quench hardness"));
    assert!(s.mean < 2.0, "{s:?}");
    assert!(s.inside as f64 >= 0.8 * s.predicted as f64, "{s:?}");
}

/// Steels of whose bands a curve has at least eight tenths of the positions inside, each of them.
fn met(curve: fn(&Band) -> Result<Vec<f64>, String>) -> usize {
    let mut met: BTreeMap<String, bool> = BTreeMap::new();
    for band in bands() {
        let inside = band.inside(&curve(&band).unwrap());
        println!("{} {:.0} % inside", band.steel, 100.0 * inside);
        *met.entry(family(&band.steel)).or_insert(true) &= inside >= 0.8;
    }
    met.values().filter(|met| **met).count()
}

#[test]
fn the_reported_curve_runs_inside_the_bands_of_eight_steels() {
    assert!(met(Band::reported) >= 8);
}

/// The middle of a band is no heat: it is the mean of a lean and a rich one, and falls less
/// steeply than either. So the mean error is larger than that of a curve fitted to the middles. Of the eighth
/// steel, 4150H, seven of nine positions are met.
#[test]
fn the_simulated_bar_runs_inside_the_bands_of_seven_steels_of_eight() {
    let rows = rows();
    let s = score(of(&rows, "simulated end-quench hardness"));
    println!("{s:?}");
    assert!(s.mean < 4.5, "{s:?}");
    assert!(met(Band::simulated) >= 7);
}

#[test]
fn retained_austenite_reaches_the_promised_error() {
    let rows = rows();
    let s = score(of(&rows, "retained austenite after quench"));
    assert!(s.mean < 3.0, "{s:?}");
}

#[test]
fn nose_times_reach_the_promised_error() {
    let rows = rows();
    let s = score(of(&rows, "IT start nose time (first product) (factor)"));
    assert!(s.inside as f64 >= 0.8 * s.predicted as f64, "{s:?}");
}

#[test]
fn half_martensite_rates_reach_the_promised_error() {
    let rows = rows();
    let s = score(of(&rows, "half-martensite end-quench rate (factor)"));
    assert!(s.rms < 1.4_f64.ln(), "{s:?}");
    assert!(s.inside as f64 >= 0.8 * s.predicted as f64, "{s:?}");
}

fn cases(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

fn dissolved() -> impl Strategy<Value = Austenite> {
    (
        (0.15..1.15, 0.0..2.1, 0.0..2.3, 0.0..2.0),
        (0.0..3.5, 0.0..0.6, 0.0..0.3, 0.0..1.5),
        (2.0..13.0, 0.0..0.2),
    )
        .prop_map(
            |((c, mn, si, cr), (ni, mo, v, w), (grain_astm, carbide))| Austenite {
                composition: Composition {
                    c,
                    mn,
                    si,
                    cr,
                    ni,
                    mo,
                    v,
                    w,
                    ..Composition::default()
                },
                grain_astm,
                undissolved_carbide_volume_fraction: carbide,
            },
        )
}

/// Falling curves with uneven steps, from a furnace to a bath.
fn cooling() -> impl Strategy<Value = (Vec<f64>, Vec<f64>)> {
    (
        prop::collection::vec((1e-3..1.0_f64, 0.0..1.0_f64), 2..80),
        700.0..950.0_f64,
        -100.0..250.0_f64,
        -1.0..5.0_f64,
    )
        .prop_map(|(steps, from_c, to_c, magnitude)| {
            let span_s = 10.0_f64.powf(magnitude);
            let times: f64 = steps.iter().map(|s| s.0).sum();
            let falls: f64 = steps.iter().map(|s| s.1).sum::<f64>().max(1e-9);
            let (mut time_s, mut temperature_c) = (vec![0.0], vec![from_c]);
            let (mut t, mut fall) = (0.0, 0.0);
            for (dt, df) in steps {
                t += dt / times * span_s;
                fall += df / falls;
                time_s.push(t);
                temperature_c.push(from_c + (to_c - from_c) * fall);
            }
            (time_s, temperature_c)
        })
}

fn all(f: &Fractions) -> [f64; 6] {
    [
        f.ferrite,
        f.pearlite,
        f.bainite,
        f.martensite,
        f.austenite,
        f.carbide,
    ]
}

proptest! {
    #![proptest_config(cases(2000))]

    #[test]
    fn fractions_are_parts_of_one((a, curve) in (dissolved(), cooling())) {
        let result = along(&a, &curve.0, &curve.1).unwrap();
        prop_assert_eq!(result.history.len(), curve.0.len());
        for point in result.history.iter().map(|p| &p.fractions).chain([&result.fractions]) {
            let parts = all(point);
            prop_assert!(parts.iter().all(|x| (0.0..=1.0).contains(x)), "{:?}", point);
            prop_assert!((parts.iter().sum::<f64>() - 1.0).abs() < 1e-9, "{:?}", point);
        }
        let hardened = Kinetics::new(&a).unwrap().hardened(&curve.0, &curve.1).unwrap();
        prop_assert!((hardened - result.fractions.hardened()).abs() < 0.01);
        prop_assert!(result.additivity.is_finite() && result.ms_c.is_finite());
    }

    #[test]
    fn slower_never_gives_more_martensite(
        (a, curve, factor) in (dissolved(), cooling(), 1.0..50.0_f64)
    ) {
        let kinetics = Kinetics::new(&a).unwrap();
        let slow_s: Vec<f64> = curve.0.iter().map(|t| t * factor).collect();
        let fast = kinetics.along(&curve.0, &curve.1).unwrap();
        let slow = kinetics.along(&slow_s, &curve.1).unwrap();
        // Austenite that carbide has left leaner keeps less of itself and turns to more martensite.
        if slow.boundary_carbide.volume_fraction == 0.0 {
            prop_assert!(slow.fractions.martensite <= fast.fractions.martensite + 1e-6);
        }
        prop_assert!(slow.fractions.hardened() <= fast.fractions.hardened() + 1e-6);
        prop_assert!(slow.additivity >= fast.additivity * (1.0 - 1e-9));
    }

    #[test]
    fn colder_end_never_leaves_more_austenite(
        (a, end_c, colder_k) in (dissolved(), -100.0..200.0_f64, 0.0..100.0_f64)
    ) {
        let at = |t| retained_austenite(&a, t).unwrap();
        prop_assert!(at(end_c - colder_k) <= at(end_c));
    }

    #[test]
    fn cold_step_never_adds_austenite(
        (a, curve, cold_c, delay_s) in (dissolved(), cooling(), -196.0..30.0_f64, 0.0..1e6_f64)
    ) {
        let quenched = along(&a, &curve.0, &curve.1).unwrap().fractions;
        let coldest_before_c = *curve.1.last().unwrap();
        let step = |delay_s| ColdStep { coldest_before_c, cold_c, delay_s, wait_c: 20.0, snap: None };
        let at_once = cold_treated(&quenched, &a, &step(0.0)).unwrap();
        let waited = cold_treated(&quenched, &a, &step(delay_s)).unwrap();
        prop_assert!(at_once.austenite <= waited.austenite);
        prop_assert!(waited.austenite <= quenched.austenite);
        prop_assert!((all(&waited).iter().sum::<f64>() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn more_carbon_lowers_the_start_of_martensite((a, more) in (dissolved(), 0.0..0.1_f64)) {
        let richer = Austenite {
            composition: a.composition.with_carbon(a.composition.c + more),
            ..a
        };
        prop_assert!(martensite_start_c(&richer).unwrap() <= martensite_start_c(&a).unwrap());
    }

    #[test]
    fn diagrams_are_finite_and_ordered(a in dissolved()) {
        let diagram = isothermal(&a).unwrap();
        for curve in &diagram.products {
            prop_assert!(curve.nose_s.is_finite() && curve.nose_s > 0.0);
            prop_assert!(curve.nose_c >= diagram.ms_c && curve.nose_c <= curve.start_limit_c);
            for (start, half) in curve.start.iter().zip(&curve.half) {
                prop_assert!(start[0] >= curve.nose_s * (1.0 - 1e-9));
                prop_assert!(half[0] > start[0] || half[1] != start[1]);
            }
            let points = curve.start.iter().chain(&curve.half).chain(&curve.finish);
            prop_assert!(points.flatten().all(|x| x.is_finite()));
        }
    }

    #[test]
    fn finer_grain_is_never_slower((a, finer) in (dissolved(), 0.0..1.0_f64)) {
        let fine = Austenite { grain_astm: a.grain_astm + finer, ..a };
        let (coarse, fine) = (Kinetics::new(&a).unwrap(), Kinetics::new(&fine).unwrap());
        for product in Product::ALL {
            prop_assert!(fine.start_s(product, 500.0) <= coarse.start_s(product, 500.0));
        }
    }
}

proptest! {
    #![proptest_config(cases(200))]

    #[test]
    fn critical_rates_rise_with_the_martensite_wanted(a in dissolved()) {
        let at = |x| critical_cooling(&a, x).unwrap();
        let (half, full) = (at(0.5), at(0.95));
        prop_assert!(half.rate_k_per_s <= full.rate_k_per_s);
        prop_assert!(full.allowed_s > 0.0 && full.allowed_s.is_finite());
    }

    #[test]
    fn slowest_factor_is_where_the_martensite_falls_short(
        (a, curve) in (dissolved(), cooling())
    ) {
        let kinetics = Kinetics::new(&a).unwrap();
        let factor = kinetics.slowest_factor(&curve.0, &curve.1, 0.95).unwrap();
        let hardened = |scale: f64| {
            let time_s: Vec<f64> = curve.0.iter().map(|t| t * scale).collect();
            kinetics.along(&time_s, &curve.1).unwrap().fractions.hardened()
        };
        if factor > 1.1e-5 && factor < 0.9e5 {
            prop_assert!(hardened(factor * 0.99) > 0.945);
            prop_assert!(hardened(factor * 1.01) < 0.955);
        }
    }

    #[test]
    fn end_quench_falls_along_the_bar(a in dissolved()) {
        if let Ok(curve) = end_quench(&a.composition, a.grain_astm) {
            prop_assert!(curve.hrc.windows(2).all(|w| w[1] <= w[0] + 1e-9));
            prop_assert!(curve.ideal_diameter_mm > 0.0 && curve.ideal_diameter_mm.is_finite());
        }
    }
}

#[test]
fn grades_without_checked_kinetics_are_refused() {
    for text in [
        "C 0.60 Cr 5.0 Mo 1.0 V 0.2 Mn 0.8",
        "C 0.55 Cr 11.0 Mo 0.75",
        "C 0.50 Cr 3.25 Mo 1.4",
        "C 0.60 Cr 13.0",
    ] {
        let a = transform_rows::austenite(text, 8.0);
        assert!(isothermal(&a).is_err(), "{text}");
    }
}

#[test]
fn curves_that_are_none_are_refused() {
    let a = transform_rows::austenite("C 0.8 Mn 0.5", 8.0);
    for (time_s, temperature_c) in [
        (vec![0.0], vec![800.0]),
        (vec![0.0, 1.0], vec![800.0]),
        (vec![1.0, 0.0], vec![800.0, 20.0]),
        (vec![0.0, f64::NAN], vec![800.0, 20.0]),
        (vec![0.0, 1.0], vec![f64::INFINITY, 20.0]),
    ] {
        assert!(along(&a, &time_s, &temperature_c).is_err());
    }
}

/// Common practice, no source: 0.95 C plain steel must reach 480 °C within a second, a steel with
/// 1.2 Mn-0.5 Cr-0.5 W has five seconds or more.
#[test]
fn times_of_the_trade_to_480_c() {
    let plain = transform_rows::austenite("C 0.80 Mn 0.40 Si 0.2", 9.0);
    let allowed_s = transform_rows::allowed_to_480_c_s(&plain).unwrap();
    assert!(allowed_s < 1.0, "{allowed_s}");
    let oil = transform_rows::usually_dissolved("O1", "", "G 9");
    let allowed_s = transform_rows::allowed_to_480_c_s(&oil).unwrap();
    assert!(allowed_s > 5.0, "{allowed_s}");
}

#[test]
fn nose_gap_counts_from_a1() {
    let a = transform_rows::austenite("C 0.80 Mn 0.40 Si 0.2", 8.5);
    let kinetics = Kinetics::new(&a).unwrap();
    let gap = kinetics
        .nose_gap(&[0.0, 1.0, 4.0], &[800.0, 480.0, 100.0])
        .unwrap()
        .unwrap();
    let arrival_s = (kinetics.ae1_c() - gap.nose_c) / 320.0;
    assert!((gap.arrival_s - arrival_s).abs() < 1e-9);
    assert!((gap.gap_s - (gap.start_s - gap.arrival_s)).abs() < 1e-12);
    assert_eq!(gap.product, Product::Pearlite);
}

/// Steels at the corners of the kinetics.
const LIMITS: [&str; 5] = [
    "C 0.20",
    "C 0.45 Mn 0.75 Si 0.25",
    "C 0.80 Mn 0.40",
    "C 0.40 Mn 0.85 Si 0.25 Cr 0.95 Mo 0.20",
    "C 0.69 Mn 0.36 Si 0.25 Cr 1.1",
];

/// Held without end nothing is left to harden, cooled at once nothing else forms, and either way the
/// parts make up the whole.
#[test]
fn holds_without_end_and_without_time() {
    for text in LIMITS {
        let a = transform_rows::austenite(text, 8.0);
        let kinetics = Kinetics::new(&a).unwrap();
        let held_c = [kinetics.ae1_c() - 40.0, 550.0, kinetics.ms_c() + 20.0];
        for held_c in held_c {
            let end = 1e11;
            let made = kinetics
                .along(&[0.0, end, end + 1.0], &[held_c, held_c, 20.0])
                .unwrap();
            let made = made.fractions;
            assert!(made.hardened() < 1e-6, "{text} {held_c}: {made:?}");
            assert!(made.martensite < 1e-6 && (all(&made).iter().sum::<f64>() - 1.0).abs() < 1e-9);
        }
        let made = kinetics
            .along(&[0.0, 1e-6], &[900.0, -273.0])
            .unwrap()
            .fractions;
        assert!(made.hardened() > 1.0 - 1e-4, "{text}: {made:?}");
        assert!((all(&made).iter().sum::<f64>() - 1.0).abs() < 1e-9);
    }
}

/// Iron without carbon is outside of all: no number is given, and carbon is what the refusal names.
#[test]
fn without_carbon_there_is_no_answer() {
    let iron = transform_rows::austenite("", 8.0);
    let refusals = [
        isothermal(&iron).err(),
        martensite_start_c(&iron).err(),
        retained_austenite(&iron, 20.0).err(),
        critical_cooling(&iron, 0.5).err(),
        end_quench(&iron.composition, 8.0).err(),
    ];
    for refusal in refusals {
        assert_eq!(refusal.map(|r| r.number.field), Some("carbon"));
    }
    // What is left out is small: at the least carbon martensite begins near that of iron cooled fast, about
    // 540 °C (from memory).
    let lean = transform_rows::austenite("C 0.10", 8.0);
    let ms_c = martensite_start_c(&lean).unwrap();
    assert!((450.0..545.0).contains(&ms_c), "{ms_c}");
}

/// Each element that dissolves hardens deeper than the steel without any, where its effect is fitted.
#[test]
fn alloy_hardens_deeper_than_none() {
    for carbon in [0.3, 0.5, 0.8] {
        let plain = transform_rows::austenite(&format!("C {carbon}"), 8.0);
        let rate = |a: &Austenite| critical_cooling(a, 0.5).unwrap().rate_k_per_s;
        for alloy in [
            "Mn 0.8",
            "Si 0.8",
            "Ni 1.0",
            "Cr 1.0",
            "Mo 0.3",
            "Mn 0.8 Cr 1.0 Mo 0.2",
        ] {
            let alloyed = transform_rows::austenite(&format!("C {carbon} {alloy}"), 8.0);
            assert!(rate(&alloyed) < rate(&plain), "{carbon} {alloy}");
            assert!(alloyed.composition.c == plain.composition.c);
        }
    }
}
