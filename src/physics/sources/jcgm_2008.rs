//! Guide to the expression of uncertainty in measurement: what a pair of limits is worth.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "jcgm_2008",
    authors: "Joint Committee for Guides in Metrology",
    year: 2008,
    title: "Evaluation of measurement data – Guide to the expression of uncertainty in measurement",
    venue: "JCGM 100:2008, clauses 4.3.7 and 5.1.2",
    link: Some("https://doi.org/10.59161/JCGM100-2008E"),
    used_for: "uniform distribution between limits of which nothing else is known; independent \
               parts add in quadrature",
    standing: Standing::FromMemory,
};

/// Standard deviation of a number that lies anywhere between limits, as likely here as there:
/// `a / sqrt(3)` for limits `a` either way (4.3.7, equation 7).
#[must_use]
pub fn sd_between_limits(half_width: f64) -> f64 {
    half_width / 3.0_f64.sqrt()
}

#[cfg(test)]
mod tests {
    /// Limits of 1.73 either way have a standard deviation of 1.
    #[test]
    fn limits_of_the_root_of_three() {
        approx::assert_relative_eq!(super::sd_between_limits(1.732_050_8), 1.0, epsilon = 1e-7);
    }
}
