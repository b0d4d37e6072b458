//! Lobatto's rule: the quadrature that has both ends of its range among its nodes.

use super::turn::sin_cos_of_turn;

/// Newton steps to a node; each doubles the digits of a guess that has two.
const STEPS: usize = 6;

/// Nodes from -1 to 1, rising, and their weights, `[node, weight]`, of the rule that is exact for
/// polynomials up to the degree of twice the number of points less three. At least two points are taken.
#[must_use]
pub fn lobatto(points: usize) -> Vec<[f64; 2]> {
    let last = points.max(2) - 1;
    let degree = last as f64;
    let both = degree * (degree + 1.0);
    (0..=last)
        .map(|i| {
            // Inside they are where the polynomial of Legendre is level, near to where that of Chebyshev is.
            let mut x = -sin_cos_of_turn(0.5 * i as f64 / degree).1;
            let mut value = legendre(last, x)[0];
            if i > 0 && i < last {
                for _ in 0..STEPS {
                    let [now, before] = legendre(last, x);
                    let bend = 1.0 - x * x;
                    let slope = degree * (before - x * now) / bend;
                    x -= slope * bend / (2.0 * x * slope - both * now);
                    value = now;
                }
            }
            [x, 2.0 / (both * value * value)]
        })
        .collect()
}

/// The polynomials of Legendre of a degree, at least 1, and of that before it.
fn legendre(degree: usize, x: f64) -> [f64; 2] {
    let (mut before, mut now) = (1.0, x);
    for k in 2..=degree {
        let k = k as f64;
        let next = ((2.0 * k - 1.0) * x * now - (k - 1.0) * before) / k;
        (before, now) = (now, next);
    }
    [now, before]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The closed forms of five and six points, as textbooks have them.
    #[test]
    fn few_points_have_closed_forms() {
        let five = [
            [-1.0, 1.0 / 10.0],
            [-(3.0_f64 / 7.0).sqrt(), 49.0 / 90.0],
            [0.0, 32.0 / 45.0],
        ];
        let root = 7.0_f64.sqrt();
        let six = [
            [-1.0, 1.0 / 15.0],
            [-((7.0 + 2.0 * root) / 21.0).sqrt(), (14.0 - root) / 30.0],
            [-((7.0 - 2.0 * root) / 21.0).sqrt(), (14.0 + root) / 30.0],
        ];
        for (points, closed) in [(5, five), (6, six)] {
            for (got, expected) in lobatto(points).iter().zip(&closed) {
                approx::assert_abs_diff_eq!(got[0], expected[0], epsilon = 1e-14);
                approx::assert_abs_diff_eq!(got[1], expected[1], epsilon = 1e-14);
            }
        }
    }

    #[test]
    fn polynomials_are_integrated_exactly() {
        for points in 2..=15 {
            for power in 0..=2 * points as i32 - 3 {
                let sum: f64 = lobatto(points).iter().map(|[x, w]| w * x.powi(power)).sum();
                let exact = f64::from((power + 1) % 2) * 2.0 / f64::from(power + 1);
                approx::assert_abs_diff_eq!(sum, exact, epsilon = 1e-14);
            }
        }
    }
}
