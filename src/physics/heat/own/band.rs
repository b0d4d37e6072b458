//! How well a heat-transfer curve is known where it decides.

use crate::heat::HeatTransfer;
use crate::numeric::quantile::NINE_IN_TEN;

/// Surface temperatures over which the mean level decides the time of a plate to 540 °C, °C.
const DECIDING_C: [f64; 5] = [450.0, 525.0, 600.0, 675.0, 750.0];
/// What remains of the band when the probe is known exactly, as the standard deviation of the
/// logarithm: other surface, orientation, bath (expert value).
const REST_OF_BAND: f64 = 0.1;

/// Mean of the logarithm of the coefficient where it decides.
pub(super) fn mean_ln_h(curve: &HeatTransfer) -> f64 {
    let sum: f64 = DECIDING_C.iter().map(|t| curve.at(*t).ln()).sum();
    sum / DECIDING_C.len() as f64
}

/// Factor either way that holds nine in ten, from the variance of [`mean_ln_h`].
pub fn band_factor(variance: f64) -> f64 {
    (NINE_IN_TEN * (variance + REST_OF_BAND * REST_OF_BAND).sqrt()).exp()
}
