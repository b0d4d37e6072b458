//! The quantities that the page lets a user type, each with its range and step.

use super::Quantity;
use recalesce::numeric::decimal::decimal;
use recalesce::units::{
    DurationUnit, LengthUnit, TemperatureScale, format_duration_s, format_fixed,
    format_given_length, format_temperature, format_temperature_band,
    format_temperature_difference, parse_duration_s, parse_length_mm, parse_temperature_c,
};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// A temperature in °C, in steps of one degree of the scale shown.
pub(crate) fn temperature(scale: TemperatureScale, range: (f64, f64)) -> Quantity {
    Quantity {
        show: Arc::new(move |c| format_temperature(c, scale)),
        read: Arc::new(move |text| parse_temperature_c(text, scale).map_err(|e| e.to_string())),
        range,
        step: scale.to_kelvin_difference(1.0),
    }
}

/// A band in K.
pub(crate) fn band(scale: TemperatureScale, range: (f64, f64)) -> Quantity {
    Quantity {
        show: Arc::new(move |k| format_temperature_band(k, scale)),
        read: Arc::new(move |text| {
            number(text, texts::general::WRITE_A_BAND).map(|d| scale.to_kelvin_difference(d.abs()))
        }),
        range,
        step: scale.to_kelvin_difference(1.0),
    }
}

/// A difference of temperatures in K, either way.
pub(crate) fn difference(scale: TemperatureScale, range: (f64, f64)) -> Quantity {
    Quantity {
        show: Arc::new(move |k| format_temperature_difference(k, scale)),
        read: Arc::new(move |text| {
            number(text, texts::general::WRITE_A_DIFFERENCE).map(|d| scale.to_kelvin_difference(d))
        }),
        range,
        step: scale.to_kelvin_difference(1.0),
    }
}

/// A length in mm.
pub(crate) fn length(unit: LengthUnit, range: (f64, f64), step_mm: f64) -> Quantity {
    Quantity {
        show: Arc::new(move |mm| format_given_length(mm, unit)),
        read: Arc::new(move |text| parse_length_mm(text, unit).map_err(|e| e.to_string())),
        range,
        step: step_mm,
    }
}

/// A time in minutes.
pub(crate) fn minutes(range: (f64, f64), step: f64) -> Quantity {
    Quantity {
        show: Arc::new(|min| format_duration_s(60.0 * min)),
        read: Arc::new(|text| {
            parse_duration_s(text, DurationUnit::Minute)
                .map(|s| s / 60.0)
                .map_err(|e| e.to_string())
        }),
        range,
        step,
    }
}

/// A time in seconds.
pub(crate) fn seconds(range: (f64, f64), step: f64) -> Quantity {
    Quantity {
        show: Arc::new(format_duration_s),
        read: Arc::new(|text| {
            parse_duration_s(text, DurationUnit::Second).map_err(|e| e.to_string())
        }),
        range,
        step,
    }
}

/// A plain number with its unit behind it.
pub(crate) fn plain(
    unit: &'static str,
    decimals: usize,
    range: (f64, f64),
    step: f64,
    advice: &'static str,
) -> Quantity {
    Quantity {
        show: Arc::new(move |value| format!("{}{unit}", format_fixed(value, decimals))),
        read: Arc::new(move |text| number(text.trim_end_matches(unit.trim()), advice)),
        range,
        step,
    }
}

/// A number with point or decimal comma, whatever unit follows it.
fn number(text: &str, advice: &str) -> Result<f64, String> {
    let digits: String = text
        .trim()
        .trim_start_matches(['±', '×'])
        .replace('\u{2212}', "-")
        .replace(',', ".")
        .chars()
        .take_while(|c| c.is_ascii_digit() || matches!(c, '.' | '-'))
        .collect();
    decimal(&digits).ok_or_else(|| texts::general::not_a_number(text.trim(), advice))
}
