//! Sensitivity of routes.

use super::*;
use crate::heat::{MediumChoice, Section};
use crate::route::Deviation;
use crate::steel::find;

fn plate() -> Route {
    let mut route = Route::example();
    route.take_grade(find("O1").unwrap());
    route.section = Section::Plate { thickness_mm: 3.0 };
    route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
    route
}

/// Cases that go on from others have the numbers that they have by themselves.
#[test]
fn what_is_shared_changes_no_bit() {
    let run = SensitivityRun::new(&plate(), &Tolerances::default(), 16, 2).unwrap();
    let coordinates = coordinates(&run.inputs);
    let at = point(0, 2 * coordinates, run.seed * BLOCKS);
    let (at_a, at_b) = at.split_at(coordinates);
    let pair = run.pair(0, 0).unwrap();
    for (input, shared) in pair.mixed.iter().enumerate() {
        let case = run.case(at_a, at_b, &|other| other == input);
        let alone = Staged::of(&run.route, &run.steel, case, &[]).unwrap();
        assert_eq!(alone.numbers, *shared, "{:?}", run.inputs[input].input);
    }
}

/// Two things that only add to the hardness divide its variance as the squares of their deviations.
#[test]
fn a_sum_divides_by_squares() {
    let mut run = SensitivityRun::new(&plate(), &Tolerances::default(), 128, 2).unwrap();
    let kept = [Input::TemperOven, Input::TemperedHardness];
    run.inputs.retain(|open| kept.contains(&open.input));
    while run.step() {}
    let found = run.so_far().unwrap();
    let divided = &found.quantities[0];
    assert_eq!(divided.quantity, Quantity::FinalHrc);
    let [first, second] = divided.shares.as_slice() else {
        panic!("{divided:?}");
    };
    for share in [first, second] {
        let index = share.index;
        assert!((index.first - index.total).abs() < 0.03, "{index:?}");
    }
    let sum = first.index.total + second.index.total;
    approx::assert_abs_diff_eq!(sum, 1.0, epsilon = 0.03);
    let own_sd = divided.sd * second.index.total.min(first.index.total).sqrt();
    let slope_hrc = |by: f64| {
        let off = Deviation {
            temper_k: by,
            ..Deviation::default()
        };
        let trial = run.steel.trial(&run.route, &off).unwrap();
        trial
            .finished(&run.route)
            .unwrap()
            .hardness
            .unwrap()
            .hrc_carried()
    };
    let slope = 0.5 * (slope_hrc(1.0) - slope_hrc(-1.0));
    let oven_sd = slope.abs() * run.route.furnace_band_k / 3.0_f64.sqrt();
    approx::assert_relative_eq!(own_sd, oven_sd, max_relative = 0.1);
}

/// A furnace that wanders far decides more than one that is held.
#[test]
fn a_furnace_that_wanders_matters() {
    let total = |band_k: f64| {
        let mut route = plate();
        route.furnace_band_k = band_k;
        route.tempers.clear();
        let found = sensitivity(&route, &Tolerances::default(), 64, 1).unwrap();
        let austenite = found
            .quantities
            .iter()
            .find(|divided| divided.quantity == Quantity::FinalAustenite)
            .unwrap();
        let furnace = austenite
            .shares
            .iter()
            .find(|share| share.input == Input::Furnace);
        furnace.unwrap().index.total
    };
    assert!(total(25.0) > total(3.0) + 0.1);
}
