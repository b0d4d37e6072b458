//! From the figures of a quenchant to its heat transfer.

use super::{assert_same_plates, listed, plain};
use proptest::prelude::*;
use recalesce::heat::{Figure, FigureError, QuenchantFigures, fit_figures};

const NONE: QuenchantFigures = QuenchantFigures {
    nickel_ball_s: None,
    max_rate_k_per_s: None,
    max_rate_at_c: None,
    rate_at_300c_k_per_s: None,
    time_to_600c_s: None,
    time_to_400c_s: None,
    time_to_200c_s: None,
};

#[test]
fn the_ball_alone_scales_the_oil_that_is_nearest() {
    for (ball_s, template) in [
        (8.0, "oil_fast"),
        (10.0, "oil_medfast"),
        (12.0, "oil_medium"),
        (18.0, "oil_slow"),
        (30.0, "ref_fluid"),
    ] {
        let figures = QuenchantFigures {
            nickel_ball_s: Some(ball_s),
            ..NONE
        };
        let fit = fit_figures(&figures, 50.0).unwrap();
        assert_eq!(fit.template, template);
        approx::assert_relative_eq!(fit.compared[0].simulated, ball_s, max_relative = 1e-3);
        // One number leaves about as much open as a class of the list does.
        assert!(
            (1.24..1.77).contains(&fit.h_band_factor),
            "{}",
            fit.h_band_factor
        );
        let own = fit.medium.resolve().unwrap();
        let ratio = |t: f64| own.h_w_m2k.at(t) / listed(template).h_w_m2k.at(t);
        approx::assert_relative_eq!(ratio(750.0), ratio(480.0), max_relative = 0.02);
    }
}

#[test]
fn six_figures_of_the_probe_give_the_plates_of_the_medium() {
    for (name, tolerance) in [
        ("oil_fast", 0.005),
        ("oil_medium", 0.005),
        ("oil_slow", 0.005),
        ("ref_fluid", 0.01),
        ("polymer15", 0.005),
        ("water20", 0.02),
        // Not of the shape with three corners.
        ("canola60", 0.04),
        ("water60", 0.06),
    ] {
        let listed = listed(name);
        let figures = QuenchantFigures {
            nickel_ball_s: None,
            ..QuenchantFigures::of(listed).unwrap()
        };
        let fit = fit_figures(&figures, listed.bath_c).unwrap();
        assert_eq!(fit.compared.len(), 6);
        assert!(
            fit.compared.iter().all(|c| c.agrees),
            "{name}: {:?}",
            fit.compared
        );
        assert!(
            (1.16..1.32).contains(&fit.h_band_factor),
            "{}",
            fit.h_band_factor
        );
        assert_same_plates(&fit.medium.resolve().unwrap(), listed, tolerance);
    }
}

/// The middle of each class as recalled (see `sources::quench_media`): ball and probe do not quite
/// belong together there, and are balanced.
#[test]
fn figures_of_the_classes_are_met_within_their_reproducibility() {
    for (name, ball_s, max_rate, at_c, at_300) in [
        ("oil_fast", 8.0, 105.0, 620.0, 11.0),
        ("oil_medfast", 10.0, 87.5, 595.0, 9.5),
        ("oil_medium", 12.5, 72.5, 570.0, 8.0),
        ("oil_slow", 17.5, 50.0, 515.0, 7.0),
    ] {
        let figures = QuenchantFigures {
            nickel_ball_s: Some(ball_s),
            max_rate_k_per_s: Some(max_rate),
            max_rate_at_c: Some(at_c),
            rate_at_300c_k_per_s: Some(at_300),
            ..NONE
        };
        let fit = fit_figures(&figures, 50.0).unwrap();
        assert!(
            fit.compared.iter().all(|c| c.agrees),
            "{name}: {:?}",
            fit.compared
        );
    }
}

