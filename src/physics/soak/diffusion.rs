//! How fast carbon and alloy move in austenite.

use crate::sources::{callister_2007, paul_1994};

/// Gas constant, J/(mol K).
const GAS_CONSTANT: f64 = 8.314;

/// Diffusivity of carbon in austenite, m²/s.
pub(super) fn of_carbon_m2_s(temperature_k: f64) -> f64 {
    callister_2007::CARBON_D0_M2_S
        * (-callister_2007::CARBON_Q_J_MOL / (GAS_CONSTANT * temperature_k)).exp()
}

/// Diffusivity of alloy in austenite, m²/s; chromium's is taken for all.
pub(super) fn of_alloy_m2_s(temperature_k: f64) -> f64 {
    paul_1994::CHROMIUM_D0_M2_S
        * (-paul_1994::CHROMIUM_Q_J_MOL / (GAS_CONSTANT * temperature_k)).exp()
}
