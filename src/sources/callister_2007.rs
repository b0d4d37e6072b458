//! Callister: diffusion of carbon in austenite as textbooks print it.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "callister_2007",
    authors: "W. D. Callister",
    year: 2007,
    title: "Materials Science and Engineering: An Introduction",
    venue: "Wiley, table of diffusion data",
    link: None,
    used_for: "diffusion of carbon in austenite: fast dissolution, decarburised depth",
    standing: Standing::FromMemory,
};

/// Pre-exponential factor, m²/s.
pub const CARBON_D0_M2_S: f64 = 2.3e-5;
/// Activation energy, J/mol.
pub const CARBON_Q_J_MOL: f64 = 148e3;

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
