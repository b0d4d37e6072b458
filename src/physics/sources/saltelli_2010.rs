//! First-order index of what an input does to the variance of an output.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "saltelli_2010",
    authors: "A. Saltelli, P. Annoni, I. Azzini, F. Campolongo, M. Ratto, S. Tarantola",
    year: 2010,
    title: "Variance based sensitivity analysis of model output. Design and estimator for the \
            total sensitivity index",
    venue: "Computer Physics Communications 181, 259–270, table 2, estimator (b)",
    link: Some("https://doi.org/10.1016/j.cpc.2009.09.018"),
    used_for: "first-order part of each input in the spread of an outcome",
    standing: Standing::FromMemory,
};

/// The term of a row of the sample whose mean is the variance of the conditional mean:
/// `f(B)_j (f(A_B^(i))_j - f(A)_j)`, where `A_B^(i)` is `A` with column `i` of `B`.
#[must_use]
pub fn first_order_term(f_b: f64, f_ab: f64, f_a: f64) -> f64 {
    f_b * (f_ab - f_a)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of `f = x1 + 2 x2` with both at -1 or 1, as likely, input 1 has a variance of 1 and input 2
    /// of 4: all pairs of rows together.
    #[test]
    fn a_sum_of_two_signs() {
        let sides = [-1.0, 1.0];
        let f = |x1: f64, x2: f64| x1 + 2.0 * x2;
        let mut sums = [0.0; 2];
        for a1 in sides {
            for a2 in sides {
                for b1 in sides {
                    for b2 in sides {
                        sums[0] += first_order_term(f(b1, b2), f(b1, a2), f(a1, a2));
                        sums[1] += first_order_term(f(b1, b2), f(a1, b2), f(a1, a2));
                    }
                }
            }
        }
        assert_eq!(sums.map(|sum| sum / 16.0), [1.0, 4.0]);
    }
}
