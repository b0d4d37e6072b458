//! Where a soak is answered: every grade in its own range, and what is refused.

use recalesce::phases::{PhaseError, critical_temperatures, soak_limit};
use recalesce::soak::{SoakError, StartingStructure, soak};
use recalesce::steel::{Composition, find, grades};

#[test]
fn below_a1_says_so_with_both_temperatures() {
    let steel = find("1095").unwrap().nominal;
    let error = soak(&steel, StartingStructure::Spheroidised, 700.0, 600.0, 600.0).unwrap_err();
    assert!(matches!(error, SoakError::BelowA1 { .. }));
    let text = error.to_string();
    assert!(text.contains("700 °C") && text.contains("723 °C"), "{text}");
}

#[test]
fn absurd_questions_are_refused() {
    let steel = find("1095").unwrap().nominal;
    let start = StartingStructure::Spheroidised;
    for (temperature_c, time_s) in [
        (f64::NAN, 60.0),
        (800.0, f64::NAN),
        (800.0, -1.0),
        (9e9, 1.0),
    ] {
        assert!(soak(&steel, start, temperature_c, time_s, 60.0).is_err());
    }
    let vanadium = Composition {
        v: 3.0,
        ..find("1095").unwrap().nominal
    };
    assert!(matches!(
        soak_limit(&vanadium, 1020.0),
        Err(PhaseError::OutOfRange(_))
    ));
    // ferritic at every temperature
    let ferritic = Composition {
        c: 0.03,
        cr: 17.0,
        ..Composition::default()
    };
    let refusal = critical_temperatures(&ferritic);
    assert!(
        matches!(refusal, Err(PhaseError::NoAustenite { .. })),
        "{refusal:?}"
    );
}

#[test]
fn every_grade_soaks_in_its_own_range() {
    let mut soaked = 0;
    for grade in grades() {
        let Some((least_c, most_c)) = grade.austenitise_c.span else {
            continue;
        };
        soaked += 1;
        for temperature_c in [least_c, most_c] {
            let start = StartingStructure::FinePearlite;
            let outcome = soak(&grade.nominal, start, temperature_c, 900.0, 900.0).unwrap();
            let ferrite = outcome.end.ferrite_volume_fraction;
            // This composition lies at the edge of the field with ferrite, nearer than the 0.5 %
            // Cr to which that is known.
            let most = if grade.designation == "X50CrMoV15" {
                0.12
            } else {
                0.01
            };
            assert!(
                ferrite < most,
                "{} {temperature_c}: {ferrite}",
                grade.designation
            );
            assert!(outcome.end.carbon_wt > 0.25, "{}", grade.designation);
        }
    }
    assert!(soaked >= 40, "{soaked}");
}
