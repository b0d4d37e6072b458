//! A probe curve is read from text, in every form that instruments write; what is none is refused.

use super::simulated_probe::{read, readings, temperature_c, text};
use super::{listed, plain};
use proptest::prelude::*;
use recalesce::heat::{CurveNote, CurveOptions, ProbeCurve, probe};
use recalesce::units::TemperatureScale;

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
            "line 20: 9999 °C is outside −80 to 1100 °C",
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
