//! Linear systems whose matrix is zero away from the diagonal; with `W` = 3, tridiagonal ones.

use recalesce_texts::numeric as texts;

/// The elimination met a pivot that is zero or not a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("{}", texts::singular(*row))]
pub struct Singular {
    /// Row of the pivot.
    pub row: usize,
}

/// A square matrix with entries only in a band of odd width `W` around the diagonal, and within it as far as
/// rows are linked.
///
/// Elimination takes the pivots as they come, without exchange of rows: meant for matrices that
/// are diagonally dominant or nearly so, as those of implicit conduction are.
#[derive(Debug, Clone)]
pub struct Banded<const W: usize> {
    /// Entry `k` of row `i` stands in column `i + k - W / 2`.
    rows: Vec<[f64; W]>,
    reaches: Vec<Reach>,
}

/// How far from the diagonal a row has entries once it is eliminated.
#[derive(Debug, Clone, Copy, Default)]
struct Reach {
    before: usize,
    behind: usize,
}

impl<const W: usize> Banded<W> {
    const HALF: usize = W / 2;

    /// The zero matrix of `n` rows, with entries in both ways between linked rows, each link given with its
    /// lower row first; what reaches out of the matrix or of the band is left out.
    #[must_use]
    pub fn linked(n: usize, links: impl Iterator<Item = (usize, usize)>) -> Self {
        // A band has as many entries left as right.
        const { assert!(W % 2 == 1) };
        let mut reaches = vec![Reach::default(); n];
        for (from, to) in links.filter(|(from, to)| (*from..n).contains(to)) {
            let behind = &mut reaches[from].behind;
            *behind = (*behind).max(to - from).min(Self::HALF);
        }
        // Elimination fills a row as far as the rows before it reach, and the columns below it alike.
        for i in 1..n {
            reaches[i].behind = reaches[i]
                .behind
                .max(reaches[i - 1].behind.saturating_sub(1));
        }
        for i in 0..n {
            for below in 1..=reaches[i].behind {
                let before = &mut reaches[i + below].before;
                *before = (*before).max(below);
            }
        }
        Self {
            rows: vec![[0.0; W]; n],
            reaches,
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
        for (i, reach) in self.reaches.iter().enumerate() {
            let (head, tail) = self.rows.split_at_mut(i + 1);
            let pivots = &mut head[i][half..][..=reach.behind];
            let inverse = 1.0 / pivots[0];
            if !inverse.is_finite() {
                return Err(Singular { row: i });
            }
            for (below, row) in tail.iter_mut().take(reach.behind).enumerate() {
                let entries = &mut row[half - 1 - below..][..=reach.behind];
                let factor = entries[0] * inverse;
                entries[0] = factor;
                for (entry, pivot) in entries[1..].iter_mut().zip(&pivots[1..]) {
                    *entry -= factor * pivot;
                }
            }
            // The diagonal keeps the reciprocal and the rest is divided by the pivot: solving then
            // waits for one product and one difference per row.
            pivots[0] = inverse;
            for entry in &mut pivots[1..] {
                *entry *= inverse;
            }
        }
        Ok(())
    }

    /// Solves with the factors made by [`Banded::factor`]; `x` holds the right-hand side on entry
    /// and the solution on return, a value for each row.
    pub fn solve(&self, x: &mut [f64]) {
        let half = Self::HALF;
        let rows = || self.rows.iter().zip(&self.reaches).enumerate();
        // Both ways from the far end, so that what was solved last is waited for last.
        for (i, (row, reach)) in rows() {
            let mut value = x[i];
            let known = &x[i - reach.before..i];
            for (entry, before) in row[half - reach.before..half].iter().zip(known) {
                value -= entry * before;
            }
            x[i] = value;
        }
        for (i, (row, reach)) in rows().rev() {
            let mut value = x[i] * row[half];
            let known = &x[i + 1..][..reach.behind];
            for (entry, after) in row[half + 1..].iter().zip(known).rev() {
                value -= entry * after;
            }
            x[i] = value;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each row linked as far as `reach` tells.
    fn check<const W: usize>(n: usize, reach: fn(usize) -> usize) {
        let links = |i: usize| (i + 1..n.min(i + reach(i) + 1)).map(move |j| (i, j));
        let is_linked = |i: usize, j: usize| i.max(j) - i.min(j) <= reach(i.min(j));
        let entry = |i: usize, j: usize| {
            if i == j {
                4.0 + W as f64
            } else if is_linked(i, j) {
                ((3 * i + 5 * j) % 7) as f64 / 7.0 - 0.4
            } else {
                0.0
            }
        };
        let half = W / 2;
        let mut matrix = Banded::<W>::linked(n, (0..n).flat_map(links));
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
        check::<3>(1, |_| 1);
        check::<3>(17, |_| 1);
        check::<9>(3, |_| 4);
        check::<9>(40, |_| 4);
        // As far as the next of groups of four, and here and there not at all.
        check::<9>(40, |i| 4 - i % 4);
        check::<9>(41, |i| if i % 5 == 0 { 4 } else { 0 });
    }

    #[test]
    fn a_zero_pivot_is_named() {
        let mut zero = Banded::<3>::linked(2, [(0, 1)].into_iter());
        assert_eq!(zero.factor(), Err(Singular { row: 0 }));
    }
}
