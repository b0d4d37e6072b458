//! Root of a continuous function in a bracket.

/// Why no root was found.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum RootError {
    /// The function has the same sign at both ends, or is not a number there.
    #[error("no change of sign between {low} and {high}")]
    NoBracket {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
    },
    /// The function stopped being a number on the way.
    #[error("the function is not a number at {at}")]
    NotANumber {
        /// Where.
        at: f64,
    },
}

/// Most evaluations; interpolation with the Illinois rule needs about ten.
const MOST_EVALUATIONS: usize = 120;

/// Root of `f` between `low` and `high` to within `tolerance` in the argument, by false position
/// with the Illinois rule and bisection when that is slow.
///
/// # Errors
/// No change of sign, or a value that is not a number.
pub fn bracketed_root(
    mut f: impl FnMut(f64) -> f64,
    low: f64,
    high: f64,
    tolerance: f64,
) -> Result<f64, RootError> {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa == 0.0 {
        return Ok(a);
    }
    if fb == 0.0 {
        return Ok(b);
    }
    if fa.is_nan() || fb.is_nan() || fa.signum() == fb.signum() {
        return Err(RootError::NoBracket { low, high });
    }
    // which end moved last: the other end's value is halved when the same end moves twice
    let mut moved_low = None;
    for step in 0..MOST_EVALUATIONS {
        let width = b - a;
        if width.abs() <= tolerance {
            break;
        }
        let guess = (a * fb - b * fa) / (fb - fa);
        let inside = (guess - a) * (guess - b) < 0.0;
        let next = if !inside || step % 5 == 4 {
            a + 0.5 * width
        } else {
            // a little past the guess, so that the bracket closes from both sides
            let nudge = 0.4 * tolerance * width.signum();
            let toward_far = if fa.abs() < fb.abs() { nudge } else { -nudge };
            let nudged = guess + toward_far;
            if (nudged - a) * (nudged - b) < 0.0 {
                nudged
            } else {
                guess
            }
        };
        let value = f(next);
        if value.is_nan() {
            return Err(RootError::NotANumber { at: next });
        }
        if value == 0.0 {
            return Ok(next);
        }
        if value.signum() == fa.signum() {
            a = next;
            fa = value;
            if moved_low == Some(true) {
                fb *= 0.5;
            }
            moved_low = Some(true);
        } else {
            b = next;
            fb = value;
            if moved_low == Some(false) {
                fa *= 0.5;
            }
            moved_low = Some(false);
        }
    }
    Ok(0.5 * (a + b))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_roots_of_smooth_steep_and_flat_functions() {
        let cube = bracketed_root(|x| x * x * x - 2.0, 0.0, 3.0, 1e-10).unwrap();
        approx::assert_relative_eq!(cube, 2.0_f64.cbrt(), epsilon = 1e-9);
        let steep = bracketed_root(|x| (50.0 * (x - 0.3)).tanh() + 0.5, -10.0, 10.0, 1e-9).unwrap();
        approx::assert_relative_eq!(steep, 0.3 - 0.5_f64.atanh() / 50.0, epsilon = 1e-8);
        let flat = bracketed_root(|x| (x - 1.0).powi(9), 0.0, 2.5, 1e-6).unwrap();
        approx::assert_relative_eq!(flat, 1.0, epsilon = 1e-5);
    }

    #[test]
    fn refuses_an_interval_without_change_of_sign() {
        assert!(bracketed_root(|x| x * x + 1.0, -1.0, 1.0, 1e-9).is_err());
        assert!(bracketed_root(|_| f64::NAN, -1.0, 1.0, 1e-9).is_err());
    }
}
