//! Why a route has no outcome at all.

use super::validate::RouteFieldError;
use crate::heat::{HeatError, MediumError};
use crate::phases::PhaseError;
use crate::soak::SoakError;

/// Why a route has no outcome. A model that only refuses its own part is told in the outcome.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RouteError {
    /// A field makes no sense.
    #[error(transparent)]
    Field(#[from] RouteFieldError),
    /// The quenchant.
    #[error("Quenchant: {0}")]
    Medium(#[from] MediumError),
    /// Critical temperatures or equilibrium.
    #[error(transparent)]
    Phase(#[from] PhaseError),
    /// The soak.
    #[error(transparent)]
    Soak(#[from] SoakError),
    /// The cooling.
    #[error("Quench: {0}")]
    Heat(#[from] HeatError),
}
