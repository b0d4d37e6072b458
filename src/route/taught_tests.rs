//! A route with what runs have taught comes to what a trial of it does that is off by as much.

use super::*;
use crate::heat::{MediumChoice, Section};
use crate::route::{Cold, Known, run, trial};
use crate::steel::find;

fn plate(grade: &str) -> Route {
    let mut route = Route::example();
    route.take_grade(find(grade).unwrap());
    route.section = Section::Plate { thickness_mm: 4.0 };
    route.quench.medium = MediumChoice::Named("oil_medium".to_owned());
    route.cold = Some(Cold::FIRST_OFFERED);
    route
}

fn off() -> Deviation {
    Deviation {
        soak_k: -11.0,
        temper_k: 7.0,
        heat_transfer_factor: 1.3,
        nose_time_factor: 0.8,
        ms_k: -6.0,
        quenched_hrc: -0.7,
        tempered_hrc: 0.6,
        thickness_mm: 0.0,
    }
}

fn with(route: &Route, off: Deviation, left: Left) -> Route {
    Route {
        taught: Some(Taught::new(off, left)),
        ..route.clone()
    }
}

/// The two ways to it are apart: a trial is off by itself, the whole outcome is that of another route.
#[test]
fn a_taught_route_comes_to_what_a_trial_does() {
    for grade in ["1084", "52100", "O1"] {
        let planned = plate(grade);
        let taught = with(&planned, off(), Left::default());
        let outcome = run(&taught).unwrap();
        let trial = trial(&planned, &off()).unwrap();
        let told = outcome.stages.iter().skip(1);
        assert_eq!(told.clone().count(), trial.stages.len());
        for (told, tried) in told.zip(&trial.stages) {
            assert_eq!(told.step, tried.step);
            let [a, b] = [told, tried].map(|stage| stage.hardness.unwrap().hrc_carried());
            approx::assert_abs_diff_eq!(a, b, epsilon = 1e-9);
            let [a, b] = [told, tried].map(|stage| stage.fractions.unwrap());
            approx::assert_abs_diff_eq!(a.martensite, b.martensite, epsilon = 1e-9);
            approx::assert_abs_diff_eq!(a.austenite, b.austenite, epsilon = 1e-9);
        }
        let margin = outcome.quench.transformed.given().unwrap().margin;
        approx::assert_relative_eq!(
            margin.factor,
            trial.margin_factor.unwrap(),
            max_relative = 1e-6
        );
        // The furnace is set as before.
        approx::assert_abs_diff_eq!(
            outcome.furnace.set_point_c,
            planned.set_point_c(),
            epsilon = 1e-9
        );
        // The chart is over tempers as they are asked, and what it shows there is what comes out.
        let Known::Given(temper) = &outcome.temper else {
            panic!("tempers are known");
        };
        assert_eq!(temper.curve[0].temperature_c, 100.0);
        let asked_c = planned.tempers[0].temperature_c;
        let shown = temper.curve.windows(2).find_map(|pair| {
            let way =
                (asked_c - pair[0].temperature_c) / (pair[1].temperature_c - pair[0].temperature_c);
            (0.0..=1.0)
                .contains(&way)
                .then(|| pair[0].hrc + way * (pair[1].hrc - pair[0].hrc))
        });
        let last = outcome.stages.last().unwrap().hardness.unwrap();
        approx::assert_abs_diff_eq!(shown.unwrap(), last.hrc_carried(), epsilon = 0.1);
    }
}

/// A bath that is stirred hard and takes more than listed is clamped to the one range of the heat model,
/// by both ways.
#[test]
fn a_hard_stirred_bath_is_as_severe_both_ways() {
    for (agitation, factor, stirred) in [(4.0, 3.0, 12.0), (0.1, 0.6, 0.06), (9.0, 9.0, 20.0)] {
        let mut planned = plate("52100");
        planned.quench.agitation = agitation;
        let off = Deviation {
            heat_transfer_factor: factor,
            ..Deviation::default()
        };
        let taught = with(&planned, off, Left::default());
        approx::assert_relative_eq!(taught.as_taught().quench.agitation, stirred);
        let margin = run(&taught).unwrap().quench.transformed;
        let tried = trial(&planned, &off).unwrap().margin_factor;
        approx::assert_relative_eq!(
            margin.given().unwrap().margin.factor,
            tried.unwrap(),
            max_relative = 1e-6
        );
    }
}

