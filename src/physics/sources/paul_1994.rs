//! Paul and others 1994: lattice diffusion of chromium in austenite by tracer and sectioning.
//!
//! Read as abstract; the austenite there is an iron-nickel-chromium alloy, 1060 to 1510 K. Another
//! abstract read gives 2.7e-5 m²/s and 246 kJ/mol for chemical diffusion in a 25Cr-20Ni steel,
//! seven times more at 845 °C: the spread tells how well such numbers are known.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "paul_1994",
    authors: "A. R. Paul, K. N. G. Kaimal, M. C. Naik, S. R. Dharwadkar",
    year: 1994,
    title: "Lattice and grain boundary diffusion of chromium in an austenitic alloy",
    venue: "Journal of Nuclear Materials 217, 75–81",
    link: None,
    used_for: "diffusion of chromium, and of alloy in general, away from dissolving carbide",
    standing: Standing::Read,
};

/// Pre-exponential factor, m²/s.
pub const CHROMIUM_D0_M2_S: f64 = 3.24e-4;
/// Activation energy, J/mol.
pub const CHROMIUM_Q_J_MOL: f64 = 287.4e3;

#[cfg(test)]
mod tests {
    use super::*;

    /// Order of magnitude of substitutional diffusion in austenite at 845 °C: 1e-17 m²/s.
    #[test]
    fn order_of_magnitude() {
        let d = CHROMIUM_D0_M2_S * (-CHROMIUM_Q_J_MOL / (8.314 * 1118.15)).exp();
        assert!((1.0e-17..1.5e-17).contains(&d), "{d}");
    }
}
