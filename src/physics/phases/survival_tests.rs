//! Searches that do not come to rest are values to everything that needs them: an error with its
//! temperature, or the answer by another way; never a panic, never another answer.

use super::equilibrium::failing;
use super::*;
use crate::steel::Composition;

fn steels() -> [Composition; 3] {
    let carbon = Composition::default().with_carbon(0.9);
    let bearing = Composition {
        c: 1.0,
        mn: 0.35,
        si: 0.25,
        cr: 1.45,
        ..Composition::default()
    };
    let air_hardening = Composition {
        c: 1.0,
        mn: 0.7,
        si: 0.3,
        cr: 5.1,
        mo: 1.1,
        v: 0.25,
        ..Composition::default()
    };
    [carbon, bearing, air_hardening]
}

/// Fails from the first search on and then from ever later ones, once, a few times or for good.
/// What is still answered must be near the sound answer.
fn survives<T>(
    latest: u32,
    ask: impl Fn() -> Result<T, PhaseError>,
    is_near: impl Fn(&T, &T) -> bool,
) {
    let sound = ask().unwrap();
    for after in (0..latest).step_by(1 + latest as usize / 40) {
        for times in [1, 3, u32::MAX] {
            match failing(after, times, &ask) {
                Ok(found) => assert!(is_near(&found, &sound), "{times} failures after {after}"),
                Err(error) => assert!(
                    matches!(error, PhaseError::NotConverged { .. }),
                    "{times} failures after {after}: {error}"
                ),
            }
        }
    }
    let nothing = failing(0, u32::MAX, &ask);
    assert!(matches!(nothing, Err(PhaseError::NotConverged { .. })));
}

#[test]
fn critical_temperatures_survive_a_failing_solver() {
    for steel in steels() {
        survives(
            120,
            || critical_temperatures(&steel),
            |a, b| (a.a1_c - b.a1_c).abs() < 0.1 && (a.a1_upper_c - b.a1_upper_c).abs() < 0.1,
        );
        survives(
            120,
            || critical_points(&steel).map_err(PhaseError::from),
            |a, b| (a.a1_lower_c - b.a1_lower_c).abs() < 0.1,
        );
    }
}

#[test]
fn the_map_survives_a_failing_solver() {
    for steel in &steels()[..2] {
        survives(
            800,
            || phase_map(steel),
            |a, b| (a.a1_c - b.a1_c).abs() < 0.1 && a.fields.len() == b.fields.len(),
        );
    }
}

#[test]
fn limits_of_the_soak_survive_a_failing_solver() {
    for steel in steels() {
        survives(
            30,
            || soak_limit(&steel, 900.0),
            |a, b| (a.austenite.c - b.austenite.c).abs() < 1e-6,
        );
        // carbide at rest is taken from a temperature nearby
        survives(
            10,
            || annealed(&steel),
            |a, b| (a.carbide_mass_fraction - b.carbide_mass_fraction).abs() < 0.01,
        );
    }
}