/// Nothing taught changes no bit, whether it is left out or put as nothing.
#[test]
fn nothing_taught_changes_no_bit() {
    for route in [plate("1084"), plate("A2"), Route::example()] {
        let plain = run(&route).unwrap();
        let nothing = with(&route, Deviation::default(), Left::default());
        assert_eq!(run(&nothing).unwrap(), plain);
        assert!(matches!(route.as_taught(), Cow::Borrowed(_)));
    }
}

#[test]
fn to_move_it_again_moves_nothing() {
    let left = Left {
        furnace: 0.6,
        tempered: 0.7,
        ..Left::default()
    };
    let taught = with(&plate("52100"), off(), left);
    let once = taught.as_taught().into_owned();
    assert_eq!(*once.as_taught(), once);
    assert_eq!(run(&once), run(&taught));
    let prepared = crate::route::Prepared::of(&once).unwrap();
    let hardened = prepared.harden(&once).unwrap();
    assert!(hardened.is_of(&once));
    assert_eq!(hardened.run(&once), run(&taught));
    // No file holds it.
    let text = serde_json::to_string(&taught).unwrap();
    assert_eq!(text, serde_json::to_string(&plate("52100")).unwrap());
}

/// A temper that the oven's error would take past what a temper may be is counted as moved only that far.
#[test]
fn a_temper_at_its_limit_was_asked_where_it_was() {
    let mut planned = plate("52100");
    let near_c = TEMPER_C.1 - 2.0;
    planned.tempers[0].temperature_c = near_c;
    let taught = with(&planned, off(), Left::default());
    let made = taught.as_taught();
    assert_eq!(hottest_temper_c(&made.tempers), Some(TEMPER_C.1));
    approx::assert_abs_diff_eq!(made.moved_tempers_k(), 2.0);
}

/// Every band is narrower by what was learnt, and no number moves.
#[test]
fn what_is_left_narrows_the_bands_and_moves_nothing() {
    let mut planned = plate("52100");
    planned.cold = None;
    planned.grade = None;
    let left = Left {
        furnace: 0.5,
        thermocouple: 0.5,
        heat_transfer: 0.5,
        nose: 0.5,
        ms: 0.5,
        quenched: 0.5,
        temper: 0.5,
        tempered: 0.5,
    };
    let before = run(&planned).unwrap();
    let after = run(&with(&planned, Deviation::default(), left)).unwrap();
    for (before, after) in before.stages.iter().zip(&after.stages).skip(1) {
        assert_eq!(before.hardness, after.hardness);
        let part = after.band_hrc / before.band_hrc;
        assert!((0.4..0.6).contains(&part), "{:?} {part}", before.step);
    }
    let [before, after] = [before, after].map(|outcome| {
        let quenched = outcome.quench.transformed.given().unwrap();
        let margin = quenched.margin;
        let [least, most] = margin.factor_band;
        (margin.factor, (most / least).ln(), outcome.furnace)
    });
    assert_eq!(before.0, after.0);
    assert!((0.4..0.6).contains(&(after.1 / before.1)));
    approx::assert_abs_diff_eq!(after.2.hottest_c - after.2.coldest_c, 8.0, epsilon = 1e-9);
}

/// Far off, a route stays one that a shop could mean.
#[test]
fn what_is_far_off_stays_within_what_a_route_may_have() {
    let far = Deviation {
        soak_k: 300.0,
        temper_k: 300.0,
        heat_transfer_factor: 50.0,
        ..Deviation::default()
    };
    let mut route = plate("1084");
    route.soak.temperature_c = 1250.0;
    route.tempers[0].temperature_c = 700.0;
    let moved = with(&route, far, Left::default());
    assert_eq!(crate::route::validate(&moved.as_taught()), Ok(()));
}

