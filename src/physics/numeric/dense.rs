//! Small dense linear systems in fixed arrays of which the first `n` rows and columns are used.

#![allow(
    clippy::needless_range_loop,
    reason = "indices run over several arrays at once"
)]

use recalesce_texts::numeric as texts;

/// A matrix that cannot be solved with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("{}", texts::singular_or_indefinite(*row))]
pub struct Singular {
    /// First row without a usable pivot.
    pub row: usize,
}

/// Solves `a x = b` by elimination with scaled partial pivoting; `b` becomes `x`, `a` is used up.
///
/// # Errors
/// A row without a pivot above rounding.
pub fn solve<const N: usize>(
    a: &mut [[f64; N]; N],
    b: &mut [f64; N],
    n: usize,
) -> Result<(), Singular> {
    for row in 0..n {
        let largest = a[row][..n].iter().fold(0.0_f64, |m, v| m.max(v.abs()));
        if !(largest > 0.0 && largest.is_finite()) {
            return Err(Singular { row });
        }
        let scale = 1.0 / largest;
        a[row][..n].iter_mut().for_each(|v| *v *= scale);
        b[row] *= scale;
    }
    for column in 0..n {
        let mut pivot = column;
        for row in column + 1..n {
            if a[row][column].abs() > a[pivot][column].abs() {
                pivot = row;
            }
        }
        let size = a[pivot][column].abs();
        if size <= 1e-14 || size.is_nan() {
            return Err(Singular { row: column });
        }
        a.swap(column, pivot);
        b.swap(column, pivot);
        let pivot_row = a[column];
        let inverse = 1.0 / pivot_row[column];
        for row in column + 1..n {
            let factor = a[row][column] * inverse;
            if factor != 0.0 {
                for k in column + 1..n {
                    a[row][k] -= factor * pivot_row[k];
                }
                b[row] -= factor * b[column];
            }
        }
    }
    for row in (0..n).rev() {
        let mut sum = b[row];
        for k in row + 1..n {
            sum -= a[row][k] * b[k];
        }
        b[row] = sum / a[row][row];
    }
    Ok(())
}

/// Replaces the lower triangle of a symmetric matrix by its Cholesky factor, with the inverse of
/// each diagonal element in its place.
///
/// # Errors
/// The matrix is not positive definite.
pub fn cholesky<const N: usize>(a: &mut [[f64; N]; N], n: usize) -> Result<(), Singular> {
    for j in 0..n {
        let mut diagonal = a[j][j];
        for k in 0..j {
            diagonal -= a[j][k] * a[j][k];
        }
        if !(diagonal > 1e-9 && diagonal.is_finite()) {
            return Err(Singular { row: j });
        }
        let inverse = 1.0 / diagonal.sqrt();
        a[j][j] = inverse;
        let row_j = a[j];
        for row in a.iter_mut().take(n).skip(j + 1) {
            let mut sum = row[j];
            for k in 0..j {
                sum -= row[k] * row_j[k];
            }
            row[j] = sum * inverse;
        }
    }
    Ok(())
}

/// Solves with the factor that [`cholesky`] left; `b` becomes the solution.
pub fn cholesky_solve<const N: usize>(factor: &[[f64; N]; N], b: &mut [f64; N], n: usize) {
    cholesky_forward(factor, b, 0, n);
    cholesky_backward(factor, b, n);
}

/// The first half of [`cholesky_solve`], for a `b` that is zero before place `from`. The scalar
/// product of two such halves is that of one right-hand side with the solution for the other.
pub fn cholesky_forward<const N: usize>(
    factor: &[[f64; N]; N],
    b: &mut [f64; N],
    from: usize,
    n: usize,
) {
    for i in from..n {
        let mut sum = b[i];
        for k in from..i {
            sum -= factor[i][k] * b[k];
        }
        b[i] = sum * factor[i][i];
    }
}

/// The second half of [`cholesky_solve`].
pub fn cholesky_backward<const N: usize>(factor: &[[f64; N]; N], b: &mut [f64; N], n: usize) {
    for i in (0..n).rev() {
        let value = b[i] * factor[i][i];
        b[i] = value;
        for k in 0..i {
            b[k] -= factor[i][k] * value;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MATRIX: [[f64; 4]; 4] = [
        [4.0, 1.0, 0.5, 9.0],
        [1.0, 3.0, -0.2, 9.0],
        [0.5, -0.2, 2.0, 9.0],
        [9.0; 4],
    ];

    fn product(x: &[f64; 4]) -> [f64; 4] {
        let mut b = [0.0; 4];
        for i in 0..3 {
            for j in 0..3 {
                b[i] += MATRIX[i][j] * x[j];
            }
        }
        b
    }

    #[test]
    fn both_solvers_give_back_the_vector_a_product_was_made_of() {
        let x = [1.0, -2.0, 3.0, 0.0];
        let mut by_elimination = product(&x);
        assert_eq!(solve(&mut MATRIX.clone(), &mut by_elimination, 3), Ok(()));
        let mut factor = MATRIX;
        assert_eq!(cholesky(&mut factor, 3), Ok(()));
        let mut by_cholesky = product(&x);
        cholesky_solve(&factor, &mut by_cholesky, 3);
        for i in 0..3 {
            approx::assert_relative_eq!(by_elimination[i], x[i], max_relative = 1e-12);
            approx::assert_relative_eq!(by_cholesky[i], x[i], max_relative = 1e-12);
        }
    }

    #[test]
    fn singular_indefinite_and_non_finite_matrices_are_refused() {
        let mut b = [1.0; 2];
        assert!(solve(&mut [[1.0, 2.0], [2.0, 4.0]], &mut b, 2).is_err());
        assert!(solve(&mut [[f64::NAN, 2.0], [2.0, 4.0]], &mut b, 2).is_err());
        assert!(solve(&mut [[0.0, 0.0], [2.0, 4.0]], &mut b, 2).is_err());
        assert!(cholesky(&mut [[1.0, 2.0], [2.0, 1.0]], 2).is_err());
        assert!(cholesky(&mut [[f64::NAN, 0.0], [0.0, 1.0]], 2).is_err());
    }
}
