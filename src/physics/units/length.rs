//! Lengths in the unit of the user's choice.

use super::number::{format_fixed, with_unit};
use super::{Quantity, QuantityError, number_with_unit, shortened};
use recalesce_texts::units as texts;
use serde::{Deserialize, Serialize};

/// Millimetres in an inch: exact by definition.
const MM_PER_INCH: f64 = 25.4;

/// Unit in which lengths are read and shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches.
    Inch,
}

impl LengthUnit {
    /// Symbol of the unit.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }

    /// A length in mm, in this unit.
    #[must_use]
    pub const fn of_mm(self, length_mm: f64) -> f64 {
        match self {
            Self::Millimetre => length_mm,
            Self::Inch => length_mm / MM_PER_INCH,
        }
    }

    /// A length in this unit, in mm.
    #[must_use]
    pub const fn to_mm(self, length: f64) -> f64 {
        match self {
            Self::Millimetre => length,
            Self::Inch => length * MM_PER_INCH,
        }
    }
}

/// Reads a length such as `3`, `0,5 mm`, `1/8 in` or `1 1/2"`; returns mm.
/// A number without a unit is in `unit`.
///
/// # Errors
/// What is wrong with the text and what may be written.
pub fn parse_length_mm(text: &str, unit: LengthUnit) -> Result<f64, QuantityError> {
    let (value, written_unit) = number_with_unit(Quantity::Length, text)?;
    let mm = match written_unit.as_str() {
        "" => unit.to_mm(value),
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => value,
        "cm" => value * 10.0,
        "in" | "in." | "inch" | "inches" | "\"" | "″" | "”" => LengthUnit::Inch.to_mm(value),
        _ => {
            return Err(QuantityError::Unit {
                quantity: Quantity::Length,
                unit: shortened(&written_unit),
            });
        }
    };
    if mm < 0.0 {
        return Err(QuantityError::TooLow {
            quantity: Quantity::Length,
            text: shortened(text.trim()),
            least: texts::ZERO,
        });
    }
    Ok(mm)
}

/// Decimals with the digits a shop can measure: hundredths of a millimetre below 1 mm, tenths
/// below 100 mm, whole above; thousandths of an inch below 10 in, hundredths above.
fn usual_decimals(value: f64, unit: LengthUnit) -> usize {
    match unit {
        LengthUnit::Millimetre if value.abs() < 0.995 => 2,
        LengthUnit::Millimetre if value.abs() < 99.95 => 1,
        LengthUnit::Millimetre => 0,
        LengthUnit::Inch if value.abs() < 9.9995 => 3,
        LengthUnit::Inch => 2,
    }
}

/// A length with the digits a shop can measure.
#[must_use]
pub fn format_length(length_mm: f64, unit: LengthUnit) -> String {
    let value = unit.of_mm(length_mm);
    let decimals = usual_decimals(value, unit);
    with_unit(&format_fixed(value, decimals), unit.symbol())
}

/// A length that somebody gave, so that it reads as it was meant: 1/4 in as 6.35 mm.
#[must_use]
pub fn format_given_length(length_mm: f64, unit: LengthUnit) -> String {
    let value = unit.of_mm(length_mm);
    let decimals = given_decimals(value, usual_decimals(value, unit));
    with_unit(&format_fixed(value, decimals), unit.symbol())
}

/// Decimals that hold a given length, from so many on: one more than thousandths of an inch or two more than
/// tenths of a millimetre. Where none of them does, as of a length given in another unit, at least hundredths.
#[must_use]
pub fn given_decimals(value: f64, usual: usize) -> usize {
    let is_held = |decimals: &usize| {
        let scaled = value * 10_f64.powi(*decimals as i32);
        (scaled - scaled.round()).abs() < 1e-6
    };
    (usual..=usual.max(2) + 1)
        .find(is_held)
        .unwrap_or(usual.max(2))
}

#[cfg(test)]
mod tests {
    use super::LengthUnit::{Inch, Millimetre};
    use super::*;

    #[test]
    fn lengths_as_people_write_them() {
        let cases = [
            ("3", Millimetre, 3.0),
            ("0,5", Millimetre, 0.5),
            ("0,5 mm", Inch, 0.5),
            ("1/8 in", Millimetre, 3.175),
            ("1 1/2 in", Millimetre, 38.1),
            ("1½\"", Millimetre, 38.1),
            ("1/4", Inch, 6.35),
            ("2.5cm", Millimetre, 25.0),
            ("0.125 in.", Millimetre, 3.175),
        ];
        for (text, unit, length_mm) in cases {
            let read = parse_length_mm(text, unit);
            assert!(
                read.as_ref().is_ok_and(|l| (l - length_mm).abs() < 1e-9),
                "{text}: {read:?}"
            );
        }
    }

    #[test]
    fn negative_lengths_and_foreign_units_are_refused() {
        assert!(matches!(
            parse_length_mm("-3 mm", Millimetre),
            Err(QuantityError::TooLow { .. })
        ));
        assert!(matches!(
            parse_length_mm("3 min", Millimetre),
            Err(QuantityError::Unit { .. })
        ));
        assert!(matches!(
            parse_length_mm("1,500 mm", Millimetre),
            Err(QuantityError::Ambiguous { .. })
        ));
    }

    #[test]
    fn a_given_length_reads_as_it_was_meant() {
        for (text, unit, words) in [
            ("1/4 in", Millimetre, "6.35\u{a0}mm"),
            ("1/8 in", Millimetre, "3.175\u{a0}mm"),
            ("3/16 in", Millimetre, "4.76\u{a0}mm"),
            ("3", Millimetre, "3.0\u{a0}mm"),
            ("4 in", Millimetre, "101.6\u{a0}mm"),
            ("1/16", Inch, "0.0625\u{a0}in"),
            ("3 mm", Inch, "0.118\u{a0}in"),
            ("1/4", Inch, "0.250\u{a0}in"),
        ] {
            let given_mm = parse_length_mm(text, unit).unwrap();
            assert_eq!(format_given_length(given_mm, unit), words, "{text}");
        }
    }

    #[test]
    fn shown_with_the_digits_of_the_shop() {
        assert_eq!(format_length(0.5, Millimetre), "0.50\u{a0}mm");
        assert_eq!(format_length(3.175, Millimetre), "3.2\u{a0}mm");
        assert_eq!(format_length(120.0, Millimetre), "120\u{a0}mm");
        assert_eq!(format_length(3.175, Inch), "0.125\u{a0}in");
        assert_eq!(format_length(300.0, Inch), "11.81\u{a0}in");
    }
}
