//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod equilibrium;
mod gibbs;

pub use equilibrium::{
    CriticalPoints, Equilibrium, EquilibriumError, EquilibriumSeries, Isopleth, PhaseAmount,
    PhaseLine, PhaseName, RANGE, StableRange, critical_points, equilibrium, isopleth,
    stable_phases,
};
