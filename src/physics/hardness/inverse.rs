//! From a wanted hardness to the tempering temperatures, or the time, that give it.

use super::{AsQuenched, embrittling_range_c, temper_curve};
use crate::numeric::order;
use crate::sources::tempering_stages::{TEMPERATURE_C, TIME_S};
use crate::steel::{Composition, OutOfRange};
use serde::Serialize;

/// A tempering temperature that gives the wanted hardness.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct TemperChoice {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Whether it lies in the embrittling range of the steel.
    pub embrittling: bool,
}

/// Grid on which crossings are looked for, K: finer than any bump of the curve.
const GRID_K: f64 = 5.0;

/// All temperatures at which `tempers` tempers of `time_s` each leave `target_hrc`, coolest first
/// among those outside the embrittling range, then those inside: the first is the preferred one.
/// Empty when the hardness is never met.
///
/// # Errors
/// As [`temper_curve`].
pub fn temperatures_for(
    start: &AsQuenched,
    steel: &Composition,
    time_s: f64,
    tempers: u32,
    target_hrc: f64,
) -> Result<Vec<TemperChoice>, OutOfRange> {
    let (least, largest) = TEMPERATURE_C;
    let count = ((largest - least) / GRID_K) as u32;
    let grid: Vec<f64> = (0..=count).map(|i| least + GRID_K * f64::from(i)).collect();
    let curve = temper_curve(start, steel, &grid, time_s, tempers)?;
    let [low_c, high_c] = embrittling_range_c(steel);
    let miss_at = |temperature_c: f64| -> Option<f64> {
        let point = temper_curve(start, steel, &[temperature_c], time_s, tempers).ok()?;
        Some(point.first()?.hrc - target_hrc)
    };
    let mut choices = Vec::new();
    for pair in curve.windows(2) {
        let [left, right] = pair else { continue };
        let (miss_left, miss_right) = (left.hrc - target_hrc, right.hrc - target_hrc);
        // The right end belongs to the next span.
        if miss_left != 0.0 && (miss_left * miss_right >= 0.0 || miss_left.is_nan()) {
            continue;
        }
        let (mut a, mut b) = (left.temperature_c, right.temperature_c);
        if miss_left == 0.0 {
            b = a;
        }
        while b - a > 0.01 {
            let middle = 0.5 * (a + b);
            let Some(miss) = miss_at(middle) else { break };
            if miss * miss_left > 0.0 {
                a = middle;
            } else {
                b = middle;
            }
        }
        let temperature_c = 0.5 * (a + b);
        choices.push(TemperChoice {
            temperature_c,
            embrittling: (low_c..=high_c).contains(&temperature_c),
        });
    }
    order::sort_by_key(&mut choices, |choice| choice.embrittling);
    Ok(choices)
}

/// Halvings of the range of times: to within a thousandth.
const HALVINGS: u32 = 14;

/// The time of each of `tempers` equal tempers at a temperature, °C, after which the hardness has
/// fallen to the wanted one, s. None where 10 s is already too long or 32 h too short.
///
/// # Errors
/// As [`temper_curve`].
pub fn time_for(
    start: &AsQuenched,
    steel: &Composition,
    temperature_c: f64,
    tempers: u32,
    target_hrc: f64,
) -> Result<Option<f64>, OutOfRange> {
    let miss_after = |ln_s: f64| -> Result<Option<f64>, OutOfRange> {
        let points = temper_curve(start, steel, &[temperature_c], ln_s.exp(), tempers)?;
        Ok(points.first().map(|point| point.hrc - target_hrc))
    };
    let (least_s, longest_s) = TIME_S;
    // Kept off the ends, which a rounded logarithm could leave.
    let (mut low, mut high) = (least_s.ln() + 1e-9, longest_s.ln() - 1e-9);
    let ends = [miss_after(low)?, miss_after(high)?];
    if !matches!(ends, [Some(first), Some(last)] if first >= 0.0 && last <= 0.0) {
        return Ok(None);
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if miss_after(middle)?.is_some_and(|miss| miss > 0.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(Some((0.5 * (low + high)).exp()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steel() -> (AsQuenched, Composition) {
        let steel = Composition {
            c: 0.95,
            mn: 0.4,
            si: 0.25,
            ..Composition::default()
        };
        (AsQuenched::fully_martensitic(&steel), steel)
    }

    #[test]
    fn the_time_gives_the_wanted_hardness() {
        let (start, steel) = steel();
        let time_s = time_for(&start, &steel, 200.0, 2, 61.0).unwrap().unwrap();
        let found = temper_curve(&start, &steel, &[200.0], time_s, 2).unwrap();
        assert!((found[0].hrc - 61.0).abs() < 0.01, "{}", found[0].hrc);
        let hotter = time_for(&start, &steel, 215.0, 2, 61.0).unwrap().unwrap();
        assert!(hotter < time_s);
    }

    #[test]
    fn what_no_time_gives_has_none() {
        let (start, steel) = steel();
        assert_eq!(time_for(&start, &steel, 120.0, 1, 40.0), Ok(None));
        assert_eq!(time_for(&start, &steel, 600.0, 1, 62.0), Ok(None));
        assert!(time_for(&start, &steel, 900.0, 1, 62.0).is_ok_and(|t| t.is_none()));
    }
}