#[test]
fn figures_that_cannot_be_are_refused_with_what_is_allowed() {
    let refused = |figures: QuenchantFigures, bath_c: f64| {
        let error = fit_figures(&figures, bath_c).expect_err("a refusal");
        plain(&error)
    };
    let base = QuenchantFigures {
        max_rate_k_per_s: Some(75.0),
        ..NONE
    };
    assert!(refused(NONE, 50.0).starts_with("no figure tells the speed"));
    assert!(refused(base, 400.0).contains("400 °C is outside −20 to 250 °C"));
    assert!(refused(base, f64::NAN).contains("NaN"));
    let cases = [
        (
            QuenchantFigures {
                nickel_ball_s: Some(90.0),
                ..NONE
            },
            "nickel-ball time: 90 s is outside 1.3 to 40 s",
        ),
        (
            QuenchantFigures {
                nickel_ball_s: Some(3.0),
                ..NONE
            },
            "nickel-ball time: 3 s is outside 5 to 40 s, what oils have",
        ),
        (
            QuenchantFigures {
                max_rate_at_c: Some(f64::NAN),
                ..base
            },
            "temperature of the highest rate: NaN °C",
        ),
        (
            QuenchantFigures {
                rate_at_300c_k_per_s: Some(90.0),
                ..base
            },
            "what the highest rate of the probe allows",
        ),
        (
            QuenchantFigures {
                time_to_600c_s: Some(2.0),
                ..base
            },
            "time of the probe to 600 °C: 2 s is outside 3.24 to 40 s",
        ),
        (
            QuenchantFigures {
                time_to_600c_s: Some(12.0),
                time_to_400c_s: Some(11.0),
                ..NONE
            },
            "what the time of the probe to 600 °C allows",
        ),
        // An oil by its probe, water by its ball.
        (
            QuenchantFigures {
                nickel_ball_s: Some(3.0),
                time_to_600c_s: Some(5.2),
                time_to_400c_s: Some(9.7),
                ..base
            },
            "what the other figures allow",
        ),
    ];
    for (figures, words) in cases {
        let text = refused(figures, 50.0);
        assert!(text.contains(words), "{text}");
    }
    let warm = QuenchantFigures {
        time_to_200c_s: Some(50.0),
        ..base
    };
    assert!(refused(warm, 220.0).contains("too warm for a time to 200 °C"));
}

/// What is told to be allowed is what the others give.
#[test]
fn a_contradiction_names_the_figure_and_its_room() {
    let figures = QuenchantFigures {
        nickel_ball_s: Some(3.0),
        ..QuenchantFigures::of(listed("oil_medium")).unwrap()
    };
    let Err(FigureError::Outside {
        figure,
        least,
        most,
        ..
    }) = fit_figures(&figures, 50.0)
    else {
        panic!("three seconds are no medium oil");
    };
    assert_eq!(figure, Figure::NickelBall);
    assert!(least < 12.4 && 12.4 < most && most < 20.0, "{least} {most}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn any_figures_are_answered_or_refused(
        values in prop::collection::vec(prop::option::of(0.0..1.0_f64), 7),
        bath_c in -20.0..250.0_f64,
    ) {
        let mut values = Figure::ALL.into_iter().zip(values).map(|(figure, place)| {
            let [least, most] = figure.allowed();
            place.map(|x| least * (most / least).powf(x))
        });
        let mut next = || values.next().flatten();
        let figures = QuenchantFigures {
            nickel_ball_s: next(),
            max_rate_k_per_s: next(),
            max_rate_at_c: next(),
            rate_at_300c_k_per_s: next(),
            time_to_600c_s: next(),
            time_to_400c_s: next(),
            time_to_200c_s: next(),
        };
        if let Ok(fit) = fit_figures(&figures, bath_c) {
            prop_assert!(fit.h_band_factor >= 1.16 && fit.h_band_factor < 10.0);
            prop_assert_eq!(fit.compared.len(), figures.known().count());
            prop_assert!(fit.medium.resolve().is_ok());
        }
    }
}
