//! A long record averaged to as many points as say all of it.

use super::probe_curve::Reading;

/// A curve is cut into so many parts by time and as many by temperature, so a point spans no more
/// than one of them: about 1.6 K or a thousandth of the time.
const PARTS: f64 = 500.0;

/// The mean of readings that follow each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    pub(super) time_s: f64,
    pub(super) temperature_c: f64,
    /// How many readings, on whose root the scatter of the mean depends.
    pub(super) readings: f64,
}

/// Averages neighbours. A record with no more readings than parts stays as it is.
pub(super) fn thin(readings: &[Reading]) -> Vec<Point> {
    let (Some(first), Some(last)) = (readings.first(), readings.last()) else {
        return Vec::new();
    };
    let is_short = readings.len() as f64 <= 2.0 * PARTS;
    let duration_s = last.time_s - first.time_s;
    let hottest_c = readings
        .iter()
        .fold(f64::MIN, |m, r| m.max(r.temperature_c));
    let coldest_c = readings
        .iter()
        .fold(f64::MAX, |m, r| m.min(r.temperature_c));
    let mut points: Vec<Point> = Vec::new();
    let mut cooled_to_c = first.temperature_c;
    let mut part = f64::NEG_INFINITY;
    for reading in readings {
        // The coldest so far: it never turns back, whatever the scatter.
        cooled_to_c = cooled_to_c.min(reading.temperature_c);
        let cooled = (hottest_c - cooled_to_c) / (hottest_c - coldest_c).max(1.0);
        let passed = (reading.time_s - first.time_s) / duration_s.max(1e-9);
        let here = (PARTS * (cooled + passed)).floor();
        match points.last_mut() {
            Some(point) if !is_short && here <= part => {
                point.readings += 1.0;
                point.time_s += (reading.time_s - point.time_s) / point.readings;
                point.temperature_c +=
                    (reading.temperature_c - point.temperature_c) / point.readings;
            }
            _ => {
                part = here;
                points.push(Point {
                    time_s: reading.time_s,
                    temperature_c: reading.temperature_c,
                    readings: 1.0,
                });
            }
        }
    }
    points
}
