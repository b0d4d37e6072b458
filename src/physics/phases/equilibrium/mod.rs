//! Equilibrium of a steel at a temperature: which phases are stable, how much of each, and what
//! is in them.

mod boundaries;
mod column;
#[cfg(any(test, feature = "watched-solver"))]
mod fault;
mod frozen;
mod held_back;
mod newcomers;
mod newton;
mod para;
mod response;
mod slots;
mod solver;
mod start;
mod state;
#[cfg(test)]
mod tests;

pub use boundaries::{CriticalPoints, StableRange, critical_points};
pub(super) use column::{Change, Column, ColumnSearch, PhaseSet};
#[cfg(any(test, feature = "watched-solver"))]
pub use fault::failing;
pub(super) use held_back::HeldBack;
pub use para::{carbon_beside_cementite_wt, para_equilibrium};
pub use state::{
    Equilibrium, EquilibriumSeries, PhaseAmount, RANGE, equilibrium, full_equilibrium_austenite,
};

use crate::steel::{CompositionError, OutOfRange};
use recalesce_texts::phases as texts;

/// 0 °C in kelvin.
pub(super) const ZERO_C_K: f64 = 273.15;

/// A phase of steel.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
#[serde(rename_all = "lowercase")]
pub enum PhaseName {
    /// Face-centred iron with carbon in solution.
    Austenite,
    /// Body-centred iron.
    Ferrite,
    /// Iron carbide M3C.
    Cementite,
    /// Chromium-rich M7C3.
    M7C3,
    /// Chromium-rich M23C6.
    M23C6,
    /// Molybdenum- and tungsten-rich M6C.
    M6C,
    /// Vanadium-rich MC.
    Mc,
}

impl PhaseName {
    /// All phases, matrix first.
    pub const ALL: [Self; 7] = [
        Self::Austenite,
        Self::Ferrite,
        Self::Cementite,
        Self::M7C3,
        Self::M23C6,
        Self::M6C,
        Self::Mc,
    ];

    /// True of every phase but austenite and ferrite.
    #[must_use]
    pub const fn is_carbide(self) -> bool {
        !matches!(self, Self::Austenite | Self::Ferrite)
    }
}

/// Why no equilibrium is given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum EquilibriumError {
    /// The composition is not one of a steel.
    #[error(transparent)]
    Composition(#[from] CompositionError),
    /// Composition or temperature outside the range of the model.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// The search for the stable set did not come to rest.
    #[error("{}", texts::not_at_rest(*temperature_c))]
    NotConverged {
        /// Temperature asked for, °C.
        temperature_c: f64,
    },
}
