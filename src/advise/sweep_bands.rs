//! How sure the numbers of a sweep are: the spread of a route at steps of it.

use super::error::AdviseError;
use super::inputs::Tolerances;
use super::spread::{Quantiles, Spreads, spread};
use super::sweep::{Numbers, SweepRun, SweptInput};
use crate::route::Route;
use serde::{Deserialize, Serialize};

/// Steps at which the band is worked out, and cases at each: its ends are known to a fifth of its
/// width.
const BAND_STEPS: u32 = 11;
/// Cases at each step.
const BAND_CASES: u32 = 64;

/// Nine in ten of what may come of a route at one step of a sweep.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SweepBand {
    /// The input, in its unit.
    pub input: f64,
    /// One in twenty lies below. The undissolved carbide is not told.
    pub low: Numbers,
    /// One in twenty lies above.
    pub high: Numbers,
}

/// The bands of a sweep, one step at a time.
pub struct SweepBandRun {
    route: Route,
    input: SweptInput,
    tolerances: Tolerances,
    seed: u32,
    inputs: Vec<f64>,
    done: usize,
    /// What is done so far; steps without an outcome are left out.
    pub bands: Vec<SweepBand>,
}

impl SweepBandRun {
    /// Prepares it.
    ///
    /// # Errors
    /// As [`super::sweep`], and tolerances out of range.
    pub fn new(
        route: &Route,
        input: SweptInput,
        range: [f64; 2],
        tolerances: &Tolerances,
        seed: u32,
    ) -> Result<Self, AdviseError> {
        SweepRun::new(route, input, range, BAND_STEPS)?;
        tolerances.check()?;
        let [from, to] = range;
        let at = |step: u32| from + (to - from) * f64::from(step) / f64::from(BAND_STEPS - 1);
        Ok(Self {
            route: route.clone(),
            input,
            tolerances: *tolerances,
            seed,
            inputs: (0..BAND_STEPS).map(at).collect(),
            done: 0,
            bands: Vec::new(),
        })
    }

    /// Works out the next step; false when all are done.
    pub fn step(&mut self) -> bool {
        let Some(&input) = self.inputs.get(self.done) else {
            return false;
        };
        self.done += 1;
        let route = self.input.put(&self.route, input);
        if let Ok(spreads) = spread(&route, &self.tolerances, BAND_CASES, self.seed) {
            self.bands.push(SweepBand {
                input,
                low: end(&spreads, |quantiles| quantiles.p05),
                high: end(&spreads, |quantiles| quantiles.p95),
            });
        }
        true
    }

    /// Part of the steps that is done.
    #[must_use]
    pub fn progress(&self) -> f64 {
        self.done as f64 / self.inputs.len().max(1) as f64
    }
}

/// One end of the bands of all numbers.
fn end(spreads: &Spreads, of: fn(&Quantiles) -> f64) -> Numbers {
    let end = |quantiles: &Option<Quantiles>| quantiles.as_ref().map(of);
    Numbers {
        carbon_wt: end(&spreads.carbon_wt),
        carbide: None,
        grain_astm: end(&spreads.grain_astm),
        margin_factor: end(&spreads.margin_factor),
        quenched_hrc: end(&spreads.quenched_hrc),
        quenched_austenite: end(&spreads.quenched_austenite),
        final_hrc: end(&spreads.final_hrc),
        final_austenite: end(&spreads.final_austenite),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The band of a step is the spread of that route, and holds the plan within.
    #[test]
    fn a_step_has_the_spread_of_its_route() {
        let mut route = Route::example();
        route.section = crate::heat::Section::Plate { thickness_mm: 3.0 };
        let tolerances = Tolerances::default();
        let mut run =
            SweepBandRun::new(&route, SweptInput::TemperC, [150.0, 300.0], &tolerances, 1).unwrap();
        assert!(run.step());
        let first = run.bands[0];
        let there = SweptInput::TemperC.put(&route, 150.0);
        let spreads = spread(&there, &tolerances, BAND_CASES, 1).unwrap();
        assert_eq!(first.low.final_hrc, spreads.final_hrc.map(|q| q.p05));
        let planned = Numbers::of(&there).unwrap().final_hrc.unwrap();
        assert!(first.low.final_hrc.unwrap() < planned && planned < first.high.final_hrc.unwrap());
        assert!(SweepBandRun::new(&route, SweptInput::SoakC, [0.0, 9.0], &tolerances, 1).is_err());
    }
}
