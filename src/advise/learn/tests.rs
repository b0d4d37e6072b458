//! Simulated logbooks: the truth is drawn from what is known beforehand, and pieces are made by
//! trials with it.

use super::estimate::Weighing;
use super::model::Model;
use super::plan::Measurable;
use super::slot::{Slot, Slots};
use super::*;
use crate::advise::law::cut_normal;
use crate::advise::points::point;
use crate::hardness::Scale;
use crate::heat::{MediumChoice, Section};
use crate::route::{Step, Temper};
use crate::steel::find;

/// Where a normal distribution of a simulation is cut off, in standard deviations.
const CUT: f64 = 6.0;

/// A plate of a heat with a certificate, in oil.
fn plate(grade: &str, thickness_mm: f64, tempers_c: &[f64]) -> Route {
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

fn reading(value: f64, after: Step) -> LoggedReading {
    LoggedReading {
        value,
        scale: Scale::Hrc,
        place: String::new(),
        after,
    }
}

fn logged(route: &Route, readings: Vec<LoggedReading>) -> LoggedRun {
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
struct Simulated {
    /// The unknowns in their own units; of factors the logarithm.
    truth: Vec<f64>,
    runs: Vec<LoggedRun>,
}

/// Pieces of plans, each so many times, in a shop whose truth a point of the unit cube tells.
fn simulate(plans: &[(Route, usize)], readings: usize, number: u32, seed: u32) -> Simulated {
    let mut model = Model::new(None, 0.0);
    let places: Vec<usize> = plans
        .iter()
        .map(|(route, _)| model.plan(route).unwrap())
        .collect();
    let unknowns = model.unknowns.0.len();
    let mut part = point(number, 250, seed).into_iter();
    let mut normal = || cut_normal(part.next().expect("enough coordinates"), CUT);
    let truth: Vec<f64> = (0..unknowns).map(|_| normal()).collect();
    let truth = model.values(&truth);
    let mut runs = Vec::new();
    for ((route, count), place) in plans.iter().zip(places) {
        let plan = &model.plans[place];
        for _ in 0..*count {
            let mut off = plan.off(&truth);
            for slot in Slot::ALL.into_iter().filter(|slot| *slot != Slot::Tester) {
                let sd = plan.variances.anew.get(slot).sqrt();
                if sd > 0.0 {
                    off.add(slot, sd * normal());
                }
            }
            let steel = model.trial_steel(plan.steel).unwrap();
            let computed = plan.compute(steel, &off).unwrap_or_default();
            let tester_sd = plan.variances.anew.get(Slot::Tester).sqrt();
            let steps = [
                (Measurable::Quenched, Step::Quench),
                (Measurable::Tempered, Step::Temper(route.tempers.len())),
            ];
            let mut read = Vec::new();
            for (what, step) in steps {
                if let Some(hrc) = computed[what as usize] {
                    for _ in 0..readings {
                        let value = hrc + tester_sd * normal();
                        read.push(reading(value.clamp(20.0, 68.0), step));
                    }
                }
            }
            runs.push(logged(route, read));
        }
    }
    Simulated { truth, runs }
}

fn done(mut run: LearnRun) -> Learned {
    while run.step().unwrap() {}
    run.so_far().unwrap()
}

/// A band in the unit in which the truth is told.
fn natural(learnt: &Learnt, value: f64) -> f64 {
    if learnt.kind.is_factor() {
        value.ln()
    } else {
        value
    }
}

/// Steps until the models are straightened for the first time: the same for all logbooks of the same
/// plans.
fn straightened(runs: &[LoggedRun]) -> LearnRun {
    let mut run = LearnRun::new(runs, None, None).unwrap();
    while run.before.is_empty() {
        run.step().unwrap();
    }
    run
}

/// The same run with what was measured in another shop.
fn with_measured(straightened: &LearnRun, runs: &[LoggedRun]) -> LearnRun {
    let mut run = straightened.clone();
    for (piece, logged) in run.pieces.iter_mut().zip(runs) {
        let plan = &run.model.plans[piece.plan];
        piece.observed = logged.observed(&plan.planned, plan.is_alike).0;
    }
    run
}

/// Steps until what to measure next is weighed.
fn estimated(mut run: LearnRun) -> Learned {
    while run.candidates.is_empty() {
        run.step().unwrap();
    }
    run.so_far().unwrap()
}

/// Which of the unknowns of a simulated shop lie in their bands, each with its kind.
fn covered(straightened: &LearnRun, simulated: &Simulated) -> Vec<(UnknownKind, bool)> {
    let found = estimated(with_measured(straightened, &simulated.runs));
    let all = found.unknowns.iter().zip(&simulated.truth);
    all.map(|(learnt, truth)| {
        let Band { least, most, .. } = learnt.after;
        let band = natural(learnt, least)..=natural(learnt, most);
        (learnt.kind, band.contains(truth))
    })
    .collect()
}

#[test]
fn the_truth_lies_in_nine_bands_of_ten() {
    let plans = [
        (plate("1095", 5.0, &[200.0]), 3),
        (plate("1095", 3.0, &[250.0]), 2),
    ];
    let started = std::time::Instant::now();
    let first = simulate(&plans, 2, 0, 11);
    let straightened = straightened(&first.runs);
    let half = |half: u32| {
        let shops = (0..100).map(|i| simulate(&plans, 2, 2 * i + half, 11));
        shops
            .flat_map(|shop| covered(&straightened, &shop))
            .collect::<Vec<_>>()
    };
    let all: Vec<(UnknownKind, bool)> = std::thread::scope(|scope| {
        let other = scope.spawn(|| half(1));
        let mut all = half(0);
        all.extend(other.join().unwrap());
        all
    });
    println!("{:?}", started.elapsed());
    let part = |of: &[bool]| of.iter().filter(|is| **is).count() as f64 / of.len() as f64;
    for kind in [
        UnknownKind::FurnaceOffset,
        UnknownKind::QuenchSeverity,
        UnknownKind::Hardenability,
        UnknownKind::MartensiteStart,
        UnknownKind::TemperOvenOffset,
        UnknownKind::QuenchedHardness,
        UnknownKind::TemperedHardness,
        UnknownKind::Tester,
    ] {
        let of_kind: Vec<bool> = all
            .iter()
            .filter(|(k, _)| *k == kind)
            .map(|(_, is)| *is)
            .collect();
        println!("{kind:?} {} {:.3}", of_kind.len(), part(&of_kind));
    }
    let of_all: Vec<bool> = all.iter().map(|(_, is)| *is).collect();
    println!("all {:.3}", part(&of_all));
}

#[test]
fn cost() {
    for (grade, mm) in [
        ("1095", 5.0),
        ("1095", 3.0),
        ("1095", 2.0),
        ("1060", 3.0),
        ("52100", 4.0),
    ] {
        let route = plate(grade, mm, &[200.0]);
        let mut model = Model::new(None, 0.0);
        let place = model.plan(&route).unwrap();
        let plan = &model.plans[place];
        let steel = model.trial_steel(plan.steel).unwrap();
        let t = std::time::Instant::now();
        for _ in 0..20 {
            let _ = plan.soak(steel, &Slots::default());
        }
        let soak = t.elapsed() / 20;
        let t = std::time::Instant::now();
        for _ in 0..20 {
            let _ = plan.compute(steel, &Slots::default());
        }
        println!(
            "{grade} {mm} soak {soak:?} all {:?} {:?} alike {}",
            t.elapsed() / 20,
            plan.planned,
            plan.is_alike
        );
    }
}