/// Between the tempers that taught it it acts whole, far from them not at all, and on the way the band
/// goes from what was learnt to what it was. The chart of tempers shows at each what comes out there.
#[test]
fn what_tempers_have_taught_fades_away_from_them() {
    let mut planned = plate("52100");
    planned.cold = None;
    let learnt = Tempered {
        off_hrc: -1.2,
        left: 0.5,
        tempers_c: [170.0, 200.0],
    };
    let all = Taught::new(
        Deviation {
            tempered_hrc: learnt.off_hrc,
            temper_k: 4.0,
            ..Deviation::default()
        },
        Left {
            tempered: learnt.left,
            ..Left::default()
        },
    )
    .within(learnt);
    let at = |temper_c: f64, taught: Option<Taught>| {
        let mut route = planned.clone();
        route.tempers.truncate(1);
        route.tempers[0].temperature_c = temper_c;
        route.taught = taught;
        route
    };
    for (temper_c, part) in [
        (170.0, 1.0),
        (190.0, 1.0),
        (200.0, 1.0),
        (215.0, 0.9),
        (275.0, 0.5),
        (140.0, 0.8),
        (350.0, 0.0),
        (500.0, 0.0),
    ] {
        let here = all.of_tempers(&at(temper_c, None).tempers).unwrap();
        approx::assert_abs_diff_eq!(here.off.tempered_hrc, part * -1.2, epsilon = 1e-9);
        // Errors of which a part goes together: variances of that part and of the rest add.
        let left = f64::hypot(part * 0.5, (1.0 - f64::powi(part, 2)).sqrt());
        approx::assert_abs_diff_eq!(here.left.tempered, left, epsilon = 1e-9);
        if part == 0.0 {
            assert_eq!(here.left, Left::default());
        }
        let route = at(temper_c, Some(here));
        let outcome = run(&route).unwrap();
        let hrc = outcome
            .stages
            .last()
            .unwrap()
            .hardness
            .unwrap()
            .hrc_carried();
        let tried = trial(&at(temper_c, None), &here.off).unwrap();
        let tried_hrc = tried.stages.last().unwrap().hardness.unwrap().hrc_carried();
        approx::assert_abs_diff_eq!(hrc, tried_hrc, epsilon = 1e-9);
        // Whatever temper is on the bench, the chart is the same.
        let Known::Given(chart) = outcome.temper else {
            panic!("tempers are known");
        };
        let shown = chart
            .curve
            .iter()
            .find(|point| point.temperature_c == 250.0);
        let of_250 = run(&at(250.0, all.of_tempers(&at(250.0, None).tempers))).unwrap();
        let of_250 = of_250.stages.last().unwrap().hardness.unwrap();
        approx::assert_abs_diff_eq!(shown.unwrap().hrc, of_250.hrc_carried(), epsilon = 1e-9);
        // A temper that is told to meet the target does.
        let target = &planned.target;
        let middle_hrc = f64::midpoint(target.least_hrc, target.most_hrc);
        assert!(!chart.meets_target_c.is_empty());
        for meets_c in chart.meets_target_c {
            let meets = at(meets_c, all.of_tempers(&at(meets_c, None).tempers));
            let met = run(&meets)
                .unwrap()
                .stages
                .last()
                .unwrap()
                .hardness
                .unwrap();
            approx::assert_abs_diff_eq!(met.hrc_carried(), middle_hrc, epsilon = 0.01);
        }
    }
    // Where nothing else acts, none of it does.
    let alone = Taught::new(
        Deviation {
            tempered_hrc: learnt.off_hrc,
            ..Deviation::default()
        },
        Left::default(),
    )
    .within(learnt);
    assert_eq!(alone.of_tempers(&at(450.0, None).tempers), None);
}
