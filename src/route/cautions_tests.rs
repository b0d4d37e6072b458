//! When cautions are told, and what they say.

use super::*;
use crate::heat::MediumChoice;
use crate::route::cold_words::cold_sentence;
use crate::route::sentence::Tone;
use crate::route::{Deviation, Left, Taught, Temper, run, step_cautions};
use crate::steel::find;
use crate::units::TemperatureScale;

fn told(change: impl FnOnce(&mut Route)) -> Vec<Caution> {
    let mut route = Route::example();
    change(&mut route);
    run(&route).unwrap().cautions
}

#[test]
fn a_slow_cool_from_above_acm_brings_a_network() {
    let network = |all: &[Caution]| all.iter().any(|c| matches!(c, Caution::Network { .. }));
    assert!(!network(&told(|_| {})));
    let above_acm = |r: &mut Route| {
        r.soak.temperature_c = 980.0;
        r.soak.time_min = 60.0;
    };
    assert!(network(&told(above_acm)));
    // Less carbon than the eutectoid has no carbide to come out.
    assert!(!network(&told(|r| {
        above_acm(r);
        r.composition.c = 0.5;
    })));
}

/// Handbooks, from memory: hypereutectoid plain steel that cools slowly from above Acm gets a network
/// of cementite, and a quench does not.
#[test]
fn films_that_form_in_a_slow_quench_are_told() {
    let films = |medium: &str, thickness_mm: f64| {
        let all = told(|r| {
            r.take_grade(find("1095").unwrap());
            r.composition.c = 1.05;
            r.soak.temperature_c = 950.0;
            r.soak.time_min = 30.0;
            r.section = Section::Plate { thickness_mm };
            r.quench.medium = MediumChoice::Named(medium.to_owned());
        });
        all.iter().find_map(|c| match c {
            Caution::NetworkFormed { film_um } => Some(*film_um),
            _ => None,
        })
    };
    let slow_um = films("air_still", 40.0).unwrap();
    assert!(slow_um >= 0.5, "{slow_um}");
    assert_eq!(films("water20", 4.0), None);
}

/// Martensite cracks, pearlite does not: a plate that turns into it in warm water is not warned of, a round of
/// which only the outside hardens is. Nor is it good news that no austenite is left where all is pearlite.
#[test]
fn cracks_are_told_where_something_hardens() {
    let outcome = |section: Section, medium: &str| {
        let mut route = Route::example();
        route.take_grade(find("1095").unwrap());
        route.section = section;
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        run(&route).unwrap()
    };
    let cracks = |outcome: &Outcome| outcome.cautions.contains(&Caution::MayCrack);
    let soft = outcome(Section::Plate { thickness_mm: 8.0 }, "water60");
    let places = &soft.quench.transformed.given().unwrap().places;
    assert!(places.iter().all(|place| place.fractions.martensite < 0.1));
    assert!(!cracks(&soft));
    let shell = outcome(Section::Round { diameter_mm: 25.0 }, "water20");
    let quenched = shell.quench.transformed.given().unwrap();
    assert!(quenched.hardened_fraction < 0.5 && cracks(&shell));
    let cold = cold_sentence(&soft).unwrap();
    assert_eq!(cold.tone, Tone::Narrow);
}

/// One's own quenchant that cools as water does cracks as water does.
#[test]
fn cracks_are_told_of_an_own_quenchant_like_water() {
    let told = |like: &str| {
        let listed = crate::heat::medium(like).unwrap();
        told(|r| {
            r.take_grade(find("1095").unwrap());
            r.section = Section::Plate { thickness_mm: 3.0 };
            r.quench.medium = MediumChoice::Own(crate::heat::OwnMedium {
                h_w_m2k: listed.h_w_m2k.points().collect(),
                bath_c: listed.bath_c,
                ..crate::heat::OwnMedium::default()
            });
        })
    };
    assert!(told("water20").contains(&Caution::MayCrack));
    assert!(!told("oil_fast").contains(&Caution::MayCrack));
}

