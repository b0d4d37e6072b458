//! A refused number and what is allowed, on the scale of the user's choice.

use super::number::{MINUS, format_fixed, with_unit};
use super::{TemperatureScale, format_temperature};

/// Most decimals of a degree.
const MOST_DECIMALS: usize = 6;

/// A number that is not a number, or not within what a field allows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NumberOutside {
    /// What the number is.
    pub field: &'static str,
    /// The number given.
    pub value: f64,
    /// The smallest allowed.
    pub least: f64,
    /// The largest allowed.
    pub most: f64,
    /// Unit of all three.
    pub unit: &'static str,
}

impl NumberOutside {
    /// Checks that a number lies within what its field allows.
    ///
    /// # Errors
    /// The number itself when it does not, or is not a number.
    pub fn check(
        field: &'static str,
        value: f64,
        (least, most): (f64, f64),
        unit: &'static str,
    ) -> Result<(), Self> {
        if (least..=most).contains(&value) {
            return Ok(());
        }
        Err(Self {
            field,
            value,
            least,
            most,
            unit,
        })
    }

    /// The number, the least and the most that it may be, and their unit, on a scale.
    #[must_use]
    pub fn on_scale(&self, scale: TemperatureScale) -> ([String; 3], &'static str) {
        outside_on_scale([self.value, self.least, self.most], self.unit, scale)
    }
}

/// A number, the least and the most that it may be, and their unit. Temperatures in °C, differences in K
/// and rates in K/s are told on the scale; all else, and what is in °C or K there too, stays as it was
/// given.
#[must_use]
pub fn outside_on_scale(
    numbers: [f64; 3],
    unit: &'static str,
    scale: TemperatureScale,
) -> ([String; 3], &'static str) {
    type OfNumber = fn(TemperatureScale, f64) -> f64;
    let of_difference: OfNumber = TemperatureScale::of_kelvin_difference;
    let (of_number, unit): (OfNumber, _) = match (scale, unit) {
        (TemperatureScale::Fahrenheit, "°C") => (TemperatureScale::of_celsius, scale.symbol()),
        (TemperatureScale::Fahrenheit, "K") => (of_difference, scale.symbol()),
        (TemperatureScale::Fahrenheit, "K/s") => (of_difference, scale.rate_unit()),
        _ => return (numbers.map(as_given), unit),
    };
    (told_apart(numbers.map(|x| of_number(scale, x))), unit)
}

/// Degrees, the least and the most that they may be, with as few decimals as tell them from the limit that
/// they are outside of.
#[must_use]
pub fn told_apart([value, least, most]: [f64; 3]) -> [String; 3] {
    let limit = if value < least { least } else { most };
    let decimals = decimals(value, limit);
    [value, least, most].map(|x| degrees(x, decimals))
}

/// A refused temperature, °C, with its unit: as it was given, or in whole degrees of another scale.
#[must_use]
pub fn format_refused(temperature_c: f64, scale: TemperatureScale) -> String {
    match scale {
        TemperatureScale::Celsius => with_unit(&as_given(temperature_c), scale.symbol()),
        other => format_temperature(temperature_c, other),
    }
}

/// A difference of temperatures in K, or in degrees of another scale.
#[must_use]
pub fn format_kelvin(difference_k: f64, decimals: usize, scale: TemperatureScale) -> String {
    let degrees = format_fixed(scale.of_kelvin_difference(difference_k), decimals);
    with_unit(
        &degrees,
        match scale {
            TemperatureScale::Celsius => "K",
            other => other.symbol(),
        },
    )
}

/// A number with all its decimals.
fn as_given(value: f64) -> String {
    with_minus(&value.to_string())
}

/// The minus as printed.
fn with_minus(digits: &str) -> String {
    digits.replacen('-', MINUS.encode_utf8(&mut [0; 4]), 1)
}

/// Decimals that tell a value from the limit that it is outside of; none where whole degrees do.
fn decimals(value: f64, limit: f64) -> usize {
    let reads_alike = |decimals: &usize| degrees(value, *decimals) == degrees(limit, *decimals);
    // Rounding whole degrees may bring even unlike ones to the wrong side of each other.
    if (value - limit).abs() >= 1.0 {
        return 0;
    }
    (1..MOST_DECIMALS)
        .find(|decimals| !reads_alike(decimals))
        .unwrap_or(MOST_DECIMALS)
}

/// Degrees, without zeros behind the point.
fn degrees(value: f64, decimals: usize) -> String {
    let text = format_fixed(value, decimals);
    match text.split_once('.') {
        Some(_) => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        None => text,
    }
}

#[cfg(test)]
mod tests {
    use super::TemperatureScale::{Celsius, Fahrenheit};
    use super::*;

    #[test]
    fn temperatures_have_an_offset_and_differences_have_none() {
        let told = |unit, scale| {
            let ([value, least, most], unit) = outside_on_scale([300.0, -20.0, 250.0], unit, scale);
            format!("{value}, {least} to {most} {unit}")
        };
        assert_eq!(told("°C", Celsius), "300, \u{2212}20 to 250 °C");
        assert_eq!(told("°C", Fahrenheit), "572, \u{2212}4 to 482 °F");
        assert_eq!(told("K", Celsius), "300, \u{2212}20 to 250 K");
        assert_eq!(told("K", Fahrenheit), "540, \u{2212}36 to 450 °F");
        assert_eq!(told("K/s", Fahrenheit), "540, \u{2212}36 to 450 °F/s");
        assert_eq!(told("W/m²K", Fahrenheit), told("W/m²K", Celsius));
        assert_eq!(format_kelvin(15.0, 0, Celsius), "15\u{a0}K");
        assert_eq!(format_kelvin(15.0, 0, Fahrenheit), "27\u{a0}°F");
        assert_eq!(format_refused(150.5, Celsius), "150.5\u{a0}°C");
        assert_eq!(format_refused(150.5, Fahrenheit), "303\u{a0}°F");
    }

    #[test]
    fn a_value_just_outside_does_not_read_like_the_limit() {
        let told = |value_c: f64| outside_on_scale([value_c, 500.0, 1300.0], "°C", Fahrenheit).0;
        assert_eq!(told(1300.1), ["2372.2", "932", "2372"]);
        assert_eq!(told(499.9), ["931.8", "932", "2372"]);
        assert_eq!(told(1300.001), ["2372.002", "932", "2372"]);
        assert_eq!(told(5000.0), ["9032", "932", "2372"]);
        let ([nought, ..], _) = outside_on_scale([-18.0, 10.0, 60.0], "°C", Fahrenheit);
        assert_eq!(nought, "0");
    }
}
