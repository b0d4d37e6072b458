//! The fit of the hardness of annealed steel: one constant.

use super::{Errors, Fit};
use recalesce::hardness::annealed;
use recalesce::sources::annealed_fit::{
    AnnealedSteel, GAIN_HV_SQRT_UM, LEFT_OUT, RADIUS_UM, STEELS,
};

/// Hardness of the steel's ferrite, HV, and what the constant is multiplied with in it.
fn parts(steel: &AnnealedSteel) -> (f64, f64) {
    let hv = |fraction| {
        let found = annealed(&steel.composition, fraction, RADIUS_UM);
        found.expect("a hardness").hv
    };
    let ferrite_hv = hv(0.0);
    let gain_hv = hv(steel.carbide_volume_fraction) - ferrite_hv;
    (ferrite_hv, gain_hv / GAIN_HV_SQRT_UM)
}

fn fit(steels: &[AnnealedSteel]) -> f64 {
    let (mut top, mut bottom) = (0.0, 0.0);
    for steel in steels {
        let (ferrite_hv, content) = parts(steel);
        top += content * (steel.hv - ferrite_hv);
        bottom += content * content;
    }
    top / bottom
}

fn miss(gain: f64, steel: &AnnealedSteel) -> f64 {
    let (ferrite_hv, content) = parts(steel);
    ferrite_hv + gain * content - steel.hv
}

/// Fits the constant to all steels and with each of them left out.
pub fn fitted() -> Fit {
    let errors = |gain: f64| Errors::of(STEELS.iter().map(|steel| miss(gain, steel)));
    let left_out = (0..STEELS.len()).map(|i| {
        let mut kept = STEELS.to_vec();
        let out = kept.remove(i);
        miss(fit(&kept), &out)
    });
    Fit {
        title: "hardness of annealed steel",
        unit: "HV",
        fold: "steel",
        folds: STEELS.len(),
        fitted: errors(fit(&STEELS)),
        left_out: Errors::of(left_out),
        stored: errors(GAIN_HV_SQRT_UM),
        told: Some(LEFT_OUT),
    }
}
