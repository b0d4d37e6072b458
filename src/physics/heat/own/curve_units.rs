//! In which units a curve is written: told by its heading, or by what a quench of the probe is.

use super::curve_error::{CurveError, CurveNote};
use super::probe_curve::Reading;
use super::table::{Row, Table};
use crate::units::TemperatureScale;

/// Temperatures at which the probe may start, °C.
pub(super) const START_RANGE_C: [f64; 2] = [780.0, 920.0];
/// The curve has to go below this, °C.
const ENDS_BELOW_C: f64 = 400.0;
/// Temperatures between which the quench is timed, °C.
pub(super) const QUENCH_BETWEEN_C: [f64; 2] = [700.0, 500.0];
/// Times between them, s.
const QUENCH_RANGE_S: [f64; 2] = [0.2, 150.0];

/// The scale that the name of the column or the heading tells.
pub(super) fn scale_told(name: &str, heading: &str) -> Option<TemperatureScale> {
    let has = |text: &str, words: &[&str]| words.iter().any(|word| text.contains(word));
    let told = |text: &str, celsius: &[&str], fahrenheit: &[&str]| match (
        has(text, celsius),
        has(text, fahrenheit),
    ) {
        (true, false) => Some(TemperatureScale::Celsius),
        (false, true) => Some(TemperatureScale::Fahrenheit),
        _ => None,
    };
    let celsius = ["°c", "degc", "deg c", "celsius", "(c)", "[c]", "/c", "_c"];
    let fahrenheit = [
        "°f",
        "degf",
        "deg f",
        "fahrenheit",
        "(f)",
        "[f]",
        "/f",
        "_f",
    ];
    // Short forms count in the name of the column only.
    told(name, &celsius, &fahrenheit).or_else(|| told(heading, &celsius[..4], &fahrenheit[..4]))
}

/// Seconds in the unit of time that the name of the column tells, or the heading where columns
/// have no names; one for clocks, which are in seconds already.
pub(super) fn unit_told(table: &Table, time: usize) -> Option<f64> {
    let is_clock = |row: &Row| table.clock_s(row.field(time)).is_some();
    if table.rows.first().is_some_and(is_clock) {
        return Some(1.0);
    }
    let name = table.name(time);
    let text = if name.is_empty() {
        table.heading.as_str()
    } else {
        name.as_str()
    };
    let has = |words: &[&str]| {
        let mut parts = text.split(|c: char| !c.is_alphanumeric());
        parts.any(|part| words.contains(&part))
    };
    if has(&["ms", "millisecond", "milliseconds"]) {
        Some(1e-3)
    } else if has(&["min", "minute", "minutes"]) {
        Some(60.0)
    } else if has(&["s", "sec", "second", "seconds"]) {
        Some(1.0)
    } else {
        None
    }
}

/// Converts temperatures by the scale that is told, or by the start.
pub(super) fn to_celsius(
    readings: &mut [Reading],
    told: Option<TemperatureScale>,
    notes: &mut Vec<CurveNote>,
) -> Result<(), CurveError> {
    let as_celsius = |f: f64| (f - 32.0) / 1.8;
    let hottest = readings
        .iter()
        .max_by(|a, b| a.temperature_c.total_cmp(&b.temperature_c));
    let (line, hottest) = hottest.map_or((0, 0.0), |r| (r.line, r.temperature_c));
    let starts = |c: f64| (START_RANGE_C[0]..=START_RANGE_C[1]).contains(&c);
    let scale = match told {
        Some(scale) => scale,
        // The ranges of the start on the two scales do not meet.
        None if starts(hottest) => {
            notes.push(CurveNote::ScaleGuessed(TemperatureScale::Celsius));
            TemperatureScale::Celsius
        }
        None if starts(as_celsius(hottest)) => {
            notes.push(CurveNote::ScaleGuessed(TemperatureScale::Fahrenheit));
            TemperatureScale::Fahrenheit
        }
        None => return Err(CurveError::Start { line, hottest }),
    };
    if scale == TemperatureScale::Fahrenheit {
        for reading in readings.iter_mut() {
            reading.temperature_c = as_celsius(reading.temperature_c);
        }
    }
    Ok(())
}

/// Converts times by the unit that is told, in seconds, or by how long the quench takes.
pub(super) fn to_seconds(
    readings: &mut [Reading],
    told: Option<f64>,
    notes: &mut Vec<CurveNote>,
) -> Result<(), CurveError> {
    let coldest_c = readings
        .iter()
        .fold(f64::MAX, |least, r| least.min(r.temperature_c));
    if coldest_c > ENDS_BELOW_C {
        return Err(CurveError::EndsHot {
            coldest_c,
            needed_c: ENDS_BELOW_C,
        });
    }
    let taken = match QUENCH_BETWEEN_C.map(|c| leaves(readings, c)) {
        [Some(from), Some(to)] => to - from,
        _ => 0.0,
    };
    let makes_sense = |s: f64| (QUENCH_RANGE_S[0]..=QUENCH_RANGE_S[1]).contains(&s);
    let factor = match told {
        Some(factor) if makes_sense(factor * taken) => factor,
        Some(_) => return Err(CurveError::Duration { taken }),
        None if makes_sense(taken) => {
            notes.push(CurveNote::SecondsAssumed);
            1.0
        }
        None if makes_sense(1e-3 * taken) => {
            notes.push(CurveNote::MillisecondsGuessed);
            1e-3
        }
        None => return Err(CurveError::Duration { taken }),
    };
    for reading in readings {
        reading.time_s *= factor;
    }
    Ok(())
}

/// When the curve falls below a temperature for good, in its own units of time.
fn leaves(readings: &[Reading], temperature_c: f64) -> Option<f64> {
    let last = readings
        .iter()
        .rposition(|reading| reading.temperature_c >= temperature_c)?;
    let (hot, cold) = (readings.get(last)?, readings.get(last + 1)?);
    let part = (hot.temperature_c - temperature_c) / (hot.temperature_c - cold.temperature_c);
    Some(hot.time_s + part * (cold.time_s - hot.time_s))
}
