//! Root of a continuous function: in a bracket, or of a falling one near a guess.

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

/// Where a falling function crosses zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Crossing {
    /// Negative over the whole range.
    Before,
    /// Here.
    At(f64),
    /// Not negative over the whole range.
    Beyond,
}

/// Most evaluations of a search outwards; it needs about five.
const MOST_OUTWARDS: usize = 40;
/// Values beyond this are taken as this: they only tell the side.
const LARGEST_VALUE: f64 = 40.0;
/// A secant flatter than this part of the usual slope is not followed.
const FLATTEST: f64 = 0.1;

/// Crossing of a falling function that is nearly straight, sought outwards from `guess` with the
/// `usual_slope` first and secants then, within a range. The crossing is good to well within
/// `tolerance` in the argument, and moves smoothly when the function does. The function gives
/// nothing, or what is not a number, where it cannot be computed; then there is no answer.
pub fn falling_root(
    mut f: impl FnMut(f64) -> Option<f64>,
    guess: f64,
    (least, most): (f64, f64),
    usual_slope: f64,
    tolerance: f64,
) -> Option<Crossing> {
    let mut x = guess.clamp(least, most);
    let (mut above, mut below): (Option<f64>, Option<f64>) = (None, None);
    let mut last: Option<(f64, f64)> = None;
    for evaluation in 0..MOST_OUTWARDS {
        let y = f(x)
            .filter(|y| !y.is_nan())?
            .clamp(-LARGEST_VALUE, LARGEST_VALUE);
        if y >= 0.0 {
            if x >= most {
                return Some(Crossing::Beyond);
            }
            above = Some(x);
        } else {
            if x <= least {
                return Some(Crossing::Before);
            }
            below = Some(x);
        }
        let slope = last
            .map(|(x0, y0)| (y - y0) / (x - x0))
            .filter(|slope| *slope < FLATTEST * usual_slope)
            .unwrap_or(usual_slope);
        last = Some((x, y));
        let straight = (x - y / slope).clamp(least, most);
        let next = match (above, below) {
            (Some(a), Some(b)) => {
                let inside = (straight - a) * (straight - b) <= 0.0;
                // Every fifth halves, should secants creep.
                if inside && evaluation % 5 != 4 {
                    straight
                } else {
                    0.5 * (a + b)
                }
            }
            _ => straight,
        };
        let moved = (next - x).abs();
        x = next;
        if moved <= tolerance {
            break;
        }
    }
    Some(Crossing::At(x))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_falling_function_is_followed_to_its_crossing() {
        let range = (-11.0, 11.0);
        for root in [-9.0, -0.3, 0.0, 2.0, 10.5] {
            let mut evaluations = 0;
            let bent = |x: f64| {
                evaluations += 1;
                Some(3.0 * (root - x) + 0.4 * (root - x).tanh())
            };
            let Some(Crossing::At(found)) = falling_root(bent, 0.0, range, -2.0, 1e-6) else {
                panic!("no crossing for {root}");
            };
            approx::assert_abs_diff_eq!(found, root, epsilon = 1e-7);
            assert!(evaluations <= 9, "{evaluations}");
        }
        let step = |x: f64| {
            Some(if x < 1.7 {
                f64::INFINITY
            } else {
                f64::NEG_INFINITY
            })
        };
        let Some(Crossing::At(found)) = falling_root(step, 0.0, range, -3.0, 1e-3) else {
            panic!("no crossing of a step");
        };
        approx::assert_abs_diff_eq!(found, 1.7, epsilon = 1e-2);
        let side = |sign: f64| falling_root(|_| Some(sign), 0.0, range, -3.0, 1e-3);
        assert_eq!(side(1.0), Some(Crossing::Beyond));
        assert_eq!(side(-1.0), Some(Crossing::Before));
        assert_eq!(falling_root(|_| None, 0.0, range, -3.0, 1e-3), None);
    }

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
