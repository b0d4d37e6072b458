//! Takeuchi and Brimacombe 1985: what each element takes from the solidus of steel, as the
//! continuous-casting literature quotes it.

use super::callister_2007::AUSTENITE_SOLIDUS;
use super::{Source, Standing};
use crate::steel::{Composition, Element};

/// The publication.
pub const SOURCE: Source = Source {
    key: "takeuchi_brimacombe_1985",
    authors: "E. Takeuchi, J. K. Brimacombe",
    year: 1985,
    title: "Effect of oscillation-mark formation on the surface quality of continuously cast steel slabs",
    venue: "Metallurgical Transactions B 16, 605–625",
    link: None,
    used_for: "solidus, from which a piece burns: forging window",
    standing: Standing::FromMemory,
};

/// Kelvin that each wt % takes from the solidus, carbon aside.
pub const LOWERED_K_PER_WT: [(Element, f64); 6] = [
    (Element::Si, 12.3),
    (Element::Mn, 6.8),
    (Element::P, 124.5),
    (Element::S, 183.9),
    (Element::Ni, 4.3),
    (Element::Cr, 1.4),
];

/// Solidus of steel that freezes as austenite, °C: carbon along the straight line of the phase
/// diagram, the rest by the terms of the publication.
#[must_use]
pub fn solidus_c(steel: &Composition) -> f64 {
    let [[from_wt, from_c], [to_wt, to_c]] = AUSTENITE_SOLIDUS;
    let carbon_c = from_c + (to_c - from_c) * (steel.c - from_wt) / (to_wt - from_wt);
    let lowered_k: f64 = LOWERED_K_PER_WT
        .iter()
        .map(|&(element, k_per_wt)| k_per_wt * steel.get(element))
        .sum();
    carbon_c - lowered_k
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The project's shop notes: 1350 to 1370 °C at 1.0 % C.
    #[test]
    fn one_per_cent_of_carbon() {
        let solidus = solidus_c(&Composition::default().with_carbon(1.0));
        assert!((1335.0..1375.0).contains(&solidus), "{solidus}");
        let dirty = Composition {
            p: 0.04,
            s: 0.05,
            ..Composition::default().with_carbon(1.0)
        };
        assert!((solidus - solidus_c(&dirty) - 14.175).abs() < 1e-9);
    }
}
