//! Hardness of the isothermal products of eutectoid carbon steel, as its IT diagrams print it.

use super::{Source, Standing};
use crate::steel::Composition;

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "eutectoid_isothermal",
    authors: "isothermal transformation diagrams of eutectoid carbon steel",
    year: 1977,
    title: "Atlas of isothermal transformation and cooling transformation diagrams",
    venue: "American Society for Metals",
    link: None,
    used_for: "hardness of pearlite and bainite by the temperature at which they form",
    standing: Standing::FromMemory,
};

/// The steel of the diagram.
#[must_use]
pub fn steel() -> Composition {
    Composition {
        c: 0.79,
        mn: 0.76,
        si: 0.20,
        ..Composition::default()
    }
}

/// `[temperature °C, HRC]` by the temperature of formation: bainite up to 400 °C, pearlite from
/// 575 °C. Between them, where one gives way to the other, the hardness hardly changes.
pub const HRC_BY_TEMPERATURE: [[f64; 2]; 6] = [
    [260.0, 58.0],
    [300.0, 54.0],
    [400.0, 42.0],
    [575.0, 40.0],
    [650.0, 27.5],
    [700.0, 17.5],
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_forms_colder_is_harder() {
        let falls = |pair: &[[f64; 2]]| pair[0][0] < pair[1][0] && pair[0][1] > pair[1][1];
        assert!(HRC_BY_TEMPERATURE.windows(2).all(falls));
    }
}
