//! The fit of the isothermal start times, to be run again by
//! `cargo test --test isothermal_fit -- --ignored --nocapture`.
//!
//! Penalised least squares: nose times and which product makes the nose, half-martensite rates
//! from end-quench bands, critical rates for 95 % martensite, bainite starts of 1C-1.5Cr steel.
//! Every coefficient is held to a prior. Whole steels are left out in turn for the error told in
//! the source file.

#![cfg(not(target_arch = "wasm32"))]

mod rows;

use recalesce::sources::isothermal_fit::{BAINITE, FERRITE, PEARLITE, START_TIMES, StartTime};
use recalesce::transform::{Austenite, Kinetics, Product};
use rows::transform::{
    self as transform_rows, austenite, grain, half_martensite_rates, read, usually_dissolved,
};

const CHECKS: &str = include_str!("checks/transformations.csv");

#[derive(Debug, Clone, Copy)]
enum Seen {
    /// Time of the first nose and whether bainite makes it.
    Nose { time_s: f64, bainite: bool },
    /// Rate for a martensite fraction.
    Rate {
        rate_k_per_s: f64,
        martensite: f64,
        sigma: f64,
    },
    /// 1 % bainite at a temperature.
    Bainite { temperature_c: f64, time_s: f64 },
}

#[derive(Debug, Clone)]
struct Observation {
    /// Observations of one steel are left out together.
    steel: String,
    austenite: Austenite,
    seen: Seen,
}

fn observations() -> Vec<Observation> {
    let mut all = Vec::new();
    let lines = read(CHECKS);
    for line in &lines {
        let get = |name| line.get(name);
        let Ok(value) = get("value").parse::<f64>() else {
            continue;
        };
        let (steel, text, condition) = (get("steel"), get("composition"), get("condition"));
        let family = match steel.as_str() {
            "42CrMo4" => "4140".to_owned(),
            "100Cr6" => "52100".to_owned(),
            other => other.split(' ').next().unwrap_or_default().to_owned(),
        };
        let mut push = |austenite, seen| {
            all.push(Observation {
                steel: family.clone(),
                austenite,
                seen,
            });
        };
        match get("quantity").as_str() {
            "IT start nose time (first product)" => {
                let nose_c = lines
                    .iter()
                    .find(|l| {
                        l.get("quantity") == "IT start nose temperature" && l.get("steel") == steel
                    })
                    .and_then(|l| l.get("value").parse::<f64>().ok())
                    .unwrap();
                let mut dissolved = austenite(&text, grain(&condition));
                if steel == "O1" {
                    // The row leaves out the tungsten of the grade.
                    dissolved.composition.w = 0.3;
                }
                push(
                    dissolved,
                    Seen::Nose {
                        time_s: value,
                        bainite: nose_c < 500.0,
                    },
                );
            }
            "critical cooling rate for full martensite" => push(
                usually_dissolved(&steel, &text, &condition),
                Seen::Rate {
                    rate_k_per_s: value,
                    martensite: 0.95,
                    sigma: 1.7,
                },
            ),
            "isothermal bainite start (1 %)" => {
                let temperature_c: f64 = condition
                    .split_whitespace()
                    .find_map(|w| w.parse().ok())
                    .unwrap();
                push(
                    austenite(transform_rows::BEARING, 9.0),
                    Seen::Bainite {
                        temperature_c,
                        time_s: value,
                    },
                );
            }
            _ => {}
        }
    }
    for row in half_martensite_rates() {
        let mut parts = row.case.split(';');
        let steel = parts.next().unwrap();
        let family = match steel {
            s if s.starts_with("42CrMo4") => "4140",
            s => s.trim_end_matches('H'),
        };
        all.push(Observation {
            steel: family.to_owned(),
            austenite: austenite(parts.next().unwrap(), 7.0),
            seen: Seen::Rate {
                rate_k_per_s: row.value,
                martensite: 0.5,
                sigma: 1.3,
            },
        });
    }
    all
}

