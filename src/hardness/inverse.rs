//! From a wanted hardness to the tempering temperatures that give it.

use super::{AsQuenched, embrittling_range_c, temper_curve};
use crate::numeric::order;
use crate::sources::tempering_stages::TEMPERATURE_C;
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
