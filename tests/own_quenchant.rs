//! Quenchants of the user's own: from figures to heat transfer and back.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use recalesce::heat::{
    CoolingCurve, CurveFit, CurveNote, CurveOptions, Figure, FigureError, FittedCurve, FittedKnot,
    Medium, ProbeCurve, QuenchantFigures, Quenching, Section, cool, fit_figures, medium, probe,
};
use recalesce::units::TemperatureScale;
use std::fmt::Write;

/// An error's words with plain spaces.
fn plain(error: &impl std::fmt::Display) -> String {
    error.to_string().replace('\u{a0}', " ")
}

const NONE: QuenchantFigures = QuenchantFigures {
    nickel_ball_s: None,
    max_rate_k_per_s: None,
    max_rate_at_c: None,
    rate_at_300c_k_per_s: None,
    time_to_600c_s: None,
    time_to_400c_s: None,
    time_to_200c_s: None,
};

fn listed(name: &str) -> &'static Medium {
    medium(name).unwrap_or_else(|| panic!("{name} is in the list"))
}

/// Seconds from entry at 800 °C to 540 °C at the centre of plates of 3, 6 and 12 mm.
fn plate_times_s(medium: &Medium) -> [f64; 3] {
    [3.0, 6.0, 12.0].map(|thickness_mm| {
        cool(&Quenching {
            section: Section::Plate { thickness_mm },
            medium,
            agitation: 1.0,
            start_c: 800.0,
            air_delay_s: 0.0,
            end_c: 500.0,
            then: &[],
            martensite_start_c: None,
        })
        .expect("a quench")
        .slowest()
        .and_then(|curve| curve.time_to_c(540.0))
        .expect("a time")
    })
}

fn assert_same_plates(own: &Medium, listed: &Medium, tolerance: f64) {
    for (got, expected) in plate_times_s(own).into_iter().zip(plate_times_s(listed)) {
        println!(
            "{}: {expected:.3} s, {:+.2} %",
            listed.name,
            100.0 * (got / expected - 1.0)
        );
        approx::assert_relative_eq!(got, expected, max_relative = tolerance);
    }
}

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
        // One number leaves more open than a class of the list does.
        assert!(
            (1.3..2.0).contains(&fit.h_band_factor),
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
            (1.2..1.4).contains(&fit.h_band_factor),
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
    assert!(refused(base, 400.0).contains("400 °C is outside -20 to 250 °C"));
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
            prop_assert!(fit.h_band_factor >= 1.2 && fit.h_band_factor < 10.0);
            prop_assert_eq!(fit.compared.len(), figures.known().count());
            prop_assert!(fit.medium.resolve().is_ok());
        }
    }
}

/// Normal numbers from a fixed sequence: a linear congruential generator of 64 bits, by the method
/// of Box and Muller.
struct Scatter(u64);

