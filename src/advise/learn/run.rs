//! Learning in slices.

use super::answer::Learned;
use super::estimate::{Estimate, Rows, Weighing, squares};
use super::logged::{LoggedRun, NotUsed, Observed, Unusable, Unused};
use super::model::Model;
use super::next::{Candidate, candidates};
use super::plan::{Computed, Linear};
use super::straighten::Straightening;
use crate::advise::error::{AdviseError, check};
use crate::advise::shop::Shop;
use crate::route::Route;
use crate::units::{LengthUnit, TemperatureScale};

/// Most runs that are learnt from.
const MOST_RUNS: f64 = 5000.0;
/// Most times that the models are straightened anew.
const MOST_ROUNDS: usize = 12;
/// Longest step of an unknown, and the step at which it has settled, in standard deviations that it
/// had before.
const LONGEST_STEP: f64 = 1.5;
const SETTLED: f64 = 0.02;
/// After a step as short as this changes are taken to be what they were, and only what is computed
/// is taken anew.
const SHORT_STEP: f64 = 0.3;
/// Most times that a step is halved which made things worse.
const MOST_HALVINGS: u32 = 4;

/// A piece, with what was measured on it that can be learnt from.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Piece {
    /// Its run and its plan, by their places.
    pub(super) run: usize,
    pub(super) plan: usize,
    pub(super) observed: Vec<Observed>,
}

/// What is being done.
#[derive(Clone)]
enum Phase {
    /// Plans are made of the runs from this one on.
    Planning(usize),
    /// The models are straightened.
    Straightening(Straightening),
    /// What was straightened is solved.
    Solving,
    /// A step is tried: where it leads, what the plans so far come to there, how often it was halved.
    Trying {
        to: Vec<f64>,
        computed: Vec<Computed>,
        halvings: u32,
    },
    /// What could be measured next is straightened.
    Weighing(Straightening),
    Done,
}

/// Learning from a logbook, a slice of a few trials at a time: a worker may tell how far it is,
/// show what there is so far, and stop by dropping it.
#[derive(Clone)]
pub struct LearnRun {
    pub(super) runs: Vec<LoggedRun>,
    asked: Route,
    pub(super) model: Model,
    /// Place of the plan that is asked for.
    pub(super) asked_plan: usize,
    pub(super) pieces: Vec<Piece>,
    pub(super) not_used: Vec<NotUsed>,
    weighing: Weighing,
    /// Scale of the temperatures in what is told.
    pub(super) scale: TemperatureScale,
    /// Unit of the lengths in what is told.
    pub(super) length: LengthUnit,
    phase: Phase,
    rounds: usize,
    /// The unknowns in standard deviations.
    at: Vec<f64>,
    /// The plans as last straightened, and where.
    pub(super) now: Vec<Linear>,
    pub(super) now_at: Vec<f64>,
    /// The plans before anything was learnt.
    pub(super) before: Vec<Linear>,
    pub(super) estimate: Option<Estimate>,
    pub(super) candidates: Vec<Candidate>,
}

impl LearnRun {
    /// Prepares to learn from runs, the oldest first, for a route that is asked for: without one,
    /// for that of the last run.
    ///
    /// # Errors
    /// A shop that makes no sense, a route without an outcome, neither a run nor a route, or more
    /// than 5000 runs.
    pub fn new(
        runs: &[LoggedRun],
        shop: Option<&Shop>,
        route: Option<&Route>,
    ) -> Result<Self, AdviseError> {
        check("runs", runs.len() as f64, (0.0, MOST_RUNS), "")?;
        shop.map_or(Ok(()), Shop::validate)?;
        let of_last = runs.last().map(|run| &run.route);
        let asked = route.or(of_last).ok_or(AdviseError::NoRun)?;
        let mut model = Model::new(shop.cloned(), asked.furnace_offset_k);
        let asked_plan = model.plan(asked)?;
        Ok(Self {
            runs: runs.to_vec(),
            asked: asked.clone(),
            model,
            asked_plan,
            pieces: Vec::new(),
            not_used: Vec::new(),
            weighing: Weighing::Robust,
            scale: TemperatureScale::Celsius,
            length: LengthUnit::Millimetre,
            phase: Phase::Planning(0),
            rounds: 0,
            at: Vec::new(),
            now: Vec::new(),
            now_at: Vec::new(),
            before: Vec::new(),
            estimate: None,
            candidates: Vec::new(),
        })
    }

    /// The same, telling temperatures on a scale.
    #[must_use]
    pub fn on_scale(self, scale: TemperatureScale) -> Self {
        Self { scale, ..self }
    }

    /// The same, telling lengths in a unit.
    #[must_use]
    pub fn in_lengths(self, length: LengthUnit) -> Self {
        Self { length, ..self }
    }

