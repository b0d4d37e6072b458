//! Total index of what an input does to the variance of an output.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "jansen_1999",
    authors: "M. J. W. Jansen",
    year: 1999,
    title: "Analysis of variance designs for model output",
    venue: "Computer Physics Communications 117, 35–43",
    link: Some("https://doi.org/10.1016/S0010-4655(98)00154-4"),
    used_for: "total part of each input, with all that it does together with others, in the spread \
               of an outcome",
    standing: Standing::FromMemory,
};

/// The term of a row of the sample whose mean is the mean of the conditional variance:
/// `(f(A)_j - f(A_B^(i))_j)² / 2`, where `A_B^(i)` is `A` with column `i` of `B`.
#[must_use]
pub fn total_term(f_a: f64, f_ab: f64) -> f64 {
    0.5 * (f_a - f_ab).powi(2)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of `f = x1 x2` with both at -1 or 1, as likely, neither has a variance of its own, and each
    /// has all of it, 1, together with the other.
    #[test]
    fn a_product_of_two_signs() {
        let sides = [-1.0, 1.0];
        let mut sum = 0.0;
        for a1 in sides {
            for a2 in sides {
                for b1 in sides {
                    sum += total_term(a1 * a2, b1 * a2);
                }
            }
        }
        assert_eq!(sum / 8.0, 1.0);
    }
}
