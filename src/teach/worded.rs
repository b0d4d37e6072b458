//! Temperatures in the texts of experiments, on the scale that is shown.
//!
//! `{790 °C}` is a temperature and `{15 K}` a difference; everything else stands as it is written.

use crate::numeric::decimal::decimal;
use crate::units::{TemperatureScale, format_temperature, format_temperature_difference};
use recalesce_texts::teach::experiment::no_temperature;

/// What stands between braces.
enum Braced {
    Temperature(f64),
    Difference(f64),
}

impl Braced {
    fn of(text: &str) -> Option<Self> {
        let (number, unit) = text.rsplit_once(' ')?;
        let value = decimal(number).filter(|value| value.abs() < 1e5)?;
        match unit {
            "°C" => Some(Self::Temperature(value)),
            "K" => Some(Self::Difference(value)),
            _ => None,
        }
    }
}

/// A text with its temperatures on a scale.
///
/// # Errors
/// The first brace without its other, or with something else between them.
pub(super) fn worded(text: &str, scale: TemperatureScale) -> Result<String, String> {
    let mut told = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        let braced = after.split_once('}');
        let found = braced.and_then(|(inside, _)| Braced::of(inside));
        let (Some((_, next)), Some(found)) = (braced, found) else {
            let shown: String = after.chars().take(20).collect();
            return Err(no_temperature(&format!("{{{shown}")));
        };
        told.push_str(before);
        told.push_str(&match found {
            Braced::Temperature(celsius) => format_temperature(celsius, scale),
            Braced::Difference(kelvin) => format_temperature_difference(kelvin, scale),
        });
        rest = next;
    }
    told.push_str(rest);
    Ok(told)
}

/// A text of an experiment with its temperatures on a scale; a checked one has no fault.
#[must_use]
pub fn text_on_scale(text: &str, scale: TemperatureScale) -> String {
    worded(text, scale).unwrap_or_else(|_| text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_follow_the_scale() {
        let text = "From {790 °C} up by {10 K}.";
        assert_eq!(
            text_on_scale(text, TemperatureScale::Celsius),
            "From 790\u{a0}°C up by 10\u{a0}°C."
        );
        assert_eq!(
            text_on_scale(text, TemperatureScale::Fahrenheit),
            "From 1454\u{a0}°F up by 18\u{a0}°F."
        );
    }

    #[test]
    fn other_braces_are_told() {
        for text in ["{", "{790}", "{hot °C}", "{790 °F}", "a {790 °C b"] {
            assert!(worded(text, TemperatureScale::Celsius).is_err(), "{text}");
        }
        assert!(worded("no brace } here", TemperatureScale::Celsius).is_ok());
    }
}
