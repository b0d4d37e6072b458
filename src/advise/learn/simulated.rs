//! Simulated logbooks: the truth is drawn from what is known beforehand, and pieces are made by
//! trials with it.

use super::model::Model;
use super::plan::{Computed, Measurable};
use super::slot::Slot;
use super::{LearnRun, Learned, Learnt, LoggedReading, LoggedRun, UnknownKind};
use crate::advise::law::cut_normal;
use crate::advise::points::point;
use crate::hardness::Scale;
use crate::heat::{MediumChoice, Section};
use crate::route::{Route, Step, Temper};
use crate::steel::find;

/// Where a normal distribution of a simulation is cut off, in standard deviations.
const CUT: f64 = 6.0;

/// A plate of a heat with a certificate, in oil.
pub(super) fn plate(grade: &str, thickness_mm: f64, tempers_c: &[f64]) -> Route {
    let mut route = Route::example();
    route.take_grade(find(grade).unwrap());
    route.grade = None;
    route.section = Section::Plate { thickness_mm };
    route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
    route.cold = None;
    let temper = |temperature_c| Temper {
        temperature_c,
        time_min: 60.0,
    };
    route.tempers = tempers_c.iter().copied().map(temper).collect();
    route
}

pub(super) fn reading(value: f64, after: Step) -> LoggedReading {
    LoggedReading {
        value,
        scale: Scale::Hrc,
        place: String::new(),
        after,
    }
}

pub(super) fn logged(route: &Route, readings: Vec<LoggedReading>) -> LoggedRun {
    LoggedRun {
        name: "run".to_owned(),
        route: route.clone(),
        readings,
        austenite_vol_percent: None,
        fracture_grain_astm: None,
        is_told_otherwise: false,
    }
}

/// A shop whose truth is known, with a logbook.
pub(super) struct Simulated {
    /// The unknowns in their own units; of factors the logarithm.
    pub(super) truth: Vec<f64>,
    pub(super) runs: Vec<LoggedRun>,
    /// Hardness of another piece of the last plan after its last step, HRC.
    pub(super) next_hrc: f64,
}

/// Plans of a simulated logbook, and how many pieces of each.
pub(super) struct Jobs {
    model: Model,
    plans: Vec<(usize, usize)>,
}

impl Jobs {
    pub(super) fn of(routes: &[(Route, usize)]) -> Self {
        let mut model = Model::new(None, 0.0);
        let plan = |(route, count): &(Route, usize)| (model.plan(route).unwrap(), *count);
        let plans = routes.iter().map(plan).collect();
        Self { model, plans }
    }
}

/// Pieces of the jobs in a shop whose truth a point of the unit cube tells.
pub(super) fn simulate(jobs: &Jobs, readings: usize, number: u32, seed: u32) -> Simulated {
    let Jobs { model, plans } = jobs;
    let unknowns = model.unknowns.0.len();
    let mut part = point(number, 250, seed).into_iter();
    let mut normal = || cut_normal(part.next().expect("a coordinate"), CUT);
    let truth: Vec<f64> = (0..unknowns).map(|_| normal()).collect();
    let truth = model.values(&truth);
    let mut runs = Vec::new();
    for (place, count) in plans {
        for _ in 0..*count {
            let piece = piece(model, *place, &truth, &mut normal);
            let plan = &model.plans[*place];
            let route = &plan.route;
            let tester_sd = plan.variances.anew.get(Slot::Tester).sqrt();
            let steps = [
                (Measurable::Quenched, Step::Quench),
                (Measurable::Tempered, Step::Temper(route.tempers.len())),
            ];
            let mut read = Vec::new();
            for (what, step) in steps {
                if let Some(hrc) = piece[what as usize] {
                    for _ in 0..readings {
                        let value = hrc + tester_sd * normal();
                        read.push(reading(value.clamp(20.0, 68.0), step));
                    }
                }
            }
            runs.push(logged(route, read));
        }
    }
    let (last, _) = *plans.last().unwrap();
    let tester = UnknownKind::Tester;
    let tester = model
        .unknowns
        .0
        .iter()
        .position(|unknown| unknown.kind == tester);
    let shown = piece(model, last, &truth, &mut normal);
    let finished = Measurable::finished(&model.plans[last].route);
    Simulated {
        next_hrc: shown[finished as usize].unwrap() - truth[tester.unwrap()],
        truth,
        runs,
    }
}

/// What the tester shows of a piece of a plan, apart from its error from reading to reading.
fn piece(model: &Model, place: usize, truth: &[f64], normal: &mut impl FnMut() -> f64) -> Computed {
    let plan = &model.plans[place];
    let mut off = plan.off(truth);
    for slot in Slot::ALL.into_iter().filter(|slot| *slot != Slot::Tester) {
        let sd = plan.variances.anew.get(slot).sqrt();
        if sd > 0.0 {
            off.add(slot, sd * normal());
        }
    }
    let steel = model.trial_steel(plan.steel).unwrap();
    plan.compute(steel, &off).unwrap_or_default()
}

/// A band in the unit in which the truth is told.
pub(super) fn natural(learnt: &Learnt, value: f64) -> f64 {
    if learnt.kind.is_factor() {
        value.ln()
    } else {
        value
    }
}

/// Steps until the models are straightened for the first time: the same for all logbooks of the same
/// plans.
pub(super) fn straightened(runs: &[LoggedRun]) -> LearnRun {
    let mut run = LearnRun::new(runs, None, None).unwrap();
    while run.before.is_empty() {
        run.step().unwrap();
    }
    run
}

/// The same run with what was measured in another shop.
pub(super) fn with_measured(straightened: &LearnRun, runs: &[LoggedRun]) -> LearnRun {
    let mut run = straightened.clone();
    for (piece, logged) in run.pieces.iter_mut().zip(runs) {
        let plan = &run.model.plans[piece.plan];
        piece.observed = logged.observed(&plan.planned, plan.alike).0;
    }
    run
}

/// Steps until what to measure next is weighed.
pub(super) fn estimated(mut run: LearnRun) -> Learned {
    while run.candidates.is_empty() {
        run.step().unwrap();
    }
    run.so_far().unwrap()
}
