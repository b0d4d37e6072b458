//! van Bohemen 2012: starts of bainite and martensite and the rate of the martensite reaction,
//! exponential in carbon.
//!
//! Compared by this project with 636 measured starts of martensite (0.2 to 1.3 wt % C): rms error
//! 18.9 K at 0.20-0.45 C, 16.9 K at 0.45-0.70 C and 33 K at 0.7-1.3 C, where part of the error is
//! carbide that had not dissolved; repeated measurements scatter by 12 K. With 76 measured starts
//! of bainite in low-alloy steel of 0.25 C or more: rms 19 K.

use super::{Source, Standing};
use crate::numeric::formula::Number;
use crate::steel::{Composition, Element};

/// The publication.
pub const SOURCE: Source = Source {
    key: "van_bohemen_2012",
    authors: "S. M. C. van Bohemen",
    year: 2012,
    title: "Bainite and martensite start temperature calculated with exponential carbon dependence",
    venue: "Materials Science and Technology 28, 487–495",
    link: Some("https://doi.org/10.1179/1743284711Y.0000000097"),
    used_for: "Ms, Bs, and half of the martensite rate parameter",
    standing: Standing::Read,
};

/// Start of martensite, °C, of the austenite's own composition.
#[must_use]
pub fn ms_c(austenite: &Composition) -> f64 {
    ms_c_of(|element| austenite.get(element))
}

/// The law of [`ms_c`], over contents in wt %.
pub fn ms_c_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    n(565.0)
        - n(600.0) * (n(1.0) - (n(-0.96) * content(Element::C)).exp())
        - n(31.0) * content(Element::Mn)
        - n(13.0) * content(Element::Si)
        - n(10.0) * content(Element::Cr)
        - n(18.0) * content(Element::Ni)
        - n(12.0) * content(Element::Mo)
}

/// Start of bainite, °C, of the austenite's own composition. Recalled from memory and compared
/// with measured starts.
#[must_use]
pub fn bs_c(austenite: &Composition) -> f64 {
    bs_c_of(|element| austenite.get(element))
}

/// The law of [`bs_c`], over contents in wt %.
pub fn bs_c_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    n(839.0)
        - n(270.0) * (n(1.0) - (n(-1.33) * content(Element::C)).exp())
        - n(86.0) * content(Element::Mn)
        - n(23.0) * content(Element::Si)
        - n(67.0) * content(Element::Cr)
        - n(33.0) * content(Element::Ni)
        - n(75.0) * content(Element::Mo)
}

/// Rate parameter of the martensite reaction, 1/K. Recalled from memory; the values for
/// 1C-1.5Cr steel printed in later work agree with it.
#[must_use]
pub fn rate_parameter_per_k(austenite: &Composition) -> f64 {
    rate_parameter_per_k_of(|element| austenite.get(element))
}

/// The law of [`rate_parameter_per_k`], over contents in wt %.
pub fn rate_parameter_per_k_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    n(1e-3)
        * (n(27.2)
            - n(19.8) * (n(1.0) - (n(-1.56) * content(Element::C)).exp())
            - n(0.14) * content(Element::Mn)
            - n(0.21) * content(Element::Si)
            - n(0.11) * content(Element::Cr)
            - n(0.08) * content(Element::Ni)
            - n(0.05) * content(Element::Mo))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 100Cr6 as printed by Furlan et al. 2025: 7.14e-3 + 0.0198 exp(-156 x), x mass fraction.
    #[test]
    fn rate_parameter_agrees_with_the_printed_bearing_steel_line() {
        for carbon_wt in [0.6, 0.8, 1.0] {
            let steel = Composition {
                c: carbon_wt,
                mn: 0.35,
                si: 0.25,
                cr: 1.5,
                ..Composition::default()
            };
            let printed = 7.14e-3 + 0.0198 * (-1.56 * carbon_wt).exp();
            assert!((rate_parameter_per_k(&steel) - printed).abs() < 2e-5);
        }
    }

    /// The notes give 157 °C for fully dissolved 1.02C-1.41Cr bearing steel.
    #[test]
    fn start_of_martensite_of_fully_dissolved_bearing_steel() {
        let steel = Composition {
            c: 1.02,
            mn: 0.36,
            si: 0.33,
            cr: 1.41,
            ni: 0.20,
            ..Composition::default()
        };
        assert!((ms_c(&steel) - 157.0).abs() < 0.5, "{}", ms_c(&steel));
    }

    #[test]
    fn iron_limits_are_the_printed_constants() {
        let iron = Composition::default();
        assert_eq!(ms_c(&iron), 565.0);
        assert_eq!(bs_c(&iron), 839.0);
    }
}
