//! Pilling and Bedworth 1923: volume of oxide over that of the metal it was made of.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "pilling_bedworth_1923",
    authors: "N. B. Pilling, R. E. Bedworth",
    year: 1923,
    title: "The oxidation of metals at high temperatures",
    venue: "Journal of the Institute of Metals 29, 529–591",
    link: None,
    used_for: "metal lost to scale",
    standing: Standing::FromMemory,
};

/// Wüstite, FeO, on iron: nearly all of a scale grown above 700 °C.
pub const WUSTITE_ON_IRON: f64 = 1.7;

#[cfg(test)]
mod tests {
    use super::*;

    /// From molar masses and densities: 71.84 g/mol at 5.87 g/cm³ on 55.85 g/mol at 7.87 g/cm³.
    #[test]
    fn ratio_of_molar_volumes() {
        let ratio = (71.84 / 5.87) / (55.85 / 7.87);
        assert!((ratio - WUSTITE_ON_IRON).abs() < 0.05, "{ratio}");
    }
}
