//! Weights by which a fit does not follow what lies far off.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "holland_welsch_1977",
    authors: "P. W. Holland, R. E. Welsch",
    year: 1977,
    title: "Robust regression using iteratively reweighted least-squares",
    venue: "Communications in Statistics, Theory and Methods A6, 813–827",
    link: Some("https://doi.org/10.1080/03610927708827533"),
    used_for: "weight of a reading that lies far from what is computed, after Huber (1964), where the \
               logbook teaches about the shop",
    standing: Standing::FromMemory,
};

/// Tuning constant of Huber's weight, in standard deviations: 95 % as efficient as least squares
/// where all errors are normal.
pub const HUBER: f64 = 1.345;

/// Huber's weight of a residual in standard deviations.
#[must_use]
pub fn huber_weight(residual: f64) -> f64 {
    let size = residual.abs();
    if size > HUBER { HUBER / size } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use statrs::distribution::{Continuous, ContinuousCDF, Normal};

    /// Printed efficiency: 95 %. Of an estimate by ψ it is E[ψ′]² / E[ψ²] for normal errors.
    #[test]
    fn the_constant_is_as_efficient_as_printed() {
        let normal = Normal::standard();
        let inside = 2.0 * normal.cdf(HUBER) - 1.0;
        let squares_inside = inside - 2.0 * HUBER * normal.pdf(HUBER);
        let squares = squares_inside + HUBER * HUBER * (1.0 - inside);
        approx::assert_abs_diff_eq!(inside * inside / squares, 0.95, epsilon = 5e-4);
    }

    #[test]
    fn what_is_near_counts_fully() {
        assert_eq!(huber_weight(-1.3), 1.0);
        approx::assert_relative_eq!(huber_weight(-2.69), 0.5);
    }
}
