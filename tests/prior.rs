//! Steps before hardening: carbon is kept, known trends hold, annealed steel is as soft as the
//! standards want it.
#![cfg(not(target_arch = "wasm32"))]

mod rows;

use proptest::prelude::*;
use recalesce::heat::Section;
use recalesce::route::{Outcome, PieceState, PriorStep, Route, SlowCooling, Work, run, validate};
use recalesce::soak::{Network, StartingStructure};
use recalesce::sources::normalised_bars;
use recalesce::steel::{find, grades};

fn air(work: Work, temperature_c: f64, time_min: f64) -> PriorStep {
    PriorStep {
        work,
        temperature_c,
        time_min,
        cooling: SlowCooling::still_air(),
    }
}

fn slow(temperature_c: f64, rate_k_per_h: f64, until_c: f64) -> PriorStep {
    PriorStep {
        cooling: SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        },
        ..air(Work::SlowAnneal, temperature_c, 30.0)
    }
}

const FORGE: Work = Work::Forge {
    finish_c: 900.0,
    heats: 2,
};

fn after(grade: &str, thickness_mm: f64, prior: Vec<PriorStep>) -> Outcome {
    let mut route = Route::example();
    route.take_grade(find(grade).expect("a grade of the list"));
    route.section = Section::Plate { thickness_mm };
    route.prior = prior;
    run(&route).unwrap_or_else(|e| panic!("{grade}: {e}"))
}

fn states(outcome: &Outcome) -> Vec<&PieceState> {
    let given = outcome.prior.iter().map(|step| step.state.given());
    given.map(|state| state.expect("a state")).collect()
}

fn grains_astm(outcome: &Outcome) -> Vec<f64> {
    let heated = outcome.prior.iter().filter_map(|step| step.heated);
    heated.map(|heat| heat.grain_astm).collect()
}

fn ten_steps() -> Vec<PriorStep> {
    vec![
        air(FORGE, 1080.0, 5.0),
        air(Work::Normalise, 900.0, 10.0),
        air(Work::Refine, 850.0, 3.0),
        air(Work::Refine, 820.0, 3.0),
        air(Work::SubcriticalAnneal, 690.0, 120.0),
        air(Work::Refine, 830.0, 3.0),
        slow(790.0, 20.0, 600.0),
        air(Work::StressRelief, 600.0, 60.0),
        air(Work::Normalise, 880.0, 5.0),
        air(Work::SubcriticalAnneal, 680.0, 60.0),
    ]
}

/// Carbon is neither made nor lost through a route of ten steps; the constituents stay a whole.
#[test]
fn carbon_is_kept_through_ten_steps() {
    for grade in ["1045", "1084", "52100", "O1", "5160", "D2"] {
        let outcome = after(grade, 5.0, ten_steps());
        let steel_wt = find(grade).unwrap().nominal.c;
        for state in states(&outcome) {
            let sum_wt = state.carbon_in_carbide_wt + state.carbon_in_solution_wt;
            assert!((sum_wt - steel_wt).abs() < 1e-12, "{grade} {sum_wt}");
            assert!(state.carbon_in_carbide_wt >= -1e-12, "{grade} {state:?}");
            if let Some(x) = state.fractions {
                let sum =
                    x.ferrite + x.pearlite + x.bainite + x.martensite + x.austenite + x.carbide;
                assert!((sum - 1.0).abs() < 1e-9, "{grade} {sum}");
            }
        }
    }
}

/// What stays as carbide and what the austenite holds are the steel's carbon together at every
/// heating of the ten steps: the one by volume from how far carbide has dissolved, the other by mass
/// from the austenite. Cementite has 6.67 % carbon (three iron to one carbon, by their atomic masses)
/// and is about 2 % lighter than the steel (7.69 against 7.85 g/cm³, from memory).
#[test]
fn carbide_and_austenite_hold_the_carbon_of_the_steel() {
    const CEMENTITE_WT: f64 = 100.0 * 12.011 / (12.011 + 3.0 * 55.845);
    const LIGHTER: f64 = 7.69 / 7.85;
    let mut heatings = 0;
    for grade in ["1045", "1084", "1095", "52100", "5160"] {
        let outcome = after(grade, 5.0, ten_steps());
        let steel_wt = find(grade).unwrap().nominal.c;
        for heat in outcome.prior.iter().filter_map(|step| step.heated) {
            let carbide = LIGHTER * heat.carbide_volume_fraction;
            let austenite = 1.0 - carbide - heat.ferrite_volume_fraction;
            let sum_wt = CEMENTITE_WT * carbide + heat.carbon_wt * austenite;
            assert!(
                (sum_wt - steel_wt).abs() < 0.02 * steel_wt,
                "{grade}: {sum_wt} of {steel_wt}, {heat:?}"
            );
            heatings += 1;
        }
    }
    assert!(heatings >= 30, "{heatings}");
}