impl Scatter {
    fn uniform(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6364136223846793005)
            .wrapping_add(1442695040888963407);
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn next(&mut self) -> f64 {
        let (a, b) = (self.uniform(), self.uniform());
        (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

/// Temperature of a computed curve, by the cubic with its temperatures and rates: straight lines
/// are not good enough for readings that are to be exact.
fn temperature_c(curve: &CoolingCurve, time_s: f64) -> f64 {
    let after = curve.time_s.partition_point(|t| *t <= time_s);
    let i = after.clamp(1, curve.time_s.len() - 1);
    let width = curve.time_s[i] - curve.time_s[i - 1];
    let x = ((time_s - curve.time_s[i - 1]) / width).clamp(0.0, 1.0);
    let [from, to] = [i - 1, i].map(|i| curve.temperature_c[i]);
    let [first, last] = [i - 1, i].map(|i| -width * curve.rate_k_per_s[i] - (to - from));
    from + x * (to - from) + x * (1.0 - x) * (first * (1.0 - x) - last * x)
}

/// Readings of the computed probe, time in s and °C: `idle_s` in the furnace, then the bath to
/// near its temperature or for 100 s.
fn readings(name: &str, idle_s: f64, per_s: f64, noise_k: f64) -> Vec<[f64; 2]> {
    let curve = probe(listed(name)).unwrap().curve;
    let mut scatter = Scatter(7);
    let last_s = curve.time_s.last().unwrap().min(100.0);
    let count = ((idle_s + last_s) * per_s) as u32;
    (0..=count)
        .map(|i| {
            let time_s = f64::from(i) / per_s;
            [
                time_s,
                temperature_c(&curve, time_s - idle_s) + noise_k * scatter.next(),
            ]
        })
        .collect()
}

/// As text, each line by `line` of time and temperature.
fn text(heading: &str, readings: &[[f64; 2]], line: impl Fn(f64, f64) -> String) -> String {
    let mut text = heading.to_owned();
    for [time_s, temperature_c] in readings {
        writeln!(text, "{}", line(*time_s, *temperature_c)).unwrap();
    }
    text
}

fn read(text: &str) -> ProbeCurve {
    ProbeCurve::read(text, &CurveOptions::default()).unwrap_or_else(|e| panic!("{e}"))
}

fn read_error(text: &str) -> String {
    let error = ProbeCurve::read(text, &CurveOptions::default()).expect_err("a refusal");
    plain(&error)
}

fn comma(value: f64, decimals: usize) -> String {
    format!("{value:.decimals$}").replace('.', ",")
}

#[test]
fn a_curve_is_the_same_in_every_form() {
    let readings = readings("oil_fast", 0.0, 8.0, 0.0);
    let plain = read(&text("", &readings, |t, c| format!("{t:.3},{c:.3}")));
    assert_eq!(
        plain.notes,
        [
            CurveNote::ScaleGuessed(TemperatureScale::Celsius),
            CurveNote::SecondsAssumed
        ]
    );
    approx::assert_abs_diff_eq!(plain.start_c, 850.0, epsilon = 0.2);
    let fahrenheit = |c: f64| 32.0 + 1.8 * c;
    let forms = [
        text("time (s);temperature (°C)\n", &readings, |t, c| {
            format!("{t:.3};{c:.3}")
        }),
        text(
            "\u{feff}Zeit [s];Temperatur [°C]\r\n",
            &readings,
            |t, c| format!("{};{}\r", comma(t, 3), comma(c, 3)),
        ),
        text("Probe 12\n\nTime\tTemp\ns\t°C\n", &readings, |t, c| {
            format!("{t:.3}\t{c:.3}")
        }),
        text("", &readings, |t, c| {
            format!("  {}   {} ", comma(t, 3), comma(c, 3))
        }),
        text("t_ms,T_F\n", &readings, |t, c| {
            format!("{:.0},{:.3}", 1000.0 * t, fahrenheit(c))
        }),
        text("", &readings, |t, c| {
            format!("{:.3} {:.0}", fahrenheit(c), 1000.0 * t)
        }),
        text("time (min),temperature (C)\n", &readings, |t, c| {
            format!("{:.9},{c:.3}", t / 60.0)
        }),
        text("clock in min,degC\n", &readings, |t, c| {
            format!("00:{:02}:{:06.3},{c:.3}", (t / 60.0) as u32, t % 60.0)
        }),
        text(
            "no,elapsed s,\"furnace, old\",probe temperature °C,rate °C/s\n",
            &readings,
            |t, c| format!("1,{t:.3},851,{c:.3},3.5"),
        ),
    ];
    for form in forms {
        let curve = read(&form);
        let head: String = form.chars().take(60).collect();
        for ([t, c], [time_s, temperature_c]) in curve.points().zip(plain.points()) {
            approx::assert_abs_diff_eq!(t, time_s, epsilon = 1e-6);
            assert!(
                (c - temperature_c).abs() < 2e-3,
                "{head}: {t} s {c} {temperature_c}"
            );
        }
        assert_eq!(curve.points().count(), plain.points().count(), "{head}");
    }
}

#[test]
fn columns_and_scale_may_be_told() {
    let readings = readings("oil_fast", 0.0, 8.0, 0.0);
    let three = text("", &readings, |t, c| format!("20,{c:.2},{t:.3}"));
    assert!(read_error(&three).contains("1 with 20, 2 with 850.00, 3 with 0.000"));
    let options = CurveOptions {
        columns: Some([3, 2]),
        scale: Some(TemperatureScale::Celsius),
        entry_s: None,
    };
    let curve = ProbeCurve::read(&three, &options).unwrap();
    let chosen = CurveNote::ColumnsChosen {
        time: 3,
        temperature: 2,
        of: 3,
    };
    assert_eq!(curve.notes, [chosen, CurveNote::SecondsAssumed]);
    let wrong = CurveOptions {
        columns: Some([0, 2]),
        ..options
    };
    let error = plain(&ProbeCurve::read(&three, &wrong).unwrap_err());
    assert!(
        error.contains("columns 0 and 2 are asked for; there are 1 to 3"),
        "{error}"
    );
    let wrong = CurveOptions {
        entry_s: Some(1e9),
        ..options
    };
    let error = plain(&ProbeCurve::read(&three, &wrong).unwrap_err());
    assert!(
        error.contains("1000000000 s is outside the record, 0 to"),
        "{error}"
    );
    let wrong = CurveOptions {
        scale: Some(TemperatureScale::Fahrenheit),
        ..options
    };
    assert!(ProbeCurve::read(&three, &wrong).is_err());
}

#[test]
fn time_before_the_bath_is_found_and_cut_off() {
    for name in [
        "brine10",
        "water20",
        "polymer15",
        "oil_fast",
        "oil_medium",
        "oil_slow",
        "ref_fluid",
    ] {
        for noise_k in [0.0, 0.5] {
            let with_idle = readings(name, 3.37, 8.0, noise_k);
            let curve = read(&text("s,°C\n", &with_idle, |t, c| {
                format!("{t:.3},{c:.2}")
            }));
            let cut = curve.notes.iter().find_map(|note| match note {
                CurveNote::IdleCut(time_s) => Some(*time_s),
                _ => None,
            });
            approx::assert_abs_diff_eq!(cut.unwrap(), 3.37, epsilon = 0.08 + 0.3 * noise_k);
            approx::assert_abs_diff_eq!(curve.start_c, 850.0, epsilon = 1.0);
            let at_once = readings(name, 0.0, 8.0, noise_k);
            let curve = read(&text("s,°C\n", &at_once, |t, c| format!("{t:.3},{c:.2}")));
            assert!(curve.notes.is_empty(), "{name}: {:?}", curve.notes);
            let [first_s, _] = curve.points().next().unwrap();
            approx::assert_abs_diff_eq!(first_s, 0.125, epsilon = 1e-9);
        }
    }
}

#[test]
fn the_scatter_is_found_and_a_long_record_thinned_without_loss() {
    for noise_k in [0.1, 0.5, 2.0] {
        let short = readings("oil_medium", 0.0, 8.0, noise_k);
        let curve = read(&text("s,°C\n", &short, |t, c| format!("{t:.4},{c:.4}")));
        approx::assert_relative_eq!(curve.noise_k, noise_k, max_relative = 0.2);
    }
    let long = readings("oil_medium", 0.0, 1000.0, 0.5);
    assert!(long.len() > 40_000);
    let curve = read(&text("s,°C\n", &long, |t, c| format!("{t:.4},{c:.4}")));
    approx::assert_relative_eq!(curve.noise_k, 0.5, max_relative = 0.05);
    assert!(
        (400..=1001).contains(&curve.points().count()),
        "{}",
        curve.points().count()
    );
    let exact = probe(listed("oil_medium")).unwrap().curve;
    for [t, c] in curve.points() {
        approx::assert_abs_diff_eq!(c, temperature_c(&exact, t), epsilon = 1.0);
    }
    // Readings of one time are averaged.
    let twice = text("s,°C\n", &readings("oil_medium", 0.0, 8.0, 0.0), |t, c| {
        format!("{t:.3},{:.3}\n{t:.3},{:.3}", c + 1.0, c - 1.0)
    });
    let curve = read(&twice);
    assert!(matches!(curve.notes[..], [CurveNote::Repeated(count)] if count > 300));
    for [t, c] in curve.points() {
        approx::assert_abs_diff_eq!(c, temperature_c(&exact, t), epsilon = 0.01);
    }
}

#[test]
fn what_is_no_probe_curve_is_refused_with_the_line() {
    let good = readings("oil_fast", 0.0, 8.0, 0.0);
    let with = |change: &dyn Fn(usize, f64, f64) -> String| {
        let mut text = "s,°C\n".to_owned();
        for (i, [t, c]) in good.iter().enumerate() {
            text += &(change(i, *t, *c) + "\n");
        }
        text
    };
    let at_20 = |line: &'static str| {
        with(&move |i, t, c| {
            if i == 18 {
                line.to_owned()
            } else {
                format!("{t:.3},{c:.2}")
            }
        })
    };
    for (text, words) in [
        (String::new(), "no line has two numbers"),
        ("time,temperature\n".to_owned(), "no line has two numbers"),
        (at_20("2.25,hot"), "line 20: “hot” is no temperature"),
        (at_20("late,700"), "line 20: “late” is no time"),
        (at_20("2.25,nan"), "line 20: “nan” is no temperature"),
        (
            at_20("2.25,9999"),
            "line 20: 9999 °C is outside -80 to 1100 °C",
        ),
        (at_20("0.5,700"), "line 20: the time 0.5 is before 2.125"),
        (at_20("2.25,1050"), "line 20: from 7"),
        (
            with(&|_, t, c| format!("{t:.3},{:.2}", c - 150.0)),
            "line 2: the probe is at most 700°",
        ),
        (
            with(&|_, t, c| format!("{:.0},{c:.2}", 3e6 * t)),
            "units of time; a quenchant takes 0.2 to 150 s",
        ),
        (
            with(&|i, t, c| {
                if i < 30 {
                    format!("{t:.3},{c:.2}")
                } else {
                    String::new()
                }
            }),
            "it has to go below 400 °C",
        ),
        (
            with(&|i, t, c| {
                if (20..45).contains(&i) {
                    String::new()
                } else {
                    format!("{t:.3},{c:.2}")
                }
            }),
            "line 47: from 7",
        ),
        (
            text("", &good, |t, c| format!("{},{}", comma(t, 2), comma(c, 1))),
            "line 1: the commas may part",
        ),
        (
            text("time,a,b\n", &good, |t, c| format!("{t:.3},{c:.1},{c:.1}")),
            "1 time, 2 a, 3 b",
        ),
    ] {
        let error = read_error(&text);
        assert!(error.contains(words), "{words}: {error}");
    }
    let empty_fields = with(&|i, t, c| {
        if i % 9 == 5 {
            format!("{t:.3},")
        } else {
            format!("{t:.3},{c:.2}")
        }
    });
    assert!(matches!(read(&empty_fields).notes[..], [CurveNote::Empty(count)] if count > 10));
}

proptest! {
    #[test]
    fn no_text_makes_the_reader_fail(text in any::<String>()) {
        let _ = ProbeCurve::read(&text, &CurveOptions::default());
    }

    #[test]
    fn no_table_makes_the_reader_fail(
        heading in "[a-zA-Z°;,\t ()\n]{0,40}",
        separator in prop::sample::select(vec![",", ";", "\t", " ", " , ", "|"]),
        rows in prop::collection::vec((-1e3..2e3_f64, -1e3..2e3_f64, any::<bool>()), 0..60),
        columns in prop::option::of((0..5_usize, 0..5_usize)),
        entry_s in prop::option::of(any::<f64>()),
    ) {
        let mut text = heading;
        for (a, b, sorted) in rows {
            let a = if sorted { text.len() as f64 } else { a };
            text += &format!("{a}{separator}{b}\n");
        }
        let options = CurveOptions { columns: columns.map(|(a, b)| [a, b]), scale: None, entry_s };
        let _ = ProbeCurve::read(&text, &options);
    }
}

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
        assert!((1.2..1.4).contains(&found.h_band_factor));
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
    assert!(refused(300.0).contains("outside -20 to 250 °C"));
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
