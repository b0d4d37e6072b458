//! Interpolation in tables of knots `[x, y]`, x strictly increasing.
//!
//! [`pchip`] is the monotone piecewise cubic of Fritsch and Carlson with the harmonic-mean slopes
//! of Fritsch and Butland: exact at the knots, no overshoot between them. A value needs only the
//! four knots around it, so tables stay plain constants and nothing is prepared or stored.

/// Value at `x` by straight lines between knots.
///
/// None outside the table, for `x` that is not a number, or for fewer than two knots.
#[must_use]
pub fn linear(knots: &[[f64; 2]], x: f64) -> Option<f64> {
    let (_, [x0, y0], [x1, y1]) = span(knots, x)?;
    Some(y0 + (y1 - y0) * (x - x0) / (x1 - x0))
}

/// Value at `x` by straight lines between knots, held at the end values outside.
///
/// None for an empty table or for `x` that is not a number.
#[must_use]
pub fn linear_held(knots: &[[f64; 2]], x: f64) -> Option<f64> {
    let (first, last) = (knots.first()?, knots.last()?);
    if x <= first[0] {
        return Some(first[1]);
    }
    if x >= last[0] {
        return Some(last[1]);
    }
    linear(knots, x)
}

/// Value at `x` by the monotone piecewise cubic.
///
/// None outside the table, for `x` that is not a number, or for fewer than two knots.
#[must_use]
pub fn pchip(knots: &[[f64; 2]], x: f64) -> Option<f64> {
    let (i, left, right) = span(knots, x)?;
    Some(Cubic::between(knots, i, left, right).value((x - left[0]) / (right[0] - left[0])))
}

/// The `x` at which the monotone piecewise cubic through `knots` takes the value `y`: the exact
/// inverse of [`pchip`], for tables whose y strictly increases.
///
/// None outside the table's values, for `y` that is not a number, or for fewer than two knots.
#[must_use]
pub fn pchip_inverse(knots: &[[f64; 2]], y: f64) -> Option<f64> {
    let (first, last) = (knots.first()?, knots.last()?);
    if !(first[1]..=last[1]).contains(&y) || knots.len() < 2 {
        return None;
    }
    let i = knots
        .partition_point(|knot| knot[1] <= y)
        .clamp(1, knots.len() - 1)
        - 1;
    let (&left, &right) = (knots.get(i)?, knots.get(i + 1)?);
    let cubic = Cubic::between(knots, i, left, right);
    let u = cubic.inverse(y);
    Some(left[0] + u * (right[0] - left[0]))
}

/// Index of the left knot of the span that holds `x`, and both its knots.
fn span(knots: &[[f64; 2]], x: f64) -> Option<(usize, [f64; 2], [f64; 2])> {
    let (first, last) = (knots.first()?, knots.last()?);
    if !(first[0]..=last[0]).contains(&x) || knots.len() < 2 {
        return None;
    }
    let i = knots
        .partition_point(|knot| knot[0] <= x)
        .clamp(1, knots.len() - 1)
        - 1;
    Some((i, *knots.get(i)?, *knots.get(i + 1)?))
}

/// One span in Hermite form over u in 0..=1; slopes are per span.
struct Cubic {
    y0: f64,
    y1: f64,
    slope0: f64,
    slope1: f64,
}

impl Cubic {
    fn between(knots: &[[f64; 2]], i: usize, left: [f64; 2], right: [f64; 2]) -> Self {
        let width = right[0] - left[0];
        let rise = (right[1] - left[1]) / width;
        let before = i.checked_sub(1).and_then(|j| knots.get(j)).copied();
        let after = knots.get(i + 2).copied();
        let before =
            before.map(|knot| (left[0] - knot[0], (left[1] - knot[1]) / (left[0] - knot[0])));
        let after = after.map(|knot| {
            (
                knot[0] - right[0],
                (knot[1] - right[1]) / (knot[0] - right[0]),
            )
        });
        let slope0 = match (before, after) {
            (Some((h, d)), _) => inner_slope(h, d, width, rise),
            (None, Some((h, d))) => end_slope(width, rise, h, d),
            (None, None) => rise,
        };
        let slope1 = match (after, before) {
            (Some((h, d)), _) => inner_slope(width, rise, h, d),
            (None, Some((h, d))) => end_slope(width, rise, h, d),
            (None, None) => rise,
        };
        Self {
            y0: left[1],
            y1: right[1],
            slope0: slope0 * width,
            slope1: slope1 * width,
        }
    }

    fn value(&self, u: f64) -> f64 {
        let rise = self.y1 - self.y0;
        let a = self.slope0 - rise;
        let b = rise - self.slope1;
        let v = 1.0 - u;
        self.y0 + u * rise + u * v * (v * a + u * b)
    }

