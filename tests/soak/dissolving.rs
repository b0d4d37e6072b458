//! How far and how fast carbide dissolves.

use recalesce::phases::{annealed, carbon_beside_cementite_wt};
use recalesce::soak::{StartingStructure, Stock, soak};
use recalesce::steel::{Composition, Element, find};
use recalesce::transform::{Austenite, martensite_start_c};

/// "Plain carbon lamellar steels dissolve within a minute" (common practice, no source).
#[test]
fn lamellar_plain_carbon_dissolves_within_a_minute() {
    for (name, temperature_c) in [("1075", 800.0), ("1084", 805.0), ("W1 (0.85C)", 790.0)] {
        let steel = find(name).unwrap().nominal;
        for start in [
            StartingStructure::LamellarPearlite,
            StartingStructure::MediumPearlite,
            StartingStructure::FinePearlite,
            StartingStructure::QuenchedAndRefined,
            StartingStructure::AsForged,
        ] {
            let outcome = soak(&steel, start, temperature_c, 60.0, 60.0).unwrap();
            let short_wt = outcome.limit.austenite.c - outcome.end.carbon_wt;
            assert!(short_wt < 0.02, "{name} {start:?} {short_wt}");
        }
    }
}

/// From the coarsest carbide to the finest.
#[test]
fn finer_carbide_dissolves_faster_in_every_structure() {
    use StartingStructure as Start;
    let coarse_to_fine = [
        Start::CoarseSpheroidised,
        Start::Spheroidised,
        Start::SubcriticalAnnealed,
        Start::LamellarPearlite,
        Start::MediumPearlite,
        Start::FinePearlite,
        Start::QuenchedAndRefined,
    ];
    for (name, temperature_c) in [("52100", 830.0), ("1095", 800.0), ("O1", 800.0)] {
        let steel = find(name).unwrap().nominal;
        for time_s in [30.0, 300.0, 3000.0] {
            let after = |start| {
                let outcome = soak(&steel, start, temperature_c, time_s, 0.0).unwrap();
                outcome.carbon_in_solution_wt
            };
            let dissolved = coarse_to_fine.map(after);
            assert!(dissolved.is_sorted(), "{name} {time_s}: {dissolved:?}");
            assert!(dissolved[0] < dissolved[6], "{name} {time_s}");
        }
    }
}

/// Just above A1 ferrite stays while carbide holds carbon back, so that the carbon of the austenite
/// follows A3 and does not fall below it: steeper than 0.012 % in a kelvin is no line of A3 or Acm.
/// Where the fast limit passes the carbon with which the soak begins, the cells of the shrinkage axis
/// add a step of up to 0.01 %, in 52100 at 760 °C, over half a kelvin.
#[test]
fn carbon_in_austenite_does_not_fall_above_a1() {
    for (name, from_c, to_c) in [
        ("52100", 731.5, 790.0),
        ("A2", 741.0, 850.0),
        ("1045", 725.0, 800.0),
    ] {
        let steel = find(name).unwrap().nominal;
        let stock = Stock::new(&steel, StartingStructure::Spheroidised).unwrap();
        let carbon_wt = |temperature_c| {
            let soaked = stock.at(temperature_c).unwrap().soak(720.0, 0.0).unwrap();
            soaked.end.carbon_wt
        };
        let steps = ((to_c - from_c) / 0.5) as u32;
        let at = |i: u32| from_c + 0.5 * f64::from(i);
        for i in 0..steps {
            let change = (carbon_wt(at(i + 1)) - carbon_wt(at(i))).abs();
            assert!(
                change < 0.5 * 0.012 + 0.01,
                "{name} at {} °C: {change}",
                at(i)
            );
        }
    }
}

