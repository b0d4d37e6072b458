//! A search that counts with what a logbook has taught.

use super::*;
use crate::advise::{Corrected, Correction, Furnace, Owner, Quenchant, TemperOven, UnknownKind};
use crate::heat::{MediumChoice, Section};
use crate::route::{MODELS, Thermocouple, run};
use crate::steel::find as find_grade;

fn medium() -> MediumChoice {
    MediumChoice::Named("oil_fast".to_owned())
}

fn shop() -> Shop {
    Shop {
        furnaces: vec![Furnace {
            name: "kiln".to_owned(),
            least_c: 700.0,
            most_c: 1100.0,
            band_k: 8.0,
            offset_k: 0.0,
            thermocouple: Thermocouple::Checked,
            holds: true,
        }],
        quenchants: vec![Quenchant {
            medium: medium(),
            agitation: 1.0,
        }],
        temper_oven: Some(TemperOven {
            least_c: 100.0,
            most_c: 300.0,
            band_k: 5.0,
        }),
        ..Shop::default()
    }
}

fn piece() -> Route {
    let mut route = Route::example();
    route.take_grade(find_grade("52100").unwrap());
    route.section = Section::Plate { thickness_mm: 3.0 };
    route.cold = None;
    route
}

fn learnt() -> Correction {
    let one = |kind, owner, value| Corrected {
        kind,
        owner,
        value,
        left_part: 0.5,
        runs: 5,
        tempers_c: None,
        half_band: Some(5.0),
        entangled_with: Vec::new(),
    };
    let heat = Owner::Heat {
        grade: piece().grade,
        composition: piece().composition,
        end_quench: Vec::new(),
    };
    Correction {
        is_on: true,
        models: Some(MODELS.to_owned()),
        furnaces: shop().furnaces,
        learnt: vec![
            one(UnknownKind::FurnaceOffset, Owner::Furnace(Some(0)), 14.0),
            one(
                UnknownKind::QuenchSeverity,
                Owner::Quenchants(vec![medium()]),
                0.8,
            ),
            one(UnknownKind::TemperOvenOffset, Owner::TemperOven, 9.0),
            Corrected {
                tempers_c: Some([150.0, 160.0]),
                ..one(UnknownKind::TemperedHardness, heat, -1.1)
            },
        ],
    }
}

fn searched(correction: &Correction) -> Found {
    let sought = Sought {
        target: Target {
            least_hrc: 59.0,
            most_hrc: 61.0,
        },
        purpose: Purpose::Edge,
        limits: Limits::default(),
    };
    let tolerances = Tolerances::default();
    let mut run = FindRun::taught(&piece(), &shop(), &sought, &tolerances, 1, correction).unwrap();
    while run.step() {}
    run.so_far().unwrap()
}

/// What is found is what the whole pipeline makes of it, counting with as much; the furnace is set so
/// that the piece is as hot as planned.
#[test]
fn what_is_found_comes_out_on_the_bench() {
    let correction = learnt();
    let found = searched(&correction);
    assert!(!found.routes.is_empty());
    for one in &found.routes {
        let planned = Route {
            taught: None,
            ..one.route.clone()
        };
        assert_eq!(planned.furnace_offset_k, 14.0);
        let taught = correction.taught(&planned);
        assert_eq!(taught, one.route.taught);
        assert_eq!(taught.unwrap().off.soak_k, 0.0);
        let last = run(&one.route).unwrap().stages.last().copied().unwrap();
        approx::assert_abs_diff_eq!(
            last.hardness.unwrap().hrc_carried(),
            one.hrc,
            epsilon = 1e-6
        );
        assert_eq!(correction.words(&planned, Default::default()).len(), 4);
    }
    // Some of the tempers are beyond those that taught the hardness.
    let reaches = |one: &FoundRoute| {
        let [temper_c, off_hrc] = [
            one.route.tempers[0].temperature_c,
            one.route.taught.unwrap().off.tempered_hrc,
        ];
        assert_eq!(temper_c <= 160.0, off_hrc == -1.1, "{temper_c} {off_hrc}");
        off_hrc == -1.1
    };
    assert!(!found.routes.iter().all(reaches));
    // Softer than computed and hotter than asked: the temper is set cooler for as much.
    let plain = searched(&Correction::default());
    let temper_c = |found: &Found| found.routes[0].route.tempers[0].temperature_c;
    assert!(temper_c(&found) < temper_c(&plain) - 10.0);
}

#[test]
fn switched_off_it_changes_no_bit() {
    let off = Correction {
        is_on: false,
        ..learnt()
    };
    assert_eq!(searched(&off), searched(&Correction::default()));
}
