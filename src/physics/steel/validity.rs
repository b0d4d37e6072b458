//! Where a model may be used: ranges of composition and of other inputs, and the refusal outside.

use super::{Composition, Element};
use crate::units::{NumberOutside, TemperatureScale, format_duration_s, format_fixed};
use recalesce_texts::steel as texts;
use std::fmt;

/// In place of a unit: per cent of the austenite, which may be far below that of the steel.
const IN_SOLUTION: &str = "dissolved";

/// A refusal: a model was asked outside the range for which it is known to hold.
#[derive(Debug, Clone, PartialEq)]
pub struct OutOfRange {
    /// The model that refuses, as the page names it.
    pub model: &'static str,
    /// What is out of range, as the page names it.
    pub number: NumberOutside,
}

impl OutOfRange {
    /// Checks that `value` lies within its limits.
    ///
    /// # Errors
    /// The refusal itself when it does not, or is not a number.
    pub fn check(
        model: &'static str,
        quantity: &'static str,
        unit: &'static str,
        value: f64,
        limits: (f64, f64),
    ) -> Result<(), Self> {
        NumberOutside::check(quantity, value, limits, unit).map_err(|number| Self { model, number })
    }

    /// The refusal in a sentence, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let number = &self.number;
        let numbers = [number.least, number.most, number.value];
        let [least, largest, value] = match number.unit {
            "s" => numbers.map(format_duration_s),
            "°C" => told(numbers.map(|c| scale.of_celsius(c)), 0, scale.symbol()),
            IN_SOLUTION => told(numbers, 2, "%"),
            unit => told(numbers, 2, unit),
        };
        let mut quantity = number.field.to_owned();
        if number.unit == IN_SOLUTION {
            quantity = texts::in_solution(&quantity);
        }
        texts::beyond_the_model(self.model, &quantity, &least, &largest, &value)
    }
}

/// Two limits and the value beyond them, with their unit; the first limit has that of the second.
/// The value is rounded, but never so far that it would read as inside.
fn told([least, largest, value]: [f64; 3], decimals: usize, unit: &str) -> [String; 3] {
    const MOST_DECIMALS: usize = 6;
    let reads_as_inside = |decimals: &usize| {
        let step = 10_f64.powi(*decimals as i32);
        ((least * step).round()..=(largest * step).round()).contains(&(value * step).round())
    };
    let decimals = (decimals..MOST_DECIMALS)
        .find(|decimals| !reads_as_inside(decimals))
        .unwrap_or(MOST_DECIMALS);
    let space = if unit.is_empty() { "" } else { "\u{a0}" };
    let short = |number| {
        let digits = format_fixed(number, decimals);
        if digits.contains('.') {
            let digits = digits.trim_end_matches('0').trim_end_matches('.');
            digits.to_owned()
        } else {
            digits
        }
    };
    [
        short(least),
        format!("{}{space}{unit}", short(largest)),
        format!("{}{space}{unit}", short(value)),
    ]
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

impl std::error::Error for OutOfRange {}

/// The compositions for which a model holds: per element the least and largest content, wt %.
/// An element that is not listed is not limited.
#[derive(Debug, Clone, Copy)]
pub struct CompositionRange {
    /// The model, as the page names it.
    pub model: &'static str,
    /// Limits per element, wt %.
    pub limits_wt: &'static [(Element, f64, f64)],
}

/// A content computed from a mass balance may lie so far over a limit that its steel just meets,
/// wt %.
const ROUNDING_WT: f64 = 1e-9;

impl CompositionRange {
    /// Checks a steel against every limit.
    ///
    /// # Errors
    /// The first limit that is broken.
    pub fn check(&self, steel: &Composition) -> Result<(), OutOfRange> {
        self.check_in(steel, "%")
    }

    /// Checks what of a steel is dissolved in its austenite against every limit.
    ///
    /// # Errors
    /// The first limit that is broken.
    pub fn check_dissolved(&self, dissolved: &Composition) -> Result<(), OutOfRange> {
        self.check_in(dissolved, IN_SOLUTION)
    }

    fn check_in(&self, steel: &Composition, unit: &'static str) -> Result<(), OutOfRange> {
        for &(element, least, largest) in self.limits_wt {
            let given_wt = steel.get(element);
            let nearest_wt = given_wt.max(least).min(largest);
            let counts_wt = if (given_wt - nearest_wt).abs() <= ROUNDING_WT {
                nearest_wt
            } else {
                given_wt
            };
            let limits = (least, largest);
            OutOfRange::check(self.model, element.name(), unit, counts_wt, limits)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::TemperatureScale::{Celsius, Fahrenheit};

    fn refusal(unit: &'static str, value: f64, range: (f64, f64)) -> OutOfRange {
        OutOfRange::check("The table", "it", unit, value, range).unwrap_err()
    }

    #[test]
    fn numbers_are_rounded_and_have_their_unit() {
        let warm = refusal("°C", 183.132, (205.0, 540.0));
        assert_eq!(
            warm.to_string(),
            "The table holds for it from 205 to 540\u{a0}°C; here it is 183\u{a0}°C. No number is given."
        );
        assert!(
            warm.words(Fahrenheit)
                .contains("from 401 to 1004\u{a0}°F; here it is 362\u{a0}°F")
        );
        let steel = refusal("%", 2.1004, (0.0, 1.1)).words(Celsius);
        assert!(steel.contains("from 0 to 1.1\u{a0}%; here it is 2.1\u{a0}%"));
    }

    /// D2 has 12 % chromium, of which 7 % is in solution: the refusal says which of them it speaks of.
    #[test]
    fn what_is_dissolved_is_told_as_such() {
        let model = CompositionRange {
            model: "The model",
            limits_wt: &[(Element::Cr, 0.0, 2.0)],
        };
        let steel = Composition {
            cr: 7.17,
            ..Composition::default()
        };
        assert_eq!(
            model.check_dissolved(&steel).unwrap_err().to_string(),
            "The model holds for chromium in solution from 0 to 2\u{a0}%; here it is 7.17\u{a0}%. No number is given."
        );
        assert!(
            model
                .check(&steel)
                .unwrap_err()
                .to_string()
                .contains("holds for chromium from 0 to 2\u{a0}%")
        );
    }

    #[test]
    fn a_value_outside_never_reads_as_inside() {
        assert!(
            refusal("°C", 99.97, (100.0, 700.0))
                .to_string()
                .contains("here it is 99.97")
        );
        assert!(
            refusal("%", 1.1004, (0.0, 1.1))
                .to_string()
                .contains("here it is 1.1004")
        );
        assert!(
            refusal("", f64::NAN, (0.0, 1.1))
                .to_string()
                .contains("here it is –")
        );
    }
}
