//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod equilibrium;
mod gibbs;

pub use equilibrium::{
    CriticalPoints, Equilibrium, EquilibriumError, EquilibriumSeries, Isopleth, PhaseAmount,
    PhaseLine, PhaseName, RANGE as EQUILIBRIUM_RANGE, StableRange, critical_points, equilibrium,
    full_equilibrium_austenite, isopleth, para_equilibrium, stable_phases,
};
pub use gibbs::{ParameterLine, parameter_lines};
