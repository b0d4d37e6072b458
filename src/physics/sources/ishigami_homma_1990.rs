//! A function of three inputs whose indices are known: for the check of their estimators.

use super::{Source, Standing};
use std::f64::consts::PI;

/// The publication.
pub const SOURCE: Source = Source {
    key: "ishigami_homma_1990",
    authors: "T. Ishigami, T. Homma",
    year: 1990,
    title: "An importance quantification technique in uncertainty analysis for computer models",
    venue: "First International Symposium on Uncertainty Modeling and Analysis, 398–403",
    link: Some("https://doi.org/10.1109/ISUMA.1990.151285"),
    used_for: "check of the sensitivity indices, with constants 7 and 0.1; formulas read in the \
               manual of a statistics library that cites it",
    standing: Standing::FromMemory,
};

const A: f64 = 7.0;
const B: f64 = 0.1;

/// `sin x1 + a sin² x2 + b x3⁴ sin x1` for inputs from -π to π, all as likely.
#[must_use]
pub fn value([x1, x2, x3]: [f64; 3]) -> f64 {
    x1.sin() + A * x2.sin().powi(2) + B * x3.powi(4) * x1.sin()
}

/// First-order and total indices of the three inputs:
/// `V = 1/2 + a²/8 + b² π⁸/18 + b π⁴/5`, `V1 = (1 + b π⁴/5)²/2`, `V2 = a²/8`,
/// `V13 = 8 b² π⁸/225`, and no other.
#[must_use]
pub fn indices() -> [(f64, f64); 3] {
    let v = 0.5 + A * A / 8.0 + B * B * PI.powi(8) / 18.0 + B * PI.powi(4) / 5.0;
    let v1 = 0.5 * (1.0 + B * PI.powi(4) / 5.0).powi(2);
    let v2 = A * A / 8.0;
    let v13 = 8.0 * B * B * PI.powi(8) / 225.0;
    [(v1 / v, (v1 + v13) / v), (v2 / v, v2 / v), (0.0, v13 / v)]
}

#[cfg(test)]
mod tests {
    /// Values as they are commonly printed for these constants.
    #[test]
    fn printed_indices() {
        let printed = [(0.3139, 0.5576), (0.4424, 0.4424), (0.0, 0.2437)];
        for ((first, total), (printed_first, printed_total)) in
            super::indices().into_iter().zip(printed)
        {
            approx::assert_abs_diff_eq!(first, printed_first, epsilon = 5e-5);
            approx::assert_abs_diff_eq!(total, printed_total, epsilon = 5e-5);
        }
    }
}
