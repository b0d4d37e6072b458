//! Nonlinear least squares by damped Gauss-Newton steps (Levenberg and Marquardt).

use super::dense::{Singular, cholesky, cholesky_solve};

/// Damping of the first step, over the diagonal of the normal matrix.
const FIRST_DAMPING: f64 = 1e-3;
/// Factor on the damping after a step that made things worse; its root after one that did not.
const DAMPING_FACTOR: f64 = 6.0;
/// Most steps, and most attempts at one.
const MOST_STEPS: usize = 40;
const MOST_ATTEMPTS: usize = 8;
/// The sum of squares has settled when a step takes off less than this share of it, or than this
/// itself: in units of the standard deviations nobody sees it.
const SETTLED: f64 = 1e-6;

/// The normal equations of rows that come one at a time; each row and residual in units of the
/// standard deviation of what it stands for.
#[derive(Debug, Clone)]
pub struct Normal<const N: usize> {
    matrix: [[f64; N]; N],
    gradient: [f64; N],
}

impl<const N: usize> Default for Normal<N> {
    fn default() -> Self {
        Self {
            matrix: [[0.0; N]; N],
            gradient: [0.0; N],
        }
    }
}

impl<const N: usize> Normal<N> {
    /// Adds a residual, computed less wanted, with its derivative by each unknown.
    pub fn add(&mut self, row: &[f64; N], residual: f64) {
        for ((sums, gradient), &a) in self.matrix.iter_mut().zip(&mut self.gradient).zip(row) {
            if a != 0.0 {
                for (sum, b) in sums.iter_mut().zip(row) {
                    *sum += a * b;
                }
                *gradient += a * residual;
            }
        }
    }

    /// Adds the equations of other rows.
    pub fn add_all(&mut self, other: &Self) {
        for (sums, more) in self.matrix.iter_mut().zip(&other.matrix) {
            for (sum, value) in sums.iter_mut().zip(more) {
                *sum += value;
            }
        }
        for (sum, value) in self.gradient.iter_mut().zip(&other.gradient) {
            *sum += value;
        }
    }

    /// The change of the unknowns that makes the sum of squares least where it is a parabola, with
    /// the diagonal raised by the factor 1 + `damping`.
    ///
    /// # Errors
    /// Unknowns that the rows do not determine.
    pub fn step(&self, damping: f64) -> Result<[f64; N], Singular> {
        let mut matrix = self.matrix;
        for (i, row) in matrix.iter_mut().enumerate() {
            if let Some(diagonal) = row.get_mut(i) {
                *diagonal *= 1.0 + damping;
            }
        }
        cholesky(&mut matrix, N)?;
        let mut step = self.gradient.map(|g| -g);
        cholesky_solve(&matrix, &mut step, N);
        Ok(step)
    }

    /// Covariance of the unknowns: the inverse of the normal matrix.
    ///
    /// # Errors
    /// Unknowns that the rows do not determine.
    pub fn covariance(&self) -> Result<[[f64; N]; N], Singular> {
        let mut factor = self.matrix;
        cholesky(&mut factor, N)?;
        let mut inverse = [[0.0; N]; N];
        for (i, column) in inverse.iter_mut().enumerate() {
            if let Some(one) = column.get_mut(i) {
                *one = 1.0;
            }
            cholesky_solve(&factor, column, N);
        }
        Ok(inverse)
    }

    /// How much a change of the unknowns adds to the sum of squares where it is a parabola.
    #[must_use]
    pub fn change_of_squares(&self, change: &[f64; N]) -> f64 {
        let parabola = self.times(change);
        let terms = change.iter().zip(&self.gradient).zip(&parabola);
        terms.map(|((c, g), p)| c * (2.0 * g + p)).sum()
    }

    /// The product of the normal matrix and a vector.
    #[must_use]
    pub fn times(&self, vector: &[f64; N]) -> [f64; N] {
        self.matrix
            .map(|row| row.iter().zip(vector).map(|(a, b)| a * b).sum())
    }
}

/// Where the sum of squares is least, as far as found.
#[derive(Debug, Clone)]
pub struct Minimum<const N: usize> {
    /// The unknowns.
    pub at: [f64; N],
    /// The residuals there, in units of their standard deviations.
    pub residuals: Vec<f64>,
    /// Covariance of the unknowns.
    pub covariance: [[f64; N]; N],
}

