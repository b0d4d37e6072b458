//! A number that a model gives, or the reason why it gives none.

use super::error::{RouteError, phase_words};
use crate::phases::PhaseError;
use crate::steel::OutOfRange;
use crate::units::TemperatureScale;
use serde::{Serialize, Serializer};
use std::fmt;

/// Why a model gives no number, with its numbers: they are worded in the units shown. As plain text,
/// and in the terminal's answers, temperatures are in °C.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// Outside the range of a model.
    Model(OutOfRange),
    /// No equilibrium.
    Phase(PhaseError),
    /// A step of the route that cannot be done.
    Route(Box<RouteError>),
    /// Nothing to go by; a sentence without numbers.
    Plain(&'static str),
}

impl Refusal {
    /// The refusal in a sentence, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match self {
            Self::Model(refusal) => refusal.words(scale),
            Self::Phase(error) => phase_words(error, scale),
            Self::Route(error) => error.words(scale),
            Self::Plain(sentence) => (*sentence).to_owned(),
        }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

impl Serialize for Refusal {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl From<OutOfRange> for Refusal {
    fn from(refusal: OutOfRange) -> Self {
        Self::Model(refusal)
    }
}

impl From<&OutOfRange> for Refusal {
    fn from(refusal: &OutOfRange) -> Self {
        Self::Model(refusal.clone())
    }
}

impl From<RouteError> for Refusal {
    fn from(error: RouteError) -> Self {
        Self::Route(Box::new(error))
    }
}

impl From<PhaseError> for Refusal {
    fn from(error: PhaseError) -> Self {
        Self::Phase(error)
    }
}

impl From<&'static str> for Refusal {
    fn from(sentence: &'static str) -> Self {
        Self::Plain(sentence)
    }
}

/// What a model gives inside its validity, or its refusal outside.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Known<T> {
    /// The answer.
    Given(T),
    /// No answer, and why.
    Refused {
        /// The reason.
        refused: Refusal,
    },
}

impl<T> Known<T> {
    /// The answer, if there is one.
    pub const fn given(&self) -> Option<&T> {
        match self {
            Self::Given(answer) => Some(answer),
            Self::Refused { .. } => None,
        }
    }

    /// Why there is no answer, if there is none.
    pub const fn refusal(&self) -> Option<&Refusal> {
        match self {
            Self::Given(_) => None,
            Self::Refused { refused } => Some(refused),
        }
    }
}

impl<T, E: Into<Refusal>> From<Result<T, E>> for Known<T> {
    fn from(result: Result<T, E>) -> Self {
        match result {
            Ok(answer) => Self::Given(answer),
            Err(reason) => Self::Refused {
                refused: reason.into(),
            },
        }
    }
}