/// Logarithmic errors in units of their scatter.
fn residuals(o: &Observation, start_times: &[StartTime; 3], out: &mut Vec<f64>) {
    let kinetics = Kinetics::with_start_times(&o.austenite, start_times).unwrap();
    match o.seen {
        Seen::Nose { time_s, bainite } => {
            let (mut first, mut other) = (f64::INFINITY, f64::INFINITY);
            for product in kinetics.products() {
                let (_, nose_s) = kinetics.nose(product);
                let slot = if (product == Product::Bainite) == bainite {
                    &mut first
                } else {
                    &mut other
                };
                *slot = slot.min(nose_s);
            }
            // The atlases estimate what lies under a second.
            let sigma: f64 = if time_s < 1.0 { 2.0 } else { 1.5 };
            out.push((first / time_s).ln() / sigma.ln());
            // The other kind must not come first.
            out.push((1.3 * time_s / other).ln().max(0.0) / 1.3_f64.ln());
        }
        Seen::Rate {
            rate_k_per_s,
            martensite,
            sigma,
        } => {
            let rate = kinetics.critical_cooling(martensite).unwrap().rate_k_per_s;
            out.push((rate / rate_k_per_s).ln() / sigma.ln());
        }
        Seen::Bainite {
            temperature_c,
            time_s,
        } => {
            let start_s = kinetics.start_s(Product::Bainite, temperature_c);
            // Six points of one curve count like two.
            out.push((start_s / time_s).ln() / 1.5_f64.ln() / 3.0_f64.sqrt());
        }
    }
}

/// The earlier fit of the same form, the prior of this one.
const PRIOR: [[f64; 7]; 3] = [
    [0.828, -0.764, 2.871, 0.347, 0.576, 2.539, 4.145],
    [-0.224, 0.208, 1.705, 0.916, 0.602, 2.248, 5.071],
    [-4.342, 3.288, 1.427, 0.495, 0.431, 1.442, 1.356],
];
/// How far a coefficient may go from its prior: constant, C, Mn, Si, Ni, Cr, Mo.
const FREEDOM: [f64; 7] = [1.0, 0.4, 0.15, 0.2, 0.1, 0.2, 0.3];

fn start_times(x: &[f64]) -> [StartTime; 3] {
    let mut all = [FERRITE, PEARLITE, BAINITE];
    for (product, x) in all.iter_mut().zip(x.chunks(7)) {
        product.constant = x[0];
        product.c = x[1];
        product.mn = x[2];
        product.si = x[3];
        product.ni = x[4];
        product.cr = x[5];
        product.mo = x[6];
    }
    all
}

fn objective(observations: &[&Observation], x: &[f64]) -> Vec<f64> {
    let mut out = Vec::new();
    let set = start_times(x);
    for o in observations {
        residuals(o, &set, &mut out);
    }
    for (i, value) in x.iter().enumerate() {
        out.push((value - PRIOR[i / 7][i % 7]) / FREEDOM[i % 7]);
    }
    out
}

fn sum_of_squares(r: &[f64]) -> f64 {
    r.iter().map(|x| x * x).sum()
}

/// Levenberg-Marquardt with numerical derivatives.
fn fit(observations: &[&Observation]) -> Vec<f64> {
    let mut x: Vec<f64> = PRIOR.concat();
    let n = x.len();
    let mut damping = 1e-2;
    let mut r = objective(observations, &x);
    for _ in 0..30 {
        let columns: Vec<Vec<f64>> = (0..n)
            .map(|i| {
                let mut moved = x.clone();
                moved[i] += 1e-3;
                let rm = objective(observations, &moved);
                rm.iter().zip(&r).map(|(a, b)| (a - b) / 1e-3).collect()
            })
            .collect();
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let mut better = false;
        for _ in 0..8 {
            let mut m = vec![vec![0.0; n + 1]; n];
            for i in 0..n {
                for j in 0..n {
                    m[i][j] =
                        dot(&columns[i], &columns[j]) * if i == j { 1.0 + damping } else { 1.0 };
                }
                m[i][n] = -dot(&columns[i], &r);
            }
            let step = solve(m);
            let moved: Vec<f64> = x.iter().zip(&step).map(|(a, b)| a + b).collect();
            let rm = objective(observations, &moved);
            if sum_of_squares(&rm) < sum_of_squares(&r) * (1.0 - 1e-6) {
                x = moved;
                r = rm;
                damping *= 0.3;
                better = true;
                break;
            }
            damping *= 5.0;
        }
        if !better {
            break;
        }
    }
    x
}