/// The oven brings the piece into the range; told is what it is asked for, and what to ask it for
/// instead.
#[test]
fn the_embrittling_range_is_told_as_the_oven_is_asked() {
    let hotter_k = 20.0;
    let mut asked = Route::example();
    asked.take_grade(find("5160").unwrap());
    let [from_c, to_c] = embrittling_range_c(&asked.composition);
    for (asked_c, is_told) in [
        (from_c - 10.0, true),
        (from_c - hotter_k - 1.0, false),
        (to_c - hotter_k - 1.0, true),
        // Asked for inside the range, the oven goes beyond it.
        (to_c - 10.0, false),
    ] {
        let temper = Temper {
            temperature_c: asked_c,
            time_min: 60.0,
        };
        asked.tempers = vec![temper];
        let off = Deviation {
            temper_k: hotter_k,
            ..Deviation::default()
        };
        let real = Route {
            taught: Some(Taught::new(off, Left::default())),
            ..asked.clone()
        };
        let told = run(&real).unwrap().cautions.into_iter();
        let embrittling = told.filter_map(|caution| match caution {
            Caution::Embrittling {
                temper,
                temperature_c,
                range_c,
            } => Some((temper, temperature_c, range_c)),
            _ => None,
        });
        let embrittling: Vec<_> = embrittling.collect();
        if !is_told {
            assert_eq!(embrittling, [], "{asked_c}");
            continue;
        }
        let (temper, temperature_c, range_c) = embrittling[0];
        assert_eq!((embrittling.len(), temper), (1, 0));
        assert!((temperature_c - asked_c).abs() < 1e-9, "{temperature_c}");
        for (told_c, of_piece_c) in range_c.into_iter().zip([from_c, to_c]) {
            assert!((told_c + hotter_k - of_piece_c).abs() < 1e-9, "{told_c}");
        }
    }
}

/// A network that the steps before leave, and the soak below Acm does not dissolve, is told with
/// the step that brings it and with the soak.
#[test]
fn a_network_that_goes_into_the_hardening_is_told() {
    let mut route = Route::example();
    route.take_grade(find("1095").unwrap());
    route.soak.temperature_c = 780.0;
    route.prior = vec![PriorStep {
        work: Work::SlowAnneal,
        temperature_c: 980.0,
        time_min: 30.0,
        cooling: SlowCooling::Furnace {
            rate_k_per_h: 30.0,
            until_c: 600.0,
        },
    }];
    let is_left = |c: &Caution| matches!(c, Caution::NetworkLeft { .. });
    let outcome = run(&route).unwrap();
    assert!(outcome.cautions.iter().any(is_left));
    let scale = TemperatureScale::Celsius;
    let at_step = step_cautions(&route, &outcome, scale);
    assert!(
        at_step.iter().any(|text| text.contains("network")),
        "{at_step:?}"
    );
    // Normalised from above Acm it is gone, and neither tells of it.
    route.prior.push(PriorStep {
        work: Work::Normalise,
        temperature_c: 960.0,
        time_min: 15.0,
        cooling: SlowCooling::Medium {
            medium: MediumChoice::Named("air_fan".to_owned()),
        },
    });
    let outcome = run(&route).unwrap();
    assert!(!outcome.cautions.iter().any(is_left));
    let at_step = step_cautions(&route, &outcome, scale);
    assert!(
        at_step.iter().all(|text| !text.contains("network")),
        "{at_step:?}"
    );
}

#[test]
fn air_that_goes_through_the_cutting_edge_is_told() {
    let through = |soak_c: f64| {
        let all = told(|r| {
            r.soak.temperature_c = soak_c;
            r.soak.time_min = 40.0;
        });
        let is_told = |c: &Caution| matches!(c, Caution::SkinThroughEdge { .. });
        all.iter().any(is_told)
    };
    assert!(through(1020.0));
    assert!(!through(800.0));
}

#[test]
fn a_cold_bath_that_is_left_too_soon_is_told() {
    let short = |time_min: f64| {
        let all = told(|r| {
            r.section = Section::Plate { thickness_mm: 20.0 };
            if let Some(cold) = &mut r.cold {
                cold.time_min = time_min;
            }
        });
        let is_told = |c: &Caution| matches!(c, Caution::ColdTooShort { .. });
        all.iter().any(is_told)
    };
    assert!(short(5.0));
    assert!(!short(60.0));
}

#[test]
fn plates_are_told_where_carbon_rich_martensite_forms() {
    let plates = |all: &[Caution]| {
        all.iter()
            .any(|c| matches!(c, Caution::PlateMartensite { .. }))
    };
    assert!(plates(&told(|_| {})));
    assert!(!plates(&told(|r| r.composition.c = 0.5)));
    assert!(!plates(&told(|r| {
        r.section = Section::Plate { thickness_mm: 40.0 };
        r.quench.medium = MediumChoice::Named("air_still".to_owned());
    })));
}

#[test]
fn much_austenite_is_told_unless_the_cold_bath_takes_it() {
    let left = |all: &[Caution]| {
        all.iter()
            .any(|c| matches!(c, Caution::MuchAustenite { .. }))
    };
    let hot = |r: &mut Route| {
        r.soak.temperature_c = 900.0;
        r.soak.time_min = 30.0;
    };
    assert!(left(&told(|r| {
        hot(r);
        r.cold = None;
    })));
    assert!(!left(&told(hot)));
    assert!(!left(&told(|_| {})));
}
