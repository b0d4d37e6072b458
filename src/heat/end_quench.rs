//! Cooling along the bar of the end-quench test.

use super::HeatError;
use super::curve::{CoolingCurve, Place};
use super::media;
use super::properties::Material;
use crate::sources::astm_a255_cooling_rates::RATE_AT_704C;
use libm::{erf, exp, log};

/// Temperature of the rates along the bar, °C (1300 °F).
const RATE_C: f64 = 704.0;
/// Temperature of water and air, °C.
const ROOM_C: f64 = 24.0;
/// Diameter of the bar, m.
const BAR_DIAMETER_M: f64 = 25.4e-3;
/// Temperature at which the loss from the sides of the bar is taken, °C.
const SIDES_C: f64 = 500.0;
/// A sixteenth of an inch, mm.
const SIXTEENTH_MM: f64 = 25.4 / 16.0;
/// Allowed distances from the quenched end, mm: those of the table.
const DISTANCE_MM: [f64; 2] = [SIXTEENTH_MM, 32.0 * SIXTEENTH_MM];
/// Allowed temperatures of the bar when the water is turned on, °C.
const START_C: [f64; 2] = [760.0, 1200.0];
/// End of the curve, °C.
const END_C: f64 = 30.0;
/// Intervals of the curve, evenly spaced in the logarithm of time.
const INTERVALS: usize = 160;

/// Cooling rate at 704 °C, K/s, at a distance from the quenched end, mm: between the rows of the
/// table the logarithm of the rate is linear in that of the distance.
///
/// # Errors
/// A distance outside 1.5875 to 50.8 mm.
pub fn jominy_rate_at_704c(distance_mm: f64) -> Result<f64, HeatError> {
    check(
        "distance from the quenched end",
        distance_mm,
        DISTANCE_MM,
        "mm",
    )?;
    let sixteenths = distance_mm / SIXTEENTH_MM;
    let upper = RATE_AT_704C
        .partition_point(|row| row[0] < sixteenths)
        .clamp(1, RATE_AT_704C.len() - 1);
    let (Some(near), Some(far)) = (RATE_AT_704C.get(upper - 1), RATE_AT_704C.get(upper)) else {
        return Err(HeatError::NotFinite);
    };
    let x = log(sixteenths / near[0]) / log(far[0] / near[0]);
    Ok(near[1] * exp(x * log(far[1] / near[1])))
}

/// Cooling curve at a distance from the quenched end, mm, of a bar at `start_c`, °C, to 30 °C.
///
/// The shape is that of a long bar with one end held at the temperature of the water, which loses
/// heat to still air along its sides: T = Tw + (T0 - Tw) erf(√(τ/t)) exp(-t/t_a). The one
/// constant τ is set so that the rate at 704 °C is that of the table; t_a follows from the air
/// curve of the list.
///
/// # Errors
/// A distance outside 1.5875 to 50.8 mm, or a start outside 760 to 1200 °C.
pub fn end_quench_curve(distance_mm: f64, start_c: f64) -> Result<CoolingCurve, HeatError> {
    let rate = jominy_rate_at_704c(distance_mm)?;
    check("temperature of the bar", start_c, START_C, "°C")?;
    let sides_s = sides_s().ok_or(HeatError::NotFinite)?;
    let bar = Bar::with_rate(rate, start_c - ROOM_C, sides_s);
    let first_s = bar.tau_s / 6.0;
    let last_s = bar.time_to(END_C - ROOM_C, first_s);
    let ratio = log(last_s / first_s) / INTERVALS as f64;
    let mut curve = CoolingCurve {
        place: Place::Centre,
        time_s: vec![0.0],
        temperature_c: vec![start_c],
        rate_k_per_s: vec![bar.excess_k / sides_s],
    };
    for i in 0..=INTERVALS {
        let time_s = first_s * exp(ratio * i as f64);
        let (excess, rate) = bar.at(time_s);
        curve.time_s.push(time_s);
        curve.temperature_c.push(ROOM_C + excess);
        curve.rate_k_per_s.push(rate);
    }
    Ok(curve)
}

