//! How strongly to smooth: generalised cross-validation.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "golub_1979",
    authors: "G. H. Golub, M. Heath, G. Wahba",
    year: 1979,
    title: "Generalized cross-validation as a method for choosing a good ridge parameter",
    venue: "Technometrics 21, 215",
    link: Some("https://doi.org/10.1080/00401706.1979.10489751"),
    used_for: "weight of the smoothness in the heat transfer fitted to a measured curve of the probe",
    standing: Standing::FromMemory,
};

/// The function that is to be least over the strength of smoothing, but for a constant factor:
/// sum of squares of the residuals over the square of the number of readings less the number of
/// unknowns that the readings determine.
#[must_use]
pub fn criterion(sum_of_squares: f64, readings: f64, determined: f64) -> f64 {
    let freedom = readings - determined;
    sum_of_squares / (freedom * freedom)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// For the mean of n readings each one left out is missed by n/(n - 1) times its residual, so
    /// the criterion times n is the mean square of these.
    #[test]
    fn for_a_mean_it_is_leaving_one_out() {
        let readings = [1.0, 2.0, 4.0, 9.0];
        let squares: f64 = readings.iter().map(|r| (r - 4.0_f64).powi(2)).sum();
        let left_out: f64 = readings
            .iter()
            .map(|r| (r - (16.0 - r) / 3.0).powi(2))
            .sum::<f64>()
            / 4.0;
        approx::assert_relative_eq!(4.0 * criterion(squares, 4.0, 1.0), left_out);
    }
}