/// Three cycles is usual; more gives little (common practice, no source).
#[test]
fn descending_cycles_refine_and_stop_helping_after_three() {
    for grade in ["1084", "52100", "5160", "1095"] {
        let outcome = after(
            grade,
            5.0,
            vec![
                air(FORGE, 1100.0, 5.0),
                air(Work::Normalise, 885.0, 10.0),
                air(Work::Refine, 850.0, 3.0),
                air(Work::Refine, 825.0, 3.0),
                air(Work::Refine, 825.0, 3.0),
            ],
        );
        let grains = grains_astm(&outcome);
        for cycle in grains.windows(2).take(3) {
            assert!(cycle[1] > cycle[0], "{grade} {grains:?}");
        }
        assert!(grains[3] - grains[0] > 2.0, "{grade} {grains:?}");
        assert!(grains[4] - grains[3] < 0.4, "{grade} {grains:?}");
    }
}

#[test]
fn overheating_coarsens() {
    for grade in ["1045", "1084", "52100", "O1"] {
        let grain = |temperature_c| {
            grains_astm(&after(
                grade,
                5.0,
                vec![air(Work::Normalise, temperature_c, 20.0)],
            ))[0]
        };
        assert!(grain(880.0) > grain(950.0) + 0.5, "{grade}");
        assert!(grain(950.0) > grain(1050.0) + 0.5, "{grade}");
    }
}

/// Hypereutectoid steel has a network after slow cooling from above Acm, none after the same from
/// below it, and a thin piece in air escapes a whole one (common practice, no source).
#[test]
fn slow_cooling_from_above_acm_brings_a_network() {
    let network = |grade, thickness_mm, step| {
        let outcome = after(grade, thickness_mm, vec![step]);
        states(&outcome)[0].network
    };
    for grade in ["1095", "52100", "W1", "O1"] {
        assert_eq!(
            network(grade, 5.0, slow(960.0, 50.0, 600.0)),
            Network::Continuous
        );
        assert_eq!(network(grade, 5.0, slow(770.0, 50.0, 600.0)), Network::None);
        let thick = air(Work::Normalise, 1050.0, 20.0);
        assert_eq!(network(grade, 25.0, thick), Network::Continuous, "{grade}");
    }
    for grade in ["52100", "1095", "O1"] {
        let thin = air(Work::Normalise, 960.0, 10.0);
        assert_ne!(network(grade, 2.0, thin), Network::Continuous, "{grade}");
    }
    for grade in ["1045", "5160"] {
        assert_eq!(
            network(grade, 25.0, slow(900.0, 20.0, 600.0)),
            Network::None
        );
    }
}

/// A network that the next soak does not dissolve is still there; normalising breaks it up.
#[test]
fn a_network_is_broken_up_by_normalising() {
    let outcome = after(
        "52100",
        4.0,
        vec![
            slow(960.0, 30.0, 600.0),
            air(Work::Refine, 800.0, 5.0),
            air(Work::Normalise, 920.0, 15.0),
            air(Work::Refine, 830.0, 5.0),
        ],
    );
    let networks: Vec<Network> = states(&outcome).iter().map(|s| s.network).collect();
    assert_eq!(networks[0], Network::Continuous);
    assert_ne!(networks[1], Network::None, "{networks:?}");
    assert_ne!(networks[3], Network::Continuous, "{networks:?}");
}

#[test]
fn holds_below_a1_soften_the_more_the_longer() {
    for grade in ["1084", "52100", "O1", "4140"] {
        let hv = |hold_min: f64| {
            let outcome = after(
                grade,
                5.0,
                vec![
                    air(Work::Normalise, 885.0, 10.0),
                    air(Work::SubcriticalAnneal, 690.0, hold_min),
                ],
            );
            states(&outcome)
                .iter()
                .map(|s| s.hardness.expect("a hardness").hv)
                .collect::<Vec<f64>>()
        };
        let (short, long) = (hv(30.0), hv(240.0));
        assert!(short[1] < short[0], "{grade} {short:?}");
        assert!(long[1] < short[1], "{grade} {short:?} {long:?}");
        let relieved = after(
            grade,
            5.0,
            vec![
                air(Work::Normalise, 885.0, 10.0),
                air(Work::StressRelief, 550.0, 60.0),
            ],
        );
        let relieved_hv = states(&relieved)[1].hardness.expect("a hardness").hv;
        assert!(
            relieved_hv > 0.85 * short[0],
            "{grade}: {relieved_hv} {short:?}"
        );
    }
}

