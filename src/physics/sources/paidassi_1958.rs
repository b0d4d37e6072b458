//! Païdassi 1958: scale on pure iron in air, 700 to 1250 °C: thickness in the square root of time.
//!
//! `x² = k t`, `k = 6.1 exp(-169452 / RT)` cm²/s, R in J/(mol K): 40.5 kcal/mol. Recalled from
//! reviews that quote it.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "paidassi_1958",
    authors: "J. Païdassi",
    year: 1958,
    title: "Sur la cinétique de l'oxydation du fer dans l'air dans l'intervalle 700-1250 °C",
    venue: "Acta Metallurgica 6, 184–194",
    link: None,
    used_for: "scale on a piece soaked in air, at most",
    standing: Standing::FromMemory,
};

/// Temperatures of the tests, °C.
pub const RANGE_C: (f64, f64) = (700.0, 1250.0);
/// Pre-exponential factor, m²/s.
pub const SCALE_D0_M2_S: f64 = 6.1e-4;
/// Activation energy, J/mol.
pub const SCALE_Q_J_MOL: f64 = 169_452.0;

/// Scale grown in `time_s` at `temperature_k` on clean iron, mm.
#[must_use]
pub fn scale_mm(temperature_k: f64, time_s: f64) -> f64 {
    let k_m2_s = SCALE_D0_M2_S * (-SCALE_Q_J_MOL / (8.314 * temperature_k)).exp();
    1000.0 * (k_m2_s * time_s.max(0.0)).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 0.25 mm in an hour at 900 °C, 0.5 mm at 1000 °C: worked from the law; and the 40.5 kcal/mol
    /// as which the energy was first given.
    #[test]
    fn worked_values() {
        assert!((scale_mm(1173.15, 3600.0) - 0.25).abs() < 0.005);
        assert!((scale_mm(1273.15, 3600.0) - 0.495).abs() < 0.005);
        assert!((SCALE_Q_J_MOL / 4184.0 - 40.5).abs() < 0.01);
    }
}
