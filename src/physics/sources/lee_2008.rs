//! Lee and Lee 2008: growth of austenite grains in low-alloy steel.
//!
//! `d = 76671 exp(-Q / RT) t^0.211`, d in µm, t in s, Q in J/mol by composition. For steels
//! without grain-refining additions.

use super::{Source, Standing};
use crate::steel::Composition;

/// The publication.
pub const SOURCE: Source = Source {
    key: "lee_2008",
    authors: "S.-J. Lee, Y.-K. Lee",
    year: 2008,
    title: "Prediction of austenite grain growth during heat treatment of low alloy steels",
    venue: "Materials and Design 29, 1840–1844",
    link: None,
    used_for: "grain growth of hypoeutectoid steel",
    standing: Standing::FromMemory,
};

/// Exponent of time.
pub const TIME_EXPONENT: f64 = 0.211;

/// Grain diameter grown from nothing in `time_s` at `temperature_k`, µm.
#[must_use]
pub fn grain_um(steel: &Composition, temperature_k: f64, time_s: f64) -> f64 {
    let q_j_mol =
        89098.0 + 3581.0 * steel.c + 1211.0 * steel.ni + 1443.0 * steel.cr + 4031.0 * steel.mo;
    76671.0
        * (-q_j_mol / (8.314 * temperature_k)).exp()
        * (TIME_EXPONENT * time_s.max(0.0).ln()).exp()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked value of the notes: 46 µm after 1 h at 900 °C, with the base energy.
    #[test]
    fn worked_value() {
        let base = grain_um(&Composition::default(), 1173.15, 3600.0);
        assert!((base - 46.0).abs() < 1.5, "{base}");
    }
}
