//! Cooling curves: temperature of one place of the piece against time.

use serde::Serialize;

/// A place in the piece.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// Middle plane of a plate, axis of a round or a square bar.
    Centre,
    /// Surface of a plate or a round, middle of a face of a square bar.
    Surface,
    /// Corner of a square bar.
    Corner,
    /// In a plate, a round or a ball, at this fraction of the way from the centre to the surface.
    Within(f64),
    /// Middle of the edge face of a blade.
    Edge,
    /// Middle plane of a blade, a quarter of the height above the edge.
    Quarter,
    /// Middle plane of a blade, half way up.
    Middle,
    /// Middle plane of a blade, three quarters of the height above the edge.
    ThreeQuarter,
    /// Core of the spine of a blade: on the middle plane at [`super::Section::spine_core_mm`].
    Spine,
    /// Flank of a blade at the height of the core of the spine.
    SpineSurface,
}

/// Temperature of one place against time since leaving the furnace. Between the points the
/// temperature is linear in time within a few tenths of a kelvin.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CoolingCurve {
    /// Where.
    pub place: Place,
    /// Times, s, rising.
    pub time_s: Vec<f64>,
    /// Temperature at each time, °C.
    pub temperature_c: Vec<f64>,
    /// Cooling rate at each time, K/s, positive when the place cools.
    pub rate_k_per_s: Vec<f64>,
}

impl CoolingCurve {
    /// When the place has first cooled to this temperature, s; nothing when it never does, zero
    /// when it was no hotter to begin with.
    #[must_use]
    pub fn time_to_c(&self, temperature_c: f64) -> Option<f64> {
        self.crossing(temperature_c)
            .map(|(i, x)| between(&self.time_s, i, x))
    }

    /// Cooling rate when the place first reaches this temperature, K/s.
    #[must_use]
    pub fn rate_at_c(&self, temperature_c: f64) -> Option<f64> {
        self.crossing(temperature_c)
            .map(|(i, x)| between(&self.rate_k_per_s, i, x))
    }

    /// Temperature at a time, °C: that of the first point before the curve, of the last after it.
    #[must_use]
    pub fn temperature_at_s(&self, time_s: f64) -> Option<f64> {
        let upper = self.time_s.partition_point(|t| *t < time_s);
        let (Some(lower), Some(&after)) = (upper.checked_sub(1), self.time_s.get(upper)) else {
            let end = if upper == 0 { 0 } else { upper - 1 };
            return self.temperature_c.get(end).copied();
        };
        let before = *self.time_s.get(lower)?;
        Some(between(
            &self.temperature_c,
            lower,
            (time_s - before) / (after - before),
        ))
    }

    /// Highest cooling rate, K/s, and the temperature there, °C, by a parabola through the three
    /// highest neighbouring points.
    #[must_use]
    pub fn max_rate(&self) -> Option<(f64, f64)> {
        let rates = &self.rate_k_per_s;
        let (top, &rate) = rates.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1))?;
        let here = (rate, *self.temperature_c.get(top)?);
        let Some(neighbours) = top.checked_sub(1).and_then(|i| {
            Some([
                (
                    *self.time_s.get(i)?,
                    *rates.get(i)?,
                    *self.temperature_c.get(i)?,
                ),
                (
                    *self.time_s.get(top + 1)?,
                    *rates.get(top + 1)?,
                    *self.temperature_c.get(top + 1)?,
                ),
            ])
        }) else {
            return Some(here);
        };
        let t = *self.time_s.get(top)?;
        let [left, right] = neighbours.map(|(at, r, c)| (at - t, r - rate, c - here.1));
        let second = (left.1 / left.0 - right.1 / right.0) / (left.0 - right.0);
        let first = left.1 / left.0 - second * left.0;
        let shift = -first / (2.0 * second);
        if !(shift > left.0 && shift < right.0) {
            return Some(here);
        }
        let toward = if shift < 0.0 { left } else { right };
        Some((
            rate + 0.5 * first * shift,
            here.1 + shift / toward.0 * toward.2,
        ))
    }

    /// Interval in which the place first reaches a temperature, and how far along in it.
    fn crossing(&self, temperature_c: f64) -> Option<(usize, f64)> {
        let first = self
            .temperature_c
            .iter()
            .position(|t| *t <= temperature_c)?;
        let Some(before) = first.checked_sub(1) else {
            return Some((0, 0.0));
        };
        let hotter = *self.temperature_c.get(before)?;
        let colder = *self.temperature_c.get(first)?;
        Some((before, (hotter - temperature_c) / (hotter - colder)))
    }
}

/// Value a fraction of the way from point `i` to the next.
fn between(values: &[f64], i: usize, fraction: f64) -> f64 {
    match (values.get(i), values.get(i + 1)) {
        (Some(a), Some(b)) => a + fraction * (b - a),
        (Some(a), None) => *a,
        _ => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(temperature: impl Fn(f64) -> f64, rate: impl Fn(f64) -> f64) -> CoolingCurve {
        let time_s: Vec<f64> = (0..=40).map(|i| 0.25 * f64::from(i)).collect();
        CoolingCurve {
            place: Place::Centre,
            temperature_c: time_s.iter().map(|t| temperature(*t)).collect(),
            rate_k_per_s: time_s.iter().map(|t| rate(*t)).collect(),
            time_s,
        }
    }

    #[test]
    fn times_and_rates_are_read_off() {
        let line = curve(|t| 800.0 - 30.0 * t, |_| 30.0);
        approx::assert_relative_eq!(line.time_to_c(750.0).unwrap(), 50.0 / 30.0);
        approx::assert_relative_eq!(line.rate_at_c(551.0).unwrap(), 30.0);
        approx::assert_relative_eq!(line.temperature_at_s(1.1).unwrap(), 767.0);
        assert_eq!(line.time_to_c(900.0), Some(0.0));
        assert_eq!(line.time_to_c(100.0), None);
        assert_eq!(line.temperature_at_s(-1.0), Some(800.0));
        assert_eq!(line.temperature_at_s(99.0), Some(500.0));
    }

    #[test]
    fn the_highest_rate_lies_between_points() {
        let peak = 3.87;
        let rate = |t: f64| 100.0 - 4.0 * (t - peak) * (t - peak);
        let temperature =
            |t: f64| 800.0 - (100.0 * t - 4.0 / 3.0 * ((t - peak).powi(3) + peak.powi(3)));
        let (highest, at) = curve(temperature, rate).max_rate().unwrap();
        approx::assert_relative_eq!(highest, 100.0, max_relative = 1e-9);
        approx::assert_abs_diff_eq!(at, temperature(peak), epsilon = 0.5);
    }
}