/// Largest hardness of annealed bars, HB: ASTM A681 and A686 (from memory).
#[test]
fn annealed_steel_is_as_soft_as_the_standards_want_it() {
    for (grade, anneal_c, most_hb) in [
        ("O1", 775.0, 212.0),
        ("O2", 760.0, 217.0),
        ("W1", 760.0, 202.0),
        ("A2", 855.0, 248.0),
        ("D2", 885.0, 255.0),
        ("L6", 775.0, 235.0),
        ("S5", 785.0, 229.0),
        ("O7", 800.0, 241.0),
    ] {
        let outcome = after(
            grade,
            12.0,
            vec![
                air(Work::Normalise, 870.0, 10.0),
                slow(anneal_c, 15.0, 540.0),
            ],
        );
        let state = states(&outcome)[1];
        let hv = state.hardness.expect("a hardness").hv;
        // A Brinell number is 0.95 of a Vickers number here.
        let hb = 0.95 * hv;
        assert!(hb < most_hb + state.band_hv, "{grade} {hb}");
        assert!(hb > most_hb - 80.0, "{grade} {hb}");
    }
}

/// Steel whose hardness no model tells still turns to pearlite in air; steel that hardens in air is
/// annealed only where the furnace is led down slowly and far enough.
#[test]
fn what_is_not_known_of_a_steel_is_not_made_up() {
    // More vanadium in solution than the hardness of pearlite is known for.
    let mut route = Route::example();
    route.grade = None;
    route.composition.cr = 0.0;
    route.composition.c = 0.5;
    route.composition.v = 0.25;
    route.section = Section::Plate { thickness_mm: 8.0 };
    route.prior = vec![air(Work::Normalise, 1200.0, 30.0)];
    let outcome = run(&route).expect("an outcome");
    let state = states(&outcome)[0];
    assert_eq!(state.hardness, None);
    // So much that even what forms is not known.
    route.composition.v = 0.4;
    let beyond = run(&route).expect("an outcome");
    let none = states(&beyond)[0];
    assert_eq!((none.hardness, none.fractions), (None, None));
    let pearlite = state.fractions.map(|x| x.pearlite + x.ferrite + x.carbide);
    assert!(pearlite > Some(0.9), "{state:?}");
    let hv = |rate_k_per_h, until_c| {
        let outcome = after("D2", 8.0, vec![slow(885.0, rate_k_per_h, until_c)]);
        states(&outcome)[0].hardness.expect("a hardness").hv
    };
    assert!(hv(20.0, 600.0) < 260.0);
    assert!(hv(2000.0, 600.0) > 500.0);
    assert!(hv(20.0, 860.0) > 500.0);
}

/// A furnace that is led down to where it is already is still air.
#[test]
fn a_furnace_that_is_not_led_down_is_still_a_cooling() {
    let outcome = after("1084", 5.0, vec![slow(760.0, 20.0, 760.0)]);
    let x = states(&outcome)[0].fractions.expect("constituents");
    assert!(x.martensite < 0.05 && x.pearlite + x.carbide > 0.5, "{x:?}");
}

/// The step before decides how the soak goes: refined steel dissolves more in a short soak than
/// spheroidised, and has a finer grain than as forged.
#[test]
fn what_goes_before_counts_in_the_soak() {
    let normalise = air(Work::Normalise, 885.0, 10.0);
    let refined = vec![
        normalise,
        air(Work::Refine, 840.0, 3.0),
        air(Work::Refine, 820.0, 3.0),
    ];
    let soaked = |prior| after("52100", 4.0, prior).soak.end;
    let (mill, fine) = (soaked(Vec::new()), soaked(refined.clone()));
    assert!(fine.carbon_wt > mill.carbon_wt + 0.02, "{fine:?} {mill:?}");
    let first_um = |prior| {
        let outcome = after("52100", 4.0, prior);
        states(&outcome).last().map(|s| s.structure.first_grain_um)
    };
    assert!(first_um(refined) < first_um(vec![air(FORGE, 1150.0, 15.0)]));
}

