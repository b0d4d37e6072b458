//! Quantities with a decimal comma, for the fields of those who write numbers so. Every other text is made with
//! a point, and files, links and tables keep it.

use super::{QuantityError, number};

/// The text of one quantity, made with a point, as a field shows it: `0,50 mm`.
#[must_use]
pub fn with_decimal_comma(quantity: &str) -> String {
    quantity.replace('.', ",")
}

/// A number whose point may part thousands, as who writes a decimal comma does: one before exactly three digits.
fn grouped(text: &str) -> Option<&str> {
    let mut numbers = text.split(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',')));
    numbers.find(|number| {
        let is_all_digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
        number.split_once('.').is_some_and(|(before, after)| {
            let may_be_thousands = (1..=3).contains(&before.len()) && !before.starts_with('0');
            may_be_thousands && after.len() == 3 && is_all_digits(before) && is_all_digits(after)
        })
    })
}

/// Reads a quantity of somebody who writes a decimal comma: one before three digits, which parts thousands in
/// other countries, parts decimals here. A point there may be either, and is asked about.
///
/// # Errors
/// What the reader says of the text as it was typed, and a point that may part thousands.
pub fn read_with_decimal_comma<T, E: From<QuantityError>>(
    text: &str,
    reader: impl Fn(&str) -> Result<T, E>,
) -> Result<T, E> {
    asked_about(text)?;
    reader(text).or_else(|wrong| reader(&text.replace(',', ".")).map_err(|_| wrong))
}

/// A point of somebody who writes a decimal comma that may part thousands.
fn asked_about(text: &str) -> Result<(), QuantityError> {
    let Some(number) = grouped(text) else {
        return Ok(());
    };
    Err(QuantityError::Grouped {
        text: number.to_owned(),
        joined: number.replace('.', ""),
        decimal: with_decimal_comma(number),
    })
}

/// Reads a number without a unit, of somebody who writes a decimal comma or not.
///
/// # Errors
/// A mark that may part thousands or decimals; nothing where it is no number, for which the caller has the
/// better words.
pub fn parse_number(text: &str, has_decimal_comma: bool) -> Result<f64, Option<QuantityError>> {
    let text = text.trim();
    let read = |text: &str| number::parse(text).map_err(|fault| fault.into_error(text));
    if has_decimal_comma {
        asked_about(text)?;
        read(&text.replace(',', "."))
    } else {
        read(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{LengthUnit, format_length, parse_length_mm};

    fn read(text: &str, unit: LengthUnit) -> Result<f64, QuantityError> {
        read_with_decimal_comma(text, |text| parse_length_mm(text, unit))
    }

    #[test]
    fn a_field_reads_what_it_shows() {
        for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
            // 1.125 in is ambiguous where a comma may part thousands.
            for length_mm in [0.25, 3.0, 28.575, 254.0] {
                let shown = with_decimal_comma(&format_length(length_mm, unit));
                let read = read(&shown, unit);
                assert!(
                    read.as_ref().is_ok_and(|mm| (mm - length_mm).abs() < 0.06),
                    "{shown}: {read:?}"
                );
            }
        }
    }

    #[test]
    fn both_marks_are_read() {
        let read = |text| read(text, LengthUnit::Millimetre);
        assert_eq!(read("1.12"), Ok(1.12));
        assert_eq!(read("0.125"), Ok(0.125));
        assert_eq!(read("1.1250"), Ok(1.125));
        assert_eq!(read("1,125"), Ok(1.125));
        assert_eq!(read("1,12"), Ok(1.12));
        let said = read("1,2,3").expect_err("no number").to_string();
        assert!(said.starts_with("“1,2,3”"), "{said}");
    }

    /// A number by itself is asked about in the same cases as one with a unit.
    #[test]
    fn a_number_by_itself_is_asked_about_too() {
        for has_comma in [false, true] {
            assert_eq!(parse_number(" 61,5 ", has_comma), Ok(61.5));
            assert_eq!(parse_number("61.5", has_comma), Ok(61.5));
            assert_eq!(parse_number("\u{2212}8", has_comma), Ok(-8.0));
            assert_eq!(parse_number("hard", has_comma), Err(None));
            assert_eq!(parse_number("", has_comma), Err(None));
        }
        assert_eq!(parse_number("1.500", false), Ok(1.5));
        assert_eq!(parse_number("1,500", true), Ok(1.5));
        let asked = |text, has_comma| {
            parse_number(text, has_comma)
                .unwrap_err()
                .unwrap()
                .to_string()
        };
        assert!(asked("1,500", false).contains("without the comma"));
        assert!(asked("1.500", true).contains("without the point"));
    }

    /// Somebody who writes a decimal comma may mean one and a half thousand by it.
    #[test]
    fn a_point_that_may_part_thousands_is_asked_about() {
        let said = |text| {
            let read = read(text, LengthUnit::Millimetre);
            read.expect_err("either").to_string()
        };
        assert_eq!(
            said("1.500 mm"),
            "“1.500” may be 1500 or 1,500. Write it without the point."
        );
        assert!(said("±12.345").starts_with("“12.345” may be 12345 or 12,345."));
        // With a comma behind it, it is no quantity of one mark.
        assert!(said("1.500,5 mm").contains("is not a length"));
        // Who writes a point is not asked.
        assert_eq!(parse_length_mm("1.500", LengthUnit::Millimetre), Ok(1.5));
    }
}
