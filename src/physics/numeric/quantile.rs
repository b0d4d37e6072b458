//! Quantiles of a sample, and of the normal distribution.

/// Standard deviations either way between which nine in ten of a normal distribution lie (printed tables).
pub const NINE_IN_TEN: f64 = 1.6449;

/// The value below which a part, 0 to 1, of a sample lies, straight between neighbours; the sample
/// is in rising order. None of an empty one.
#[must_use]
pub fn quantile(sorted: &[f64], part: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let place = part.clamp(0.0, 1.0) * last as f64;
    let below = (place as usize).min(last);
    let low = *sorted.get(below)?;
    let high = sorted.get(below + 1).copied().unwrap_or(low);
    Some(low + (place - below as f64) * (high - low))
}

/// Mean and standard deviation of a sample; none of fewer than two values.
#[must_use]
pub fn mean_and_sd(sample: &[f64]) -> Option<(f64, f64)> {
    if sample.len() < 2 {
        return None;
    }
    let count = sample.len() as f64;
    let mean = sample.iter().sum::<f64>() / count;
    let squares: f64 = sample.iter().map(|value| (value - mean).powi(2)).sum();
    Some((mean, (squares / (count - 1.0)).sqrt()))
}

/// Part of a normal distribution below so many standard deviations above its middle, within 0.01: the
/// logistic of 1.702 times as many, which is off by the same at most above and below (statistics of tests,
/// from memory).
#[must_use]
pub fn normal_below(deviations: f64) -> f64 {
    1.0 / (1.0 + (-1.702 * deviations).exp())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Printed tables of the normal distribution.
    #[test]
    fn the_part_below_is_that_of_the_tables() {
        for (deviations, part) in [
            (-3.0, 0.0013),
            (-1.0, 0.1587),
            (0.0, 0.5),
            (0.5, 0.6915),
            (1.0, 0.8413),
            (NINE_IN_TEN, 0.95),
            (2.0, 0.9772),
        ] {
            approx::assert_abs_diff_eq!(normal_below(deviations), part, epsilon = 0.01);
        }
    }

    #[test]
    fn quantiles_lie_between_neighbours() {
        let sample = [1.0, 2.0, 4.0, 8.0, 16.0];
        let found = [0.0, 0.25, 0.5, 0.875, 1.0].map(|part| quantile(&sample, part).unwrap());
        assert_eq!(found, [1.0, 2.0, 4.0, 12.0, 16.0]);
        assert_eq!(quantile(&[3.0], 0.9), Some(3.0));
        assert_eq!(quantile(&[], 0.5), None);
    }

    #[test]
    fn the_deviation_is_that_of_a_sample() {
        let (mean, sd) = mean_and_sd(&[2.0, 4.0, 4.0, 4.0, 5.0, 5.0, 7.0, 9.0]).unwrap();
        assert_eq!(mean, 5.0);
        approx::assert_relative_eq!(sd, (32.0_f64 / 7.0).sqrt());
        assert_eq!(mean_and_sd(&[1.0]), None);
    }
}