    /// The same with every reading counted fully.
    #[cfg(test)]
    pub(super) fn plain(mut self) -> Self {
        self.weighing = Weighing::Plain;
        self
    }

    /// Does the next slice; false when all is done.
    ///
    /// # Errors
    /// Measurements that cannot be brought together with the models.
    pub fn step(&mut self) -> Result<bool, AdviseError> {
        match std::mem::replace(&mut self.phase, Phase::Done) {
            Phase::Planning(next) => {
                self.phase = match self.runs.get(next) {
                    Some(run) => {
                        let run = run.clone();
                        self.take(next, &run);
                        Phase::Planning(next + 1)
                    }
                    None => {
                        self.at = vec![0.0; self.model.unknowns.0.len()];
                        self.straighten()
                    }
                };
            }
            Phase::Straightening(mut work) => {
                self.phase = if work.step(&self.model)? {
                    Phase::Straightening(work)
                } else {
                    self.now = work.done();
                    self.now_at.clone_from(&self.at);
                    if self.before.is_empty() {
                        self.before.clone_from(&self.now);
                        self.leave_out_what_is_not_told();
                    }
                    Phase::Solving
                };
            }
            Phase::Solving => self.phase = self.solve()?,
            Phase::Trying {
                to,
                computed,
                halvings,
            } => self.phase = self.attempt(to, computed, halvings)?,
            Phase::Weighing(mut work) => {
                if work.step(&self.model)? {
                    self.phase = Phase::Weighing(work);
                } else {
                    self.now.extend(work.done());
                }
            }
            Phase::Done => return Ok(false),
        }
        Ok(!matches!(self.phase, Phase::Done))
    }

    /// About which part is done, 0 to 1: how many rounds it takes only shows on the way.
    #[must_use]
    pub fn progress(&self) -> f64 {
        match &self.phase {
            Phase::Planning(next) => 0.2 * *next as f64 / self.runs.len().max(1) as f64,
            Phase::Straightening(_) | Phase::Solving | Phase::Trying { .. } => {
                0.9 - 0.7 * 0.6_f64.powi(self.rounds as i32)
            }
            Phase::Weighing(_) => 0.95,
            Phase::Done => 1.0,
        }
    }

    /// What was learnt so far; none before the first round is done. What to measure next is told
    /// only at the end.
    #[must_use]
    pub fn so_far(&self) -> Option<Learned> {
        Some(Learned::of(self, self.estimate.as_ref()?))
    }

    /// Whether all is done.
    pub(super) const fn is_done(&self) -> bool {
        matches!(self.phase, Phase::Done)
    }

    /// Makes a plan of a run and sorts out what can be learnt from.
    fn take(&mut self, place: usize, run: &LoggedRun) {
        let (observed, not_used) = match self.model.plan(&run.route) {
            Ok(plan) => match self.model.plans.get(plan) {
                Some(planned) => {
                    let (observed, not_used) = run.observed(&planned.planned, planned.alike);
                    (Some((plan, observed)), not_used)
                }
                None => (None, Vec::new()),
            },
            Err(refusal) => {
                let reason = refusal.words(self.scale);
                (None, run.none_used(&Unusable::Models { reason }))
            }
        };
        if let Some((plan, observed)) = observed.filter(|(_, observed)| !observed.is_empty()) {
            self.pieces.push(Piece {
                run: place,
                plan,
                observed,
            });
        }
        self.not_used
            .extend(not_used.into_iter().map(|(unused, reason)| NotUsed {
                run: place,
                name: run.name.clone(),
                unused,
                reason,
            }));
    }

    /// With the furnace's offset as it is known today the models may no longer reach what they
    /// reach as planned.
    fn leave_out_what_is_not_told(&mut self) {
        for piece in &mut self.pieces {
            let linear = self.now.get(piece.plan);
            let count = piece.observed.len();
            piece
                .observed
                .retain(|seen| linear.is_some_and(|linear| linear.mean(seen.what).is_some()));
            if piece.observed.len() < count {
                self.not_used.push(NotUsed {
                    run: piece.run,
                    name: self
                        .runs
                        .get(piece.run)
                        .map_or_else(String::new, |run| run.name.clone()),
                    unused: Unused::Soak,
                    reason: Unusable::StepNotTold,
                });
            }
        }
        self.pieces.retain(|piece| !piece.observed.is_empty());
    }

    fn straighten(&self) -> Phase {
        Phase::Straightening(Straightening::from(0, &self.model, &self.at))
    }

    /// Rows of all pieces, by what the plans come to.
    fn rows(&self) -> Vec<Rows> {
        self.rows_by(&self.now)
    }

