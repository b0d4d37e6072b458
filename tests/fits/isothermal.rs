//! The fit of the isothermal start times.
//!
//! Penalised least squares: nose times and which product makes the nose, half-martensite rates
//! from end-quench bands, the middles of those bands by the simulated bar, critical rates for
//! 95 % martensite, bainite starts of 1C-1.5Cr steel, pearlite starts of steel with molybdenum. Every coefficient is held to a prior. Whole
//! steels are left out in turn for the error told in the source file.

use super::{Errors, Fit, in_parallel};
use crate::rows::isothermal_fit::{Observation, observations};
use recalesce::numeric::least_squares::Normal;
use recalesce::sources::LeftOut;
use recalesce::sources::isothermal_fit::{
    BAINITE, FERRITE, HALF_RATES_LEFT_OUT, NOSES_LEFT_OUT, PEARLITE, REFERENCE_GRAIN_ASTM,
    START_TIMES, StartTime, with_residuals,
};
use recalesce::steel::Composition;

/// Coefficients of a product that are fitted.
const PER_PRODUCT: usize = 7;
/// Coefficients of all three.
const UNKNOWNS: usize = 3 * PER_PRODUCT;

/// The earlier fit of the same form, the prior of this one.
const PRIOR: [[f64; PER_PRODUCT]; 3] = [
    [0.828, -0.764, 2.871, 0.347, 0.576, 2.539, 4.145],
    [-0.224, 0.208, 1.705, 0.916, 0.602, 2.248, 5.071],
    [-4.342, 3.288, 1.427, 0.495, 0.431, 1.442, 1.356],
];
/// How far a coefficient may go from its prior: constant, C, Mn, Si, Ni, Cr, Mo.
const FREEDOM: [f64; PER_PRODUCT] = [1.0, 0.4, 0.15, 0.2, 0.1, 0.2, 0.3];

