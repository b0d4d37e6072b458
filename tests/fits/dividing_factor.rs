//! The fit of the dividing factor of the end-quench curve.

use super::{Errors, Fit};
use crate::rows::bar::{Band, bands};
use crate::rows::isothermal_fit::family;
use crate::rows::transform::austenite;
use recalesce::numeric::least_squares::minimise;
use recalesce::sources::astm_a255::initial_hrc;
use recalesce::sources::dividing_factor_fit::{DividingFactor, FITTED, LEFT_OUT};
use recalesce::transform::end_quench;
use std::collections::BTreeSet;

/// What each constant is thought to be before any data, in round numbers, and how far it may be off.
const PRIOR: [(f64, f64); 5] = [(1.5, 0.75), (0.3, 0.3), (2.0, 1.0), (1.5, 0.5), (1.5, 0.5)];
/// Scatter of a position, HRC.
const SCATTER_HRC: f64 = 2.0;
const MM_PER_INCH: f64 = 25.4;
/// Where the curve of the program ends.
const LEAST_HRC: f64 = 20.0;

/// A band with the ideal diameter of the middle of its chemical range, and the steel that it is of.
struct Steel {
    name: String,
    band: Band,
    di_inch: f64,
    initial_hrc: f64,
}

fn steels() -> Vec<Steel> {
    let steel = |band: Band| {
        let composition = austenite(&band.composition, 7.0).composition;
        let curve = end_quench(&composition, 7.0).expect("a curve");
        Steel {
            name: family(&band.steel),
            band,
            di_inch: curve.ideal_diameter_mm / MM_PER_INCH,
            initial_hrc: initial_hrc(composition.c),
        }
    };
    bands().into_iter().map(steel).collect()
}

fn factor(x: &[f64; 5]) -> DividingFactor {
    let [fall, fall_power, reach, reach_power, steepness] = *x;
    DividingFactor {
        fall,
        fall_power,
        reach,
        reach_power,
        steepness,
    }
}

fn misses<'a>(factor: &'a DividingFactor, steel: &'a Steel) -> impl Iterator<Item = f64> + 'a {
    steel.band.positions.iter().map(|position| {
        let sixteenths = 16.0 * position.at_mm / MM_PER_INCH;
        let hrc = steel.initial_hrc / factor.at(sixteenths, steel.di_inch);
        hrc.max(LEAST_HRC) - position.middle_hrc
    })
}

fn fit(steels: &[&Steel]) -> DividingFactor {
    let residuals = |x: &[f64; 5]| {
        if x[2] <= 0.0 || x[4] <= 0.0 {
            return None;
        }
        let factor = factor(x);
        let mut all: Vec<f64> = steels
            .iter()
            .flat_map(|steel| {
                misses(&factor, steel)
                    .map(|miss| miss / SCATTER_HRC)
                    .collect::<Vec<_>>()
            })
            .collect();
        all.extend(
            x.iter()
                .zip(PRIOR)
                .map(|(x, (middle, off))| (x - middle) / off),
        );
        Some(all)
    };
    let start = PRIOR.map(|(middle, _)| middle);
    let found = minimise(start, [1e-5; 5], residuals).expect("the priors determine all");
    factor(&found.at)
}

/// Fits the constants to all steels and with each of them left out.
pub fn fitted() -> Fit {
    let steels = steels();
    let all: Vec<&Steel> = steels.iter().collect();
    let errors = |factor: &DividingFactor| {
        Errors::of(
            steels
                .iter()
                .flat_map(|s| misses(factor, s).collect::<Vec<_>>()),
        )
    };
    let names: BTreeSet<&str> = steels.iter().map(|s| s.name.as_str()).collect();
    let left_out = names.iter().flat_map(|name| {
        let (out, kept): (Vec<&Steel>, Vec<&Steel>) = steels.iter().partition(|s| s.name == *name);
        let factor = fit(&kept);
        out.into_iter()
            .flat_map(move |steel| misses(&factor, steel).collect::<Vec<_>>())
    });
    Fit {
        title: "dividing factor of the end-quench curve",
        unit: "HRC",
        fold: "steel",
        folds: names.len(),
        fitted: errors(&fit(&all)),
        left_out: Errors::of(left_out),
        stored: errors(&FITTED),
        told: Some(LEFT_OUT),
    }
}
