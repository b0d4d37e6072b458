//! Predicted and measured hardness of the runs of a logbook.

pub const PREDICTED: &str = "predicted, HRC";
pub const MEASURED: &str = "measured, HRC";
pub const AS_PREDICTED: &str = "as predicted";

/// How the measured hardness lies to the predicted one.
pub const SOFTER: &str = "softer";
pub const HARDER: &str = "harder";

#[inline]
pub fn summary(runs: usize, inside: usize, mean: &str, softer_or_harder: &str) -> String {
    format!(
        "Measured against predicted hardness of {runs} logged runs: {inside} inside the band of their \
         prediction; measured is on average {mean}\u{a0}HRC {softer_or_harder}."
    )
}
