//! A day of the calendar, as ISO 8601 writes it.

use recalesce_texts::save::run as texts;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Years that a run may bear.
const YEARS: [u16; 2] = [1900, 2999];

/// A day: `2026-11-27`. Days are in order of time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Day {
    year: u16,
    month: u8,
    day: u8,
}

impl Day {
    /// The day of a text such as `2026-11-27`.
    ///
    /// # Errors
    /// A text of another shape, a day that the month does not have, a year before 1900 or after
    /// 2999.
    pub fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        Self::read(text).ok_or_else(|| {
            let shown: String = text.chars().take(20).collect();
            texts::no_day(&shown, YEARS[0], YEARS[1])
        })
    }

    fn read(text: &str) -> Option<Self> {
        let mut parts = text.split('-');
        let mut number = |digits: usize| {
            let part = parts.next()?;
            let is_whole = part.len() == digits && part.bytes().all(|b| b.is_ascii_digit());
            is_whole.then(|| part.parse::<u16>().ok()).flatten()
        };
        let (year, month, day) = (number(4)?, number(2)?, number(2)?);
        if parts.next().is_some() || !(YEARS[0]..=YEARS[1]).contains(&year) {
            return None;
        }
        let is_leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let days = match month {
            2 => 28 + u16::from(is_leap),
            4 | 6 | 9 | 11 => 30,
            1..=12 => 31,
            _ => return None,
        };
        (1..=days).contains(&day).then_some(Self {
            year,
            month: u8::try_from(month).ok()?,
            day: u8::try_from(day).ok()?,
        })
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

impl TryFrom<String> for Day {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        Self::parse(&text)
    }
}

impl From<Day> for String {
    fn from(day: Day) -> Self {
        day.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_of_the_calendar_are_read_and_written() {
        for text in ["2026-11-27", "2024-02-29", "2000-02-29", "1900-01-01"] {
            assert_eq!(Day::parse(text).unwrap().to_string(), text);
        }
        assert!(Day::parse("2026-01-31") < Day::parse("2026-02-01"));
    }

    #[test]
    fn what_is_no_day_is_refused() {
        for text in [
            "",
            "today",
            "27.11.2026",
            "2026-11-31",
            "2026-13-01",
            "2026-00-10",
            "2026-01-00",
            "2023-02-29",
            "1900-02-29",
            "1899-12-31",
            "3000-01-01",
            "2026-1-1",
            "2026-11-27-1",
            "+026-11-27",
        ] {
            assert!(Day::parse(text).is_err(), "{text}");
        }
    }
}
