//! A stiffly accurate Rosenbrock method of third order for stiff systems.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "sandu_1997",
    authors: "A. Sandu, J. G. Verwer, J. G. Blom, E. J. Spee, G. R. Carmichael, F. A. Potra",
    year: 1997,
    title: "Benchmarking stiff ODE solvers for atmospheric chemistry problems II: Rosenbrock solvers",
    venue: "Atmos. Environ. 31, 3459",
    link: Some("https://doi.org/10.1016/S1352-2310(97)83212-8"),
    used_for: "integration in time of the heat conduction (method RODAS3)",
    standing: Standing::FromMemory,
};

/// Diagonal coefficient of the method.
pub const GAMMA: f64 = 0.5;
/// Coefficients of the earlier stages in the place where each stage evaluates the system. The
/// second stage evaluates where the first does.
pub const A: [[f64; 3]; 4] = [[0.0; 3], [0.0; 3], [2.0, 0.0, 0.0], [2.0, 0.0, 1.0]];
/// Coefficients of the earlier stages on the right-hand side, over the step.
pub const C: [[f64; 3]; 4] = [
    [0.0; 3],
    [4.0, 0.0, 0.0],
    [1.0, -1.0, 0.0],
    [1.0, -1.0, -8.0 / 3.0],
];
/// Weights of the stages in the result.
pub const M: [f64; 4] = [2.0, 0.0, 1.0, 1.0];

#[cfg(test)]
mod tests {
    use super::*;

    /// One step on `y' = z y` from 1 with step 1.
    fn amplification(z: f64) -> (f64, f64) {
        let mut u = [0.0; 4];
        for stage in 0..4 {
            let mut y = 1.0;
            let mut carried = 0.0;
            for earlier in 0..stage {
                y += A[stage][earlier] * u[earlier];
                carried += C[stage][earlier] * u[earlier];
            }
            u[stage] = (z * y + carried) / (1.0 / GAMMA - z);
        }
        let result: f64 = 1.0 + M.iter().zip(u).map(|(m, u)| m * u).sum::<f64>();
        (result, u[3])
    }

    #[test]
    fn third_order_with_second_order_inside() {
        let error = |z: f64| {
            let (y, difference) = amplification(z);
            ((y - z.exp()).abs(), (y - difference - z.exp()).abs())
        };
        let (coarse, fine) = (error(-0.02), error(-0.01));
        approx::assert_abs_diff_eq!((coarse.0 / fine.0).log2(), 4.0, epsilon = 0.1);
        approx::assert_abs_diff_eq!((coarse.1 / fine.1).log2(), 3.0, epsilon = 0.1);
    }

    #[test]
    fn damps_what_is_infinitely_stiff() {
        assert!(amplification(-1e9).0.abs() < 1e-6);
        assert!((1..200).all(|i| amplification(-0.5 * f64::from(i)).0.abs() < 1.0));
    }
}
