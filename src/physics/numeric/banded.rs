//! Linear systems whose matrix is zero away from the diagonal; with `W` = 3, tridiagonal ones.

use recalesce_texts::numeric as texts;

/// The elimination met a pivot that is zero or not a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("{}", texts::singular(*row))]
pub struct Singular {
    /// Row of the pivot.
    pub row: usize,
}

/// A square matrix with entries only in a band of odd width `W` around the diagonal.
///
/// Elimination takes the pivots as they come, without exchange of rows: meant for matrices that
/// are diagonally dominant or nearly so, as those of implicit conduction are.
#[derive(Debug, Clone)]
pub struct Banded<const W: usize> {
    /// Entry `k` of row `i` stands in column `i + k - W / 2`.
    rows: Vec<[f64; W]>,
}

impl<const W: usize> Banded<W> {
    const HALF: usize = W / 2;

    /// The zero matrix of `n` rows.
    #[must_use]
    pub fn zero(n: usize) -> Self {
        // A band has as many entries left as right.
        const { assert!(W % 2 == 1) };
        Self {
            rows: vec![[0.0; W]; n],
        }
    }

    /// The rows: entry `k` of row `i` stands in column `i + k - W / 2`. Entries that fall outside
    /// the matrix are not read.
    pub fn rows_mut(&mut self) -> &mut [[f64; W]] {
        &mut self.rows
    }

    /// Replaces the matrix by its triangular factors.
    ///
    /// # Errors
    /// A pivot that is zero or not finite; the matrix is then of no further use.
    pub fn factor(&mut self) -> Result<(), Singular> {
        let half = Self::HALF;
        let n = self.rows.len();
        for i in 0..n {
            let (head, tail) = self.rows.split_at_mut(i + 1);
            let pivot_row = &mut head[i];
            let inverse = 1.0 / pivot_row[half];
            if !inverse.is_finite() {
                return Err(Singular { row: i });
            }
            for (below, row) in tail.iter_mut().take(half).enumerate() {
                let first = half - 1 - below;
                let factor = row[first] * inverse;
                row[first] = factor;
                let after = row[first + 1..].iter_mut();
                for (entry, pivot) in after.zip(&pivot_row[half + 1..]) {
                    *entry -= factor * pivot;
                }
            }
            // The diagonal keeps the reciprocal and the rest is divided by the pivot: solving then
            // waits for one product and one difference per row.
            pivot_row[half] = inverse;
            for entry in &mut pivot_row[half + 1..] {
                *entry *= inverse;
            }
        }
        Ok(())
    }

    /// Solves with the factors made by [`Banded::factor`]; `x` holds the right-hand side on entry
    /// and the solution on return. Rows beyond the length of `x` are left out.
    pub fn solve(&self, x: &mut [f64]) {
        let half = Self::HALF;
        let n = self.rows.len().min(x.len());
        // Rows with all their neighbours have a loop of fixed length. Both ways from the far end,
        // so that what was solved last is waited for last.
        for (i, row) in self.rows.iter().enumerate().take(n) {
            let mut value = x[i];
            if i >= half {
                for (entry, before) in row.iter().zip(&x[i - half..i]) {
                    value -= entry * before;
                }
            } else {
                for (entry, before) in row[half - i..].iter().zip(&x[..i]) {
                    value -= entry * before;
                }
            }
            x[i] = value;
        }
        for (i, row) in self.rows.iter().enumerate().take(n).rev() {
            let mut value = x[i] * row[half];
            if i + half < n {
                let after = row[half + 1..].iter().zip(&x[i + 1..][..half]);
                for (entry, after) in after.rev() {
                    value -= entry * after;
                }
            } else {
                let after = row[half + 1..].iter().zip(&x[i + 1..n]);
                for (entry, after) in after.rev() {
                    value -= entry * after;
                }
            }
            x[i] = value;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check<const W: usize>(n: usize) {
        let half = W / 2;
        let entry = |i: usize, j: usize| {
            if i == j {
                4.0 + W as f64
            } else {
                ((3 * i + 5 * j) % 7) as f64 / 7.0 - 0.4
            }
        };
        let mut matrix = Banded::<W>::zero(n);
        for (i, row) in matrix.rows_mut().iter_mut().enumerate() {
            for (k, value) in row.iter_mut().enumerate() {
                if i + k >= half && i + k - half < n {
                    *value = entry(i, i + k - half);
                }
            }
        }
        let solution: Vec<f64> = (0..n).map(|i| (i as f64).sin() + 0.3).collect();
        let mut x: Vec<f64> = (0..n)
            .map(|i| {
                (i.saturating_sub(half)..n.min(i + half + 1))
                    .map(|j| entry(i, j) * solution[j])
                    .sum()
            })
            .collect();
        matrix.factor().unwrap();
        matrix.solve(&mut x);
        for (got, expected) in x.iter().zip(&solution) {
            approx::assert_abs_diff_eq!(got, expected, epsilon = 1e-12);
        }
    }

    #[test]
    fn solves_what_it_was_made_from() {
        check::<3>(1);
        check::<3>(17);
        check::<9>(3);
        check::<9>(40);
    }

    #[test]
    fn a_zero_pivot_is_named() {
        assert_eq!(Banded::<3>::zero(2).factor(), Err(Singular { row: 0 }));
    }
}
