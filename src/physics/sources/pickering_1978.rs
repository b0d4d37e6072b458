//! Pickering 1978: tensile strength of ferrite, from the regression on ferrite-pearlite steels.

use super::{Source, Standing};
use crate::numeric::formula::Number;
use crate::steel::{Composition, Element};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "pickering_1978",
    authors: "F. B. Pickering",
    year: 1978,
    title: "Physical Metallurgy and the Design of Steels",
    venue: "Applied Science Publishers, London",
    link: None,
    used_for: "hardness of ferrite",
    standing: Standing::FromMemory,
};

/// Tensile strength without pearlite, MPa, at a mean grain diameter in mm.
#[must_use]
pub fn ferrite_strength_mpa(steel: &Composition, grain_mm: f64) -> f64 {
    ferrite_strength_mpa_of(|element| steel.get(element), grain_mm)
}

/// The law of [`ferrite_strength_mpa`], over contents in wt %.
pub fn ferrite_strength_mpa_of<N: Number>(content: impl Fn(Element) -> N, grain_mm: f64) -> N {
    let n = N::constant;
    n(15.4)
        * (n(19.1)
            + n(1.8) * content(Element::Mn)
            + n(5.4) * content(Element::Si)
            + n(0.5 / grain_mm.sqrt()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 294.1 MPa of iron, 27.7 for 1 % Mn, 83.2 for 1 % Si, 54.4 at 0.02 mm.
    #[test]
    fn worked_by_hand() {
        let steel = Composition {
            mn: 1.0,
            si: 1.0,
            ..Composition::default()
        };
        assert!((ferrite_strength_mpa(&steel, 0.02) - 459.5).abs() < 0.1);
    }
}
