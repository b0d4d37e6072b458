//! A number that a model gives, or the reason why it gives none.

use serde::Serialize;

/// What a model gives inside its validity, or its refusal outside.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Known<T> {
    /// The answer.
    Given(T),
    /// No answer, and why, in one sentence for the user.
    Refused {
        /// The sentence.
        refused: String,
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
    pub fn refusal(&self) -> Option<&str> {
        match self {
            Self::Given(_) => None,
            Self::Refused { refused } => Some(refused),
        }
    }
}

impl<T, E: std::fmt::Display> From<Result<T, E>> for Known<T> {
    fn from(result: Result<T, E>) -> Self {
        match result {
            Ok(answer) => Self::Given(answer),
            Err(reason) => Self::Refused {
                refused: reason.to_string(),
            },
        }
    }
}
