//! Temperature scales, lengths and durations: what a user may type, and how numbers are shown.
//! No physics. Everything inside the project is in °C, mm, s and min; a scale or unit chosen by
//! the user changes only what is read and shown.

mod comma;
mod duration;
mod length;
mod number;
mod outside;
mod temperature;

pub use comma::{parse_number, read_with_decimal_comma, with_decimal_comma};
pub use duration::{DurationUnit, format_duration_s, parse_duration_s};
pub use length::{LengthUnit, format_given_length, format_length, given_decimals, parse_length_mm};
pub use number::{
    format_cooling_rate, format_factor, format_fixed, format_hrb, format_hrc, format_hv,
    format_percent, format_weight_percent,
};
pub use outside::{NumberOutside, format_kelvin, format_refused, outside_on_scale, told_apart};
pub use temperature::{
    TemperatureScale, format_temperature, format_temperature_band, format_temperature_difference,
    format_temperature_within, parse_cooling_rate_k_per_s, parse_temperature_c,
};

use recalesce_texts::units as texts;
use std::fmt;

/// The kind of quantity a text was read as; decides the words of an error.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// A temperature.
    Temperature,
    /// A length.
    Length,
    /// A span of time.
    Duration,
    /// A cooling rate.
    CoolingRate,
}

impl Quantity {
    const fn noun(self) -> &'static str {
        match self {
            Self::Temperature => texts::TEMPERATURE,
            Self::Length => texts::LENGTH,
            Self::Duration => texts::TIME,
            Self::CoolingRate => texts::COOLING_RATE,
        }
    }

    const fn advice(self) -> &'static str {
        match self {
            Self::Temperature => texts::WRITE_A_TEMPERATURE,
            Self::Length => texts::WRITE_A_LENGTH,
            Self::Duration => texts::WRITE_A_TIME,
            Self::CoolingRate => texts::WRITE_A_RATE,
        }
    }
}

/// Why a typed quantity could not be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum QuantityError {
    /// Nothing was typed.
    Empty(Quantity),
    /// No number of the kind can be read in the text.
    Unreadable {
        /// What was to be read.
        quantity: Quantity,
        /// The text, shortened if long.
        text: String,
    },
    /// The unit is none of this quantity.
    Unit {
        /// What was to be read.
        quantity: Quantity,
        /// The unit as typed, shortened if long.
        unit: String,
    },
    /// A comma that may part thousands or decimals.
    Ambiguous {
        /// The number as typed.
        text: String,
        /// Its value if the comma parts thousands.
        joined: String,
        /// Its value if the comma is a decimal comma.
        decimal: String,
    },
    /// A point that may part thousands or decimals, of somebody who writes a decimal comma.
    Grouped {
        /// The number as typed.
        text: String,
        /// Its value if the point parts thousands.
        joined: String,
        /// Its value if the point is a decimal point.
        decimal: String,
    },
    /// Lengths and times below zero, temperatures below absolute zero.
    TooLow {
        /// What was to be read.
        quantity: Quantity,
        /// The text.
        text: String,
        /// The least value, with unit.
        least: &'static str,
    },
}

impl QuantityError {
    /// What is wrong. One text for all kinds: derived for each by itself, the page would be heavier.
    fn said(&self) -> String {
        match self {
            Self::Empty(quantity) => texts::none_given(quantity.noun(), quantity.advice()),
            Self::Unreadable { quantity, text } => {
                texts::unreadable(text, quantity.noun(), quantity.advice())
            }
            Self::Unit { quantity, unit } => {
                texts::unit_of_another(unit, quantity.noun(), quantity.advice())
            }
            Self::Ambiguous {
                text,
                joined,
                decimal,
            } => texts::doubtful_comma(text, joined, decimal),
            Self::Grouped {
                text,
                joined,
                decimal,
            } => texts::doubtful_point(text, joined, decimal),
            Self::TooLow {
                quantity,
                text,
                least,
            } => texts::too_low(text, least, quantity.advice()),
        }
    }
}

impl fmt::Display for QuantityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said())
    }
}

impl From<QuantityError> for String {
    fn from(error: QuantityError) -> Self {
        error.to_string()
    }
}

/// Longest text that is read at all; longer ones are no quantity.
const LONGEST_TEXT: usize = 60;

fn shortened(text: &str) -> String {
    if text.chars().count() <= LONGEST_TEXT {
        return text.to_owned();
    }
    text.chars().take(LONGEST_TEXT - 1).chain(['…']).collect()
}

/// A text split into numbers, each with the unit that follows it (empty when none does).
fn numbers_with_units(quantity: Quantity, text: &str) -> Result<Vec<(f64, String)>, QuantityError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(QuantityError::Empty(quantity));
    }
    let unreadable = || QuantityError::Unreadable {
        quantity,
        text: shortened(text),
    };
    if text.chars().count() > LONGEST_TEXT {
        return Err(unreadable());
    }
    let mut pairs = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let unit_at = rest
            .find(|c| !number::is_part_of_number(c))
            .unwrap_or(rest.len());
        let (number_text, after) = rest.split_at(unit_at);
        let mut previous = ' ';
        let next_number_at = after
            .find(|c| {
                // The full stop of an abbreviation belongs to its unit, and so does what divides: `0.125 in.`,
                // `72 K/s`.
                let of_unit = matches!(c, '.' | '/') && previous.is_alphabetic();
                previous = c;
                number::is_part_of_number_but_space(c) && !of_unit
            })
            .unwrap_or(after.len());
        let (unit_text, remaining) = after.split_at(next_number_at);
        let value = number::parse(number_text)
            .map_err(|fault| fault.into_error(number_text).unwrap_or_else(unreadable))?;
        pairs.push((value, unit_text.trim().to_ascii_lowercase()));
        rest = remaining;
    }
    Ok(pairs)
}

/// The single number of a text and its unit.
fn number_with_unit(quantity: Quantity, text: &str) -> Result<(f64, String), QuantityError> {
    let mut pairs = numbers_with_units(quantity, text)?;
    match (pairs.pop(), pairs.is_empty()) {
        (Some(pair), true) => Ok(pair),
        _ => Err(QuantityError::Unreadable {
            quantity,
            text: shortened(text.trim()),
        }),
    }
}
