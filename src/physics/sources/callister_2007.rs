//! Callister: diffusion of carbon in austenite, and the solidus of austenite in the diagram of iron
//! and carbon, as textbooks print them.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "callister_2007",
    authors: "W. D. Callister",
    year: 2007,
    title: "Materials Science and Engineering: An Introduction",
    venue: "Wiley, table of diffusion data and diagram of iron and carbon",
    link: None,
    used_for: "diffusion of carbon in austenite: fast dissolution, decarburised depth; solidus of plain carbon steel",
    standing: Standing::FromMemory,
};

/// Pre-exponential factor, m²/s.
pub const CARBON_D0_M2_S: f64 = 2.3e-5;
/// Activation energy, J/mol.
pub const CARBON_Q_J_MOL: f64 = 148e3;

/// Solidus of austenite: carbon, wt %, and temperature, °C, at the peritectic and at the eutectic.
pub const AUSTENITE_SOLIDUS: [[f64; 2]; 2] = [[0.17, 1493.0], [2.11, 1147.0]];

#[cfg(test)]
mod tests {
    use super::*;

    /// Textbook value at 900 °C: 5.9e-12 m²/s.
    #[test]
    fn value_at_900() {
        let d = CARBON_D0_M2_S * (-CARBON_Q_J_MOL / (8.314 * 1173.15)).exp();
        assert!((d - 5.9e-12).abs() < 0.1e-12, "{d}");
    }
}
