//! Symmetric positive definite matrices of any size.

use super::dense::Singular;

/// Smallest pivot that a factor may have, as a part of the diagonal that it comes from.
const SMALLEST_PIVOT: f64 = 1e-12;

/// A symmetric matrix, of which the lower triangle is held by rows.
#[derive(Debug, Clone, PartialEq)]
pub struct Symmetric {
    rows: Vec<Vec<f64>>,
}

/// The Cholesky factor of a matrix.
#[derive(Debug, Clone, PartialEq)]
pub struct Cholesky {
    rows: Vec<Vec<f64>>,
}

impl Symmetric {
    /// The unit matrix of a size.
    #[must_use]
    pub fn unit(size: usize) -> Self {
        let row = |i: usize| (0..=i).map(|j| f64::from(i == j)).collect();
        Self {
            rows: (0..size).map(row).collect(),
        }
    }

    /// A matrix of nothing.
    #[must_use]
    pub fn zero(size: usize) -> Self {
        Self {
            rows: (0..size).map(|i| vec![0.0; i + 1]).collect(),
        }
    }

    /// Rows.
    #[must_use]
    pub fn size(&self) -> usize {
        self.rows.len()
    }

    /// The element of a row and a column; 0 outside the matrix.
    #[must_use]
    pub fn at(&self, row: usize, column: usize) -> f64 {
        let (low, high) = (row.min(column), row.max(column));
        let found = self.rows.get(high).and_then(|row| row.get(low));
        found.copied().unwrap_or_default()
    }

    /// Adds to an element and, where it is beside the diagonal, to its mirror image.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        let (low, high) = (row.min(column), row.max(column));
        if let Some(element) = self.rows.get_mut(high).and_then(|row| row.get_mut(low)) {
            *element += value;
        }
    }

    /// Its factor.
    ///
    /// # Errors
    /// The matrix is not positive definite.
    pub fn cholesky(&self) -> Result<Cholesky, Singular> {
        let mut done: Vec<Vec<f64>> = Vec::with_capacity(self.size());
        for (place, row) in self.rows.iter().enumerate() {
            let mut next = Vec::with_capacity(place + 1);
            for (column, element) in row.iter().enumerate() {
                let Some(above) = done.get(column) else {
                    break;
                };
                let rest = element - dot(&next, above);
                next.push(rest / above.last().copied().unwrap_or(1.0));
            }
            let diagonal = row.last().copied().unwrap_or_default();
            let pivot = diagonal - dot(&next, &next);
            let is_positive = pivot > SMALLEST_PIVOT * diagonal && pivot.is_finite();
            if !is_positive {
                return Err(Singular { row: place });
            }
            next.push(pivot.sqrt());
            done.push(next);
        }
        Ok(Cholesky { rows: done })
    }
}

impl Cholesky {
    /// Solves with the lower factor alone: with that of a covariance, what comes out is
    /// uncorrelated and of standard deviation 1.
    pub fn whiten(&self, b: &mut [f64]) {
        for (place, row) in self.rows.iter().enumerate() {
            let Some((diagonal, left)) = row.split_last() else {
                return;
            };
            let known = dot(left, b);
            if let Some(element) = b.get_mut(place) {
                *element = (*element - known) / diagonal;
            }
        }
    }

    /// Solves with the matrix; `b` becomes the solution.
    pub fn solve(&self, b: &mut [f64]) {
        self.whiten(b);
        for (place, row) in self.rows.iter().enumerate().rev() {
            let Some((diagonal, left)) = row.split_last() else {
                return;
            };
            let Some(element) = b.get_mut(place) else {
                continue;
            };
            *element /= diagonal;
            let found = *element;
            for (above, factor) in b.iter_mut().zip(left) {
                *above -= factor * found;
            }
        }
    }

    /// The inverse of the matrix.
    #[must_use]
    pub fn inverse(&self) -> Symmetric {
        let size = self.rows.len();
        let mut inverse = Symmetric::zero(size);
        for column in 0..size {
            let mut unit = vec![0.0; size];
            if let Some(one) = unit.get_mut(column) {
                *one = 1.0;
            }
            self.solve(&mut unit);
            for (row, value) in unit.into_iter().enumerate().skip(column) {
                inverse.add(row, column, value);
            }
        }
        inverse
    }
}

/// Sum of the products of two lists, as far as the shorter goes.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 4 2 1 / 2 5 3 / 1 3 6.
    fn matrix() -> Symmetric {
        let mut matrix = Symmetric::zero(3);
        for (row, column, value) in [
            (0, 0, 4.0),
            (1, 0, 2.0),
            (1, 1, 5.0),
            (0, 2, 1.0),
            (2, 1, 3.0),
            (2, 2, 6.0),
        ] {
            matrix.add(row, column, value);
        }
        matrix
    }

    #[test]
    fn a_solution_gives_back_what_it_was_made_of() {
        let factor = matrix().cholesky().unwrap();
        let mut b = [4.0 + 4.0 - 1.0, 2.0 + 10.0 - 3.0, 1.0 + 6.0 - 6.0];
        factor.solve(&mut b);
        for (found, x) in b.into_iter().zip([1.0, 2.0, -1.0]) {
            approx::assert_relative_eq!(found, x, max_relative = 1e-12);
        }
    }

    #[test]
    fn a_matrix_times_its_inverse_is_one() {
        let (matrix, inverse) = (matrix(), matrix().cholesky().unwrap().inverse());
        for i in 0..3 {
            for j in 0..3 {
                let product: f64 = (0..3).map(|k| matrix.at(i, k) * inverse.at(k, j)).sum();
                approx::assert_abs_diff_eq!(product, f64::from(i == j), epsilon = 1e-12);
            }
        }
        assert_eq!(inverse.at(0, 2), inverse.at(2, 0));
        assert_eq!(inverse.at(0, 3), 0.0);
    }

    #[test]
    fn indefinite_and_non_finite_matrices_are_refused() {
        let mut indefinite = Symmetric::unit(2);
        indefinite.add(1, 0, 2.0);
        assert_eq!(indefinite.cholesky(), Err(Singular { row: 1 }));
        let mut nan = Symmetric::unit(2);
        nan.add(0, 0, f64::NAN);
        assert!(nan.cholesky().is_err());
        assert!(Symmetric::zero(1).cholesky().is_err());
        assert!(Symmetric::unit(0).cholesky().is_ok());
    }
}
