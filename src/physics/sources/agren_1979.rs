//! Activity of carbon in austenite, after the assessment of iron-carbon by Ågren, in weight per
//! cent; and how alloying shifts it.
//!
//! `ln a = ln w_C + 0.35 w_C + sum of e_k w_k`, up to a constant. The alloy terms are not printed
//! there: they follow from computed equilibria of low-alloy austenite with cementite, through the
//! equilibrium of dilute cementite, and agree in sign and size with those usually tabulated.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "agren_1979",
    authors: "J. Ågren",
    year: 1979,
    title: "A thermodynamic analysis of the Fe-C and Fe-N phase diagrams",
    venue: "Metallurgical Transactions A 10, 1847–1852",
    link: None,
    used_for: "activity of carbon in austenite beside dissolving carbide",
    standing: Standing::FromMemory,
};

/// Effect of carbon on the logarithm of its own activity coefficient, per wt %.
pub const CARBON_PER_WT: f64 = 0.35;
/// Effect of chromium, per wt %.
pub const CHROMIUM_PER_WT: f64 = -0.07;
/// Effect of manganese and of molybdenum, per wt %.
pub const MANGANESE_PER_WT: f64 = -0.02;

#[cfg(test)]
mod tests {
    use super::*;

    /// Self-interaction of carbon is near 8 per site fraction, 4.65e-2 site fractions per wt %.
    #[test]
    fn self_interaction() {
        assert!((CARBON_PER_WT / 4.65e-2 - 7.5).abs() < 0.5);
    }
}
