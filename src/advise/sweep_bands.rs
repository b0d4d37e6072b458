//! How sure the numbers of a sweep are: the spread of a route at steps of it.

use super::error::AdviseError;
use super::inputs::Tolerances;
use super::learn::Correction;
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
    correction: Correction,
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
            correction: Correction::default(),
            done: 0,
            bands: Vec::new(),
        })
    }

    /// The same with what a logbook has taught, as [`SweepRun::counting_with`].
    #[must_use]
    pub fn counting_with(self, correction: &Correction) -> Self {
        Self {
            correction: correction.clone(),
            ..self
        }
    }

    /// Works out the next step; false when all are done.
    pub fn step(&mut self) -> bool {
        let Some(&input) = self.inputs.get(self.done) else {
            return false;
        };
        self.done += 1;
        let mut route = self.input.put(&self.route, input);
        route.taught = self.correction.taught(&route);
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
    use crate::advise::{Corrected, Furnace, Owner, UnknownKind};
    use crate::route::{MODELS, Thermocouple, trial};

    /// At every step it counts with what the logbook tells of that route: a furnace where it reaches the
    /// soak, the hardness after a temper as far as that was learnt.
    #[test]
    fn a_step_counts_with_what_the_logbook_tells_of_it() {
        let mut route = Route::example();
        route.section = crate::heat::Section::Plate { thickness_mm: 3.0 };
        route.thermocouple = Thermocouple::Checked;
        let heat = Owner::Heat {
            grade: route.grade.clone(),
            composition: route.composition,
            end_quench: Vec::new(),
        };
        let one = |kind, owner, value, tempers_c| Corrected {
            kind,
            owner,
            value,
            left_part: 0.5,
            runs: 3,
            tempers_c,
            half_band: None,
            entangled_with: Vec::new(),
        };
        let hardness = UnknownKind::TemperedHardness;
        let learnt = Correction {
            is_on: true,
            models: Some(MODELS.to_owned()),
            furnaces: vec![Furnace {
                name: "kiln".to_owned(),
                least_c: 100.0,
                most_c: 1100.0,
                band_k: route.furnace_band_k,
                offset_k: 0.0,
                thermocouple: Thermocouple::Checked,
                holds: true,
            }],
            learnt: vec![
                one(
                    UnknownKind::FurnaceOffset,
                    Owner::Furnace(Some(0)),
                    9.0,
                    None,
                ),
                one(hardness, heat, -1.5, Some([180.0, 180.0])),
            ],
        };
        let range = [180.0, 480.0];
        let steps = |learnt: &Correction| {
            let run = SweepRun::new(&route, SweptInput::TemperC, range, 3).unwrap();
            let mut run = run.counting_with(learnt);
            while run.step() {}
            run.points
        };
        let [plain, with] = [Correction::default(), learnt.clone()].map(|learnt| steps(&learnt));
        let mut fell = Vec::new();
        for (plain, with) in plain.iter().zip(&with) {
            let at = SweptInput::TemperC.put(&route, with.input);
            let off = learnt.taught(&at).unwrap().off;
            assert_eq!(off.soak_k, 9.0 - route.furnace_offset_k);
            let tried = trial(&at, &off).unwrap();
            let hrc = tried.finished(&at).unwrap().hardness.unwrap();
            assert_eq!(with.numbers.final_hrc, Some(hrc.hrc_carried()));
            assert!(with.numbers.carbon_wt > plain.numbers.carbon_wt);
            fell.push(off.tempered_hrc);
        }
        assert_eq!(fell, [-1.5, 0.0, 0.0]);
        let off = Correction {
            is_on: false,
            ..learnt.clone()
        };
        assert_eq!(steps(&off), plain);
        // So do the bands: narrower and lower.
        let tolerances = Tolerances::default();
        let first = |learnt: &Correction| {
            let run = SweepBandRun::new(&route, SweptInput::TemperC, range, &tolerances, 1);
            let mut run = run.unwrap().counting_with(learnt);
            run.step();
            [run.bands[0].low, run.bands[0].high].map(|end| end.final_hrc.unwrap())
        };
        let [[low, high], [low_with, high_with]] =
            [Correction::default(), learnt].map(|learnt| first(&learnt));
        assert!(low_with < low && high_with < high - 1.0);
        assert!(high_with - low_with < high - low);
    }

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
