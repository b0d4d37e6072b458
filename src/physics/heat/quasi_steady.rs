//! How quenchants compare for a section, at the price of a glance: to look through many in a good
//! order, not to judge by.

use super::{Material, Medium, Section};

/// From near the end of the soak to near the nose of pearlite, °C.
const FROM_C: f64 = 800.0;
const TO_C: f64 = 540.0;
/// Temperatures of the core that are looked at between the two.
const LOOKS: u32 = 4;
/// Steps from the core to the bath in which the surface is looked for.
const STEPS: u32 = 24;

/// Time in which the core of a section cools through the range of pearlite in a still quenchant, s, if
/// the fall from the core outwards were at any time as the square of the way. Up to a third short in
/// thick pieces, in warm water up to a half, but for most quenchants alike: a test in the search that
/// sorts by it holds how far their order is off.
pub fn quasi_steady_s(medium: &Medium, section: Section) -> f64 {
    let material = Material::of_austenite();
    let half_m = 0.5e-3 * section.thickness_mm();
    let volume_by_surface_m = half_m
        * match section {
            Section::Plate { .. } | Section::Blade { .. } => 1.0,
            Section::Round { .. } | Section::Square { .. } => 0.5,
        };
    let step_k = (FROM_C - TO_C) / f64::from(LOOKS);
    let looked_at_c = (0..LOOKS).map(|look| FROM_C - step_k * (f64::from(look) + 0.5));
    looked_at_c
        .map(|core_c| {
            let to_surface_w_m2k = 2.0 * material.conductivity_w_mk(core_c) / half_m;
            let flux_w_m2 = flux_at_surface(medium, core_c, to_surface_w_m2k);
            material.capacity_j_m3k(core_c) * volume_by_surface_m * step_k / flux_w_m2
        })
        .sum()
}

/// What leaves the surface where as much arrives there from the core, W/m². In boiling there may be
/// several such places: the hottest, since the surface comes from the core's temperature.
fn flux_at_surface(medium: &Medium, core_c: f64, to_surface_w_m2k: f64) -> f64 {
    let below_k = (core_c - medium.bath_c) / f64::from(STEPS);
    let mut before = (0.0, medium.flux(core_c, 1.0).0);
    for step in 1..=STEPS {
        let fall_k = f64::from(step) * below_k;
        let arrives = to_surface_w_m2k * fall_k;
        let leaves = medium.flux(core_c - fall_k, 1.0).0;
        if leaves <= arrives {
            let part = (before.1 - before.0) / ((before.1 - before.0) + (arrives - leaves));
            return before.1 + part * (leaves - before.1);
        }
        before = (arrives, leaves);
    }
    before.1
}
