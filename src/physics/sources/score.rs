//! How near the models come to values from outside the project, as last measured over the check files:
//! `score.json`, written by `UPDATE_SCORE=1 cargo test --test score`, which otherwise fails where the file
//! is not what the models give.

use serde::{Deserialize, Serialize};

/// What the values are that the models are compared with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Against {
    /// Measured or published, and not used by the models.
    Published,
    /// Data that the models were made of, and formulas checked as they were keyed in.
    OwnData,
    /// Computed independently with the same parameters: they check the computation, not the parameters.
    Computed,
    /// Computed, where that computation missed a phase: they are not counted.
    FaultyReference,
}

impl Against {
    /// Those that are counted, in the order of the page.
    pub const COUNTED: [Self; 3] = [Self::Published, Self::OwnData, Self::Computed];

    /// What stands above them.
    #[must_use]
    pub const fn heading(self) -> &'static str {
        match self {
            Self::Published => "Measured or published values",
            Self::OwnData => "The models' own data, and formulas as keyed in",
            Self::Computed => "Computed independently with the same parameters",
            Self::FaultyReference => "Left out: the reference computation missed a phase",
        }
    }
}

/// The score of one quantity.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct QuantityScore {
    /// What is compared.
    pub quantity: String,
    /// What the values are.
    pub against: Against,
    /// Its unit; "factor" where errors are told as factors. Several, with commas between them, where rows of
    /// unlike quantities are counted together, or "–" where they are too many to name.
    pub unit: String,
    /// Values from outside that are compared.
    pub rows: usize,
    /// How many of them lie inside their tolerance.
    pub inside: usize,
    /// Mean absolute error in the unit, or the geometric mean of the factors; none where no row is answered.
    pub mean_error: Option<f64>,
    /// Narrowest and widest tolerance of the rows, in the unit or as factors.
    pub tolerance: [f64; 2],
    /// What this project wants to reach, and whether it does.
    pub aim: Option<(String, bool)>,
    /// Every row outside its tolerance; none where the reference is at fault.
    pub outside: Vec<Outside>,
}

/// A row outside its tolerance.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Outside {
    /// The quantity.
    pub quantity: String,
    /// The steel and what is done to it.
    pub case: String,
    /// What the models say, or why they say nothing.
    pub predicted: Result<f64, String>,
    /// The value from outside.
    pub value: f64,
    /// Unit of the two; none where they are bare numbers.
    pub unit: String,
    /// Whether the tolerance is a factor.
    pub is_factor: bool,
    /// What is allowed either way, or the factor.
    pub tolerance: f64,
    /// Where the value comes from.
    pub source: String,
}

/// Mark of the unit of errors that are factors.
const FACTOR: &str = "factor";

/// Letters up to which a unit stands in one line with its number.
const SHORT_UNIT: usize = 6;

impl QuantityScore {
    /// Whether errors and tolerances are factors.
    #[must_use]
    pub fn is_factor(&self) -> bool {
        self.unit == FACTOR
    }

    /// The mean error with its unit; none where rows of several units are counted together, or none is
    /// answered.
    #[must_use]
    pub fn mean_error_words(&self) -> Option<String> {
        let error = self.mean_error.filter(|_| !self.has_several_units())?;
        Some(self.with_unit(&short(error)))
    }

    /// The tolerance with its unit, or its range.
    #[must_use]
    pub fn tolerance_words(&self) -> String {
        let [least, most] = self.tolerance.map(short);
        if self.has_several_units() {
            return "each its own".to_owned();
        }
        self.with_unit(&if least == most {
            most
        } else {
            format!("{least} to {most}")
        })
    }

    fn has_several_units(&self) -> bool {
        self.unit.contains(',') || self.unit == "–"
    }

    fn with_unit(&self, number: &str) -> String {
        match self.unit.as_str() {
            FACTOR => format!("factor {number}"),
            // One line, unless the unit is words.
            unit if unit.len() <= SHORT_UNIT => {
                format!("{number}\u{a0}{}", unit.replace(' ', "\u{a0}"))
            }
            unit => format!("{number} {unit}"),
        }
    }
}

impl Outside {
    /// What the models say.
    #[must_use]
    pub fn predicted_words(&self) -> String {
        match &self.predicted {
            Ok(value) => self.with_unit(*value),
            Err(why) => format!("no answer: {why}"),
        }
    }

    /// The value with its tolerance.
    #[must_use]
    pub fn value_words(&self) -> String {
        let (value, tolerance) = (self.with_unit(self.value), short(self.tolerance));
        if self.is_factor {
            return format!("{value} within a factor of {tolerance}");
        }
        // What is allowed of a temperature is a difference.
        let unit = if self.unit == "°C" { "K" } else { &self.unit };
        format!("{value}\u{a0}±\u{a0}{tolerance}\u{a0}{unit}")
            .trim_end()
            .to_owned()
    }

    fn with_unit(&self, value: f64) -> String {
        format!("{}\u{a0}{}", short(value), self.unit)
            .trim_end()
            .to_owned()
    }
}

/// Three significant digits, without zeros that say nothing.
fn short(x: f64) -> String {
    if x.abs() < 1e-5 {
        return "0".to_owned();
    }
    let decimals = (2 - x.abs().log10().floor() as i32).clamp(0, 6);
    let text = format!("{x:.*}", decimals as usize);
    let text = match text.split_once('.') {
        Some(_) => text.trim_end_matches('0').trim_end_matches('.'),
        None => &text,
    };
    text.replace('-', "\u{2212}")
}

/// The score of every quantity, in the order of the pipeline; an error only where the file of the project is
/// damaged.
pub fn measured() -> Result<Vec<QuantityScore>, serde_json::Error> {
    serde_json::from_str(include_str!("score.json"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short() {
        let told = [0.000_002, 0.0408, 1.0, 17.25, 784.5, -4.146, 12_345.0].map(short);
        assert_eq!(
            told,
            ["0", "0.0408", "1", "17.2", "784", "\u{2212}4.15", "12345"]
        );
    }

    #[test]
    fn every_row_is_inside_or_listed() {
        let scores = measured().expect("the file of the project");
        assert!(!scores.is_empty());
        for score in scores {
            if score.against == Against::FaultyReference {
                assert!(score.outside.is_empty());
                continue;
            }
            assert_eq!(
                score.rows,
                score.inside + score.outside.len(),
                "{}",
                score.quantity
            );
        }
    }
}