fn solve(mut m: Vec<Vec<f64>>) -> Vec<f64> {
    let n = m.len();
    for i in 0..n {
        let pivot = (i..n)
            .max_by(|a, b| m[*a][i].abs().total_cmp(&m[*b][i].abs()))
            .unwrap();
        m.swap(i, pivot);
        let (done, rest) = m.split_at_mut(i + 1);
        for row in rest {
            let f = row[i] / done[i][i];
            for (value, above) in row.iter_mut().zip(&done[i]).skip(i) {
                *value -= f * above;
            }
        }
    }
    let mut x = vec![0.0; n];
    for i in (0..n).rev() {
        x[i] = (m[i][n] - (i + 1..n).map(|j| m[i][j] * x[j]).sum::<f64>()) / m[i][i];
    }
    x
}

/// Kind of an observation and the logarithm of predicted over seen.
fn errors(o: &Observation, set: &[StartTime; 3]) -> (&'static str, f64) {
    let kinetics = Kinetics::with_start_times(&o.austenite, set).unwrap();
    match o.seen {
        Seen::Nose { time_s, .. } => {
            let nose_s = kinetics
                .products()
                .map(|p| kinetics.nose(p).1)
                .fold(f64::INFINITY, f64::min);
            ("nose time", (nose_s / time_s).ln())
        }
        Seen::Rate {
            rate_k_per_s,
            martensite,
            ..
        } => {
            let kind = if martensite > 0.9 {
                "full rate"
            } else {
                "half rate"
            };
            let rate = kinetics.critical_cooling(martensite).unwrap().rate_k_per_s;
            (kind, (rate / rate_k_per_s).ln())
        }
        Seen::Bainite {
            temperature_c,
            time_s,
        } => (
            "bainite",
            (kinetics.start_s(Product::Bainite, temperature_c) / time_s).ln(),
        ),
    }
}

fn report(title: &str, list: &[(String, &'static str, f64)]) {
    for kind in ["nose time", "half rate", "full rate", "bainite"] {
        let of: Vec<f64> = list.iter().filter(|e| e.1 == kind).map(|e| e.2).collect();
        let n = of.len() as f64;
        let rms = (of.iter().map(|e| e * e).sum::<f64>() / n).sqrt().exp();
        let bias = (of.iter().sum::<f64>() / n).exp();
        let inside = of.iter().filter(|e| e.abs() <= 2.0_f64.ln()).count();
        println!("{title} {kind}: bias {bias:.2} rms {rms:.2} inside x2 {inside}/{n}");
    }
}

#[test]
#[ignore = "takes a minute; run by name to fit again"]
fn stored_coefficients_are_the_fit() {
    let observations = observations();
    let all: Vec<&Observation> = observations.iter().collect();
    let told = |o: &Observation, set: &[StartTime; 3]| {
        let (kind, error) = errors(o, set);
        (o.steel.clone(), kind, error)
    };
    report(
        "stored",
        &all.iter()
            .map(|o| told(o, &START_TIMES))
            .collect::<Vec<_>>(),
    );
    let mut steels: Vec<&str> = observations.iter().map(|o| o.steel.as_str()).collect();
    steels.sort_unstable();
    steels.dedup();
    let x = fit(&all);
    for product in x.chunks(7) {
        println!("   {product:.3?}");
    }
    let set = start_times(&x);
    let list: Vec<_> = all.iter().map(|o| told(o, &set)).collect();
    for (steel, kind, error) in &list {
        println!("   {steel} {kind} x{:.2}", error.exp());
    }
    report("fitted", &list);
    let left_out: Vec<_> = steels
        .iter()
        .flat_map(|steel| {
            let kept: Vec<&Observation> =
                all.iter().filter(|o| o.steel != *steel).copied().collect();
            let set = start_times(&fit(&kept));
            all.iter()
                .filter(|o| o.steel == *steel)
                .map(|o| told(o, &set))
                .collect::<Vec<_>>()
        })
        .collect();
    report("left out", &left_out);
    for (fitted, stored) in set.iter().zip(START_TIMES) {
        let pairs = [
            (fitted.constant, stored.constant),
            (fitted.c, stored.c),
            (fitted.mn, stored.mn),
            (fitted.si, stored.si),
            (fitted.ni, stored.ni),
            (fitted.cr, stored.cr),
            (fitted.mo, stored.mo),
        ];
        assert!(pairs.iter().all(|(a, b)| (a - b).abs() < 0.03), "{pairs:?}");
    }
}
