//! Why a route has no outcome at all.

use super::allowed::RouteFieldError;
use crate::heat::{HeatError, MediumError};
use crate::phases::PhaseError;
use crate::soak::SoakError;
use crate::steel::OutOfRange;
use crate::units::{TemperatureScale, format_temperature};
use recalesce_texts::route::error as texts;

/// Why a route has no outcome. A model that only refuses its own part is told in the outcome.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RouteError {
    /// A field makes no sense.
    #[error(transparent)]
    Field(#[from] RouteFieldError),
    /// The quenchant.
    #[error("{}", texts::quenchant(.0))]
    Medium(#[from] MediumError),
    /// Critical temperatures or equilibrium.
    #[error(transparent)]
    Phase(#[from] PhaseError),
    /// The soak.
    #[error(transparent)]
    Soak(#[from] SoakError),
    /// The cooling.
    #[error("{}", texts::quench(.0))]
    Heat(#[from] HeatError),
    /// The transformation.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
}

impl RouteError {
    /// What is wrong in a sentence, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let degrees = |c: f64| format_temperature(c, scale);
        match self {
            Self::Field(error) => error.words(scale).to_owned(),
            Self::Phase(error) | Self::Soak(SoakError::Phase(error)) => phase_words(error, scale),
            Self::Soak(SoakError::BelowA1 {
                temperature_c,
                a1_c,
            }) => texts::soak_below_a1(&degrees(*temperature_c), &degrees(*a1_c)),
            Self::Soak(SoakError::OutOfRange(refusal)) | Self::OutOfRange(refusal) => {
                refusal.words(scale)
            }
            Self::Medium(error) => texts::quenchant(error.words(scale)),
            Self::Heat(error) => texts::quench(error.words(scale)),
        }
    }
}

/// Why there is no equilibrium, in a sentence, with temperatures on a scale.
pub(super) fn phase_words(error: &PhaseError, scale: TemperatureScale) -> String {
    let degrees = |c: f64| format_temperature(c, scale);
    match error {
        PhaseError::OutOfRange(refusal) => refusal.words(scale),
        PhaseError::NotConverged { temperature_c } => {
            texts::no_equilibrium(&degrees(*temperature_c))
        }
        PhaseError::NoAustenite { least_c, most_c } => {
            texts::no_austenite(&degrees(*least_c), &degrees(*most_c))
        }
        PhaseError::FerriteAgain { temperature_c } => {
            texts::ferrite_again(&degrees(*temperature_c))
        }
        PhaseError::BelowA1 {
            temperature_c,
            a1_c,
        } => texts::below_a1(&degrees(*temperature_c), &degrees(*a1_c)),
        other => other.to_string(),
    }
}