fn start_times(x: &[f64; UNKNOWNS]) -> [StartTime; 3] {
    let mut all = [FERRITE, PEARLITE, BAINITE];
    for (product, x) in all.iter_mut().zip(x.chunks(PER_PRODUCT)) {
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

/// What each coefficient of a product is multiplied with in a steel.
fn contents(steel: &Composition) -> [f64; PER_PRODUCT] {
    let steel = with_residuals(steel);
    std::array::from_fn(|k| {
        let mut x = [0.0; UNKNOWNS];
        x[k] = 1.0;
        let [ferrite, ..] = start_times(&x);
        StartTime { v: 0.0, ..ferrite }.composition_term(&steel, REFERENCE_GRAIN_ASTM)
    })
}

/// How far the logarithm of a start time is moved to see what follows.
const MOVED_LN: f64 = 0.05;

/// Residuals of an observation with their derivatives. A coefficient acts through the start time
/// of its product alone, so three of them give all.
fn linearised(o: &Observation, x: &[f64; UNKNOWNS]) -> Vec<([f64; UNKNOWNS], f64)> {
    let here = o.residuals(&start_times(x));
    let contents = contents(&o.austenite.composition);
    let mut rows: Vec<_> = here.iter().map(|r| ([0.0; UNKNOWNS], *r)).collect();
    for product in 0..3 {
        let mut moved = *x;
        moved[product * PER_PRODUCT] += MOVED_LN;
        let there = o.residuals(&start_times(&moved));
        for ((row, before), after) in rows.iter_mut().zip(there) {
            for (k, content) in contents.iter().enumerate() {
                row[product * PER_PRODUCT + k] = content * (after - *before) / MOVED_LN;
            }
        }
    }
    rows
}

/// What holds the coefficients to their prior.
fn penalties(x: &[f64; UNKNOWNS]) -> impl Iterator<Item = (usize, f64, f64)> {
    let free = |i: usize| 1.0 / FREEDOM[i % PER_PRODUCT];
    let prior = |i: usize| PRIOR[i / PER_PRODUCT][i % PER_PRODUCT];
    x.iter()
        .enumerate()
        .map(move |(i, x)| (i, free(i), (x - prior(i)) * free(i)))
}

fn sum_of_squares(observations: &[&Observation], x: &[f64; UNKNOWNS]) -> f64 {
    let set = start_times(x);
    let seen: f64 = observations
        .iter()
        .flat_map(|o| o.residuals(&set))
        .map(|r| r * r)
        .sum();
    seen + penalties(x).map(|(_, _, r)| r * r).sum::<f64>()
}

/// Gauss-Newton steps, halved while they make things worse.
fn fit(observations: &[&Observation]) -> [f64; UNKNOWNS] {
    let mut x: [f64; UNKNOWNS] = PRIOR.concat().try_into().unwrap();
    let mut least = sum_of_squares(observations, &x);
    for _ in 0..MOST_STEPS {
        let mut normal = Normal::<UNKNOWNS>::default();
        for o in observations {
            for (row, residual) in linearised(o, &x) {
                normal.add(&row, residual);
            }
        }
        for (i, slope, residual) in penalties(&x) {
            let mut row = [0.0; UNKNOWNS];
            row[i] = slope;
            normal.add(&row, residual);
        }
        let step = normal.step(0.0).unwrap();
        let better = [1.0, 0.5, 0.25, 0.125].into_iter().find_map(|part| {
            let moved = std::array::from_fn(|i| x[i] + part * step[i]);
            let sum = sum_of_squares(observations, &moved);
            (sum < least).then_some((moved, sum))
        });
        let Some((moved, sum)) = better else { break };
        let gain = least - sum;
        (x, least) = (moved, sum);
        if gain < SETTLED * least {
            break;
        }
    }
    x
}

/// Most steps of a fit, and the gain over the sum of squares with which it has settled.
const MOST_STEPS: usize = 8;
const SETTLED: f64 = 1e-3;

/// Steel, kind and error of one prediction.
type Told = (String, &'static str, f64);

fn told(observations: &[&Observation], set: &[StartTime; 3]) -> Vec<Told> {
    let of = |o: &&Observation| {
        let errors = o.errors(set).into_iter();
        let steel = o.steel.clone();
        errors
            .map(move |(kind, error)| (steel.clone(), kind, error))
            .collect::<Vec<_>>()
    };
    observations.iter().flat_map(of).collect()
}

/// What is told of a fit: kind of observation, title, unit, and what the program tells of its error.
const TOLD: [(&str, &str, &str, Option<LeftOut>); 7] = [
    (
        "nose time",
        "isothermal: first nose",
        "factor",
        Some(NOSES_LEFT_OUT),
    ),
    (
        "half rate",
        "isothermal: rate for half martensite",
        "factor",
        Some(HALF_RATES_LEFT_OUT),
    ),
    (
        "full rate",
        "isothermal: rate for 95 % martensite",
        "factor",
        None,
    ),
    (
        "bainite",
        "isothermal: bainite of 1C-1.5Cr steel",
        "factor",
        None,
    ),
    (
        "pearlite",
        "isothermal: pearlite of steel with Mo",
        "factor",
        None,
    ),
    ("bar", "isothermal: bar of the middle heat", "HRC", None),
    (
        "lean and rich bar",
        "isothermal: mean of lean and rich bar",
        "HRC",
        None,
    ),
];

/// Fits all coefficients to all steels and with each of them left out; those of the program have to
/// come out. Takes some minutes.
pub fn fitted() -> Vec<Fit> {
    let observations = observations();
    let all: Vec<&Observation> = observations.iter().collect();
    let mut steels: Vec<&str> = observations.iter().map(|o| o.steel.as_str()).collect();
    steels.sort_unstable();
    steels.dedup();
    // The whole is the fold that leaves out nothing.
    let folds: Vec<Option<&str>> = steels.into_iter().map(Some).chain([None]).collect();
    let done = in_parallel(&folds, |fold| {
        let kept: Vec<&Observation> = match fold {
            Some(steel) => all.iter().filter(|o| o.steel != *steel).copied().collect(),
            None => all.clone(),
        };
        start_times(&fit(&kept))
    });
    let mut left_out = Vec::new();
    for (fold, set) in folds.iter().zip(&done) {
        let Some(steel) = fold else { continue };
        let out: Vec<&Observation> = all.iter().filter(|o| o.steel == *steel).copied().collect();
        left_out.extend(told(&out, set));
    }
    let set = done.last().expect("the whole");
    let found = set.iter().zip(START_TIMES);
    for (fitted, stored) in found {
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
    let (fitted, stored) = (told(&all, set), told(&all, &START_TIMES));
    let of = |list: &[Told], kind: &str| {
        Errors::of(list.iter().filter(|told| told.1 == kind).map(|told| told.2))
    };
    let fits = TOLD.iter().map(|&(kind, title, unit, told)| {
        let mut steels: Vec<&str> = left_out
            .iter()
            .filter(|told| told.1 == kind)
            .map(|told| told.0.as_str())
            .collect();
        steels.sort_unstable();
        steels.dedup();
        Fit {
            title,
            unit,
            fold: "steel",
            folds: steels.len(),
            fitted: of(&fitted, kind),
            left_out: of(&left_out, kind),
            stored: of(&stored, kind),
            told,
        }
    });
    fits.collect()
}