fn any_step() -> impl Strategy<Value = PriorStep> {
    let work = prop_oneof![
        Just(FORGE),
        Just(Work::Normalise),
        Just(Work::Refine),
        Just(Work::SlowAnneal),
        Just(Work::SubcriticalAnneal),
        Just(Work::StressRelief),
    ];
    let cooling = prop_oneof![
        Just(SlowCooling::still_air()),
        (1.0..5000.0).prop_map(|rate_k_per_h| SlowCooling::Furnace {
            rate_k_per_h,
            until_c: 400.0,
        }),
    ];
    (work, 500.0..1250.0, 0.0..600.0, cooling).prop_map(
        |(work, temperature_c, time_min, cooling)| PriorStep {
            work: match work {
                Work::Forge { heats, .. } => Work::Forge {
                    finish_c: 0.8 * temperature_c,
                    heats,
                },
                other => other,
            },
            temperature_c,
            time_min,
            cooling,
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// Any valid steps give finite states that are wholes, or a reason.
    #[test]
    fn any_steps_keep_the_piece_whole(
        steps in prop::collection::vec(any_step(), 1..5),
        pick in 0_usize..100,
        start in 0_usize..8,
        thickness_mm in 0.5..40.0,
    ) {
        let mut route = Route::example();
        route.take_grade(&grades()[pick % grades().len()]);
        route.start = StartingStructure::ALL[start];
        route.section = Section::Plate { thickness_mm };
        route.prior = steps;
        prop_assert_eq!(validate(&route), Ok(()));
        let Ok(outcome) = run(&route) else { return Ok(()) };
        for state in outcome.prior.iter().filter_map(|step| step.state.given()) {
            let sum_wt = state.carbon_in_carbide_wt + state.carbon_in_solution_wt;
            prop_assert!((sum_wt - route.composition.c).abs() < 1e-9);
            let s = state.structure;
            for part in [s.left_over_part, s.network_part, s.carbide_enrichment] {
                prop_assert!((0.0..=1.0).contains(&part), "{:?}", s);
            }
            for size_um in [s.carbide_radius_um, s.left_over_radius_um, s.first_grain_um,
                s.network_radius_um, s.ferrite_half_width_um] {
                prop_assert!(size_um.is_finite() && size_um > 0.0, "{:?}", s);
            }
            if let Some(x) = state.fractions {
                let all = [x.ferrite, x.pearlite, x.bainite, x.martensite, x.austenite, x.carbide];
                prop_assert!(all.iter().all(|part| (-1e-9..=1.0 + 1e-9).contains(part)), "{:?}", x);
                prop_assert!((all.iter().sum::<f64>() - 1.0).abs() < 1e-6, "{:?}", x);
            }
            if let Some(hardness) = state.hardness {
                prop_assert!((60.0..1100.0).contains(&hardness.hv), "{:?}", state);
            }
        }
    }
}

/// Handbooks' bars of 25 mm normalised in air (`checks/normalised.csv`): nine in ten lie inside the band
/// that is told, and they are harder than the model has them by as much as it tells.
#[test]
fn the_band_of_normalised_bars_holds_nine_in_ten() {
    let rows = rows::normalised::rows();
    assert_eq!(rows.len(), normalised_bars::BARS);
    let errors: Vec<f64> = rows
        .iter()
        .map(|row| row.error().expect("a hardness"))
        .collect();
    let inside = errors
        .iter()
        .filter(|e| e.abs() <= normalised_bars::BAND_HV);
    let part = inside.count() as f64 / errors.len() as f64;
    assert!((0.88..1.0).contains(&part), "{part} {errors:.0?}");
    let harder_hv = -errors.iter().sum::<f64>() / errors.len() as f64;
    assert!(
        (harder_hv - normalised_bars::MEAN_HARDER_HV).abs() < 1.0,
        "{harder_hv}"
    );
}

/// The band goes with the pearlite: what is annealed to round carbide has its own.
#[test]
fn the_band_of_pearlite_goes_with_it() {
    let normalise = air(Work::Normalise, 870.0, 10.0);
    let anneal = air(Work::SubcriticalAnneal, 700.0, 600.0);
    let outcome = after("1084", 4.0, vec![normalise, anneal]);
    let [normalised, annealed] = states(&outcome)[..] else {
        panic!("two steps");
    };
    assert!(normalised.band_hv > 65.0, "{}", normalised.band_hv);
    assert!(
        annealed.band_hv < 0.5 * (normalised.band_hv + 35.0),
        "{}",
        annealed.band_hv
    );
}
