//! Kirkaldy and Venugopalan 1984: how a transformation that starts at sites and is stopped by
//! impingement proceeds from start to finish. Only the shape of the reaction is used here; the
//! composition terms of the paper are replaced by this project's own fit.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "kirkaldy_venugopalan_1984",
    authors: "J. S. Kirkaldy, D. Venugopalan",
    year: 1984,
    title: "Prediction of microstructure and hardenability in low alloy steels",
    venue: "Phase Transformations in Ferrous Alloys, AIME, 125–148",
    link: None,
    used_for: "shape of the ferrite and pearlite reactions between start and finish",
    standing: Standing::FromMemory,
};

/// Exponent e of the reaction rate dX/dt ~ X^(e(1-X)) (1-X)^(eX).
pub const EXPONENT: f64 = 2.0 / 3.0;

#[cfg(test)]
mod tests {
    #[test]
    fn exponent_as_printed() {
        assert!((super::EXPONENT - 0.6667).abs() < 1e-4);
    }
}