    fn slope(&self, u: f64) -> f64 {
        let rise = self.y1 - self.y0;
        let a = self.slope0 - rise;
        let b = rise - self.slope1;
        rise + a * (1.0 - u) * (1.0 - 3.0 * u) + b * u * (2.0 - 3.0 * u)
    }

    /// Newton steps kept inside a shrinking bracket; the cubic rises over the span.
    fn inverse(&self, y: f64) -> f64 {
        let (mut low, mut high) = (0.0, 1.0);
        let mut u = (y - self.y0) / (self.y1 - self.y0);
        for _ in 0..60 {
            let miss = self.value(u) - y;
            if miss > 0.0 {
                high = u;
            } else {
                low = u;
            }
            let newton = u - miss / self.slope(u);
            let next = if newton > low && newton < high {
                newton
            } else {
                0.5 * (low + high)
            };
            if (next - u).abs() <= 1e-14 {
                return next;
            }
            u = next;
        }
        u
    }
}

/// Slope at a knot between two spans (width, rise): weighted harmonic mean, flat at a turn.
fn inner_slope(h0: f64, d0: f64, h1: f64, d1: f64) -> f64 {
    if d0 * d1 <= 0.0 {
        return 0.0;
    }
    let w0 = 2.0 * h1 + h0;
    let w1 = h1 + 2.0 * h0;
    (w0 + w1) / (w0 / d0 + w1 / d1)
}

/// Slope at an end knot: three-point formula, limited so that the end span stays monotone.
fn end_slope(h0: f64, d0: f64, h1: f64, d1: f64) -> f64 {
    let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if slope * d0 <= 0.0 {
        0.0
    } else if d0 * d1 <= 0.0 && slope.abs() > 3.0 * d0.abs() {
        3.0 * d0
    } else {
        slope
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    const KNOTS: [[f64; 2]; 5] = [[0.0, 0.0], [1.0, 0.1], [2.0, 3.0], [4.0, 3.5], [5.0, 9.0]];

    #[test]
    fn knots_are_met_exactly() {
        for [x, y] in KNOTS {
            assert_eq!(pchip(&KNOTS, x), Some(y));
            assert_eq!(linear(&KNOTS, x), Some(y));
        }
    }

    #[test]
    fn rising_table_gives_a_rising_curve_without_overshoot() {
        let mut last = f64::NEG_INFINITY;
        for i in 0..=500 {
            let y = pchip(&KNOTS, 0.01 * f64::from(i)).unwrap_or(f64::NAN);
            assert!(y >= last, "falls at {i}");
            last = y;
        }
    }

    #[test]
    fn straight_table_gives_a_straight_line() {
        let knots = [[0.0, 1.0], [1.0, 3.0], [3.0, 7.0], [4.0, 9.0]];
        for i in 0..=40 {
            let x = 0.1 * f64::from(i);
            assert_relative_eq!(
                pchip(&knots, x).unwrap_or(f64::NAN),
                1.0 + 2.0 * x,
                epsilon = 1e-12
            );
        }
    }

    #[test]
    fn a_turn_in_the_table_is_flat() {
        let knots = [[0.0, 0.0], [1.0, 1.0], [2.0, 0.0]];
        let (before, at, after) = (
            pchip(&knots, 0.999).unwrap_or(f64::NAN),
            pchip(&knots, 1.0).unwrap_or(f64::NAN),
            pchip(&knots, 1.001).unwrap_or(f64::NAN),
        );
        assert!(before <= at && after <= at);
    }

    #[test]
    fn inverse_undoes_the_curve() {
        for i in 0..=500 {
            let x = 0.01 * f64::from(i);
            let y = pchip(&KNOTS, x).unwrap_or(f64::NAN);
            let back = pchip_inverse(&KNOTS, y).unwrap_or(f64::NAN);
            assert_relative_eq!(
                pchip(&KNOTS, back).unwrap_or(f64::NAN),
                y,
                epsilon = 1e-12,
                max_relative = 1e-12
            );
        }
    }

    #[test]
    fn outside_the_table_there_is_no_value() {
        for x in [-0.1, 5.1, f64::NAN, f64::INFINITY] {
            assert_eq!(pchip(&KNOTS, x), None);
            assert_eq!(linear(&KNOTS, x), None);
        }
        assert_eq!(pchip_inverse(&KNOTS, 9.1), None);
        assert_eq!(pchip(&KNOTS[..1], 0.0), None);
        assert_eq!(linear_held(&KNOTS, 7.0), Some(9.0));
        assert_eq!(linear_held(&KNOTS, f64::NAN), None);
    }
}
