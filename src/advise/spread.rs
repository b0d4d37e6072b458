//! How sure an outcome is: a sample of all that might come of a route, over what is open about the
//! furnace, the steel, the piece, the quenchant and the models.

use super::case::{Case, coordinates};
use super::error::{AdviseError, check};
use super::inputs::{OpenInput, Tolerances, open_inputs};
use super::points::point;
use crate::numeric::order;
use crate::numeric::quantile::{mean_and_sd, quantile};
use crate::phases::PhaseError;
use crate::route::{Route, RouteError, Stage, Trial, TrialSteel};
use crate::soak::SoakError;
use serde::{Deserialize, Serialize};

/// Fewest and most cases of a sample.
const CASES: (u32, u32) = (16, 16_384);
/// Cases that are enough for a band: its ends are then known to about a tenth of its width.
pub const USUAL_CASES: u32 = 256;

/// Where a number lies over the cases of a sample.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Quantiles {
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub sd: f64,
    /// One in twenty lies below.
    pub p05: f64,
    /// A quarter lies below.
    pub p25: f64,
    /// Half lies below.
    pub p50: f64,
    /// Three quarters lie below.
    pub p75: f64,
    /// Nineteen in twenty lie below.
    pub p95: f64,
}

impl Quantiles {
    /// Between which readings nine in ten lie, of a tester that may be off by so much, nine in ten: about,
    /// as the two add up where both are normal.
    #[must_use]
    pub fn as_read(&self, error: f64) -> [f64; 2] {
        [
            self.p50 - error.hypot(self.p50 - self.p05),
            self.p50 + error.hypot(self.p95 - self.p50),
        ]
    }

    /// Those of values in any order; none of fewer than two.
    pub(super) fn of(values: impl Iterator<Item = f64>) -> Option<Self> {
        let mut values: Vec<f64> = values.filter(|value| value.is_finite()).collect();
        order::sort_by(&mut values, f64::total_cmp);
        let (mean, sd) = mean_and_sd(&values)?;
        let at = |part| quantile(&values, part);
        Some(Self {
            mean,
            sd,
            p05: at(0.05)?,
            p25: at(0.25)?,
            p50: at(0.5)?,
            p75: at(0.75)?,
            p95: at(0.95)?,
        })
    }
}

/// How sure an outcome is. What the models do not reach is none.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Spreads {
    /// Seed of the sample: the same one gives the same numbers.
    pub seed: u32,
    /// Cases with an outcome.
    pub cases: usize,
    /// Cases without one: too cold to harden, or outside the models.
    pub refused: usize,
    /// Of these the ones that do not reach A1: they do not harden and do not meet the target.
    pub too_cold: usize,
    /// Cases whose hardness after the last step the models do not tell, refused or not.
    pub outside_models: usize,
    /// What was open, with its distribution.
    pub inputs: Vec<OpenInput>,
    /// Carbon in solution, wt % of the austenite.
    pub carbon_wt: Option<Quantiles>,
    /// ASTM grain number.
    pub grain_astm: Option<Quantiles>,
    /// Factor by which the quench may be slower and still harden.
    pub margin_factor: Option<Quantiles>,
    /// Part in which the place that decides hardens: of the cases whose margin the models tell, and
    /// those that are too cold.
    pub hardens_part: Option<f64>,
    /// As quenched, HRC; below 20 as older tables carry the scale on.
    pub quenched_hrc: Option<Quantiles>,
    /// Martensite as quenched, volume fraction.
    pub quenched_martensite: Option<Quantiles>,
    /// Retained austenite as quenched, volume fraction.
    pub quenched_austenite: Option<Quantiles>,
    /// After the last step, HRC.
    pub final_hrc: Option<Quantiles>,
    /// Retained austenite after the last step, volume fraction.
    pub final_austenite: Option<Quantiles>,
    /// Part in which the hardness after the last step lies in the target: of all cases but those
    /// outside the models.
    pub meets_target_part: Option<f64>,
}

/// How sure a route is.
///
/// # Errors
/// A route without an outcome, tolerances or a number of cases out of range, or no case with an
/// outcome.
pub fn spread(
    route: &Route,
    tolerances: &Tolerances,
    cases: u32,
    seed: u32,
) -> Result<Spreads, AdviseError> {
    let mut run = SpreadRun::new(route, tolerances, cases, seed)?;
    while run.step() {}
    run.so_far()
}

/// The sample of a spread, one case at a time: a worker may tell how far it is, show what there is
/// so far, and stop by dropping it.
pub struct SpreadRun {
    route: Route,
    steel: TrialSteel,
    inputs: Vec<OpenInput>,
    cases: u32,
    seed: u32,
    done: u32,
    trials: Vec<Trial>,
    too_cold: usize,
    first_refusal: Option<RouteError>,
}

