//! Numbers as the page prints them: real minus, no negative zero, no-break space before a unit.

/// No-break space, between a number and its unit.
pub const NBSP: char = '\u{a0}';

/// A number with a fixed count of decimals and a real minus; a dash when it is not finite.
pub fn fixed(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let plain = format!("{value:.decimals$}");
    match plain.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| c == '0' || c == '.') => digits.to_owned(),
        Some(digits) => format!("\u{2212}{digits}"),
        None => plain,
    }
}

/// As [`fixed`], with a unit after a no-break space.
pub fn with_unit(value: f64, decimals: usize, unit: &str) -> String {
    format!("{}{NBSP}{unit}", fixed(value, decimals))
}

/// A duration as a person says it: two digits below ten, whole units above; seconds, minutes, hours.
pub fn duration(time_s: f64) -> String {
    let (value, unit) = if time_s.abs() < 99.5 {
        (time_s, "s")
    } else if time_s.abs() < 5970.0 {
        (time_s / 60.0, "min")
    } else {
        (time_s / 3600.0, "h")
    };
    with_unit(value, usize::from(value.abs() < 9.95), unit)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn printed_as_the_page_wants() {
        assert_eq!(fixed(-75.0, 0), "−75");
        assert_eq!(fixed(-0.04, 1), "0.0");
        assert_eq!(fixed(f64::NAN, 1), "–");
        assert_eq!(with_unit(830.2, 0, "°C"), "830\u{a0}°C");
        assert_eq!(duration(0.72), "0.7\u{a0}s");
        assert_eq!(duration(-11.2), "−11\u{a0}s");
        assert_eq!(duration(720.0), "12\u{a0}min");
        assert_eq!(duration(7200.0), "2.0\u{a0}h");
    }
}