    fn rows_by(&self, straightened: &[Linear]) -> Vec<Rows> {
        let of_piece = |piece: &Piece| {
            let plan = self.model.plans.get(piece.plan);
            let linear = straightened.get(piece.plan);
            plan.zip(linear).map_or_else(Vec::new, |(plan, linear)| {
                self.model.rows(plan, linear, &piece.observed)
            })
        };
        self.pieces.iter().map(of_piece).collect()
    }

    /// Solves what was straightened, and goes on from there.
    fn solve(&mut self) -> Result<Phase, AdviseError> {
        let found = Estimate::of(&self.rows(), &self.at, self.weighing)
            .map_err(|_| AdviseError::NotSolved)?;
        let longest = longest(&self.at, &found.at);
        let part = (LONGEST_STEP / longest).min(1.0);
        let to = between(&self.at, &found.at, part);
        self.estimate = Some(found);
        self.rounds += 1;
        if longest < SETTLED || self.rounds >= MOST_ROUNDS {
            return Ok(self.weigh_candidates());
        }
        Ok(Phase::Trying {
            to,
            computed: Vec::new(),
            halvings: 0,
        })
    }

    /// Computes the next plan where a step leads; with all of them, takes the step or halves it.
    fn attempt(
        &mut self,
        to: Vec<f64>,
        mut computed: Vec<Computed>,
        halvings: u32,
    ) -> Result<Phase, AdviseError> {
        if let Some(plan) = self.model.plans.get(computed.len()) {
            let steel = self.model.trial_steel(plan.steel)?;
            let off = plan.off(&self.model.values(&to));
            computed.push(plan.compute(steel, &off).unwrap_or_default());
            return Ok(Phase::Trying {
                to,
                computed,
                halvings,
            });
        }
        if self.is_better(&to, &computed)? {
            let longest = longest(&self.at, &to);
            self.at = to;
            if longest > SHORT_STEP {
                return Ok(self.straighten());
            }
            self.now_at.clone_from(&self.at);
            for (linear, at) in self.now.iter_mut().zip(computed) {
                linear.at = at;
            }
            return Ok(Phase::Solving);
        }
        if halvings >= MOST_HALVINGS {
            // What the straight models promise is not there: what was reached counts.
            if let Some(estimate) = &mut self.estimate {
                estimate.at.clone_from(&self.at);
            }
            return Ok(self.weigh_candidates());
        }
        Ok(Phase::Trying {
            to: between(&self.at, &to, 0.5),
            computed: Vec::new(),
            halvings: halvings + 1,
        })
    }

    /// Whether a step brings what is computed nearer to what was measured, by the weights found. A
    /// number that is lost on the way is not.
    fn is_better(&self, to: &[f64], computed: &[Computed]) -> Result<bool, AdviseError> {
        let Some(estimate) = &self.estimate else {
            return Ok(false);
        };
        // With the bends of here: they count on both sides, or on none.
        let led_to = self.now.iter().zip(computed);
        let led_to: Vec<Linear> = led_to.map(|(linear, at)| linear.about(*at)).collect();
        let [here, there] = [self.rows(), self.rows_by(&led_to)];
        let counts = |rows: &[Rows]| rows.iter().map(Vec::len).sum::<usize>();
        if counts(&here) != counts(&there) {
            return Ok(false);
        }
        let squares = |rows: &[Rows], at: &[f64]| {
            squares(rows, &estimate.weights, at).map_err(|_| AdviseError::NotSolved)
        };
        Ok(squares(&there, to)? <= squares(&here, &self.at)?)
    }

    /// Turns to what could be measured next.
    fn weigh_candidates(&mut self) -> Phase {
        let first = self.model.plans.len();
        self.candidates = candidates(&mut self.model, self.asked_plan, &self.asked);
        Phase::Weighing(Straightening::from(first, &self.model, &self.at))
    }

    /// The rows of all pieces with one more reading like the last of a kind on a piece.
    pub(super) fn rows_with_another(&self, piece: usize) -> Option<Vec<Rows>> {
        let mut rows = self.rows();
        let of_piece = rows.get_mut(piece)?;
        let another = of_piece.last()?.clone();
        of_piece.push(another);
        Some(rows)
    }

    pub(super) fn re_estimate(&self, rows: &[Rows]) -> Option<Estimate> {
        Estimate::of(rows, &self.at, self.weighing).ok()
    }
}

/// A part of the way from one place to another.
fn between(from: &[f64], to: &[f64], part: f64) -> Vec<f64> {
    let all = from.iter().zip(to);
    all.map(|(from, to)| from + part * (to - from)).collect()
}

/// The longest way between two places along one unknown.
fn longest(from: &[f64], to: &[f64]) -> f64 {
    let all = from.iter().zip(to);
    all.fold(0.0, |most, (from, to)| most.max((to - from).abs()))
}

#[cfg(test)]
#[path = "run_tests.rs"]
mod tests;
