//! When the probe enters the bath.
//!
//! In the furnace its centre is still, in air it cools by about 4 K/s, in a quenchant by 20 K/s
//! and more, but only after the cold has come through from the surface.

use super::probe_curve::Reading;

/// Cooling rate that only a bath gives, K/s, over so long a time, s.
pub(super) const BATH_RATE_K_PER_S: f64 = 10.0;
const OVER_S: f64 = 1.0;
/// The temperature before is that of so long a time, s; that at entry of so long before and after
/// it, in which the centre is still.
const BEFORE_S: f64 = 0.5;
const AROUND_S: f64 = 0.3;
/// Falls of the centre, K, that are above scatter, and how long after entry it has fallen by the
/// first: so many s, and so many times what it takes from the first to the second. Computed for
/// all liquids of the list, which lie within 0.05 s of it.
const FALLS_K: [f64; 2] = [8.0, 16.0];
const FALL_AFTER_S: f64 = 0.42;
const FALL_AFTER_STEPS: f64 = 1.65;
/// A record that begins no earlier than this before entry begins with it, s.
const BEGINS_WITHIN_S: f64 = 0.2;
/// A record whose first reading stands at a time no later than this has its clock from entry, s.
const CLOCK_STARTS_S: f64 = 0.5;

/// The moment of entry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Entry {
    /// On the clock of the readings, s.
    pub(super) time_s: f64,
    /// Temperature of the probe, °C.
    pub(super) start_c: f64,
    /// Whether it was found in the curve, to a tenth of a second or two, and not told.
    pub(super) is_found: bool,
}

/// Entry at a time that is known.
pub(super) fn given(readings: &[Reading], time_s: f64) -> Option<Entry> {
    let next = || readings.iter().find(|r| r.time_s >= time_s);
    let start_c = mean_within(readings, time_s - AROUND_S, time_s + AROUND_S)
        .or_else(|| next().map(|r| r.temperature_c))?;
    Some(Entry {
        time_s,
        start_c,
        is_found: false,
    })
}

/// Entry where the curve bends down; or at the start of the record, if it falls from there.
pub(super) fn find(readings: &[Reading]) -> Option<Entry> {
    let first = readings.first()?;
    let mut end = 0;
    let bend = (0..readings.len()).find(|&i| {
        let Some(here) = readings.get(i) else {
            return false;
        };
        while readings
            .get(end)
            .is_some_and(|r| r.time_s <= here.time_s + OVER_S)
        {
            end += 1;
        }
        // At least to the next reading but one, where they are far apart.
        let window = readings.get(i..end.max(i + 3).min(readings.len()));
        window
            .and_then(slope)
            .is_some_and(|slope| -slope > BATH_RATE_K_PER_S)
    })?;
    let bend_s = readings.get(bend)?.time_s;
    let after = readings.get(bend..)?;
    let until_s = bend_s.max(first.time_s + BEGINS_WITHIN_S);
    let mut start_c = mean_within(readings, bend_s - BEFORE_S, until_s)?;
    let mut time_s = first_fall(after, start_c)?;
    // In air the probe cools on until it enters: once more with the temperature at entry.
    if let Some(at_entry_c) = mean_within(readings, time_s - AROUND_S, time_s + AROUND_S) {
        start_c = at_entry_c;
        time_s = first_fall(after, start_c)?;
    }
    if time_s > first.time_s + BEGINS_WITHIN_S {
        return Some(Entry {
            time_s,
            start_c,
            is_found: true,
        });
    }
    let from_entry = (0.0..=CLOCK_STARTS_S).contains(&first.time_s);
    Some(Entry {
        time_s: if from_entry { 0.0 } else { first.time_s },
        start_c,
        is_found: false,
    })
}

/// Entry by how the centre falls from its temperature before, s.
fn first_fall(readings: &[Reading], start_c: f64) -> Option<f64> {
    let [small, large] = FALLS_K.map(|fall_k| passes(readings, start_c - fall_k));
    let (small, large) = (small?, large?);
    Some(small - FALL_AFTER_S - FALL_AFTER_STEPS * (large - small))
}

/// When readings first pass a temperature, s.
fn passes(readings: &[Reading], temperature_c: f64) -> Option<f64> {
    let after = readings
        .iter()
        .position(|reading| reading.temperature_c <= temperature_c)?;
    let cold = readings.get(after)?;
    let Some(hot) = after.checked_sub(1).and_then(|i| readings.get(i)) else {
        return Some(cold.time_s);
    };
    let part = (hot.temperature_c - temperature_c) / (hot.temperature_c - cold.temperature_c);
    Some(hot.time_s + part * (cold.time_s - hot.time_s))
}

/// Mean temperature of the readings between two times, °C.
fn mean_within(readings: &[Reading], from_s: f64, to_s: f64) -> Option<f64> {
    let (mut sum, mut count) = (0.0, 0.0);
    for reading in readings {
        if (from_s..=to_s).contains(&reading.time_s) {
            sum += reading.temperature_c;
            count += 1.0;
        }
    }
    (count > 0.0).then(|| sum / count)
}

/// Slope of the straight line through readings, K/s.
fn slope(readings: &[Reading]) -> Option<f64> {
    let count = readings.len() as f64;
    let first = readings.first()?;
    let (mut sum_t, mut sum_c) = (0.0, 0.0);
    for reading in readings {
        sum_t += reading.time_s - first.time_s;
        sum_c += reading.temperature_c;
    }
    let (mean_t, mean_c) = (sum_t / count, sum_c / count);
    let (mut along, mut square) = (0.0, 0.0);
    for reading in readings {
        let t = reading.time_s - first.time_s - mean_t;
        along += t * (reading.temperature_c - mean_c);
        square += t * t;
    }
    (square > 0.0).then(|| along / square)
}
