//! The fit of the grain of bearing steel to a producer's card: a straight line.

use super::{Errors, Fit};
use recalesce::sources::astm_e112::{grain_number, intercept_um};
use recalesce::sources::bearing_card_1999::{
    ACTIVATION_J_MOL, FRONT_UM, GAS_J_MOL_K, GRAIN_ASTM, HOLD_S, LEFT_OUT, grain_um,
};

/// 1/(RT), mol/J, and the logarithm of the intercept, µm.
fn points() -> Vec<(f64, f64)> {
    GRAIN_ASTM
        .iter()
        .map(|(temperature_c, least, most)| {
            let grain = 0.5 * (least + most);
            let inverse = 1.0 / (GAS_J_MOL_K * (temperature_c + 273.15));
            (inverse, intercept_um(grain).ln())
        })
        .collect()
}

/// Logarithm of the front factor and activation energy.
fn fit(points: &[(f64, f64)]) -> (f64, f64) {
    let n = points.len() as f64;
    let x = points.iter().map(|p| p.0).sum::<f64>() / n;
    let y = points.iter().map(|p| p.1).sum::<f64>() / n;
    let top: f64 = points.iter().map(|p| (p.0 - x) * (p.1 - y)).sum();
    let bottom: f64 = points.iter().map(|p| (p.0 - x).powi(2)).sum();
    let slope = top / bottom;
    (y - slope * x, -slope)
}

/// In grain numbers.
fn miss((ln_front, activation): (f64, f64), (inverse, ln_um): (f64, f64)) -> f64 {
    grain_number((ln_front - activation * inverse).exp()) - grain_number(ln_um.exp())
}

/// Fits the law to all temperatures and with each of them left out.
pub fn fitted() -> Fit {
    let points = points();
    let law = fit(&points);
    let errors = |law| Errors::of(points.iter().map(|point| miss(law, *point)));
    let left_out = (0..points.len()).map(|i| {
        let mut kept = points.clone();
        let out = kept.remove(i);
        miss(fit(&kept), out)
    });
    let stored = GRAIN_ASTM.iter().map(|(temperature_c, least, most)| {
        grain_number(grain_um(temperature_c + 273.15, HOLD_S)) - 0.5 * (least + most)
    });
    assert!(
        (FRONT_UM / law.0.exp()).ln().abs() < 0.5 && (ACTIVATION_J_MOL / law.1 - 1.0).abs() < 0.05
    );
    Fit {
        title: "grain of bearing steel",
        unit: "grain numbers",
        fold: "temperature",
        folds: points.len(),
        fitted: errors(law),
        left_out: Errors::of(left_out),
        stored: Errors::of(stored),
        told: Some(LEFT_OUT),
    }
}
