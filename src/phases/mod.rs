//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod critical;
mod equilibrium;
mod gibbs;
mod limit;
mod map;

pub use critical::{CriticalTemperatures, UpperLimit, critical_temperatures};
pub use equilibrium::{
    Equilibrium, EquilibriumError, EquilibriumSeries, PhaseAmount, PhaseName, RANGE, equilibrium,
};
pub(crate) use limit::ferrite_carbon_wt;
pub use limit::{Annealed, SoakLimit, annealed, soak_limit};
pub use map::{PhaseMap, phase_map};

use crate::steel::{CompositionError, OutOfRange};

/// Why no state of equilibrium is given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PhaseError {
    /// The composition is not one of a steel.
    #[error(transparent)]
    Composition(#[from] CompositionError),
    /// The model does not hold there.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// No austenite forms.
    #[error("no austenite forms at {temperature_c:.0} °C: A1 of this steel is {a1_c:.0} °C")]
    BelowA1 {
        /// The temperature asked, °C.
        temperature_c: f64,
        /// Where austenite begins, °C.
        a1_c: f64,
    },
}