/// Time constant of the loss to still air through the sides of the bar, s.
fn sides_s() -> Option<f64> {
    let air = media::medium("air_still")?;
    let capacity = Material::austenite().capacity_j_m3k(SIDES_C);
    Some(capacity * BAR_DIAMETER_M / (4.0 * air.h_w_m2k.at(SIDES_C)))
}

/// Excess over the room at one distance.
struct Bar {
    /// At the start, K.
    excess_k: f64,
    /// Squared distance over four times the diffusivity, s.
    tau_s: f64,
    /// Time constant of the sides, s.
    sides_s: f64,
}

impl Bar {
    /// The bar that cools at this rate, K/s, when it passes 704 °C.
    fn with_rate(rate: f64, excess_k: f64, sides_s: f64) -> Self {
        let level = (RATE_C - ROOM_C) / excess_k;
        // In terms of u = √(τ/t) at 704 °C; the rate falls from infinity as u grows from the
        // value at which the end alone would have cooled so far.
        let time = |u: f64| sides_s * log(erf(u) / level);
        let rate_at = |u: f64| (RATE_C - ROOM_C) * (end_rate(u) / time(u) + 1.0 / sides_s);
        let [mut low, mut high] = [0.0, 6.0];
        for _ in 0..60 {
            let u = 0.5 * (low + high);
            if erf(u) <= level || rate_at(u) > rate {
                low = u;
            } else {
                high = u;
            }
        }
        Self {
            excess_k,
            tau_s: high * high * time(high),
            sides_s,
        }
    }

    /// Excess, K, and cooling rate, K/s.
    fn at(&self, time_s: f64) -> (f64, f64) {
        let u = (self.tau_s / time_s).sqrt();
        let excess = self.excess_k * erf(u) * exp(-time_s / self.sides_s);
        (excess, excess * (end_rate(u) / time_s + 1.0 / self.sides_s))
    }

    /// Time at which the excess has fallen so far, s, looked for from `after_s` on.
    fn time_to(&self, excess_k: f64, after_s: f64) -> f64 {
        let [mut low, mut high] = [log(after_s), log(after_s + 20.0 * self.sides_s)];
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if self.at(exp(middle)).0 > excess_k {
                low = middle;
            } else {
                high = middle;
            }
        }
        exp(high)
    }
}

/// Relative rate of erf(√(τ/t)) times t, at u = √(τ/t).
fn end_rate(u: f64) -> f64 {
    u * exp(-u * u) / (std::f64::consts::PI.sqrt() * erf(u))
}

fn check(
    field: &'static str,
    value: f64,
    [least, most]: [f64; 2],
    unit: &'static str,
) -> Result<(), HeatError> {
    if (least..=most).contains(&value) {
        Ok(())
    } else {
        Err(HeatError::Number {
            field,
            value,
            least,
            most,
            unit,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_curve_passes_704_at_the_rate_of_the_table() {
        for distance_mm in [1.6, 3.2, 12.7, 25.4, 50.8] {
            for start_c in [800.0, 845.0, 925.0] {
                let curve = end_quench_curve(distance_mm, start_c).unwrap();
                let rate = jominy_rate_at_704c(distance_mm).unwrap();
                approx::assert_relative_eq!(
                    curve.rate_at_c(704.0).unwrap(),
                    rate,
                    max_relative = 0.01
                );
                let last = curve.temperature_c.last().copied().unwrap();
                approx::assert_abs_diff_eq!(last, END_C, epsilon = 0.1);
                assert!(
                    curve
                        .temperature_c
                        .windows(2)
                        .all(|pair| pair[1] <= pair[0])
                );
                assert!(curve.time_s.windows(2).all(|pair| pair[1] > pair[0]));
            }
        }
    }

    #[test]
    fn beyond_the_table_there_is_no_rate() {
        assert!(jominy_rate_at_704c(60.0).is_err());
        assert!(jominy_rate_at_704c(f64::NAN).is_err());
        assert!(end_quench_curve(10.0, 700.0).is_err());
    }
}
