//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod critical;
mod equilibrium;
mod gibbs;
mod limit;
mod map;
mod search;
#[cfg(test)]
mod survival;

pub use critical::{
    Bound, CriticalTemperatures, Eutectoid, UpperLimit, critical_temperatures, eutectoid,
    height_at_bound,
};
pub use equilibrium::{
    CriticalPoints, Equilibrium, EquilibriumError, EquilibriumSeries, PhaseAmount, PhaseName,
    RANGE as EQUILIBRIUM_RANGE, StableRange, carbon_beside_cementite_wt, critical_points,
    equilibrium, full_equilibrium_austenite, para_equilibrium,
};
#[cfg(any(test, feature = "watched-solver"))]
pub use equilibrium::{Effort, counting, failing};
pub use gibbs::{ParameterLine, parameter_lines};
pub use limit::{Annealed, SoakLimit, SoakLimits, annealed, soak_limit};
pub use map::{Boundary, Field, OwnField, PhaseMap, phase_map};

use crate::steel::{CompositionError, OutOfRange};

/// Why no state of equilibrium is given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PhaseError {
    /// The composition is not one of a steel.
    #[error(transparent)]
    Composition(CompositionError),
    /// The model does not hold there.
    #[error(transparent)]
    OutOfRange(OutOfRange),
    /// The search for the stable phases did not come to rest.
    #[error("no equilibrium was found at {temperature_c:.1} °C: the search did not come to rest")]
    NotConverged {
        /// The temperature tried, °C.
        temperature_c: f64,
    },
    /// No austenite forms at any temperature.
    #[error(
        "no austenite forms from {least_c:.0} to {most_c:.0} °C: this steel cannot be hardened"
    )]
    NoAustenite {
        /// Lowest temperature searched, °C.
        least_c: f64,
        /// Highest temperature searched, °C.
        most_c: f64,
    },
    /// The austenite that there was at lower temperatures is gone.
    #[error("at {temperature_c:.0} °C all austenite of this steel has become ferrite again")]
    FerriteAgain {
        /// The temperature asked, °C.
        temperature_c: f64,
    },
    /// No austenite forms.
    #[error("no austenite forms at {temperature_c:.0} °C: A1 of this steel is {a1_c:.0} °C")]
    BelowA1 {
        /// The temperature asked, °C.
        temperature_c: f64,
        /// Where austenite begins, °C.
        a1_c: f64,
    },
}

impl From<EquilibriumError> for PhaseError {
    fn from(error: EquilibriumError) -> Self {
        match error {
            EquilibriumError::Composition(fault) => Self::Composition(fault),
            EquilibriumError::OutOfRange(refusal) => Self::OutOfRange(refusal),
            EquilibriumError::NotConverged { temperature_c } => {
                Self::NotConverged { temperature_c }
            }
        }
    }
}

impl From<CompositionError> for PhaseError {
    fn from(fault: CompositionError) -> Self {
        Self::Composition(fault)
    }
}

impl From<OutOfRange> for PhaseError {
    fn from(refusal: OutOfRange) -> Self {
        Self::OutOfRange(refusal)
    }
}
