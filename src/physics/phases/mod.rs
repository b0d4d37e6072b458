//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod critical;
mod equilibrium;
mod gibbs;
mod limit;
mod map;
mod search;
#[cfg(test)]
mod survival_tests;

pub use critical::{
    Bound, CriticalTemperatures, Eutectoid, UpperLimit, critical_temperatures, eutectoid,
    height_at_bound,
};
#[cfg(any(test, feature = "watched-solver"))]
pub use equilibrium::failing;
pub use equilibrium::{
    CriticalPoints, Equilibrium, EquilibriumError, EquilibriumSeries, PhaseAmount, PhaseName,
    RANGE as EQUILIBRIUM_RANGE, StableRange, carbon_beside_cementite_wt, critical_points,
    equilibrium, full_equilibrium_austenite, para_equilibrium,
};
pub use gibbs::{ParameterLine, parameter_lines};
pub use limit::{Annealed, SoakLimit, SoakLimits, annealed, soak_limit};
pub use map::{Boundary, Field, OwnField, PhaseMap, phase_map};

use crate::steel::{CompositionError, OutOfRange};
use recalesce_texts::phases as texts;
use std::fmt;

/// Why no state of equilibrium is given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PhaseError {
    /// The composition is not one of a steel.
    Composition(CompositionError),
    /// The model does not hold there.
    OutOfRange(OutOfRange),
    /// The search for the stable phases did not come to rest.
    NotConverged {
        /// The temperature tried, °C.
        temperature_c: f64,
    },
    /// No austenite forms at any temperature.
    NoAustenite {
        /// Lowest temperature searched, °C.
        least_c: f64,
        /// Highest temperature searched, °C.
        most_c: f64,
    },
    /// The austenite that there was at lower temperatures is gone.
    FerriteAgain {
        /// The temperature asked, °C.
        temperature_c: f64,
    },
    /// No austenite forms.
    BelowA1 {
        /// The temperature asked, °C.
        temperature_c: f64,
        /// Where austenite begins, °C.
        a1_c: f64,
    },
}

impl PhaseError {
    /// What is wrong. One text for all kinds: derived for each by itself, the page would be heavier.
    fn said(&self) -> String {
        match self {
            Self::Composition(error) => error.to_string(),
            Self::OutOfRange(error) => error.to_string(),
            Self::NotConverged { temperature_c } => texts::not_at_rest(*temperature_c),
            Self::NoAustenite { least_c, most_c } => texts::no_austenite(*least_c, *most_c),
            Self::FerriteAgain { temperature_c } => texts::ferrite_again(*temperature_c),
            Self::BelowA1 {
                temperature_c,
                a1_c,
            } => texts::below_a1(*temperature_c, *a1_c),
        }
    }
}

impl fmt::Display for PhaseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said())
    }
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
