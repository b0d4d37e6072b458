//! How much the readings of a curve scatter.

use super::probe_curve::Reading;

/// Median of the absolute value of a normal variable, in standard deviations.
const MEDIAN_OF_NORMAL: f64 = 0.6745;

/// Standard deviation of a single reading, K: each is compared with the cubic through its two
/// neighbours on either side, and the median of the differences is taken, which the few places
/// where the curve bends sharply do not move.
pub(super) fn noise_k(readings: &[Reading]) -> f64 {
    let mut differences: Vec<f64> = readings.windows(5).filter_map(difference).collect();
    differences.sort_by(f64::total_cmp);
    let median = differences.get(differences.len() / 2);
    median.map_or(0.0, |median| median / MEDIAN_OF_NORMAL)
}

/// Difference of the middle one of five from the cubic through the others, over what noise of one
/// makes of it.
fn difference(five: &[Reading]) -> Option<f64> {
    let &[a, b, middle, c, d] = five else {
        return None;
    };
    let others = [a, b, c, d];
    let (mut value, mut variance) = (-middle.temperature_c, 1.0);
    for (i, one) in others.iter().enumerate() {
        let weight: f64 = others
            .iter()
            .enumerate()
            .filter(|(j, _)| *j != i)
            .map(|(_, other)| (middle.time_s - other.time_s) / (one.time_s - other.time_s))
            .product();
        value += weight * one.temperature_c;
        variance += weight * weight;
    }
    let difference = (value / variance.sqrt()).abs();
    difference.is_finite().then_some(difference)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scatter_is_found_on_a_bent_curve_with_uneven_times() {
        let reading = |i: u32, scatter: f64| {
            let time_s = 0.1 * f64::from(i) + 0.02 * f64::from(i % 3);
            // A sequence without pattern, from -1 to 1.
            let x = (f64::from(i) * 0.754_877_666).fract() * 2.0 - 1.0;
            Reading {
                line: u64::from(i),
                time_s,
                temperature_c: 850.0 - 80.0 * time_s + 3.0 * time_s * time_s + scatter * x,
            }
        };
        let of = |scatter: f64| {
            let readings: Vec<Reading> = (0..300).map(|i| reading(i, scatter)).collect();
            noise_k(&readings)
        };
        assert!(of(0.0) < 1e-9);
        // A uniform variable from -1 to 1 has a standard deviation of 0.58.
        approx::assert_relative_eq!(of(1.0), 0.58, max_relative = 0.35);
        approx::assert_relative_eq!(of(4.0), 4.0 * of(1.0), max_relative = 1e-6);
        assert_eq!(noise_k(&[]), 0.0);
    }
}
