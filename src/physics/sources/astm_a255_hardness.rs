//! ASTM A255 / SAE J406: hardness of fully and of half martensitic steel against carbon.
//!
//! Recalled polynomials; they reproduce the rounded table of the standard (tests). Printed for
//! 0.10 to 0.70 % C; above 0.60 % this project follows [`super::krauss_1999`] instead.

use super::{Source, Standing};
use crate::numeric::formula::Number;

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "astm_a255_hardness",
    authors: "ASTM International",
    year: 2010,
    title: "Standard test methods for determining hardenability of steel: initial hardness",
    venue: "ASTM A255",
    link: None,
    used_for: "hardness of martensite and of half martensite against carbon",
    standing: Standing::FromMemory,
};

/// Carbon range of the polynomials, wt %.
pub const CARBON_WT: (f64, f64) = (0.10, 0.70);

/// Coefficients of carbon to the power 0..5: HRC of fully martensitic steel.
pub const FULL_MARTENSITE: [f64; 6] = [35.395, 6.990, 312.330, -821.744, 1015.479, -538.346];

/// Coefficients of carbon to the power 0..5: HRC at 50 % martensite.
pub const HALF_MARTENSITE: [f64; 6] = [22.974, 6.214, 356.364, -1091.488, 1464.88, -750.441];

/// Value of one of the polynomials, HRC.
#[must_use]
pub fn hrc(coefficients: &[f64; 6], carbon_wt: f64) -> f64 {
    hrc_of(coefficients, carbon_wt)
}

/// The law of [`hrc`].
pub fn hrc_of<N: Number>(coefficients: &[f64; 6], carbon_wt: N) -> N {
    let [c0, c1, c2, c3, c4, c5] = coefficients.map(N::constant);
    let x = || carbon_wt.clone();
    ((((c5 * x() + c4) * x() + c3) * x() + c2) * x() + c1) * x() + c0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard's table, rounded to 1 HRC (from memory).
    #[test]
    fn rounded_table() {
        for (carbon, full, half) in [
            (0.20, 44.0, 32.0),
            (0.35, 53.0, 40.0),
            (0.45, 58.0, 44.5),
            (0.55, 63.0, 49.0),
        ] {
            assert!((hrc(&FULL_MARTENSITE, carbon) - full).abs() < 1.0);
            assert!((hrc(&HALF_MARTENSITE, carbon) - half).abs() < 1.0);
        }
    }
}
