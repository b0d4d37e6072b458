//! A caution in words, with temperatures that follow the scale shown.

use crate::units::{TemperatureScale, format_fixed, format_temperature};
use serde::{Serialize, Serializer};
use std::fmt;

/// A part of a caution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Said {
    /// Plain words.
    Words(&'static str),
    /// A temperature, °C.
    Temperature(f64),
    /// A difference of temperatures, K.
    Difference(f64),
}

/// A caution as one line. As plain text, and in the terminal's answers, its temperatures are in °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hazard(pub &'static [Said]);

impl Hazard {
    /// The line with its temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        self.0
            .iter()
            .map(|part| match *part {
                Said::Words(words) => words.to_owned(),
                Said::Temperature(c) => format_temperature(c, scale),
                Said::Difference(k) => {
                    let degrees = format_fixed(scale.of_kelvin_difference(k), 0);
                    format!("{degrees}\u{a0}{}", scale.symbol())
                }
            })
            .collect()
    }
}

impl fmt::Display for Hazard {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

impl Serialize for Hazard {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_has_no_offset() {
        let line = Hazard(&[
            Said::Words("Above "),
            Said::Temperature(100.0),
            Said::Words(", by "),
            Said::Difference(28.0),
            Said::Words("."),
        ]);
        assert_eq!(
            line.words(TemperatureScale::Fahrenheit),
            "Above 212\u{a0}°F, by 50\u{a0}°F."
        );
        assert_eq!(line.to_string(), "Above 100\u{a0}°C, by 28\u{a0}°C.");
    }
}
