//! Volumes of the phases of steel from lattice parameters.

use super::{Source, Standing};

/// The source.
pub const SOURCE: Source = Source {
    key: "pearson_1967",
    authors: "W. B. Pearson",
    year: 1967,
    title: "A Handbook of Lattice Spacings and Structures of Metals and Alloys, volume 2",
    venue: "Pergamon Press, Oxford",
    link: None,
    used_for: "volume of a formula unit of each phase, to turn mass into volume fractions",
    standing: Standing::FromMemory,
};

/// Avogadro's number times one cubic nanometre in cm³.
const CM3_PER_MOLE_AND_NM3: f64 = 602.214;

/// Volume growth from room temperature to about 850 °C of carbides, mean linear expansion 10e-6
/// per kelvin (cementite 14e-6, MC 7e-6).
const GROWTH: f64 = 1.025;
const GROWTH_CEMENTITE: f64 = 1.035;
const GROWTH_MC: f64 = 1.018;

/// Austenite, one metal atom: iron at 912 °C has a = 0.3647 nm, four atoms to the cell.
pub const AUSTENITE_CM3: f64 = 0.3647 * 0.3647 * 0.3647 / 4.0 * CM3_PER_MOLE_AND_NM3;
/// Carbon dissolved in austenite: a grows by 0.0033 nm for each weight per cent.
pub const CARBON_IN_AUSTENITE_CM3: f64 = 4.05;
/// Ferrite, one metal atom: iron at 912 °C has a = 0.2904 nm, two atoms to the cell.
pub const FERRITE_CM3: f64 = 0.2904 * 0.2904 * 0.2904 / 2.0 * CM3_PER_MOLE_AND_NM3;
/// Cementite M3C: cell 0.4523 x 0.5090 x 0.6748 nm with four formula units.
pub const CEMENTITE_CM3: f64 =
    0.4523 * 0.5090 * 0.6748 / 4.0 * CM3_PER_MOLE_AND_NM3 * GROWTH_CEMENTITE;
/// M7C3: 57.8 cm³ for Cr7C3 of 6.92 g/cm³.
pub const M7C3_CM3: f64 = 57.8 * GROWTH;
/// M23C6: cell 1.066 nm with four formula units.
pub const M23C6_CM3: f64 = 1.066 * 1.066 * 1.066 / 4.0 * CM3_PER_MOLE_AND_NM3 * GROWTH;
/// M6C: cell 1.11 nm with sixteen formula units.
pub const M6C_CM3: f64 = 1.11 * 1.11 * 1.11 / 16.0 * CM3_PER_MOLE_AND_NM3 * GROWTH;
/// MC: vanadium carbide, cell 0.4166 nm with four formula units.
pub const MC_CM3: f64 = 0.4166 * 0.4166 * 0.4166 / 4.0 * CM3_PER_MOLE_AND_NM3 * GROWTH_MC;

#[cfg(test)]
mod tests {
    use super::*;

    /// Densities at room temperature as handbooks give them (from memory): cementite 7.68,
    /// Cr23C6 6.97, Fe3Mo3C 9.1, VC 5.77 g/cm³.
    #[test]
    fn lattice_parameters_give_the_known_densities() {
        let density = |grams: f64, volume: f64, growth: f64| grams / (volume / growth);
        approx::assert_relative_eq!(
            density(179.55, CEMENTITE_CM3, GROWTH_CEMENTITE),
            7.68,
            epsilon = 0.02
        );
        approx::assert_relative_eq!(density(1267.97, M23C6_CM3, GROWTH), 6.97, epsilon = 0.03);
        approx::assert_relative_eq!(density(467.4, M6C_CM3, GROWTH), 9.1, epsilon = 0.05);
        approx::assert_relative_eq!(density(62.95, MC_CM3, GROWTH_MC), 5.77, epsilon = 0.03);
    }
}
