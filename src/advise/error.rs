//! Why a question about a whole shop or a whole spread has no answer.

use super::shop_check::ShopError;
use crate::heat::MediumError;
use crate::route::RouteError;
use crate::units::{NumberOutside, TemperatureScale};
use recalesce_texts::advise::error as texts;

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum AdviseError {
    /// The route itself.
    #[error(transparent)]
    Route(#[from] RouteError),
    /// A quenchant.
    #[error(transparent)]
    Medium(#[from] MediumError),
    /// The shop.
    #[error("`shop`: {0}")]
    Shop(#[from] ShopError),
    /// A number is not a number or out of range.
    #[error("{}", number_outside(_0, TemperatureScale::Celsius))]
    Number(NumberOutside),
    /// The route has no such step.
    #[error("{}", texts::no_step_for(input))]
    NoStep {
        /// The input asked for.
        input: &'static str,
    },
    /// There is no run to learn from, and no route is asked for.
    #[error("{}", texts::NO_RUN)]
    NoRun,
    /// Numbers that do not hold together.
    #[error("{}", texts::NOT_SOLVED)]
    NotSolved,
    /// Nothing comes out of any case.
    #[error("{}", texts::no_case(*cases, first))]
    NoCase {
        /// How many were tried.
        cases: usize,
        /// Why the first was refused.
        first: String,
    },
}

impl AdviseError {
    /// What is wrong in a sentence, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match self {
            Self::Route(error) => error.words(scale),
            Self::Medium(error) => error.words(scale),
            Self::Shop(error) => format!("`shop`: {}", error.words(scale)),
            Self::Number(number) => number_outside(number, scale),
            other => other.to_string(),
        }
    }
}

impl From<NumberOutside> for AdviseError {
    fn from(number: NumberOutside) -> Self {
        Self::Number(number)
    }
}

/// A number of a field and what it may be, with temperatures on a scale.
pub(super) fn number_outside(number: &NumberOutside, scale: TemperatureScale) -> String {
    let (told, unit) = number.on_scale(scale);
    format!("{}: {}", number.field, texts::outside(&told, unit))
}

/// Checks a number against what is allowed.
pub(super) fn check(
    field: &'static str,
    value: f64,
    allowed: (f64, f64),
    unit: &'static str,
) -> Result<(), AdviseError> {
    Ok(NumberOutside::check(field, value, allowed, unit)?)
}