impl SpreadRun {
    /// Prepares a sample.
    ///
    /// # Errors
    /// As [`spread`].
    pub fn new(
        route: &Route,
        tolerances: &Tolerances,
        cases: u32,
        seed: u32,
    ) -> Result<Self, AdviseError> {
        tolerances.check()?;
        let (fewest, most) = CASES;
        check("cases", cases.into(), (fewest.into(), most.into()), "")?;
        let steel = TrialSteel::of(route)?;
        let planned = steel.trial(route, &route.taught().off)?;
        Ok(Self {
            inputs: open_inputs(route, &planned, tolerances)?,
            route: route.clone(),
            steel,
            cases,
            seed,
            done: 0,
            trials: Vec::new(),
            too_cold: 0,
            first_refusal: None,
        })
    }

    /// Computes the next case; false when all are done.
    pub fn step(&mut self) -> bool {
        if self.done >= self.cases {
            return false;
        }
        match self.trial(self.done) {
            Ok(trial) => self.trials.push(trial),
            Err(refusal) => {
                self.too_cold += usize::from(is_too_cold(&refusal));
                self.first_refusal.get_or_insert(refusal);
            }
        }
        self.done += 1;
        self.done < self.cases
    }

    /// Part of the cases that is done.
    #[must_use]
    pub fn progress(&self) -> f64 {
        f64::from(self.done) / f64::from(self.cases)
    }

    fn trial(&self, number: u32) -> Result<Trial, RouteError> {
        let case = self.case(number);
        if case.steel == self.route.composition {
            return self.steel.trial(&self.route, &case.off);
        }
        let steel = self.steel.another_heat(&case.steel)?;
        steel.trial(&self.route, &case.off)
    }

    fn case(&self, number: u32) -> Case {
        let at = point(number, coordinates(&self.inputs), self.seed);
        Case::at(&self.route, &self.inputs, |_| &at)
    }

    /// What the cases done so far tell.
    ///
    /// # Errors
    /// When none of them has an outcome.
    pub fn so_far(&self) -> Result<Spreads, AdviseError> {
        let trials = &self.trials;
        if let (true, Some(refusal)) = (trials.is_empty(), &self.first_refusal) {
            return Err(AdviseError::NoCase {
                cases: self.done as usize,
                first: refusal.to_string(),
            });
        }
        let of = |number: &dyn Fn(&Trial) -> Option<f64>| {
            Quantiles::of(trials.iter().filter_map(number))
        };
        let part = |holds: &dyn Fn(&Trial) -> Option<bool>| {
            let known: Vec<bool> = trials.iter().filter_map(holds).collect();
            let yes = known.iter().filter(|is| **is).count();
            // A steel of which the models tell nothing is not told by its cold cases.
            (!known.is_empty()).then(|| yes as f64 / (known.len() + self.too_cold) as f64)
        };
        let target = self.route.target;
        let final_hrc = |trial: &Trial| hrc(trial.finished(&self.route)?);
        let told = trials
            .iter()
            .filter(|trial| final_hrc(trial).is_some())
            .count();
        Ok(Spreads {
            seed: self.seed,
            cases: trials.len(),
            refused: self.done as usize - trials.len(),
            too_cold: self.too_cold,
            outside_models: self.done as usize - self.too_cold - told,
            inputs: self.inputs.clone(),
            carbon_wt: of(&|trial| Some(trial.soak.carbon_wt)),
            grain_astm: of(&|trial| Some(trial.soak.grain_astm)),
            margin_factor: of(&|trial| trial.margin_factor),
            hardens_part: part(&|trial| Some(trial.margin_factor? >= 1.0)),
            quenched_hrc: of(&|trial| hrc(trial.quenched()?)),
            quenched_martensite: of(&|trial| Some(trial.quenched()?.fractions?.martensite)),
            quenched_austenite: of(&|trial| austenite(trial.quenched()?)),
            final_hrc: of(&final_hrc),
            final_austenite: of(&|trial| austenite(trial.finished(&self.route)?)),
            meets_target_part: part(&|trial| {
                Some((target.least_hrc..=target.most_hrc).contains(&final_hrc(trial)?))
            }),
        })
    }
}

/// Whether a case has no outcome because no austenite forms: it does not harden, and no model has
/// to tell that.
pub(super) const fn is_too_cold(refusal: &RouteError) -> bool {
    matches!(
        refusal,
        RouteError::Soak(SoakError::BelowA1 { .. }) | RouteError::Phase(PhaseError::BelowA1 { .. })
    )
}

/// Hardness after a step, HRC; below 20 as older tables carry the scale on.
pub(super) fn hrc(stage: &Stage) -> Option<f64> {
    Some(stage.hardness?.hrc_carried())
}

/// Retained austenite after a step, volume fraction.
pub(super) fn austenite(stage: &Stage) -> Option<f64> {
    Some(stage.fractions?.austenite)
}

#[cfg(test)]
#[path = "spread_tests.rs"]
mod tests;
