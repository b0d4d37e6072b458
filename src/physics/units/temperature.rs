//! Temperatures on the scale of the user's choice.

use super::number::{format_fixed, with_unit};
use super::{Quantity, QuantityError, number_with_unit, shortened};
use recalesce_texts::units as texts;
use serde::{Deserialize, Serialize};

/// Absolute zero, °C.
const ABSOLUTE_ZERO_C: f64 = -273.15;

/// Scale on which temperatures are read and shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TemperatureScale {
    /// Degrees Celsius.
    #[default]
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

impl TemperatureScale {
    /// Symbol of the unit.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
        }
    }

    /// Symbol of the unit of cooling rates.
    #[must_use]
    pub const fn rate_unit(self) -> &'static str {
        match self {
            Self::Celsius => "K/s",
            Self::Fahrenheit => "°F/s",
        }
    }

    /// A temperature in °C, on this scale.
    #[must_use]
    pub const fn of_celsius(self, temperature_c: f64) -> f64 {
        match self {
            Self::Celsius => temperature_c,
            Self::Fahrenheit => temperature_c * 1.8 + 32.0,
        }
    }

    /// A temperature on this scale, in °C.
    #[must_use]
    pub const fn to_celsius(self, temperature: f64) -> f64 {
        match self {
            Self::Celsius => temperature,
            Self::Fahrenheit => (temperature - 32.0) / 1.8,
        }
    }

    /// A difference of temperatures in K, in degrees of this scale: no offset.
    #[must_use]
    pub const fn of_kelvin_difference(self, difference_k: f64) -> f64 {
        match self {
            Self::Celsius => difference_k,
            Self::Fahrenheit => difference_k * 1.8,
        }
    }

    /// A difference in degrees of this scale, in K.
    #[must_use]
    pub const fn to_kelvin_difference(self, difference: f64) -> f64 {
        match self {
            Self::Celsius => difference,
            Self::Fahrenheit => difference / 1.8,
        }
    }
}

/// Reads a temperature such as `845`, `845 °C`, `1550F` or `−80`; returns °C.
/// A number without a unit is on `scale`.
///
/// # Errors
/// What is wrong with the text and what may be written.
pub fn parse_temperature_c(text: &str, scale: TemperatureScale) -> Result<f64, QuantityError> {
    let (value, unit) = number_with_unit(Quantity::Temperature, text)?;
    let written_on = match unit.replace(char::is_whitespace, "").as_str() {
        "" | "°" | "º" => scale,
        "c" | "°c" | "ºc" | "℃" | "degc" | "celsius" => TemperatureScale::Celsius,
        "f" | "°f" | "ºf" | "℉" | "degf" | "fahrenheit" => TemperatureScale::Fahrenheit,
        _ => {
            return Err(QuantityError::Unit {
                quantity: Quantity::Temperature,
                unit: shortened(&unit),
            });
        }
    };
    let temperature_c = written_on.to_celsius(value);
    if temperature_c < ABSOLUTE_ZERO_C {
        return Err(QuantityError::TooLow {
            quantity: Quantity::Temperature,
            text: shortened(text.trim()),
            least: texts::ABSOLUTE_ZERO,
        });
    }
    Ok(temperature_c)
}

/// Reads a cooling rate such as `72`, `72 °C/s` or `130 °F/s`; returns K/s.
/// A number without a unit is on `scale`.
///
/// # Errors
/// What is wrong with the text and what may be written.
pub fn parse_cooling_rate_k_per_s(
    text: &str,
    scale: TemperatureScale,
) -> Result<f64, QuantityError> {
    let quantity = Quantity::CoolingRate;
    let (value, unit) = number_with_unit(quantity, text)?;
    let written_on = match unit.replace(char::is_whitespace, "").as_str() {
        "" => scale,
        "k/s" | "c/s" | "°c/s" | "ºc/s" | "℃/s" => TemperatureScale::Celsius,
        "f/s" | "°f/s" | "ºf/s" | "℉/s" => TemperatureScale::Fahrenheit,
        _ => {
            return Err(QuantityError::Unit {
                quantity,
                unit: shortened(&unit),
            });
        }
    };
    Ok(written_on.to_kelvin_difference(value))
}

/// A temperature in whole degrees of the scale: `845 °C`, `−80 °C`.
#[must_use]
pub fn format_temperature(temperature_c: f64, scale: TemperatureScale) -> String {
    with_unit(
        &format_fixed(scale.of_celsius(temperature_c), 0),
        scale.symbol(),
    )
}

/// A distance either way from a temperature: `±8 °C`, in whole degrees of the scale.
#[must_use]
pub fn format_temperature_band(band_k: f64, scale: TemperatureScale) -> String {
    let degrees = format_fixed(scale.of_kelvin_difference(band_k.abs()), 0);
    format!("±{}", with_unit(&degrees, scale.symbol()))
}

