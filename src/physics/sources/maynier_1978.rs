//! Maynier, Dollet and Bastien 1978: Vickers hardness of bainite and of ferrite with pearlite.
//!
//! Read in several public reproductions; `rate` is the cooling rate at 700 °C in °C/h. The
//! martensite formula of the same paper is not used: linear in carbon, it overshoots above 0.6 %.

use super::{Source, Standing};
use crate::numeric::formula::Number;
use crate::steel::{Composition, CompositionRange, Element};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "maynier_1978",
    authors: "Ph. Maynier, J. Dollet, P. Bastien",
    year: 1978,
    title: "Hardenability Concepts with Applications to Steel: prediction of microstructure via empirical formulae based on CCT diagrams",
    venue: "AIME, 163–178 and 518–544",
    link: None,
    used_for: "what nickel, chromium, molybdenum and vanadium add to ferrite; check of bainite",
    standing: Standing::Read,
};

/// Carbon for which the formulae were made, wt % (recalled).
pub const CARBON_WT: (f64, f64) = (0.1, 0.5);

/// Alloying for which the formulae were made (recalled).
pub const RANGE: CompositionRange = CompositionRange {
    model: "Hardness of bainite and pearlite after Maynier",
    limits_wt: &[
        (Element::Mn, 0.0, 2.0),
        (Element::Si, 0.0, 1.0),
        (Element::Ni, 0.0, 4.0),
        (Element::Cr, 0.0, 3.0),
        (Element::Mo, 0.0, 1.0),
        (Element::V, 0.0, 0.2),
    ],
};

/// Bainite, HV, at a cooling rate at 700 °C in °C/h given as its decimal logarithm.
#[must_use]
pub fn bainite_hv(x: &Composition, log_rate_c_per_h: f64) -> f64 {
    -323.0
        + 185.0 * x.c
        + 330.0 * x.si
        + 153.0 * x.mn
        + 65.0 * x.ni
        + 144.0 * x.cr
        + 191.0 * x.mo
        + (89.0 + 53.0 * x.c - 55.0 * x.si - 22.0 * x.mn - 10.0 * x.ni - 20.0 * x.cr - 33.0 * x.mo)
            * log_rate_c_per_h
}

/// Ferrite with pearlite, HV, at a cooling rate at 700 °C in °C/h given as its decimal logarithm.
#[must_use]
pub fn ferrite_pearlite_hv(x: &Composition, log_rate_c_per_h: f64) -> f64 {
    42.0 + 223.0 * x.c
        + 53.0 * x.si
        + 30.0 * x.mn
        + dissolved_in_ferrite_hv_of(|element| x.get(element))
        + (10.0 - 19.0 * x.si + 4.0 * x.ni + 8.0 * x.cr + VANADIUM_HV * x.v) * log_rate_c_per_h
}

/// The term of vanadium in [`ferrite_pearlite_hv`], HV for each wt % and for each power of ten of the rate.
pub const VANADIUM_HV: f64 = 130.0;

/// The terms of nickel, chromium and molybdenum in [`ferrite_pearlite_hv`] that do not follow the rate,
/// over contents in wt %.
pub fn dissolved_in_ferrite_hv_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    n(12.6) * content(Element::Ni) + n(7.0) * content(Element::Cr) + n(19.0) * content(Element::Mo)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand from the printed formulae for 0.40 C, 0.25 Si, 0.80 Mn, 1.0 Cr, 0.2 Mo at
    /// 10 000 °C/h.
    #[test]
    fn worked_by_hand() {
        let steel = Composition {
            c: 0.40,
            si: 0.25,
            mn: 0.80,
            cr: 1.0,
            mo: 0.2,
            ..Composition::default()
        };
        assert!(
            (bainite_hv(&steel, 4.0) - 347.1).abs() < 0.1,
            "{}",
            bainite_hv(&steel, 4.0)
        );
        assert!((ferrite_pearlite_hv(&steel, 4.0) - 232.25).abs() < 0.1);
    }
}
