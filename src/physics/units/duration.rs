//! Spans of time, from fractions of a second in the quench to hours in the temper.

use super::number::{format_fixed, with_unit};
use super::{Quantity, QuantityError, numbers_with_units, shortened};
use recalesce_texts::units as texts;

/// Unit of a time written without one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DurationUnit {
    /// Seconds.
    Second,
    /// Minutes.
    Minute,
    /// Hours.
    Hour,
}

impl DurationUnit {
    /// Seconds in the unit.
    #[must_use]
    pub const fn seconds(self) -> f64 {
        match self {
            Self::Second => 1.0,
            Self::Minute => 60.0,
            Self::Hour => 3600.0,
        }
    }

    fn named(name: &str) -> Option<Self> {
        Some(match name.trim_end_matches('.') {
            "s" | "sec" | "secs" | "second" | "seconds" => Self::Second,
            "m" | "min" | "mins" | "minute" | "minutes" => Self::Minute,
            "h" | "hr" | "hrs" | "hour" | "hours" => Self::Hour,
            _ => return None,
        })
    }

    /// The unit meant by a number after this one: `1 h 30` is thirty minutes more.
    const fn next_smaller(self) -> Option<Self> {
        match self {
            Self::Hour => Some(Self::Minute),
            Self::Minute => Some(Self::Second),
            Self::Second => None,
        }
    }
}

/// Reads a time such as `12 min`, `90 s`, `1 h 30` or `1½ h`; returns seconds.
/// A number without a unit is in `unit`.
///
/// # Errors
/// What is wrong with the text and what may be written.
pub fn parse_duration_s(text: &str, unit: DurationUnit) -> Result<f64, QuantityError> {
    let pairs = numbers_with_units(Quantity::Duration, text)?;
    let unreadable = || QuantityError::Unreadable {
        quantity: Quantity::Duration,
        text: shortened(text.trim()),
    };
    let mut total_s = 0.0;
    let mut previous: Option<DurationUnit> = None;
    for (value, name) in pairs {
        let this = if name.is_empty() {
            match previous {
                Some(larger) => larger.next_smaller().ok_or_else(unreadable)?,
                None => unit,
            }
        } else {
            DurationUnit::named(&name).ok_or_else(|| QuantityError::Unit {
                quantity: Quantity::Duration,
                unit: shortened(&name),
            })?
        };
        if previous.is_some_and(|larger| larger.seconds() <= this.seconds()) {
            return Err(unreadable());
        }
        if value < 0.0 {
            return Err(QuantityError::TooLow {
                quantity: Quantity::Duration,
                text: shortened(text.trim()),
                least: texts::ZERO,
            });
        }
        total_s += value * this.seconds();
        previous = Some(this);
    }
    Ok(total_s)
}

/// A time in the largest units that suit it: `0.04 s`, `2.4 s`, `48 s`, `2 min 30 s`, `12 min`,
/// `1 h 30 min`, `36 h`.
#[must_use]
pub fn format_duration_s(time_s: f64) -> String {
    if !time_s.is_finite() {
        return format_fixed(time_s, 0);
    }
    let size_s = time_s.abs();
    let decimals = match size_s {
        s if s < 0.995 => 2,
        s if s < 9.95 => 1,
        _ => 0,
    };
    if size_s < 119.5 {
        return with_unit(&format_fixed(time_s, decimals), "s");
    }
    let (large, small, per_large) = if size_s < 599.5 {
        let whole_s = size_s.round();
        ((whole_s / 60.0).floor(), whole_s % 60.0, ("min", "s"))
    } else {
        let whole_min = (size_s / 60.0).round();
        if whole_min < 60.0 {
            (whole_min, 0.0, ("min", "s"))
        } else if whole_min < 24.0 * 60.0 {
            ((whole_min / 60.0).floor(), whole_min % 60.0, ("h", "min"))
        } else {
            ((whole_min / 60.0).round(), 0.0, ("h", "min"))
        }
    };
    let sign = if time_s < 0.0 { -1.0 } else { 1.0 };
    let mut text = with_unit(&format_fixed(sign * large, 0), per_large.0);
    if small > 0.0 {
        text.push('\u{a0}');
        text.push_str(&with_unit(&format_fixed(small, 0), per_large.1));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::DurationUnit::{Hour, Minute, Second};
    use super::*;

    #[test]
    fn times_as_people_write_them() {
        let cases = [
            ("12", Minute, 720.0),
            ("12 min", Second, 720.0),
            ("12min", Second, 720.0),
            ("90 s", Minute, 90.0),
            ("1 h 30", Minute, 5400.0),
            ("1h30", Minute, 5400.0),
            ("1 h 30 min", Second, 5400.0),
            ("1 h 2 min 3 s", Minute, 3723.0),
            ("1 1/2 h", Minute, 5400.0),
            ("1½ hours", Minute, 5400.0),
            ("0,5 h", Minute, 1800.0),
            ("2", Hour, 7200.0),
            ("2 hrs.", Minute, 7200.0),
        ];
        for (text, unit, time_s) in cases {
            assert_eq!(parse_duration_s(text, unit), Ok(time_s), "{text}");
        }
    }

    #[test]
    fn muddled_times_are_refused() {
        for text in [
            "",
            "soon",
            "30 min 1 h",
            "1 s 30",
            "-5 min",
            "1 h -5",
            "5 °C",
        ] {
            assert!(parse_duration_s(text, Minute).is_err(), "{text}");
        }
    }

    #[test]
    fn shown_in_units_that_suit() {
        let cases = [
            (0.04, "0.04\u{a0}s"),
            (2.44, "2.4\u{a0}s"),
            (47.6, "48\u{a0}s"),
            (90.0, "90\u{a0}s"),
            (150.0, "2\u{a0}min\u{a0}30\u{a0}s"),
            (119.8, "2\u{a0}min"),
            (720.0, "12\u{a0}min"),
            (3599.9, "1\u{a0}h"),
            (5400.0, "1\u{a0}h\u{a0}30\u{a0}min"),
            (129_600.0, "36\u{a0}h"),
            (-0.7, "\u{2212}0.70\u{a0}s"),
        ];
        for (time_s, text) in cases {
            assert_eq!(format_duration_s(time_s), text);
        }
    }
}
