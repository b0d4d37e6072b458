//! The figures of a measured curve, read off through its scatter.

use super::figures::QuenchantFigures;
use super::thin::Point;

/// Readings within so much of a temperature are used for the rate and the time there, K, and
/// within so many times their scatter.
const WITHIN_K: f64 = 20.0;
const WITHIN_SCATTERS: f64 = 12.0;
/// The least number of readings for it.
const LEAST_READINGS: usize = 5;
/// Where the highest rate is looked for, °C, and how closely, K.
const LOOKED_FOR_C: [f64; 2] = [820.0, 200.0];
const LOOKED_FOR_EVERY_K: f64 = 5.0;

/// The figures, with times from entry at `entry_s`. A figure is missing where readings are.
pub(super) fn figures(points: &[Point], noise_k: f64, entry_s: f64) -> QuenchantFigures {
    let within_k = WITHIN_K.max(WITHIN_SCATTERS * noise_k);
    let local = |c: f64| Local::around(points, c, within_k);
    let rate = |c: f64| local(c).map(|local| local.rate_k_per_s);
    let time_s = |c: f64| local(c).map(|local| local.time_s - entry_s);
    let [from_c, to_c] = LOOKED_FOR_C;
    let looks = ((from_c - to_c) / LOOKED_FOR_EVERY_K) as u32;
    let highest = (0..=looks)
        .filter_map(|i| {
            let at_c = from_c - LOOKED_FOR_EVERY_K * f64::from(i);
            Some((rate(at_c)?, at_c))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0));
    QuenchantFigures {
        nickel_ball_s: None,
        max_rate_k_per_s: highest.map(|(rate, _)| rate),
        max_rate_at_c: highest.map(|(_, at_c)| at_c),
        rate_at_300c_k_per_s: rate(300.0),
        time_to_600c_s: time_s(600.0),
        time_to_400c_s: time_s(400.0),
        time_to_200c_s: time_s(200.0),
    }
}

/// Cooling rate at a temperature, K/s.
pub(super) fn rate_at_c(points: &[Point], temperature_c: f64) -> Option<f64> {
    Local::around(points, temperature_c, WITHIN_K).map(|local| local.rate_k_per_s)
}

/// The curve near a temperature.
struct Local {
    time_s: f64,
    rate_k_per_s: f64,
}

impl Local {
    /// The straight line through the readings around the first that is colder.
    fn around(points: &[Point], temperature_c: f64, within_k: f64) -> Option<Self> {
        let middle = points
            .iter()
            .position(|p| p.temperature_c <= temperature_c)?;
        let near = |p: &Point| (p.temperature_c - temperature_c).abs() <= within_k;
        let mut first = middle.checked_sub(LEAST_READINGS / 2)?;
        let mut end = middle + LEAST_READINGS / 2;
        while first > 0 && points.get(first - 1).is_some_and(near) {
            first -= 1;
        }
        while points.get(end).is_some_and(near) {
            end += 1;
        }
        let used = points.get(first..end)?;
        let weight: f64 = used.iter().map(|p| p.readings).sum();
        let mean =
            |of: fn(&Point) -> f64| used.iter().map(|p| p.readings * of(p)).sum::<f64>() / weight;
        let (time_s, mean_c) = (mean(|p| p.time_s), mean(|p| p.temperature_c));
        let (mut along, mut square) = (0.0, 0.0);
        for p in used {
            along += p.readings * (p.time_s - time_s) * (p.temperature_c - mean_c);
            square += p.readings * (p.time_s - time_s) * (p.time_s - time_s);
        }
        let rate_k_per_s = -along / square;
        (rate_k_per_s > 0.0 && rate_k_per_s.is_finite()).then(|| Self {
            time_s: time_s + (mean_c - temperature_c) / rate_k_per_s,
            rate_k_per_s,
        })
    }
}
