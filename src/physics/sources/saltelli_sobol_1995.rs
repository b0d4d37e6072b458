//! The g-function: a product of many inputs whose indices are known, for the check of their
//! estimators.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "saltelli_sobol_1995",
    authors: "A. Saltelli, I. M. Sobol'",
    year: 1995,
    title: "About the use of rank transformation in sensitivity analysis of model output",
    venue: "Reliability Engineering and System Safety 50, 225–239",
    link: Some("https://doi.org/10.1016/0951-8320(95)00099-2"),
    used_for: "check of the sensitivity indices",
    standing: Standing::FromMemory,
};

/// Constants of the eight inputs: the larger, the less an input does.
pub const CONSTANTS: [f64; 8] = [0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0];

/// The product of `(|4 x - 2| + a) / (1 + a)` over inputs from 0 to 1, all as likely.
#[must_use]
pub fn value(inputs: &[f64; 8]) -> f64 {
    let factors = inputs.iter().zip(CONSTANTS);
    factors
        .map(|(x, a)| ((4.0 * x - 2.0).abs() + a) / (1.0 + a))
        .product()
}

/// First-order and total indices: with `Vi = 1 / (3 (1 + a)²)` and `V = Π (1 + Vi) - 1` they are
/// `Vi / V` and `Vi Π(j≠i) (1 + Vj) / V`.
#[must_use]
pub fn indices() -> [(f64, f64); 8] {
    let own = CONSTANTS.map(|a| 1.0 / (3.0 * (1.0 + a).powi(2)));
    let all: f64 = own.iter().map(|v| 1.0 + v).product();
    own.map(|v| (v / (all - 1.0), v / (1.0 + v) * all / (all - 1.0)))
}

#[cfg(test)]
mod tests {
    /// Values as they are commonly printed for these constants.
    #[test]
    fn printed_indices() {
        let printed = [
            (0.7162, 0.7871),
            (0.1790, 0.2422),
            (0.0237, 0.0343),
            (0.0072, 0.0105),
        ];
        for ((first, total), (printed_first, printed_total)) in
            super::indices().into_iter().zip(printed)
        {
            approx::assert_abs_diff_eq!(first, printed_first, epsilon = 2e-4);
            approx::assert_abs_diff_eq!(total, printed_total, epsilon = 2e-4);
        }
    }
}
