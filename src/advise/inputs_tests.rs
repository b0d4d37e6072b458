//! What is open about routes.

use super::*;
use crate::heat::{Leave, MediumChoice, Section};
use crate::route::{Deviation, NextBath, Thermocouple, trial};
use crate::steel::find;

fn open(route: &Route) -> Vec<OpenInput> {
    let planned = trial(route, &Deviation::default()).unwrap();
    open_inputs(route, &planned, &Tolerances::default()).unwrap()
}

fn law(inputs: &[OpenInput], which: Input) -> Option<Law> {
    let found = inputs.iter().find(|open| open.input == which)?;
    match &found.distribution {
        Distribution::Scalar(law) => Some(*law),
        Distribution::Contents { .. } => None,
    }
}

#[test]
fn what_is_not_open_is_left_out() {
    let mut route = Route::example();
    route.thermocouple = Thermocouple::Checked;
    assert_eq!(law(&open(&route), Input::Thermocouple), None);
    route.thermocouple = Thermocouple::TypeKClass2;
    route.soak.temperature_c = 800.0;
    let half_width = 6.0;
    assert_eq!(
        law(&open(&route), Input::Thermocouple),
        Some(Law::Uniform { half_width })
    );
    route.tempers.clear();
    let untempered = open(&route);
    assert_eq!(law(&untempered, Input::TemperOven), None);
    assert_eq!(law(&untempered, Input::TemperedHardness), None);
}

/// As open as the margin takes it: a bath into which the piece goes cold does not count.
#[test]
fn a_bath_below_ms_opens_nothing() {
    let mut route = Route::example();
    route.take_grade(find("4140").unwrap());
    route.section = Section::Plate { thickness_mm: 12.0 };
    route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
    let alone = law(&open(&route), Input::HeatTransfer);
    let mut then = NextBath {
        leave: Leave::AfterS(60.0),
        medium: MediumChoice::Named("plate_Al_foil".to_owned()),
        agitation: 1.0,
    };
    route.quench.then = vec![then.clone()];
    assert_eq!(law(&open(&route), Input::HeatTransfer), alone);
    then.leave = Leave::AfterS(2.0);
    route.quench.then = vec![then];
    assert_ne!(law(&open(&route), Input::HeatTransfer), alone);
}

#[test]
fn a_grade_is_as_open_as_its_standard_and_a_certificate_as_its_tolerance() {
    let mut route = Route::example();
    route.take_grade(find("1095").unwrap());
    let carbon = |route: &Route| {
        let inputs = open(route);
        let first = inputs.first().unwrap().clone();
        match first.distribution {
            Distribution::Contents { contents } => *contents
                .iter()
                .find(|content| content.element == "C")
                .unwrap(),
            Distribution::Scalar(_) => panic!("{first:?}"),
        }
    };
    let by_grade = carbon(&route);
    assert_eq!((by_grade.least_wt, by_grade.most_wt), (0.90, 1.03));
    route.grade = None;
    let certified = carbon(&route);
    approx::assert_relative_eq!(certified.most_wt / certified.usual_wt, 1.03);
}

/// The usual content is the median, and no heat is outside the standard.
#[test]
fn contents_lie_within_their_limits() {
    let content = Content {
        element: "Mn",
        least_wt: 0.3,
        usual_wt: 0.35,
        most_wt: 0.5,
    };
    let at = |part: f64| {
        let mut steel = Composition::default();
        content.enter(&mut steel, part);
        steel.mn
    };
    approx::assert_abs_diff_eq!(at(0.5), 0.35, epsilon = 1e-9);
    approx::assert_abs_diff_eq!(at(1e-9), 0.3, epsilon = 1e-6);
    approx::assert_abs_diff_eq!(at(1.0 - 1e-9), 0.5, epsilon = 1e-6);
    assert!(at(0.25) < 0.35 && at(0.75) > 0.35);
}

#[test]
fn absurd_tolerances_are_named() {
    let fault = |change: fn(&mut Tolerances)| {
        let mut tolerances = Tolerances::default();
        change(&mut tolerances);
        tolerances.check().err().map(|e| e.to_string())
    };
    assert_eq!(fault(|_| ()), None);
    assert_eq!(
        fault(|t| t.temper_band_k = Some(-1.0)).as_deref(),
        Some("temper_band_k: −1 is outside 0 to 100 K")
    );
    assert!(fault(|t| t.thickness_band_mm = f64::NAN).is_some());
    assert!(fault(|t| t.certificate_part = 0.9).is_some());
}
