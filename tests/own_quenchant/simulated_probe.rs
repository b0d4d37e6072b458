//! Readings of the computed probe as an instrument would give them: with scatter, as text.

use super::listed;
use recalesce::heat::{CoolingCurve, CurveOptions, ProbeCurve, probe};
use std::fmt::Write;

/// Normal numbers from a fixed sequence: a linear congruential generator of 64 bits, by the method
/// of Box and Muller.
pub(super) struct Scatter(pub(super) u64);

impl Scatter {
    fn uniform(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6364136223846793005)
            .wrapping_add(1442695040888963407);
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    pub(super) fn next(&mut self) -> f64 {
        let (a, b) = (self.uniform(), self.uniform());
        (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

/// Temperature of a computed curve, by the cubic with its temperatures and rates: straight lines
/// are not good enough for readings that are to be exact.
pub(super) fn temperature_c(curve: &CoolingCurve, time_s: f64) -> f64 {
    let after = curve.time_s.partition_point(|t| *t <= time_s);
    let i = after.clamp(1, curve.time_s.len() - 1);
    let width = curve.time_s[i] - curve.time_s[i - 1];
    let x = ((time_s - curve.time_s[i - 1]) / width).clamp(0.0, 1.0);
    let [from, to] = [i - 1, i].map(|i| curve.temperature_c[i]);
    let [first, last] = [i - 1, i].map(|i| -width * curve.rate_k_per_s[i] - (to - from));
    from + x * (to - from) + x * (1.0 - x) * (first * (1.0 - x) - last * x)
}

/// Readings of the computed probe, time in s and °C: `idle_s` in the furnace, then the bath to
/// near its temperature or for 100 s.
pub(super) fn readings(name: &str, idle_s: f64, per_s: f64, noise_k: f64) -> Vec<[f64; 2]> {
    let curve = probe(listed(name)).unwrap().curve;
    let mut scatter = Scatter(7);
    let last_s = curve.time_s.last().unwrap().min(100.0);
    let count = ((idle_s + last_s) * per_s) as u32;
    (0..=count)
        .map(|i| {
            let time_s = f64::from(i) / per_s;
            [
                time_s,
                temperature_c(&curve, time_s - idle_s) + noise_k * scatter.next(),
            ]
        })
        .collect()
}

/// As text, each line by `line` of time and temperature.
pub(super) fn text(
    heading: &str,
    readings: &[[f64; 2]],
    line: impl Fn(f64, f64) -> String,
) -> String {
    let mut text = heading.to_owned();
    for [time_s, temperature_c] in readings {
        writeln!(text, "{}", line(*time_s, *temperature_c)).unwrap();
    }
    text
}

pub(super) fn read(text: &str) -> ProbeCurve {
    ProbeCurve::read(text, &CurveOptions::default()).unwrap_or_else(|e| panic!("{e}"))
}
