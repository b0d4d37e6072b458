//! Andrews 1965: the temperatures at which low-alloy steel begins and ends to turn into
//! austenite on heating.
//!
//! Range: carbon under 0.6 wt %, low alloy; the formulas were fitted to slow heating and hold to
//! about 11 K (`Ac1`) and 16 K (`Ac3`). Copper, arsenic, aluminium and titanium are not inputs here.

use super::{Source, Standing};
use crate::numeric::formula::Number;
use crate::steel::{Composition, Element};

/// The publication.
pub const SOURCE: Source = Source {
    key: "andrews_1965",
    authors: "K. W. Andrews",
    year: 1965,
    title: "Empirical formulae for the calculation of some transformation temperatures",
    venue: "Journal of the Iron and Steel Institute 203, 721–727",
    link: None,
    used_for: "Ac1 and Ac3 of low-alloy steel; upper limit of ferrite",
    standing: Standing::FromMemory,
};

/// Start of austenite on slow heating, °C.
#[must_use]
pub fn ac1_c(steel: &Composition) -> f64 {
    723.0 - 10.7 * steel.mn - 16.9 * steel.ni + 29.1 * steel.si + 16.9 * steel.cr + 6.38 * steel.w
}

/// End of ferrite on slow heating, °C. Meant for carbon under 0.6 wt %.
#[must_use]
pub fn ac3_c(steel: &Composition) -> f64 {
    ac3_c_of(|element| steel.get(element).max(0.0))
}

/// The law of [`ac3_c`], over contents in wt %.
pub fn ac3_c_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    n(910.0) - n(203.0) * content(Element::C).sqrt() - n(15.2) * content(Element::Ni)
        + n(44.7) * content(Element::Si)
        + n(104.0) * content(Element::V)
        + n(31.5) * content(Element::Mo)
        + n(13.1) * content(Element::W)
        - n(30.0) * content(Element::Mn)
        - n(11.0) * content(Element::Cr)
        + n(700.0) * content(Element::P)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked values of the notes at mid chemistry: 42CrMo4 Ac1 740 °C and Ac3 763 °C,
    /// Cf53 Ac1 724 °C and Ac3 756 °C, 100Cr6 Ac1 752 °C.
    #[test]
    fn worked_values() {
        let cr_mo = Composition {
            c: 0.415,
            mn: 0.75,
            si: 0.25,
            cr: 1.05,
            mo: 0.225,
            ..Composition::default()
        };
        assert!((ac1_c(&cr_mo) - 740.0).abs() < 1.0);
        assert!((ac3_c(&cr_mo) - 763.0).abs() < 3.0);
        let bearing = Composition {
            c: 1.0,
            mn: 0.35,
            si: 0.25,
            cr: 1.5,
            ..Composition::default()
        };
        assert!((ac1_c(&bearing) - 752.0).abs() < 1.0);
    }

    #[test]
    fn printed_constants_of_pure_iron() {
        let iron = Composition::default();
        assert_eq!(ac1_c(&iron), 723.0);
        assert_eq!(ac3_c(&iron), 910.0);
    }
}
