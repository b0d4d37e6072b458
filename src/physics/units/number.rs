//! Numbers as people write them, and numbers as the page shows them.

use super::{QuantityError, TemperatureScale};
use crate::numeric::decimal;

/// Minus sign as printed.
pub(super) const MINUS: char = '\u{2212}';
/// No-break space, between a number and its unit.
pub(super) const NO_BREAK: char = '\u{a0}';

/// Why a text is no number.
pub(super) enum Fault {
    Unreadable,
    /// One comma before exactly three digits: thousands in some countries, decimals in others.
    Ambiguous,
}

impl Fault {
    /// The error for an ambiguous comma; none where the caller has better words.
    pub(super) fn into_error(self, text: &str) -> Option<QuantityError> {
        match self {
            Self::Unreadable => None,
            Self::Ambiguous => Some(QuantityError::Ambiguous {
                text: text.trim().to_owned(),
                joined: text.trim().replace(',', ""),
                decimal: text.trim().replace(',', "."),
            }),
        }
    }
}

pub(super) fn is_part_of_number(c: char) -> bool {
    c.is_whitespace() || is_part_of_number_but_space(c)
}

pub(super) fn is_part_of_number_but_space(c: char) -> bool {
    c.is_ascii_digit() || ".,/⁄+-\u{2212}\u{2013}".contains(c) || vulgar_fraction(c).is_some()
}

const fn vulgar_fraction(c: char) -> Option<f64> {
    Some(match c {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        _ => return None,
    })
}

