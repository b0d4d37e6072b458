//! Boundaries of austenite in closed form, fitted by this project.
//!
//! Fitted to equilibria that the project computed with a published thermodynamic description
//! for twelve low-alloy grades between 700 and 900 °C and the iron-carbon binary between 730 and
//! 1147 °C. Errors over the fitted points: Acm of the binary 0.0004 wt % C, A3 of the binary
//! 0.7 K, carbon in austenite beside cementite 0.005 wt % (0.017 in a vanadium steel, 0.008 with
//! nickel), partition of Cr 9 %, of Mn 14 %, of Mo 3 %, product of VC 5 %. Leaving out one grade
//! at a time raises the error in carbon to 0.04 wt % (2 % Si) and 0.07 wt % (the only high-Cr one).
//! Molybdenum and tungsten could not be fitted; their numbers are chromium's per atom.

use super::{Source, Standing};
use crate::steel::Element;

/// The fit.
pub const SOURCE: Source = Source {
    key: "closed_form_2026",
    authors: "this project",
    year: 2026,
    title: "Closed forms for the austenite boundaries of low-alloy steel",
    venue: "fit to equilibria computed for this project",
    link: None,
    used_for: "A3 and Acm lines, carbon in austenite beside carbide, partition of alloy to carbide",
    standing: Standing::FittedHere,
};

/// Carbon on Acm of iron-carbon, wt %: powers of `(T °C - 900) / 100`.
pub const ACM_CARBON_WT: [f64; 4] = [1.226456, 0.292343, 0.015015, 0.000616];

/// A3 of iron-carbon, °C: powers of carbon in wt %.
pub const A3_C: [f64; 4] = [911.45, -446.78, 415.18, -194.32];

/// How an element lowers the carbon of austenite beside cementite: `ln` of the factor per wt %
/// dissolved is minus the first number, minus the second times `1000 / T_K - 0.93`.
pub const ACM_SHIFT: [(Element, f64, f64); 6] = [
    (Element::Mn, 0.0159, 0.0585),
    (Element::Si, 0.0792, 0.0),
    (Element::Cr, 0.0794, 0.5869),
    (Element::Ni, 0.0116, 0.0),
    (Element::Mo, 0.043, 0.32),
    (Element::W, 0.022, 0.17),
];

/// Content of cementite over content of the austenite beside it, by mass:
/// `ln K = first + second * 1000 / T_K`. Tungsten is taken as molybdenum.
pub const CEMENTITE_OVER_AUSTENITE: [(Element, f64, f64); 5] = [
    (Element::Cr, -1.232, 3.319),
    (Element::Mn, -0.995, 1.966),
    (Element::Mo, 0.018, 1.654),
    (Element::W, 0.018, 1.654),
    (Element::Ni, 0.842, -3.477),
];

/// Content of cementite over content of the ferrite beside it at 700 °C, by mass.
/// Tungsten is taken as molybdenum.
pub const CEMENTITE_OVER_FERRITE: [(Element, f64); 5] = [
    (Element::Cr, 13.8),
    (Element::Mn, 11.3),
    (Element::Mo, 4.9),
    (Element::W, 4.9),
    (Element::Ni, 0.13),
];

/// Product of dissolved vanadium and carbon beside vanadium carbide, wt % squared:
/// `log10 = first + second * 1000 / T_K`.
pub const VANADIUM_CARBIDE_PRODUCT: [f64; 2] = [4.545, -6.922];

/// Carbon per vanadium in vanadium carbide, by mass.
pub const VANADIUM_CARBIDE_CARBON: f64 = 0.218;

/// Carbon in cementite, wt %.
pub const CEMENTITE_CARBON_WT: f64 = 6.69;

/// Carbon in ferrite at 727 °C beside austenite, wt %.
pub const FERRITE_CARBON_WT: f64 = 0.019;

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed reference of the project's notes: 0.948 wt % at 800 °C, 1.227 at 900, 1.535 at 1000.
    #[test]
    fn acm_of_iron_carbon() {
        for (temperature_c, carbon_wt) in [(800.0, 0.948), (900.0, 1.227), (1000.0, 1.535)] {
            let x = (temperature_c - 900.0) / 100.0;
            let [a, b, c, d] = ACM_CARBON_WT;
            assert!((a + x * (b + x * (c + x * d)) - carbon_wt).abs() < 0.001);
        }
    }

    /// Same notes: A3 836.5 °C at 0.2 wt % C, 787.0 at 0.4, 750.6 at 0.6.
    #[test]
    fn a3_of_iron_carbon() {
        for (carbon_wt, temperature_c) in [(0.2, 836.5), (0.4, 787.0), (0.6, 750.6)] {
            let [a, b, c, d]: [f64; 4] = A3_C;
            let line: f64 = a + carbon_wt * (b + carbon_wt * (c + carbon_wt * d));
            assert!((line - temperature_c).abs() < 0.8);
        }
    }
}
