//! Austenite grain: growth in time, held by the carbide that is left.

use crate::sources::{bearing_card_1999, lee_2008, smith_1948};
use crate::steel::Composition;

/// Carbon up to which a steel grows as low-alloy steel, and from which as bearing steel, wt %.
const CARBON_WT: (f64, f64) = (0.6, 0.95);

/// Grain as mean intercept, µm, after a time at temperature from a first grain, when grains may not
/// pass a size.
///
/// Growth adds to the first grain in the fifth power, as the laws of growth have it.
pub(super) fn grain_um(
    steel: &Composition,
    first_um: f64,
    temperature_c: f64,
    time_s: f64,
    largest_um: f64,
) -> f64 {
    let grown_um = free_growth_um(steel, temperature_c, time_s).min(largest_um);
    (0.2 * (first_um.powi(5) + grown_um.powi(5)).ln()).exp()
}

/// Largest grain beside carbide, µm: of `volume` fraction and Σ volume/radius, per µm.
pub(super) fn held_by_carbide_um(volume_over_radius_per_um: f64) -> f64 {
    if volume_over_radius_per_um > 0.0 {
        smith_1948::DIAMETER_FACTOR / volume_over_radius_per_um
    } else {
        f64::INFINITY
    }
}

/// Grain grown from nothing, µm: between the law for low-alloy steel and that for bearing steel
/// by carbon, in the logarithm.
fn free_growth_um(steel: &Composition, temperature_c: f64, time_s: f64) -> f64 {
    if time_s <= 0.0 {
        return 0.0;
    }
    let temperature_k = temperature_c + 273.15;
    let low_alloy_um = lee_2008::grain_um(steel, temperature_k, time_s);
    let bearing_um = bearing_card_1999::grain_um(temperature_k, time_s);
    let (from, to) = CARBON_WT;
    let way = ((steel.c - from) / (to - from)).clamp(0.0, 1.0);
    (low_alloy_um.ln() * (1.0 - way) + bearing_um.ln() * way).exp()
}