/// Two stages in spheroidised 1 % C-1.5 % Cr steel: in seconds to what carbon can do alone, in
/// minutes beyond, and not to equilibrium.
#[test]
fn carbon_comes_fast_and_alloy_slowly() {
    let steel = Composition {
        c: 1.0,
        mn: 0.35,
        si: 0.25,
        cr: 1.45,
        ..Composition::default()
    };
    let before = annealed(&steel).unwrap();
    let cementite = before.cementite.unwrap();
    let mut ferrite = steel;
    for element in [Element::Mn, Element::Si, Element::Cr] {
        let held = before.carbide_mass_fraction * before.carbide.get(element);
        let left = (steel.get(element) - held) / (1.0 - before.carbide_mass_fraction);
        ferrite.set(element, left);
    }
    for temperature_c in [807.0, 845.0, 871.0] {
        let fast = carbon_beside_cementite_wt(&ferrite, &cementite, temperature_c);
        let fast_wt = fast.unwrap().unwrap();
        let after = |time_s| {
            let start = StartingStructure::Spheroidised;
            let outcome = soak(&steel, start, temperature_c, time_s, 0.0).unwrap();
            (outcome.end.carbon_wt, outcome.limit.austenite.c)
        };
        let (soon_wt, _) = after(10.0);
        assert!(
            (soon_wt / fast_wt - 1.0).abs() < 0.06,
            "{soon_wt} {fast_wt}"
        );
        let (later_wt, limit_wt) = after(1200.0);
        assert!(later_wt > fast_wt + 0.03, "{later_wt} {fast_wt}");
        assert!(later_wt < limit_wt - 0.05, "{later_wt} {limit_wt}");
    }
}

/// Dilatometer: Ms 249 °C of 1.02 % C-1.41 % Cr steel austenitised at 845 °C, with the soak taken
/// as 20 min. The bands of the martensite model above 0.7 % C, 30 K, and of the dilatometer, 10 K,
/// add up in squares.
#[test]
fn ms_after_a_usual_soak_is_as_measured() {
    let steel = Composition {
        c: 1.02,
        mn: 0.36,
        si: 0.33,
        cr: 1.41,
        ni: 0.20,
        ..Composition::default()
    };
    let start = StartingStructure::Spheroidised;
    let soaked = soak(&steel, start, 845.0, 1200.0, 0.0).unwrap();
    let ms_c = martensite_start_c(&Austenite {
        composition: soaked.dissolved,
        grain_astm: soaked.end.grain_astm,
        undissolved_carbide_volume_fraction: soaked.end.carbide_volume_fraction,
    });
    assert!(
        (ms_c.clone().unwrap() - 249.0).abs() < 30.0_f64.hypot(10.0),
        "{ms_c:?}"
    );
}

/// A network on the grain boundaries holds carbon back; without one there is none to hold.
#[test]
fn a_network_from_the_forge_dissolves_last() {
    let after = |c: f64, start| {
        let steel = find("52100").unwrap().nominal.with_carbon(c);
        let outcome = soak(&steel, start, 850.0, 300.0, 0.0).unwrap();
        outcome.carbon_in_solution_wt
    };
    let (forged, slow) = (
        StartingStructure::AsForged,
        StartingStructure::LamellarPearlite,
    );
    assert!(after(1.0, forged) < after(1.0, slow) - 0.02);
    assert!((after(0.6, forged) - after(0.6, slow)).abs() < 1e-9);
}

/// Where dissolving goes over from the pace of carbon to that of alloy, the course has no step.
#[test]
fn dissolved_carbon_has_no_step_in_temperature() {
    const STEP_K: f64 = 0.1;
    /// Twice the steepest that carbon rises with temperature, just above A1.
    const MOST_WT: f64 = 0.0015;
    let steel = recalesce::steel::find("52100").unwrap().nominal;
    for start in StartingStructure::ALL {
        let stock = Stock::new(&steel, start).unwrap();
        let mut before: Option<f64> = None;
        for i in 0..600 {
            let temperature_c = 740.0 + STEP_K * f64::from(i);
            let soaked = stock.at(temperature_c).unwrap().soak(600.0, 600.0).unwrap();
            let carbon_wt = soaked.end.carbon_wt;
            if let Some(before) = before {
                let step_wt = carbon_wt - before;
                assert!(
                    step_wt.abs() < MOST_WT,
                    "{start:?} {temperature_c} {step_wt}"
                );
            }
            before = Some(carbon_wt);
        }
    }
}
