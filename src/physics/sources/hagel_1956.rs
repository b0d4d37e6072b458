//! Latent heat of pearlite.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "hagel_1956",
    authors: "W. C. Hagel, G. M. Pound, R. F. Mehl",
    year: 1956,
    title: "Calorimetric study of the austenite-pearlite transformation",
    venue: "Acta Metall. 4, 37; figures of the abstract",
    link: None,
    used_for: "heat of pearlite in the cooling piece; ferrite and bainite are taken to give as much",
    standing: Standing::Read,
};

/// Joules in a calorie.
const JOULE_PER_CAL: f64 = 4.184;
/// Plain eutectoid steel at 727 °C, kJ/kg; printed as 19.6 cal/g, ±5 %.
pub const EUTECTOID_KJ_KG: f64 = 19.6 * JOULE_PER_CAL;
/// The same with 1.85 % Mn or 0.51 % Mo, kJ/kg; printed as 18 cal/g.
pub const WITH_MN_OR_MO_KJ_KG: f64 = 18.0 * JOULE_PER_CAL;

#[cfg(test)]
mod tests {
    use super::*;

    /// A thermochemical table of the same author's time gives 20.0 cal/g.
    #[test]
    fn agrees_with_thermochemistry() {
        approx::assert_relative_eq!(EUTECTOID_KJ_KG, 20.0 * JOULE_PER_CAL, max_relative = 0.05);
    }
}
