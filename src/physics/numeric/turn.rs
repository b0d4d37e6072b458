//! Sine and cosine of a part of a full turn. The general functions carry along the reduction of
//! angles of any size, which is 6 kB of what the page loads first.

use std::f64::consts::TAU;

/// Sine and cosine of a part of a full turn: 0.25 is a right angle. Within 1e-15 for parts of a few
/// turns either way.
#[must_use]
pub fn sin_cos_of_turn(part: f64) -> (f64, f64) {
    let quarters = (4.0 * part).round();
    let (sin, cos) = of_small(TAU * (part - 0.25 * quarters));
    match quarters.rem_euclid(4.0) as u8 {
        0 => (sin, cos),
        1 => (cos, -sin),
        2 => (-sin, -cos),
        _ => (-cos, sin),
    }
}

/// Those of an angle up to an eighth of a turn either way, by their series.
fn of_small(angle: f64) -> (f64, f64) {
    const TERMS: u8 = 9;
    let square = angle * angle;
    let (mut sin, mut cos) = (0.0, 0.0);
    for term in (0..TERMS).rev() {
        let n = f64::from(2 * term);
        cos = 1.0 - square / ((n + 1.0) * (n + 2.0)) * cos;
        sin = 1.0 - square / ((n + 2.0) * (n + 3.0)) * sin;
    }
    (angle * sin, cos)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_those_of_the_general_functions() {
        for i in -2000..=2000 {
            let part = f64::from(i) / 777.0;
            let (sin, cos) = sin_cos_of_turn(part);
            let (sin_known, cos_known) = (TAU * part).sin_cos();
            approx::assert_abs_diff_eq!(sin, sin_known, epsilon = 4e-15);
            approx::assert_abs_diff_eq!(cos, cos_known, epsilon = 4e-15);
        }
        assert_eq!(sin_cos_of_turn(0.25), (1.0, 0.0));
        assert_eq!(sin_cos_of_turn(0.0), (0.0, 1.0));
    }
}
