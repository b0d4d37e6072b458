//! Routes drawn at random from all that controls and files allow.

use proptest::prelude::*;
use recalesce::heat::{
    Grind, LONGEST_TITLE, Leave, MediumChoice, OwnMedium, QuenchantFigures, Section, media,
};
use recalesce::route::{
    Cold, NextBath, PriorStep, Quench, Route, SlowCooling, Soak, Target, Temper, Thermocouple, Work,
};
use recalesce::soak::StartingStructure;
use recalesce::steel::{Composition, Element};

/// Numbers as controls and typed values give them.
fn thousandths(least: f64, most: f64) -> impl Strategy<Value = f64> {
    (least..most).prop_map(|value| (1000.0 * value).round() / 1000.0)
}

fn any_composition() -> impl Strategy<Value = Composition> {
    prop::array::uniform10(0.0..1.0f64).prop_map(|part| {
        let mut steel = Composition::default();
        for (element, part) in Element::ALL.into_iter().zip(part) {
            // Half of each limit keeps the sum below the largest allowed.
            let content_wt = 0.5 * part * element.largest_wt();
            steel.set(element, (1e4 * content_wt).round() / 1e4);
        }
        steel
    })
}

fn any_section() -> impl Strategy<Value = Section> {
    prop_oneof![
        thousandths(0.2, 200.0).prop_map(|thickness_mm| Section::Plate { thickness_mm }),
        thousandths(0.2, 300.0).prop_map(|diameter_mm| Section::Round { diameter_mm }),
        thousandths(0.2, 200.0).prop_map(|side_mm| Section::Square { side_mm }),
        (
            thousandths(0.1, 5.0),
            thousandths(5.0, 20.0),
            thousandths(5.0, 150.0),
            prop_oneof![Just(Grind::Straight), Just(Grind::Convex)],
        )
            .prop_map(|(edge_mm, spine_mm, height_mm, grind)| {
                Section::Blade {
                    edge_mm,
                    spine_mm,
                    height_mm,
                    grind,
                }
            }),
    ]
}

fn any_medium() -> impl Strategy<Value = MediumChoice> {
    prop_oneof![
        prop::sample::select(media()).prop_map(|m| MediumChoice::Named(m.name.clone())),
        (prop::sample::select(media()), 0.0..=1.0_f64).prop_map(|(m, share)| {
            let range = m.bath_range().expect("a range");
            let bath_c = range.least_c + (share * (range.most_c - range.least_c)).round();
            MediumChoice::Named(m.name.clone()).with_bath(bath_c)
        }),
        (
            prop::collection::vec(thousandths(10.0, 1e4), 2..20),
            thousandths(-20.0, 300.0),
            any::<bool>(),
            prop::option::of(any_title()),
            prop::option::of(thousandths(1.0, 10.0)),
            prop::option::of(thousandths(0.0, 1e4)),
        )
            .prop_map(
                |(h, bath_c, radiation, title, h_band_factor, nickel_ball_s)| MediumChoice::Own(
                    OwnMedium {
                        h_w_m2k: h
                            .into_iter()
                            .enumerate()
                            .map(|(i, h)| [50.0 * i as f64, h])
                            .collect(),
                        bath_c,
                        radiation,
                        title,
                        h_band_factor,
                        figures: QuenchantFigures {
                            nickel_ball_s,
                            ..QuenchantFigures::default()
                        },
                    }
                )
            ),
    ]
}

fn any_title() -> impl Strategy<Value = String> {
    prop::collection::vec(any::<char>(), 0..LONGEST_TITLE).prop_map(|c| c.into_iter().collect())
}

pub(super) fn any_text() -> impl Strategy<Value = String> {
    prop::collection::vec(any::<char>(), 0..40).prop_map(|c| c.into_iter().collect())
}

prop_compose! {
    fn any_next_bath()(
        leave in prop_oneof![
            thousandths(0.0, 86_400.0).prop_map(Leave::AfterS),
            thousandths(601.0, 900.0).prop_map(Leave::AtC),
        ],
        medium in any_medium(),
        agitation in thousandths(0.1, 5.0),
    ) -> NextBath {
        NextBath { leave, medium, agitation }
    }
}

prop_compose! {
    fn any_prior_step()(
        work in prop::sample::select(Work::ALL.to_vec()),
        (temperature_c, time_min) in (thousandths(901.0, 1250.0), thousandths(0.0, 60_000.0)),
        cooling in prop_oneof![
            Just(SlowCooling::still_air()),
            (thousandths(1.0, 5000.0), thousandths(20.0, 900.0)).prop_map(
                |(rate_k_per_h, until_c)| SlowCooling::Furnace { rate_k_per_h, until_c },
            ),
        ],
    ) -> PriorStep {
        PriorStep { work, temperature_c, time_min, cooling }
    }
}

prop_compose! {
    pub(super) fn any_route()(
        piece in any_text(),
        grade in prop::option::of(any_text()),
        composition in any_composition(),
        start in prop::sample::select(StartingStructure::ALL.to_vec()),
        prior in prop::collection::vec(any_prior_step(), 0..6),
        section in any_section(),
        (furnace_band_k, furnace_offset_k) in (thousandths(0.0, 100.0), thousandths(-100.0, 100.0)),
        thermocouple in prop::sample::select(Thermocouple::ALL.to_vec()),
        (soak_c, soak_min) in (thousandths(500.0, 1300.0), thousandths(0.0, 60_000.0)),
        medium in any_medium(),
        (agitation, air_delay_s, end_c) in (thousandths(0.1, 5.0), thousandths(0.0, 120.0), thousandths(-200.0, 400.0)),
        then in prop::collection::vec(any_next_bath(), 0..=3),
        cold in prop::option::of((
            thousandths(-200.0, 20.0),
            thousandths(0.0, 60_000.0),
            thousandths(0.0, 60_000.0),
            prop::option::of((thousandths(120.0, 200.0), thousandths(5.0, 480.0))),
        )),
        tempers in prop::collection::vec((thousandths(20.0, 750.0), thousandths(0.0, 60_000.0)), 0..6),
        (least_hrc, most_hrc) in (thousandths(20.0, 45.0), thousandths(45.0, 70.0)),
        seed in any::<u32>(),
    ) -> Route {
        Route {
            piece,
            grade,
            composition,
            end_quench: Vec::new(),
            start,
            prior,
            section,
            furnace_band_k,
            thermocouple,
            furnace_offset_k,
            soak: Soak { temperature_c: soak_c, time_min: soak_min },
            quench: Quench { medium, agitation, air_delay_s, end_c, then },
            cold: cold.map(|(temperature_c, time_min, delay_min, snap)| Cold {
                temperature_c,
                time_min,
                delay_min,
                snap: snap.map(|(temperature_c, time_min)| Temper { temperature_c, time_min }),
            }),
            tempers: tempers
                .into_iter()
                .map(|(temperature_c, time_min)| Temper { temperature_c, time_min })
                .collect(),
            target: Target { least_hrc, most_hrc },
            seed,
            taught: None,
        }
    }
}
