//! From a probe curve to the heat transfer of its quenchant.

use super::simulated_probe::{Scatter, read, readings, text};
use super::{assert_same_plates, listed, plain};
use proptest::prelude::*;
use recalesce::heat::{CurveFit, CurveOptions, FittedCurve, FittedKnot, ProbeCurve, probe};
use std::fmt::Write;

fn fitted(curve: &ProbeCurve, bath_c: f64) -> FittedCurve {
    let mut fit = CurveFit::new(curve, bath_c).unwrap();
    while !fit.step().is_done {}
    fit.fitted().unwrap()
}

fn curve_of(name: &str, idle_s: f64, noise_k: f64, options: &CurveOptions) -> ProbeCurve {
    let readings = readings(name, idle_s, 8.0, noise_k);
    let text = text("s,°C\n", &readings, |t, c| format!("{t:.4},{c:.4}"));
    ProbeCurve::read(&text, options).unwrap()
}

#[test]
fn exact_curves_give_the_medium_back() {
    for name in [
        "oil_fast",
        "oil_medium",
        "oil_slow",
        "polymer15",
        "canola60",
        "water20",
    ] {
        let listed = listed(name);
        let curve = curve_of(name, 0.0, 0.0, &CurveOptions::default());
        let found = fitted(&curve, listed.bath_c);
        assert!(found.rms_k < 0.1, "{name}: {} K", found.rms_k);
        assert_same_plates(&found.medium.resolve().unwrap(), listed, 0.005);
    }
}

/// 0.5 K of scatter at 8 readings a second; the figures within the tolerances of the rows of
/// `checks/quenching.csv`.
#[test]
fn scattered_curves_give_plates_and_figures_back() {
    for name in ["oil_fast", "oil_medium", "polymer15", "water20"] {
        let listed = listed(name);
        let curve = curve_of(name, 0.0, 0.5, &CurveOptions::default());
        let found = fitted(&curve, listed.bath_c);
        assert!(
            (0.4..0.6).contains(&found.rms_k),
            "{name}: {} K",
            found.rms_k
        );
        let own = found.medium.resolve().unwrap();
        assert_same_plates(&own, listed, 0.02);
        let (got, expected) = (probe(&own).unwrap(), probe(listed).unwrap());
        for (got, expected, tolerance) in [
            (
                Some(got.max_rate_k_per_s),
                Some(expected.max_rate_k_per_s),
                0.02,
            ),
            (got.time_to_600c_s, expected.time_to_600c_s, 0.01),
            (got.time_to_400c_s, expected.time_to_400c_s, 0.01),
            (got.time_to_200c_s, expected.time_to_200c_s, 0.01),
        ] {
            let (got, expected) = (got.unwrap(), expected.unwrap());
            approx::assert_relative_eq!(got, expected, max_relative = tolerance);
        }
        approx::assert_abs_diff_eq!(got.max_rate_at_c, expected.max_rate_at_c, epsilon = 8.0);
        // The figures read off the scattered curve are those of the fitted one.
        assert_eq!(found.compared.len(), 6);
        assert!(
            found.compared.iter().all(|c| c.agrees),
            "{name}: {:?}",
            found.compared
        );
    }
}

/// What the couple cannot see is told: the coefficient lies in the band of its knot, and what
/// the smoothness filled in is marked.
#[test]
fn each_knot_says_how_well_it_is_known() {
    for name in ["oil_fast", "oil_medium", "oil_slow", "polymer15", "water20"] {
        let listed = listed(name);
        let curve = curve_of(name, 0.0, 0.5, &CurveOptions::default());
        let found = fitted(&curve, listed.bath_c);
        let miss = |knot: &FittedKnot| {
            (knot.h_w_m2k / listed.h_w_m2k.at(knot.surface_c))
                .ln()
                .abs()
        };
        // A corner between two knots is worth 6 % whatever the readings.
        let outside = found
            .knots
            .iter()
            .filter(|k| miss(k) > 2.0 * k.ln_h_sd + 0.06)
            .count();
        assert!(outside <= 2, "{name}: {outside} outside, {:?}", found.knots);
        let marked = found.knots.iter().filter(|k| k.from_neighbours).count();
        println!(
            "{name}: {outside} outside, {marked} marked, band {:.3}",
            found.h_band_factor
        );
        // The surface is at the start only for an instant.
        assert!(found.knots.last().is_some_and(|k| k.from_neighbours));
        assert!((1.16..1.32).contains(&found.h_band_factor));
    }
}

#[test]
fn an_entry_that_had_to_be_found_costs_little() {
    for name in ["oil_fast", "oil_medium", "polymer15"] {
        let listed = listed(name);
        let found = fitted(
            &curve_of(name, 3.37, 0.5, &CurveOptions::default()),
            listed.bath_c,
        );
        assert_same_plates(&found.medium.resolve().unwrap(), listed, 0.02);
        let told = CurveOptions {
            entry_s: Some(3.37),
            ..CurveOptions::default()
        };
        let found = fitted(&curve_of(name, 3.37, 0.5, &told), listed.bath_c);
        assert!(found.entry_shift_s.abs() < 0.01);
        assert_same_plates(&found.medium.resolve().unwrap(), listed, 0.02);
    }
}

