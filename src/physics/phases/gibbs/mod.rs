//! Gibbs energies of the phases of steel in the compound energy formalism, with magnetism:
//! austenite and MC, ferrite, cementite, M7C3, M23C6 and M6C of Fe-C-Cr-Mn-Mo-Ni-Si-V-W.
//!
//! Per mole of formula units the energy is the sum over end-members, the ideal entropy of mixing
//! on each sublattice, interactions, and the magnetic term. A compiled phase holds plain numbers
//! for the elements present at one temperature and gives value, gradient and Hessian.

mod lattice;
mod listing;
mod magnetic;
mod parameters;
mod phase;
mod polynomial;
mod temperature;

#[cfg(test)]
mod tests;

pub use listing::{ParameterLine, parameter_lines};

pub(crate) use lattice::Structure;
pub(crate) use parameters::Component;
pub(crate) use phase::{ELEMENT_ORDER, ELEMENTS, GAS_CONSTANT, PhaseModel};
pub(crate) use polynomial::{Derivatives, MOST};
pub(crate) use temperature::AtTemperature;
