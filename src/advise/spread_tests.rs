//! Spreads against what can be computed by hand.

use super::*;
use crate::advise::inputs::{Distribution, Input};
use crate::heat::{Grind, Leave, MediumChoice, Section};
use crate::route::{Deviation, NextBath};
use crate::steel::find;

fn plate() -> Route {
    let mut route = Route::example();
    route.take_grade(find("O1").unwrap());
    route.section = Section::Plate { thickness_mm: 3.0 };
    route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
    route
}

/// Sample of a route of which only some inputs are open.
fn of_only(route: &Route, cases: u32, keep: impl Fn(Input) -> bool) -> SpreadRun {
    let mut run = SpreadRun::new(route, &Tolerances::default(), cases, 1).unwrap();
    run.inputs.retain(|open| keep(open.input));
    while run.step() {}
    run
}

fn sd_of(run: &SpreadRun, input: Input) -> f64 {
    let open = run.inputs.iter().find(|open| open.input == input).unwrap();
    match &open.distribution {
        Distribution::Scalar(law) => law.sd(),
        Distribution::Contents { .. } => panic!("{open:?}"),
    }
}

/// What only adds to the hardness spreads it by its own deviation, to a per cent.
#[test]
fn an_error_that_adds_spreads_by_itself() {
    let run = of_only(&plate(), 256, |input| input == Input::TemperedHardness);
    let found = run.so_far().unwrap().final_hrc.unwrap();
    let sd = sd_of(&run, Input::TemperedHardness);
    approx::assert_relative_eq!(found.sd, sd, max_relative = 0.01);
    approx::assert_relative_eq!(found.p95 - found.p50, 1.60 * sd, max_relative = 0.03);
}

/// Small deviations act in a straight line, and independent ones add in quadrature: slopes by
/// differences, deviations by their laws.
#[test]
fn a_linear_case_is_that_of_propagation() {
    let mut route = plate();
    route.furnace_band_k = 2.0;
    let open = [Input::Furnace, Input::TemperOven, Input::TemperedHardness];
    let run = of_only(&route, 512, |input| open.contains(&input));
    let slope = |change: fn(&mut Deviation, f64)| {
        let at = |by: f64| {
            let mut off = Deviation::default();
            change(&mut off, by);
            hrc(run
                .steel
                .trial(&route, &off)
                .unwrap()
                .finished(&route)
                .unwrap())
            .unwrap()
        };
        0.5 * (at(1.0) - at(-1.0))
    };
    let slopes = [
        slope(|off, by| off.soak_k = by),
        slope(|off, by| off.temper_k = by),
        slope(|off, by| off.tempered_hrc = by),
    ];
    let parts = open.into_iter().zip(slopes);
    let variance: f64 = parts
        .map(|(input, slope)| (slope * sd_of(&run, input)).powi(2))
        .sum();
    let found = run.so_far().unwrap().final_hrc.unwrap();
    approx::assert_relative_eq!(found.sd, variance.sqrt(), max_relative = 0.02);
}

/// Where nothing is open there is no spread.
#[test]
fn nothing_open_is_one_outcome() {
    let run = of_only(&plate(), 16, |_| false);
    let found = run.so_far().unwrap();
    assert!(found.final_hrc.unwrap().sd < 1e-9);
    assert_eq!((found.cases, found.refused), (16, 0));
}

#[test]
fn a_seed_gives_its_sample_and_slices_change_nothing() {
    let whole = spread(&plate(), &Tolerances::default(), 32, 5).unwrap();
    let mut run = SpreadRun::new(&plate(), &Tolerances::default(), 32, 5).unwrap();
    assert!(run.so_far().unwrap().final_hrc.is_none());
    let mut steps = 1;
    while run.step() {
        steps += 1;
        if steps == 16 {
            assert_eq!(run.progress(), 15.0 / 32.0);
            assert!(run.so_far().unwrap().final_hrc.is_some());
        }
    }
    assert_eq!(steps, 32);
    assert_eq!(run.so_far().unwrap(), whole);
    let other = spread(&plate(), &Tolerances::default(), 32, 6).unwrap();
    assert_ne!(other.final_hrc, whole.final_hrc);
}

/// A steel whose temper no model covers has no finished hardness, and meets no target by that of its
/// quench.
#[test]
fn what_the_models_do_not_tell_is_no_outcome() {
    let mut route = plate();
    route.take_grade(find("S5").unwrap());
    route.grade = None;
    route.composition.mo = 0.6;
    let found = spread(&route, &Tolerances::default(), 16, 1).unwrap();
    assert!(found.quenched_hrc.is_some());
    assert_eq!(found.final_hrc, None);
    assert_eq!(found.meets_target_part, None);
    assert_eq!((found.too_cold, found.outside_models), (0, 16));
}

