//! A trial gives the numbers of the whole outcome, and follows what is off.

use super::*;
use crate::heat::MediumChoice;
use crate::route::run;
use crate::steel::find;

fn routes() -> Vec<Route> {
    serde_json::from_str(include_str!("../../tests/reference/routes.json")).unwrap()
}

/// Not to a tolerance: the two share their code, and must go on to.
#[test]
fn reference_routes_are_met_to_the_last_bit() {
    let mut known = 0;
    for route in routes() {
        let planned = Deviation::default();
        let (outcome, found) = match (run(&route), trial(&route, &planned)) {
            (Ok(outcome), Ok(found)) => (outcome, found),
            (outcome, found) => {
                assert_eq!(outcome.err(), found.err(), "{}", route.piece);
                continue;
            }
        };
        assert_eq!(found.soak, outcome.soak.end, "{}", route.piece);
        let stages = &outcome.stages[1..];
        assert_eq!(found.stages.len(), stages.len(), "{}", route.piece);
        for (stage, whole) in found.stages.iter().zip(stages) {
            assert_eq!(stage.step, whole.step);
            assert_eq!(stage.fractions, whole.fractions, "{}", route.piece);
            assert_eq!(stage.hardness, whole.hardness, "{}", route.piece);
        }
        let margin = outcome.quench.transformed.given().map(|q| q.margin.factor);
        assert_eq!(found.margin_factor, margin, "{}", route.piece);
        known += 1;
    }
    assert!(known > 25, "{known}");
}

/// One steel serves many trials, and what was asked before leaves no trace.
#[test]
fn stages_that_are_shared_change_no_bit() {
    let mut route = Route::example();
    let steel = TrialSteel::of(&route).unwrap();
    let planned_c = route.soak.temperature_c;
    for soak_k in [0.0, 12.0, -6.0, 0.0] {
        let off = Deviation {
            soak_k,
            ..Deviation::default()
        };
        route.soak.temperature_c = planned_c;
        let by_deviation = steel.trial(&route, &off).unwrap();
        route.soak.temperature_c = planned_c + soak_k;
        let planned = trial(&route, &Deviation::default()).unwrap();
        assert_eq!(by_deviation, planned);
    }
}

fn plate(designation: &str, thickness_mm: f64, quenchant: &str) -> Route {
    let mut route = Route::example();
    route.take_grade(find(designation).unwrap());
    route.section = Section::Plate { thickness_mm };
    route.quench.medium = MediumChoice::Named(quenchant.to_owned());
    route
}

fn off(route: &Route, change: impl Fn(&mut Deviation)) -> Trial {
    let mut deviation = Deviation::default();
    change(&mut deviation);
    trial(route, &deviation).unwrap()
}

/// A snap temper goes through the same oven.
#[test]
fn a_snap_temper_is_off_as_the_tempers_are() {
    let mut route = Route::example();
    route.cold = Some(Cold {
        snap: Some(Cold::SNAP_FIRST_OFFERED),
        ..Cold::FIRST_OFFERED
    });
    route.tempers.clear();
    let snapped = |trial: &Trial| {
        let stage = trial.stages.iter().find(|s| s.step == Step::Snap);
        stage.unwrap().hardness.unwrap().hrc_carried()
    };
    let planned = off(&route, |_| ());
    assert!(snapped(&off(&route, |d| d.temper_k = 10.0)) < snapped(&planned));
    assert_eq!(planned.finished(&route).unwrap().step, Step::Cold);
    assert_eq!(planned.stages.len(), 3);
}

#[test]
fn each_deviation_pulls_the_way_it_should() {
    let route = plate("1084", 5.0, "oil_fast");
    let planned = off(&route, |_| ());
    let margin = |change: fn(&mut Deviation)| off(&route, change).margin_factor.unwrap();
    let at = planned.margin_factor.unwrap();
    assert!(margin(|d| d.heat_transfer_factor = 1.3) > at);
    assert!(margin(|d| d.thickness_mm = 0.5) < at);
    assert!(margin(|d| d.nose_time_factor = 1.5) > at);
    let hrc = |trial: &Trial| {
        trial
            .finished(&route)
            .unwrap()
            .hardness
            .unwrap()
            .hrc_carried()
    };
    assert!(hrc(&off(&route, |d| d.temper_k = 10.0)) < hrc(&planned));
    let harder = off(&route, |d| d.tempered_hrc = 1.0);
    approx::assert_abs_diff_eq!(hrc(&harder) - hrc(&planned), 1.0, epsilon = 1e-6);
    assert_eq!(harder.quenched(), planned.quenched());
    let austenite = |trial: &Trial| trial.quenched().unwrap().fractions.unwrap().austenite;
    assert!(austenite(&off(&route, |d| d.ms_k = -20.0)) > austenite(&planned));
}

