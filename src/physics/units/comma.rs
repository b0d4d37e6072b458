//! Quantities with a decimal comma, for the fields of those who write numbers so. Every other text is made with
//! a point, and files, links and tables keep it.

/// The text of one quantity, made with a point, as a field shows it: `0,50 mm`.
#[must_use]
pub fn with_decimal_comma(quantity: &str) -> String {
    quantity.replace('.', ",")
}

/// Reads a quantity of somebody who writes a decimal comma: one before three digits, which parts thousands in
/// other countries, parts decimals here.
///
/// # Errors
/// What the reader says of the text as it was typed.
pub fn read_with_decimal_comma<T, E>(
    text: &str,
    reader: impl Fn(&str) -> Result<T, E>,
) -> Result<T, E> {
    reader(text).or_else(|wrong| reader(&text.replace(',', ".")).map_err(|_| wrong))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{LengthUnit, QuantityError, format_length, parse_length_mm};

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
        assert_eq!(read("1.125"), Ok(1.125));
        assert_eq!(read("1,125"), Ok(1.125));
        assert_eq!(read("1,12"), Ok(1.12));
        let said = read("1,2,3").expect_err("no number").to_string();
        assert!(said.starts_with("“1,2,3”"), "{said}");
    }
}
