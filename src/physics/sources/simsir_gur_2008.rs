//! Conductivity and heat capacity of the phases of a hardenable steel during a quench.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "simsir_gur_2008",
    authors: "C. Şimşir, C. H. Gür",
    year: 2008,
    title: "3D FEM simulation of steel quenching and investigation of the effect of asymmetric geometry on residual stress distribution",
    venue: "J. Mater. Process. Technol. 207, 211",
    link: None,
    used_for: "conductivity and volumetric heat capacity of austenite, of ferrite with carbide, and of martensite in the quench",
    standing: Standing::FromMemory,
};

/// Rows of (temperature °C, conductivity W/mK, volumetric heat capacity MJ/m³K); linear between.
pub type Rows = &'static [[f64; 3]];

/// Undercooled austenite of a steel with 0.6 to 1 % carbon; nearly the same for other steels.
pub const AUSTENITE: Rows = &[
    [0.0, 15.0, 4.15],
    [300.0, 18.0, 4.40],
    [600.0, 21.7, 4.67],
    [900.0, 25.1, 4.90],
];

/// Ferrite with pearlite or bainite, of a low-alloy steel.
pub const FERRITE_AND_CARBIDE: Rows = &[
    [0.0, 49.0, 3.78],
    [300.0, 41.7, 4.46],
    [600.0, 34.3, 5.09],
    [900.0, 27.0, 5.74],
];

/// Martensite, of a low-alloy steel, at 0 °C.
pub const MARTENSITE_AT_0C: [f64; 3] = [0.0, 43.1, 3.76];
/// Martensite, of a low-alloy steel.
pub const MARTENSITE: Rows = &[MARTENSITE_AT_0C, [300.0, 36.7, 4.45], [600.0, 30.1, 5.07]];

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the practical lines for density and a handbook heat capacity (from memory):
    /// austenite at 800 °C has 7600 kg/m³ and about 0.63 kJ/kgK, ferrite at 20 °C 7853 kg/m³ and
    /// about 0.48 kJ/kgK.
    #[test]
    fn agrees_with_density_times_heat_capacity() {
        let at_800 = 4.67 + (4.90 - 4.67) * 2.0 / 3.0;
        approx::assert_relative_eq!(at_800, 7600.0 * 630.0 / 1e6, max_relative = 0.03);
        approx::assert_relative_eq!(
            FERRITE_AND_CARBIDE[0][2],
            7853.0 * 480.0 / 1e6,
            max_relative = 0.03
        );
    }

    #[test]
    fn phases_of_ferritic_lattice_conduct_better_than_austenite() {
        for (ferrite, austenite) in FERRITE_AND_CARBIDE.iter().zip(AUSTENITE) {
            assert_eq!(ferrite[0], austenite[0]);
            assert!(ferrite[1] > austenite[1]);
        }
        for (martensite, ferrite) in MARTENSITE.iter().zip(FERRITE_AND_CARBIDE) {
            assert!(martensite[1] < ferrite[1]);
        }
    }
}
