//! Lee and Park 2013: coarser austenite grain, higher start of martensite.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "lee_park_2013",
    authors: "S.-J. Lee, K.-S. Park",
    year: 2013,
    title: "Prediction of martensite start temperature in alloy steels with different grain sizes",
    venue: "Metallurgical and Materials Transactions A 44, 3423–3427",
    link: None,
    used_for: "effect of the austenite grain on Ms",
    standing: Standing::Read,
};

/// Rise of Ms for each unit of the natural logarithm of the grain diameter, K.
pub const RISE_K_PER_LN_DIAMETER: f64 = 11.64;

#[cfg(test)]
mod tests {
    /// Doubling the diameter: 8 K, inside the 5 to 15 K that is commonly reported.
    #[test]
    fn doubling_the_grain() {
        let rise_k = super::RISE_K_PER_LN_DIAMETER * 2.0_f64.ln();
        assert!((5.0..15.0).contains(&rise_k));
    }
}