/// From the furnace through air, in which the probe cools by 4 K/s for three seconds.
#[test]
fn the_way_through_air_is_not_taken_for_the_bath() {
    for name in ["oil_fast", "oil_medium", "polymer15"] {
        let listed = listed(name);
        let mut scatter = Scatter(5);
        let in_bath = readings(name, 5.0, 8.0, 0.3);
        let through_air: Vec<[f64; 2]> = in_bath
            .into_iter()
            .map(|[time_s, temperature_c]| {
                let before_c = 862.0 - 4.0 * f64::max(time_s - 2.0, 0.0) + 0.3 * scatter.next();
                [
                    time_s,
                    if time_s < 5.0 {
                        before_c
                    } else {
                        temperature_c
                    },
                ]
            })
            .collect();
        let curve = read(&text("s,°C\n", &through_air, |t, c| {
            format!("{t:.3},{c:.1}")
        }));
        approx::assert_abs_diff_eq!(curve.start_c, 850.0, epsilon = 1.5);
        let found = fitted(&curve, listed.bath_c);
        assert_same_plates(&found.medium.resolve().unwrap(), listed, 0.02);
    }
}

/// The probe stands still above the bath: nothing that the surface gives off makes it do so.
#[test]
fn a_curve_that_no_bath_makes_is_refused() {
    let mut readings = readings("oil_fast", 0.0, 8.0, 0.2);
    let last_s = readings.last().unwrap()[0];
    readings.extend((1..400).map(|i| [last_s + 0.125 * f64::from(i), 150.0]));
    let curve = read(&text("s,°C\n", &readings, |t, c| format!("{t:.3},{c:.2}")));
    let mut fit = CurveFit::new(&curve, 50.0).unwrap();
    while !fit.step().is_done {}
    let error = plain(&fit.fitted().unwrap_err());
    assert!(
        error.contains("are the bath, the probe and the units right?"),
        "{error}"
    );
}

#[test]
fn a_narrow_peak_of_boiling_keeps_the_plates_if_not_its_height() {
    let listed = listed("ref_fluid");
    let curve = curve_of("ref_fluid", 0.0, 0.5, &CurveOptions::default());
    let found = fitted(&curve, listed.bath_c);
    assert_same_plates(&found.medium.resolve().unwrap(), listed, 0.01);
}

#[test]
fn a_fit_is_the_same_every_time_and_its_steps_bring_it_nearer() {
    let curve = curve_of("oil_medium", 0.0, 0.5, &CurveOptions::default());
    let mut fit = CurveFit::new(&curve, 50.0).unwrap();
    let first = fit.step();
    assert_eq!(first.steps, 1);
    let mut last = first;
    while !last.is_done {
        last = fit.step();
    }
    assert!(
        last.rms_k < 0.6 && last.rms_k < first.rms_k,
        "{first:?} {last:?}"
    );
    assert!(last.steps < 15, "{last:?}");
    assert_eq!(fit.step(), last);
    assert_eq!(fit.fitted().unwrap(), fitted(&curve, 50.0));
}

#[test]
fn baths_that_the_curve_contradicts_are_refused() {
    let curve = curve_of("oil_medium", 0.0, 0.5, &CurveOptions::default());
    let refused = |bath_c: f64| plain(&CurveFit::new(&curve, bath_c).unwrap_err());
    assert!(refused(f64::NAN).contains("NaN"));
    assert!(refused(300.0).contains("outside −20 to 250 °C"));
    assert!(refused(200.0).contains("the probe cools to 150 °C, below the bath of 200 °C"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// Curves that fall in steps of any size, far from what a probe does.
    #[test]
    fn any_falling_curve_is_fitted_without_failing(
        steps in prop::collection::vec(0.0..30.0_f64, 60..200),
        every_s in 0.05..1.0_f64,
        bath_c in -20.0..120.0_f64,
    ) {
        let mut temperature_c = 850.0;
        let mut text = "s,°C\n".to_owned();
        for (i, step) in steps.into_iter().enumerate() {
            writeln!(text, "{},{temperature_c}", every_s * i as f64).unwrap();
            temperature_c = f64::max(temperature_c - step, bath_c);
        }
        if let Ok(curve) = ProbeCurve::read(&text, &CurveOptions::default())
            && let Ok(mut fit) = CurveFit::new(&curve, bath_c)
        {
            for _ in 0..6 {
                prop_assert!(fit.step().rms_k.is_finite());
            }
            if let Ok(found) = fit.fitted() {
                prop_assert!(found.medium.resolve().is_ok());
                prop_assert!(found.knots.iter().all(|k| k.ln_h_sd.is_finite()));
            }
        }
    }
}
