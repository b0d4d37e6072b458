//! Grange 1961: equilibrium temperatures of the austenite boundary of low-alloy hypoeutectoid
//! steel. The formulas are printed in degrees Fahrenheit; the conversion is done here.
//!
//! Range: low alloy, carbon below the eutectoid for `Ae3`.

use super::{Source, Standing};
use crate::numeric::formula::Number;
use crate::steel::{Composition, Element};

/// The publication.
pub const SOURCE: Source = Source {
    key: "grange_1961",
    authors: "R. A. Grange",
    year: 1961,
    title: "Estimating critical ranges in heat treatment of steels",
    venue: "Metal Progress 79, 73–75",
    link: None,
    used_for: "upper limit of pearlite",
    standing: Standing::FromMemory,
};

/// Fahrenheit to Celsius for the printed formulas.
fn celsius<N: Number>(fahrenheit: N) -> N {
    (fahrenheit - N::constant(32.0)) / N::constant(1.8)
}

/// Equilibrium temperature below which austenite, ferrite and cementite coexist, °C.
#[must_use]
pub fn ae1_c(steel: &Composition) -> f64 {
    ae1_c_of(|element| steel.get(element))
}

/// The law of [`ae1_c`], over contents in wt %.
pub fn ae1_c_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    celsius(
        n(1333.0) - n(25.0) * content(Element::Mn)
            + n(40.0) * content(Element::Si)
            + n(42.0) * content(Element::Cr)
            - n(26.0) * content(Element::Ni),
    )
}

/// Equilibrium temperature above which hypoeutectoid steel is all austenite, °C.
#[must_use]
pub fn ae3_c(steel: &Composition) -> f64 {
    celsius(
        1570.0 - 323.0 * steel.c - 25.0 * steel.mn + 80.0 * steel.si
            - 3.0 * steel.cr
            - 32.0 * steel.ni,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_iron_limits() {
        let iron = Composition::default();
        // 1333 °F and 1570 °F.
        assert!((ae1_c(&iron) - 722.78).abs() < 0.01);
        assert!((ae3_c(&iron) - 854.44).abs() < 0.01);
    }

    #[test]
    fn manganese_and_nickel_lower_silicon_raises() {
        let base = Composition {
            c: 0.4,
            ..Composition::default()
        };
        let with = |mn, si, ni| Composition { mn, si, ni, ..base };
        assert!(ae1_c(&with(1.0, 0.0, 0.0)) < ae1_c(&base));
        assert!(ae1_c(&with(0.0, 0.0, 1.0)) < ae1_c(&base));
        assert!(ae1_c(&with(0.0, 1.0, 0.0)) > ae1_c(&base));
    }
}