/// Reads `845`, `0,5`, `1/8`, `1 1/2`, `1-1/2`, `2½`, `−80`.
pub(super) fn parse(text: &str) -> Result<f64, Fault> {
    let text = text.trim();
    let (negative, text) = match text.strip_prefix(['-', MINUS, '\u{2013}']) {
        Some(after) => (true, after.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let value = unsigned(text)?;
    Ok(if negative { -value } else { value })
}

fn unsigned(text: &str) -> Result<f64, Fault> {
    if let Some(c) = text.chars().last()
        && let Some(part) = vulgar_fraction(c)
    {
        let whole = text.strip_suffix(c).unwrap_or_default().trim_end();
        let whole = if whole.is_empty() {
            0.0
        } else {
            natural(whole)?
        };
        return Ok(whole + part);
    }
    let Some((before, denominator)) = text.split_once(['/', '⁄']) else {
        return decimal(text);
    };
    let denominator = natural(denominator.trim())?;
    let before = before.trim();
    let (whole, numerator) = match before.rsplit_once(|c: char| c.is_whitespace() || c == '-') {
        Some((whole, numerator)) => (natural(whole.trim())?, natural(numerator)?),
        None => (0.0, natural(before)?),
    };
    if denominator == 0.0 {
        return Err(Fault::Unreadable);
    }
    Ok(whole + numerator / denominator)
}

fn natural(text: &str) -> Result<f64, Fault> {
    if text.is_empty() || !text.bytes().all(|b| b.is_ascii_digit()) {
        return Err(Fault::Unreadable);
    }
    decimal::decimal(text).ok_or(Fault::Unreadable)
}

fn decimal(text: &str) -> Result<f64, Fault> {
    if let Some((before, after)) = text.split_once(',')
        && after.len() == 3
        && (1..=3).contains(&before.len())
        && !before.starts_with('0')
        && before
            .bytes()
            .chain(after.bytes())
            .all(|b| b.is_ascii_digit())
    {
        return Err(Fault::Ambiguous);
    }
    let text = text.replace(',', ".");
    let plain = text.bytes().all(|b| b.is_ascii_digit() || b == b'.')
        && text.bytes().any(|b| b.is_ascii_digit());
    if !plain {
        return Err(Fault::Unreadable);
    }
    decimal::decimal(&text).ok_or(Fault::Unreadable)
}

/// A number with a fixed count of decimals, a real minus sign, and no minus before zero.
/// What is not a number is a dash.
#[must_use]
pub fn format_fixed(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let digits = format!("{:.decimals$}", value.abs());
    let is_zero = digits.bytes().all(|b| b == b'0' || b == b'.');
    if value < 0.0 && !is_zero {
        format!("{MINUS}{digits}")
    } else {
        digits
    }
}

pub(super) fn with_unit(number: &str, unit: &str) -> String {
    format!("{number}{NO_BREAK}{unit}")
}

/// Decimals that leave `digits` significant digits of a value once it is rounded, so that 9.96
/// and 10.0 are shown alike; at most `digits` of them.
fn decimals_for(value: f64, digits: usize) -> usize {
    let rounded = format!("{:.*e}", digits.saturating_sub(1), value.abs());
    let exponent = rounded
        .rsplit_once('e')
        .and_then(|(_, exponent)| exponent.parse::<i64>().ok())
        .unwrap_or(0);
    let wanted = i64::try_from(digits).unwrap_or(0) - 1 - exponent;
    usize::try_from(wanted).unwrap_or(0).min(digits)
}

/// A fraction as per cent: one decimal below 10 %, whole above.
#[must_use]
pub fn format_percent(fraction: f64) -> String {
    let percent = 100.0 * fraction;
    let decimals = usize::from(percent.abs() < 9.95);
    with_unit(&format_fixed(percent, decimals), "%")
}

/// A content in weight per cent, two decimals.
#[must_use]
pub fn format_weight_percent(content_wt: f64) -> String {
    with_unit(&format_fixed(content_wt, 2), "%")
}

/// A Rockwell C hardness, one decimal.
#[must_use]
pub fn format_hrc(hrc: f64) -> String {
    with_unit(&format_fixed(hrc, 1), "HRC")
}

/// A Vickers hardness, whole.
#[must_use]
pub fn format_hv(hv: f64) -> String {
    with_unit(&format_fixed(hv, 0), "HV")
}

/// A Rockwell B hardness, whole.
#[must_use]
pub fn format_hrb(hrb: f64) -> String {
    with_unit(&format_fixed(hrb, 0), "HRB")
}

/// A cooling rate on a temperature scale, three significant digits: K/s, or °F/s.
#[must_use]
pub fn format_cooling_rate(rate_k_per_s: f64, scale: TemperatureScale) -> String {
    let rate = scale.of_kelvin_difference(rate_k_per_s);
    with_unit(
        &format_fixed(rate, decimals_for(rate, 3)),
        scale.rate_unit(),
    )
}

/// A ratio such as a margin: `×1.6`, two significant digits.
#[must_use]
pub fn format_factor(factor: f64) -> String {
    format!("×{}", format_fixed(factor, decimals_for(factor, 2)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_as_people_write_them() {
        let cases = [
            ("845", 845.0),
            ("0,5", 0.5),
            ("0.125", 0.125),
            ("0,125", 0.125),
            (".5", 0.5),
            ("1/8", 0.125),
            ("1 1/2", 1.5),
            ("1-1/2", 1.5),
            ("2½", 2.5),
            ("¾", 0.75),
            ("−80", -80.0),
            ("-80", -80.0),
            ("+20", 20.0),
            ("1550", 1550.0),
        ];
        for (text, value) in cases {
            assert_eq!(parse(text).ok(), Some(value), "{text}");
        }
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in [
            "", "-", ".", ",", "1/0", "1/", "/8", "1..2", "1,2,3", "1 2", "--3", "1/2/3", "1 1/-2",
        ] {
            assert!(parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn comma_before_three_digits_is_asked_about() {
        assert!(matches!(parse("1,550"), Err(Fault::Ambiguous)));
        assert_eq!(parse("1,55").ok(), Some(1.55));
    }

    #[test]
    fn fixed_digits_with_a_real_minus() {
        assert_eq!(format_fixed(-80.2, 0), "\u{2212}80");
        assert_eq!(format_fixed(-0.04, 1), "0.0");
        assert_eq!(format_fixed(f64::NAN, 1), "–");
    }

    #[test]
    fn quantities_keep_their_digits() {
        assert_eq!(format_percent(0.094), "9.4\u{a0}%");
        assert_eq!(format_percent(0.0996), "10\u{a0}%");
        assert_eq!(format_percent(0.94), "94\u{a0}%");
        assert_eq!(format_weight_percent(0.678), "0.68\u{a0}%");
        assert_eq!(format_hrc(61.94), "61.9\u{a0}HRC");
        assert_eq!(format_hv(742.6), "743\u{a0}HV");
        assert_eq!(
            format_cooling_rate(100.0, TemperatureScale::Fahrenheit),
            "180\u{a0}°F/s"
        );
        for (rate, words) in [
            (212.4, "212\u{a0}K/s"),
            (21.24, "21.2\u{a0}K/s"),
            (2.5, "2.50\u{a0}K/s"),
            (0.0212, "0.021\u{a0}K/s"),
        ] {
            assert_eq!(format_cooling_rate(rate, TemperatureScale::Celsius), words);
        }
        assert_eq!(format_factor(1.62), "×1.6");
        assert_eq!(format_factor(9.97), "×10");
        assert_eq!(format_factor(16.2), "×16");
    }
}
