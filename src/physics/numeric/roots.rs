//! Root of a falling function near a guess.

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
}
