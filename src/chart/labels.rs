//! How the reader wants quantities: temperature scale and length unit.

use super::axis::Shown;
use super::numbers;
use crate::units::given_decimals;

/// Converters and unit names for what charts print. Scenes are always in °C and mm inside.
#[derive(Debug, Clone, Copy)]
pub struct Labels {
    /// From °C to the scale shown; a straight line.
    pub temperature: fn(f64) -> f64,
    /// Its name, such as `°C`.
    pub temperature_unit: &'static str,
    /// From mm to the unit shown.
    pub length: fn(f64) -> f64,
    /// Its name, such as `mm`.
    pub length_unit: &'static str,
    /// Decimals of a length.
    pub length_decimals: usize,
}

fn same(value: f64) -> f64 {
    value
}

impl Labels {
    /// °C and mm.
    pub const METRIC: Self = Self {
        temperature: same,
        temperature_unit: "°C",
        length: same,
        length_unit: "mm",
        length_decimals: 1,
    };

    /// A temperature given in °C, without its unit.
    pub fn degrees(&self, temperature_c: f64) -> String {
        numbers::fixed((self.temperature)(temperature_c), 0)
    }

    /// A temperature given in °C, with its unit.
    pub fn temperature(&self, temperature_c: f64) -> String {
        numbers::with_unit((self.temperature)(temperature_c), 0, self.temperature_unit)
    }

    /// A length given in mm, with its unit.
    pub fn length(&self, length_mm: f64) -> String {
        numbers::with_unit(
            (self.length)(length_mm),
            self.length_decimals,
            self.length_unit,
        )
    }

    /// A cooling rate given in K/s, without its unit.
    pub fn rate(&self, k_per_s: f64) -> f64 {
        (self.temperature)(k_per_s) - (self.temperature)(0.0)
    }

    /// Unit of cooling rates.
    pub fn rate_unit(&self) -> String {
        match self.temperature_unit {
            "°C" => "K/s".to_owned(),
            other => format!("{other}/s"),
        }
    }

    /// A length that somebody gave, in mm, with its unit: as it was meant.
    pub fn given_length(&self, length_mm: f64) -> String {
        let value = (self.length)(length_mm);
        let decimals = given_decimals(value, self.length_decimals);
        numbers::with_unit(value, decimals, self.length_unit)
    }

    /// How a temperature axis is shown.
    pub fn shown(&self) -> Shown {
        Shown::by(self.temperature)
    }

    /// How a length axis is shown.
    pub fn shown_length(&self) -> Shown {
        Shown::by(self.length)
    }
}
