//! Inverse heat conduction as regularised least squares.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "beck_1985",
    authors: "J. V. Beck, B. Blackwell, C. R. St. Clair",
    year: 1985,
    title: "Inverse Heat Conduction: Ill-posed Problems",
    venue: "Wiley, New York",
    link: None,
    used_for: "heat transfer of a quenchant from a measured curve of the probe: least squares with a penalty on second differences, after Tikhonov",
    standing: Standing::FromMemory,
};

/// Weights of neighbouring values in a second difference, what the penalty is on.
pub const SECOND_DIFFERENCE: [f64; 3] = [1.0, -2.0, 1.0];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_line_is_not_penalised_and_a_parabola_is() {
        let of = |f: fn(f64) -> f64| -> f64 {
            let values = [2.0, 3.0, 4.0].map(f);
            SECOND_DIFFERENCE
                .iter()
                .zip(values)
                .map(|(w, v)| w * v)
                .sum()
        };
        approx::assert_abs_diff_eq!(of(|x| 5.0 - 3.0 * x), 0.0, epsilon = 1e-12);
        approx::assert_abs_diff_eq!(of(|x| x * x), 2.0, epsilon = 1e-12);
    }
}
