//! Decimal numbers in texts.

/// The number that a text is: digits with at most one point, perhaps a sign in front and an
/// exponent behind. As exact as `str::parse`, and with the reader that the numbers of saved files
/// are read with: the page then holds one reader of decimals and its tables, each 10 kB, not two.
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let (minus, unsigned) = match text.strip_prefix('-') {
        Some(unsigned) => ("-", unsigned),
        None => ("", text.strip_prefix('+').unwrap_or(text)),
    };
    let (digits, exponent) = match unsigned.find(['e', 'E']) {
        Some(at) => unsigned.split_at(at),
        None => (unsigned, ""),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let are_digits = |digits: &str| digits.bytes().all(|b| b.is_ascii_digit());
    if whole.len() + part.len() == 0 || !are_digits(whole) || !are_digits(part) {
        return None;
    }
    // JSON wants no zeros in front and a digit on either side of the point.
    let whole = match whole.trim_start_matches('0') {
        "" => "0",
        whole => whole,
    };
    serde_json::from_str(&format!("{minus}{whole}.{part}0{exponent}")).ok()
}

#[cfg(test)]
mod tests {
    use super::decimal;

    #[test]
    fn numbers_are_read_as_the_library_reads_them() {
        for text in [
            "0",
            "845",
            "007",
            "0.125",
            ".5",
            "5.",
            "+1.5",
            "-80",
            "-0.0",
            "1e3",
            "2.5E-3",
            "1.e+2",
            "0.1500000000000000222",
            "123456789012345678901234567890",
            "4.9e-324",
            "1e-400",
            "9007199254740993",
            "0.30000000000000004",
        ] {
            assert_eq!(
                decimal(text).map(f64::to_bits),
                text.parse().ok().map(f64::to_bits),
                "{text}"
            );
        }
    }

    #[test]
    fn other_texts_are_no_numbers() {
        for text in [
            "", ".", "-", "e5", "1e", "1 2", "1.2.3", "--1", "+-1", "inf", "nan", "0x10", "1,5",
            "1e400", "½", "1e5.5",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }
}
