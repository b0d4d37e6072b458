//! Defining constants of the International System of Units.

use super::{Source, Standing};

/// Where the constants come from.
pub const SOURCE: Source = Source {
    key: "bipm_2019",
    authors: "Bureau International des Poids et Mesures",
    year: 2019,
    title: "The International System of Units, 9th edition",
    venue: "BIPM, Sèvres, section 2.2",
    link: Some("https://www.bipm.org/en/publications/si-brochure"),
    used_for: "Planck's law for the colour of glowing steel",
    standing: Standing::FromMemory,
};

/// Planck constant, J s, exact.
pub const PLANCK_J_S: f64 = 6.62607015e-34;
/// Speed of light, m/s, exact.
pub const LIGHT_M_S: f64 = 299792458.0;
/// Boltzmann constant, J/K, exact.
pub const BOLTZMANN_J_K: f64 = 1.380649e-23;

#[cfg(test)]
mod tests {
    use super::*;

    /// Second radiation constant as tabulated by CODATA 2018: 1.438776877e-2 m K (from memory).
    #[test]
    fn second_radiation_constant() {
        let c2_m_k = PLANCK_J_S * LIGHT_M_S / BOLTZMANN_J_K;
        assert!((c2_m_k - 1.438776877e-2).abs() < 1e-11);
    }
}