/// Makes the sum of the squares of `residuals` least, starting at `start`; derivatives are taken
/// by differences over `spacing`. The residuals are in units of their standard deviations; where
/// they cannot be computed the function gives nothing, and the search stays away.
///
/// Nothing when they cannot be computed at the start, or do not determine the unknowns.
pub fn minimise<const N: usize>(
    start: [f64; N],
    spacing: [f64; N],
    mut residuals: impl FnMut(&[f64; N]) -> Option<Vec<f64>>,
) -> Option<Minimum<N>> {
    let mut at = start;
    let mut here = residuals(&at)?;
    let mut damping = FIRST_DAMPING;
    for _ in 0..MOST_STEPS {
        let normal = linearise(&at, &here, spacing, &mut residuals)?;
        let least = sum_of_squares(&here);
        let mut better = None;
        for _ in 0..MOST_ATTEMPTS {
            let step = normal.step(damping).ok()?;
            let mut next = at;
            next.iter_mut()
                .zip(step)
                .for_each(|(x, change)| *x += change);
            if let Some(there) = residuals(&next).filter(|r| sum_of_squares(r) < least) {
                better = Some((next, there));
                damping /= DAMPING_FACTOR.sqrt();
                break;
            }
            damping *= DAMPING_FACTOR;
        }
        let Some((next, there)) = better else { break };
        let taken_off = least - sum_of_squares(&there);
        (at, here) = (next, there);
        if taken_off < SETTLED * least.max(1.0) {
            break;
        }
    }
    let covariance = linearise(&at, &here, spacing, &mut residuals)?
        .covariance()
        .ok()?;
    Some(Minimum {
        at,
        residuals: here,
        covariance,
    })
}

fn linearise<const N: usize>(
    at: &[f64; N],
    here: &[f64],
    spacing: [f64; N],
    residuals: &mut impl FnMut(&[f64; N]) -> Option<Vec<f64>>,
) -> Option<Normal<N>> {
    let mut rows = vec![[0.0; N]; here.len()];
    for (i, width) in spacing.into_iter().enumerate() {
        let mut beside = *at;
        *beside.get_mut(i)? += width;
        let there = residuals(&beside)?;
        for ((row, after), before) in rows.iter_mut().zip(&there).zip(here) {
            *row.get_mut(i)? = (after - before) / width;
        }
    }
    let mut normal = Normal::default();
    for (row, residual) in rows.iter().zip(here) {
        normal.add(row, *residual);
    }
    Some(normal)
}

/// What is not a number counts as infinite.
fn sum_of_squares(residuals: &[f64]) -> f64 {
    let sum: f64 = residuals.iter().map(|r| r * r).sum();
    if sum.is_nan() { f64::INFINITY } else { sum }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rosenbrock's valley: least at (1, 1).
    fn valley(x: &[f64; 2]) -> Option<Vec<f64>> {
        Some(vec![10.0 * (x[1] - x[0] * x[0]), 1.0 - x[0]])
    }

    #[test]
    fn the_end_of_a_bent_valley_is_found() {
        let found = minimise([-1.2, 1.0], [1e-6; 2], valley).unwrap();
        approx::assert_abs_diff_eq!(found.at[0], 1.0, epsilon = 1e-4);
        approx::assert_abs_diff_eq!(found.at[1], 1.0, epsilon = 1e-4);
        // At the end the rows are (-20, 10) and (-1, 0).
        approx::assert_abs_diff_eq!(found.covariance[0][0], 1.0, epsilon = 1e-3);
        approx::assert_abs_diff_eq!(found.covariance[1][1], 4.01, epsilon = 1e-2);
    }

    #[test]
    fn what_is_not_determined_or_cannot_be_computed_has_no_minimum() {
        assert!(minimise([1.0, 1.0], [1e-6; 2], |x| Some(vec![x[0] + x[1]])).is_none());
        assert!(minimise([1.0], [1e-6], |_| None).is_none());
        // A wall on the way is not crossed.
        let wall = |x: &[f64; 1]| (x[0] > 0.0).then(|| vec![x[0] + 1.0]);
        let stopped = minimise([1.0], [1e-6], wall).unwrap();
        assert!((0.0..0.5).contains(&stopped.at[0]), "{:?}", stopped.at);
    }

    #[test]
    fn the_step_of_a_parabola_ends_at_its_bottom() {
        let mut normal = Normal::<2>::default();
        let mut other = Normal::<2>::default();
        for (x, y) in [(0.0, 1.0), (1.0, 3.0), (2.0, 5.0)] {
            // 0 + 0 x, which is to become 1 + 2 x.
            other.add(&[1.0, x], -y);
        }
        normal.add_all(&other);
        let step = normal.step(0.0).unwrap();
        approx::assert_abs_diff_eq!(step[0], 1.0, epsilon = 1e-9);
        approx::assert_abs_diff_eq!(step[1], 2.0, epsilon = 1e-9);
        assert_eq!(normal.times(&[1.0, 0.0]), [3.0, 3.0]);
        // All of 1 + 9 + 25 goes.
        approx::assert_abs_diff_eq!(normal.change_of_squares(&step), -35.0, epsilon = 1e-9);
    }
}
