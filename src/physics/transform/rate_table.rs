//! The rate of one product against temperature, and its integral.

use crate::numeric::order::{larger, smaller};
use crate::sources::isothermal_fit::{self as fit, StartTime};

/// Cells of each rate table.
const CELLS: usize = 160;

/// `1 / t(1 %)` of one product and its integral over temperature.
#[derive(Debug, Clone)]
pub(super) struct RateTable {
    low_c: f64,
    step_k: f64,
    /// Integral of the rate from `low_c`, K/s, and the rate, 1/s, at equal steps of temperature.
    knots: Vec<[f64; 2]>,
    /// Temperature where the rate vanishes, °C.
    pub(super) limit_c: f64,
    pub(super) activation_k: f64,
    pub(super) ln_front: f64,
}

impl RateTable {
    pub(super) fn new(product: &StartTime, ln_composition: f64, low_c: f64, limit_c: f64) -> Self {
        let mut knots = Vec::with_capacity(CELLS + 1);
        let mut table = Self {
            low_c,
            step_k: ((limit_c - low_c) / CELLS as f64).max(0.0),
            knots: Vec::new(),
            limit_c,
            activation_k: product.activation_cal_mol / fit::GAS_CONSTANT_CAL,
            ln_front: -ln_composition,
        };
        let h = table.step_k;
        let at = |t: f64| {
            let rate = table.rate(t);
            (rate, rate * table.growth(t))
        };
        let mut last = at(low_c);
        let mut sum = 0.0;
        knots.push([0.0, last.0]);
        for knot in 1..=CELLS {
            let t = low_c + h * knot as f64;
            let next = at(t);
            // Trapezium with the end correction: exact for the cubic approach to the limit.
            sum += h / 2.0 * (last.0 + next.0) + h * h / 12.0 * (last.1 - next.1);
            knots.push([sum, next.0]);
            last = next;
        }
        table.knots = knots;
        table
    }

    /// `1 / t(1 %)` at a temperature, 1/s; zero at and above the limit.
    pub(super) fn rate(&self, temperature_c: f64) -> f64 {
        if self.limit_c <= temperature_c {
            return 0.0;
        }
        let Self {
            activation_k,
            ln_front,
            limit_c,
            ..
        } = *self;
        fit::start_rate_of(activation_k, ln_front, &temperature_c, limit_c)
    }

    /// Derivative of the logarithm of the rate with temperature, 1/K; zero where there is no rate.
    fn growth(&self, temperature_c: f64) -> f64 {
        let undercooling = self.limit_c - temperature_c;
        if undercooling <= 0.0 {
            return 0.0;
        }
        let t = kelvin(temperature_c);
        self.activation_k / (t * t) - f64::from(fit::UNDERCOOLING_EXPONENT) / undercooling
    }

    /// Integral of the rate from the low end of the table, K/s.
    fn integral(&self, temperature_c: f64) -> f64 {
        let place = (smaller(temperature_c, self.limit_c) - self.low_c) / self.step_k;
        if place.is_nan() || place <= 0.0 {
            return 0.0;
        }
        let cell = (place as usize).min(CELLS - 1);
        let (Some(&[x0, m0]), Some(&[x1, m1])) = (self.knots.get(cell), self.knots.get(cell + 1))
        else {
            return 0.0;
        };
        let u = place - cell as f64;
        let v = 1.0 - u;
        v * v * ((1.0 + 2.0 * u) * x0 + u * self.step_k * m0)
            + u * u * ((1.0 + 2.0 * v) * x1 - v * self.step_k * m1)
    }

    /// Age gained, in multiples of the 1 % start time, on a straight path of `duration_s` between
    /// two temperatures, of which only the part above `floor_c` counts.
    pub(super) fn age(&self, from_c: f64, to_c: f64, duration_s: f64, floor_c: f64) -> f64 {
        let change = to_c - from_c;
        if change.abs() < 0.02 {
            let middle = 0.5 * (from_c + to_c);
            return if middle > floor_c {
                self.rate(middle) * duration_s
            } else {
                0.0
            };
        }
        let low = larger(smaller(from_c, to_c), floor_c);
        let high = larger(from_c, to_c);
        if high <= low || low >= self.limit_c {
            return 0.0;
        }
        let gained = self.integral(high) - self.integral(low);
        larger(0.0, gained * duration_s / change.abs())
    }

    /// Temperature of the shortest start time above `floor_c`, °C, and that time, s.
    pub(super) fn nose(&self, floor_c: f64) -> (f64, f64) {
        // Zero slope of the rate: n T^2 + b T - b T0 = 0 with b = Q/R, T in K.
        let b = self.activation_k / f64::from(fit::UNDERCOOLING_EXPONENT);
        let root = 0.5 * ((b * b + 4.0 * b * kelvin(self.limit_c)).sqrt() - b);
        let nose_c = (root - 273.15).max(floor_c);
        (nose_c, 1.0 / self.rate(nose_c))
    }
}

/// Celsius to kelvin.
const fn kelvin(temperature_c: f64) -> f64 {
    temperature_c + 273.15
}
