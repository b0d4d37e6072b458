//! A caution in words, with temperatures that follow the scale shown.

use crate::units::{TemperatureScale, format_fixed, format_temperature};
use serde::{Serialize, Serializer};
use std::fmt;

/// What stands in the words of a caution for a number with its unit.
const TEMPERATURE: &str = "{temperature}";
const DIFFERENCE: &str = "{difference}";

/// A sentence of a caution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Said {
    /// Plain words.
    Words(&'static str),
    /// Words with `{temperature}` in them, and the temperature, °C.
    WithTemperature(&'static str, f64),
    /// Words with `{difference}` in them, and the difference of temperatures, K.
    WithDifference(&'static str, f64),
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
                Said::WithTemperature(words, c) => {
                    words.replacen(TEMPERATURE, &format_temperature(c, scale), 1)
                }
                Said::WithDifference(words, k) => {
                    let degrees = format_fixed(scale.of_kelvin_difference(k), 0);
                    let difference = format!("{degrees}\u{a0}{}", scale.symbol());
                    words.replacen(DIFFERENCE, &difference, 1)
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
            Said::WithTemperature("Above {temperature}, ", 100.0),
            Said::WithDifference("by {difference}.", 28.0),
        ]);
        assert_eq!(
            line.words(TemperatureScale::Fahrenheit),
            "Above 212\u{a0}°F, by 50\u{a0}°F."
        );
        assert_eq!(line.to_string(), "Above 100\u{a0}°C, by 28\u{a0}°C.");
    }
}
