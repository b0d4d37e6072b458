//! Baths one after the other: interrupted quench, hot bath then air, hold for bainite, water then
//! oil.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::heat::{Leave, MediumChoice, Section};
use recalesce::route::{NextBath, Outcome, Route, Verdict, run, sentences, validate};
use recalesce::units::{LengthUnit, TemperatureScale};

fn next(leave: Leave, name: &str) -> NextBath {
    NextBath {
        leave,
        medium: MediumChoice::Named(name.to_owned()),
        agitation: 1.0,
    }
}

fn quenched(medium: &str, thickness_mm: f64, then: Vec<NextBath>) -> Route {
    let mut route = Route::example();
    route.section = Section::Plate { thickness_mm };
    route.quench.medium = MediumChoice::Named(medium.to_owned());
    route.quench.air_delay_s = 0.0;
    route.quench.then = then;
    route
}

fn passes_s(outcome: &Outcome, temperature_c: f64) -> f64 {
    let curve = outcome.quench.deciding_curve().unwrap();
    curve.time_to_c(temperature_c).unwrap()
}

#[test]
fn above_the_change_nothing_changes_and_air_is_slower_below() {
    let through = run(&quenched("oil_fast", 4.0, Vec::new())).unwrap();
    let interrupted = quenched("oil_fast", 4.0, vec![next(Leave::AtC(230.0), "air_still")]);
    let interrupted = run(&interrupted).unwrap();
    for t in [700.0, 540.0, 300.0] {
        approx::assert_relative_eq!(
            passes_s(&interrupted, t),
            passes_s(&through, t),
            max_relative = 2e-3
        );
    }
    assert!(passes_s(&interrupted, 100.0) > 10.0 * passes_s(&through, 100.0));
    let [a, b] = [&through, &interrupted].map(|o| o.quench.transformed.given().unwrap());
    approx::assert_abs_diff_eq!(a.fractions.austenite, b.fractions.austenite, epsilon = 0.01);
}

#[test]
fn water_for_a_second_then_oil_lies_between_the_two() {
    let time = |medium: &str, then| passes_s(&run(&quenched(medium, 10.0, then)).unwrap(), 540.0);
    let both = time("water20", vec![next(Leave::AfterS(1.0), "oil_slow")]);
    let (water, oil) = (time("water20", Vec::new()), time("oil_slow", Vec::new()));
    assert!(water < both && both < oil, "{water} {both} {oil}");
}

/// Steel with 1 % C and 1.5 % Cr in stirred salt at 290 °C: past pearlite when it arrives, then it
/// becomes bainite. How long that takes is checked with the isothermal curves.
#[test]
fn held_above_ms_the_austenite_turns_into_bainite() {
    let held = |hours: f64| {
        let hold = next(Leave::AfterS(3600.0 * hours), "air_still");
        let mut route = quenched("oil_fast", 2.0, vec![hold]);
        route.quench.medium = MediumChoice::Own(recalesce::heat::OwnMedium {
            h_w_m2k: vec![[300.0, 2500.0], [850.0, 2500.0]],
            bath_c: 290.0,
            ..recalesce::heat::OwnMedium::default()
        });
        let outcome = run(&route).unwrap();
        let told = sentences(&route, &outcome, TemperatureScale::Celsius);
        (outcome, told[1].text())
    };
    let mut before = 0.0;
    for hours in [0.02, 0.05, 0.1, 0.5] {
        let (outcome, _) = held(hours);
        let bainite = outcome
            .quench
            .transformed
            .given()
            .unwrap()
            .fractions
            .bainite;
        assert!(bainite > before, "{hours} h: {bainite}");
        before = bainite;
    }
    assert!(before > 0.8, "{before}");
    let (outcome, text) = held(0.5);
    let quenched = outcome.quench.transformed.given().unwrap();
    assert_eq!(quenched.held_c, Some(290.0));
    assert_eq!(quenched.margin.verdict, Verdict::Holds);
    assert!(text.contains("turns into bainite"), "{text}");
}

#[test]
fn what_makes_no_sense_is_refused_by_name() {
    let wrong = [
        next(Leave::AfterS(-1.0), "air_still"),
        next(Leave::AtC(5000.0), "air_still"),
        next(Leave::AtC(200.0), "treacle"),
        // Never reached in oil of 50 °C.
        next(Leave::AtC(40.0), "air_still"),
    ];
    for bath in wrong {
        let error = validate(&quenched("oil_fast", 4.0, vec![bath])).unwrap_err();
        assert_eq!(error.field, "quench.then");
    }
    let four = vec![next(Leave::AtC(200.0), "air_still"); 4];
    assert!(validate(&quenched("oil_fast", 4.0, four)).is_err());
}

/// A hot bath that follows a colder one warms the piece up to it before it goes on in air.
#[test]
fn a_warmer_second_bath_warms_the_piece_up() {
    let then = vec![next(Leave::AfterS(20.0), "salt200_still")];
    let outcome = run(&quenched("polymer15", 4.0, then)).unwrap();
    let curve = outcome.quench.deciding_curve().unwrap();
    let coldest_c = curve.temperature_at_s(20.0).unwrap();
    assert!(coldest_c < 100.0, "{coldest_c}");
    let after = curve
        .time_s
        .iter()
        .zip(&curve.temperature_c)
        .filter(|p| *p.0 > 20.0);
    let warmest_c = after.map(|p| *p.1).fold(f64::MIN, f64::max);
    approx::assert_abs_diff_eq!(warmest_c, 195.0, epsilon = 1.0);
    let martensite = outcome
        .quench
        .transformed
        .given()
        .unwrap()
        .fractions
        .martensite;
    assert!(martensite > 0.8, "{martensite}");
}

#[test]
fn what_one_bath_carries_into_the_next_is_told() {
    let told = |first: &str, second: &str| {
        let route = quenched(first, 4.0, vec![next(Leave::AfterS(1.0), second)]);
        let outcome = run(&route).unwrap();
        let words = outcome.cautions.iter();
        words
            .map(|caution| {
                recalesce::route::caution_text(
                    caution,
                    TemperatureScale::Celsius,
                    LengthUnit::Millimetre,
                )
            })
            .collect::<Vec<_>>()
            .join("\n")
    };
    assert!(told("water20", "oil_medium").contains("Water carried into oil"));
    assert!(told("oil_medium", "air_still").contains("taken out hot"));
    assert!(told("oil_medium", "salt200_still").contains("molten salt: it erupts"));
    // Where the core passes Ms in oil, it is not water that cracks it.
    let bath_at_ms = |stay_s: f64| {
        let then = vec![next(Leave::AfterS(stay_s), "oil_medium")];
        let outcome = run(&quenched("water20", 12.0, then)).unwrap();
        outcome.quench.transformed.given().unwrap().bath_at_ms
    };
    assert_eq!([bath_at_ms(0.8), bath_at_ms(60.0)], [1, 0]);
}