/// Molybdenum beyond the tempering fit: the piece as quenched is not the finished one.
#[test]
fn a_piece_whose_temper_is_not_known_is_not_finished() {
    let mut route = plate("S5", 5.0, "oil_fast");
    route.composition.mo = 0.6;
    let untold = off(&route, |_| ());
    assert!(untold.quenched().is_some());
    assert_eq!(untold.finished(&route), None);
    route.tempers.clear();
    route.cold = None;
    let quenched = off(&route, |_| ());
    assert_eq!(quenched.finished(&route), quenched.quenched());
}

#[test]
fn an_absurd_deviation_is_refused_by_its_field() {
    let route = Route::example();
    let refused = |change: fn(&mut Deviation)| {
        let mut deviation = Deviation::default();
        change(&mut deviation);
        trial(&route, &deviation).unwrap_err().to_string()
    };
    assert!(
        refused(|d| d.nose_time_factor = 0.0)
            .contains("factor on the time of the nose 0 is outside")
    );
    assert!(refused(|d| d.heat_transfer_factor = f64::NAN).contains("0.01 to 100"));
    assert!(refused(|d| d.thickness_mm = -80.0).contains("thickness off by −80 mm"));
    assert!(refused(|d| d.ms_k = f64::INFINITY).contains("−200 to 200 K"));
}

/// A piece at the end of what the heat model covers may still be off.
#[test]
fn the_ends_of_the_heat_model_are_kept_to() {
    let thin = plate("O1", 0.2, "oil_fast");
    let planned = off(&thin, |_| ());
    let thinner = off(&thin, |d| d.thickness_mm = -0.1);
    assert_eq!(thinner.margin_factor, planned.margin_factor);
    let mut stirred = plate("O1", 5.0, "oil_fast");
    stirred.quench.agitation = 5.0;
    assert!(
        off(&stirred, |d| d.heat_transfer_factor = 50.0)
            .quenched()
            .is_some()
    );
}

/// A nose that comes later by a factor is a cooling that is quicker by it, on the very same curve:
/// the margin of a quench on which nothing forms grows by the factor.
#[test]
fn the_margin_goes_with_the_time_of_the_nose() {
    let route = plate("O1", 3.0, "oil_fast");
    let [planned, later] =
        [1.0, 1.4].map(|factor| off(&route, |d| d.nose_time_factor = factor).margin_factor);
    approx::assert_relative_eq!(later.unwrap() / planned.unwrap(), 1.4, max_relative = 1e-3);
}

/// Ms by 20 K changes austenite by the law of martensite.
#[test]
fn a_shift_of_ms_changes_austenite_as_the_law_says() {
    let route = plate("O1", 3.0, "oil_fast");
    let austenite = |ms_k: f64| {
        let found = off(&route, |d| d.ms_k = ms_k);
        found.quenched().unwrap().fractions.unwrap().austenite
    };
    let soaked = TrialSteel::of(&route).unwrap();
    let hold = soaked.at(route.soak.temperature_c).unwrap();
    let end = hold.end(60.0 * route.soak.time_min).unwrap();
    let rate = crate::transform::rate_parameter_per_k(&end.dissolved);
    let ratio = austenite(-20.0) / austenite(0.0);
    approx::assert_relative_eq!(ratio, (20.0 * rate).exp(), max_relative = 1e-2);
}

#[test]
fn another_heat_is_another_route() {
    let route = plate("1084", 3.0, "oil_fast");
    let mut rich = route.clone();
    rich.composition.mn += 0.1;
    let steel = TrialSteel::of(&route).unwrap();
    let heat = steel.another_heat(&rich.composition).unwrap();
    let planned = Deviation::default();
    assert_eq!(heat.trial(&route, &planned), trial(&rich, &planned));
}