/// How far a temperature may be off either way, in whole degrees of the scale, rounded up: `±6 °C`.
#[must_use]
pub fn format_temperature_within(band_k: f64, scale: TemperatureScale) -> String {
    let degrees = format_fixed(scale.of_kelvin_difference(band_k.abs()).ceil(), 0);
    format!("±{}", with_unit(&degrees, scale.symbol()))
}

/// A difference of temperatures with its sign, such as “−4 °C”, in whole degrees.
#[must_use]
pub fn format_temperature_difference(difference_k: f64, scale: TemperatureScale) -> String {
    let degrees = format_fixed(scale.of_kelvin_difference(difference_k), 0);
    with_unit(&degrees, scale.symbol())
}

#[cfg(test)]
mod tests {
    use super::TemperatureScale::{Celsius, Fahrenheit};
    use super::*;

    #[test]
    fn cooling_rates_as_data_sheets_have_them() {
        for (text, scale, k_per_s) in [
            ("72", Celsius, 72.0),
            ("72,5 K/s", Fahrenheit, 72.5),
            ("130 °C/s", Fahrenheit, 130.0),
            ("180", Fahrenheit, 100.0),
            ("180\u{a0}°F/s", Celsius, 100.0),
        ] {
            let read = parse_cooling_rate_k_per_s(text, scale);
            assert!(
                read.as_ref().is_ok_and(|r| (r - k_per_s).abs() < 1e-9),
                "{text}: {read:?}"
            );
        }
        assert!(matches!(
            parse_cooling_rate_k_per_s("72 °C", Celsius),
            Err(QuantityError::Unit { .. })
        ));
    }

    #[test]
    fn temperatures_as_people_write_them() {
        let cases = [
            ("845", Celsius, 845.0),
            ("845 °C", Fahrenheit, 845.0),
            ("845\u{a0}°C", Fahrenheit, 845.0),
            ("1550F", Celsius, 843.333_333_333),
            ("1550 °f", Celsius, 843.333_333_333),
            ("1550", Fahrenheit, 843.333_333_333),
            ("−80", Celsius, -80.0),
            ("-112 F", Celsius, -80.0),
            ("180,5 c", Celsius, 180.5),
            ("  32 ° F ", Celsius, 0.0),
        ];
        for (text, scale, temperature_c) in cases {
            let read = parse_temperature_c(text, scale);
            assert!(
                read.as_ref()
                    .is_ok_and(|t| (t - temperature_c).abs() < 1e-6),
                "{text}: {read:?}"
            );
        }
    }

    #[test]
    fn an_error_says_what_may_be_written() {
        let message = |text| {
            parse_temperature_c(text, Celsius)
                .err()
                .map(|e| e.to_string())
        };
        assert_eq!(
            message("hot").as_deref(),
            Some("“hot” is not a temperature. Write a temperature such as 830 °C or 1525 °F.")
        );
        assert_eq!(
            message("830 mm").as_deref(),
            Some(
                "“mm” is not a unit of temperature. \
                 Write a temperature such as 830 °C or 1525 °F."
            )
        );
        assert_eq!(
            message("1,550").as_deref(),
            Some("“1,550” may be 1550 or 1.550. Write it without the comma.")
        );
        assert_eq!(
            message(" ").as_deref(),
            Some("No temperature is given. Write a temperature such as 830 °C or 1525 °F.")
        );
        assert_eq!(
            message("−300").as_deref(),
            Some(
                "“−300” is below absolute zero, −273.15 °C. \
                 Write a temperature such as 830 °C or 1525 °F."
            )
        );
        assert!(message("830 840").is_some());
        assert!(message(&"8".repeat(500)).is_some_and(|m| m.len() < 300));
    }

    #[test]
    fn shown_in_whole_degrees() {
        assert_eq!(format_temperature(845.4, Celsius), "845\u{a0}°C");
        assert_eq!(format_temperature(843.3333, Fahrenheit), "1550\u{a0}°F");
        assert_eq!(format_temperature(-80.0, Celsius), "\u{2212}80\u{a0}°C");
        assert_eq!(format_temperature_band(8.0, Celsius), "±8\u{a0}°C");
        assert_eq!(format_temperature_band(10.0, Fahrenheit), "±18\u{a0}°F");
        assert_eq!(format_temperature_within(5.2, Celsius), "±6\u{a0}°C");
        assert_eq!(format_temperature_within(5.0, Fahrenheit), "±9\u{a0}°F");
        let difference = format_temperature_difference(-10.0, Fahrenheit);
        assert_eq!(difference, "\u{2212}18\u{a0}°F");
    }
}
