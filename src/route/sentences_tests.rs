//! What sentences say of a route.

use super::*;
use crate::heat::{Grind, Leave, MediumChoice};
use crate::route::{Cold, NextBath, overheating, quench_notes, run, soak_notes};
use crate::units::LengthUnit;

/// Of the chromium of D2 a part is dissolved, and more of it than the model of the quench knows of.
#[test]
fn a_quench_that_no_model_knows_is_told_with_what_to_do() {
    let mut route = Route::example();
    route.take_grade(crate::steel::find("D2").unwrap());
    let outcome = run(&route).unwrap();
    let told = quench_sentence(&route, &outcome, TemperatureScale::Celsius).text();
    assert!(
        told.contains("chromium in solution from 0 to 2\u{a0}%; here it is"),
        "{told}"
    );
    assert!(
        told.ends_with("quench it as its maker or a handbook says."),
        "{told}"
    );
}

/// Of a normal distribution of 62.7 HRC with nine in ten within 3.0, 0.39 lie between 61 and 63 (printed
/// tables).
#[test]
fn a_target_narrower_than_the_band_tells_how_many_are_inside() {
    let target = Target {
        least_hrc: 61.0,
        most_hrc: 63.0,
    };
    let (tone, words) = against(&target, 62.7, [3.0; 2]);
    assert_eq!(tone, Tone::Holds);
    assert!(words.contains("about 4 in 10"), "{words}");
    assert!(against(&target, 62.0, [1.2; 2]).1.contains("about 8 in 10"));
    assert_eq!(
        against(&target, 62.0, [0.9; 2]).1,
        texts::outcome::ON_TARGET
    );
    // One that reaches farther down has as many above the target as before.
    let (_, words) = against(&target, 62.7, [9.0, 3.0]);
    assert!(words.contains("about 2 in 10"), "{words}");
    assert_eq!(against(&target, 63.1, [3.0; 2]).0, Tone::Narrow);
    assert_eq!(against(&target, 60.9, [3.0; 2]).0, Tone::Misses);
}

#[test]
fn a_quench_that_may_crack_is_not_called_good() {
    let told = |medium: &str| {
        let mut route = Route::example();
        route.section = Section::Plate { thickness_mm: 3.0 };
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        let outcome = run(&route).unwrap();
        let quenched = outcome.quench.transformed.given().unwrap();
        assert_eq!(quenched.margin.verdict, Verdict::Holds, "{medium}");
        let sentence = quench_sentence(&route, &outcome, TemperatureScale::Celsius);
        (sentence.tone, sentence.text().contains("may crack"))
    };
    assert_eq!(told("oil_fast"), (Tone::Holds, false));
    assert_eq!(told("water20"), (Tone::Narrow, true));
}

/// No text has a place that nothing fills.
#[test]
fn every_place_of_a_sentence_is_filled() {
    let scale = TemperatureScale::Celsius;
    let mut told = 0;
    let mut check = |route: &Route| {
        let outcome = run(route).unwrap();
        let grains = overheating(route).ok();
        let mut all = sentences(route, &outcome, scale);
        let length = LengthUnit::Millimetre;
        all.extend(soak_notes(route, &outcome, grains.as_ref(), scale, length));
        all.extend(quench_notes(route, &outcome, scale));
        for sentence in &all {
            let text = sentence.text();
            assert!(!text.contains(['{', '}']), "{text}");
        }
        told += all.len();
    };
    let blade = Section::Blade {
        edge_mm: 0.5,
        spine_mm: 8.0,
        height_mm: 50.0,
        grind: Grind::Straight,
    };
    let plate = |thickness_mm| Section::Plate { thickness_mm };
    let snapped = Cold {
        snap: Some(Cold::SNAP_FIRST_OFFERED),
        ..Route::example().cold.unwrap()
    };
    let mut route = Route::example();
    for grade in ["1095", "O1", "4140", "A2"] {
        route.take_grade(crate::steel::find(grade).unwrap());
        for (medium, section, cold, soak_c) in [
            ("water20", plate(3.0), None, 800.0),
            ("oil_fast", blade, Some(snapped), 800.0),
            ("oil_slow", plate(12.0), route.cold, 980.0),
            ("air_still", plate(2.0), None, 740.0),
        ] {
            route.quench.medium = MediumChoice::Named(medium.to_owned());
            route.section = section;
            route.cold = cold;
            route.soak.temperature_c = soak_c;
            check(&route);
            route.tempers.clear();
            check(&route);
            route.tempers = Route::example().tempers;
        }
    }
    route.take_grade(crate::steel::find("52100").unwrap());
    route.quench.medium = MediumChoice::Named("salt200_agit_wet".to_owned()).with_bath(280.0);
    route.quench.then = vec![NextBath {
        leave: Leave::AfterS(7200.0),
        medium: MediumChoice::Named("air_still".to_owned()),
        agitation: 1.0,
    }];
    for thickness_mm in [1.5, 8.0] {
        route.section = plate(thickness_mm);
        check(&route);
    }
    assert!(told > 100, "{told}");
}
