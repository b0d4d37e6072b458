//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod equilibrium;
mod gibbs;

pub use equilibrium::{
    Equilibrium, EquilibriumError, EquilibriumSeries, PhaseAmount, PhaseName, RANGE, equilibrium,
};