/// A soak just above A1 in a furnace that wanders is too cold in part of the cases.
#[test]
fn cases_without_an_outcome_are_counted() {
    let mut route = plate();
    route.soak.temperature_c = 735.0;
    route.furnace_band_k = 40.0;
    let found = spread(&route, &Tolerances::default(), 64, 1).unwrap();
    assert!(found.refused > 5 && found.cases > 5, "{found:?}");
    // Of those just above A1 a few are so lean that the tempering model does not cover them.
    assert_eq!(found.too_cold, found.refused);
    assert!(found.outside_models < 5, "{found:?}");
    // What does not reach A1 does not harden, and misses the target.
    let most = found.cases as f64 / 64.0;
    assert!(found.hardens_part.unwrap() <= most, "{found:?}");
    assert!(found.meets_target_part.unwrap() <= most, "{found:?}");
    assert!(SpreadRun::new(&route, &Tolerances::default(), 8, 1).is_err());
}

/// What was learnt moves the middle of a sample by as much as a trial, and narrows it; nothing learnt
/// leaves every bit.
#[test]
fn what_was_learnt_moves_and_narrows_a_sample() {
    use crate::route::{Left, Taught};
    let route = Route {
        grade: None,
        ..plate()
    };
    let tolerances = Tolerances {
        certificate_part: 0.0,
        ..Tolerances::default()
    };
    let sampled = |taught: Option<Taught>| {
        let route = Route {
            taught,
            ..route.clone()
        };
        spread(&route, &tolerances, 256, 3).unwrap()
    };
    let plain = sampled(None);
    assert_eq!(sampled(Some(Taught::default())), plain);
    let off = Deviation {
        tempered_hrc: -1.2,
        quenched_hrc: 0.4,
        ..Deviation::default()
    };
    let left = Left {
        tempered: 0.5,
        furnace: 0.5,
        heat_transfer: 0.5,
        nose: 0.5,
        ms: 0.5,
        quenched: 0.5,
        temper: 0.5,
        thermocouple: 0.5,
    };
    let taught = sampled(Some(Taught::new(off, left)));
    let [before, after] = [&plain, &taught].map(|s| s.final_hrc.unwrap());
    approx::assert_abs_diff_eq!(after.mean, before.mean - 1.2, epsilon = 0.1);
    approx::assert_relative_eq!(after.sd, 0.5 * before.sd, max_relative = 0.1);
    let [before, after] = [&plain, &taught].map(|s| s.quenched_hrc.unwrap());
    approx::assert_abs_diff_eq!(after.mean, before.mean + 0.4, epsilon = 0.1);
}

/// The band that an outcome tells of itself is about that of a sample, also where a place hardens in part. It is
/// the wider where nearly all is pearlite, as it goes by a heat that is lean or rich in all that hardens; the
/// narrower where a thickness or a soak that is also open lets a place just fall off.
#[test]
fn the_band_of_an_outcome_is_about_that_of_a_sample() {
    let of = |grade: &str, section, medium: &str| {
        let mut route = Route::example();
        route.take_grade(find(grade).unwrap());
        route.section = section;
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        route
    };
    // Held for bainite, and taken out before it has all formed.
    let mut held = of(
        "O1",
        Section::Plate { thickness_mm: 3.0 },
        "salt200_agit_wet",
    );
    held.quench.medium = held.quench.medium.with_bath(300.0);
    held.quench.then = vec![NextBath {
        leave: Leave::AfterS(150.0),
        medium: MediumChoice::Named("air_still".to_owned()),
        agitation: 1.0,
    }];
    let blade = Section::Blade {
        edge_mm: 0.5,
        spine_mm: 4.0,
        height_mm: 30.0,
        grind: Grind::Straight,
    };
    let routes = [
        ("4140", Section::Round { diameter_mm: 60.0 }, "oil_fast"),
        ("4140", Section::Round { diameter_mm: 40.0 }, "oil_fast"),
        ("1045", Section::Round { diameter_mm: 20.0 }, "oil_fast"),
        ("1045", Section::Round { diameter_mm: 12.0 }, "water20"),
        ("1095", Section::Plate { thickness_mm: 3.0 }, "oil_fast"),
        ("1095", Section::Plate { thickness_mm: 2.0 }, "oil_fast"),
        ("1095", Section::Plate { thickness_mm: 1.0 }, "oil_fast"),
        ("52100", Section::Plate { thickness_mm: 8.0 }, "oil_medium"),
        ("52100", Section::Plate { thickness_mm: 12.0 }, "oil_medium"),
        ("O1", Section::Plate { thickness_mm: 40.0 }, "oil_medium"),
        ("O1", Section::Plate { thickness_mm: 6.0 }, "air_still"),
        ("1095", blade, "oil_medium"),
    ];
    let routes = routes.map(|(grade, section, medium)| of(grade, section, medium));
    for route in routes.into_iter().chain([held]) {
        let outcome = crate::route::run(&route).unwrap();
        let sampled = spread(&route, &Tolerances::default(), 256, 1).unwrap();
        for (stage, sampled) in [
            (&outcome.stages[1], sampled.quenched_hrc),
            (outcome.stages.last().unwrap(), sampled.final_hrc),
        ] {
            let sampled = sampled.unwrap();
            let half_hrc = 0.5 * (sampled.p95 - sampled.p05);
            let ratio = stage.band_hrc / half_hrc;
            let most = stage.hrc_range().unwrap()[1];
            assert!(
                (0.6..1.8).contains(&ratio) && most > sampled.p95 - 3.0,
                "{:?} {:?}: {stage:?}, sampled {sampled:?}",
                route.grade,
                route.quench
            );
        }
    }
}
