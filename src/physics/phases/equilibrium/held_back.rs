//! Equilibria from which some phases are held back, and how far these are from forming: the
//! boundary of a phase is where that distance is zero.

use super::slots::{Amounts, Phases};
use super::solver::Solver;
use super::state::{Equilibrium, read};
use super::{EquilibriumError, PhaseName, ZERO_C_K};
use crate::phases::gibbs::Structure;
use crate::steel::Composition;

/// Stands for the height of a phase that cannot form at all, in units of RT.
const FAR: f64 = 1.0;

/// Equilibria without some phases, each begun from the last.
#[derive(Debug, Clone)]
pub(in crate::phases) struct HeldBack {
    structures: &'static [Structure],
    names: &'static [PhaseName],
    solver: Option<Solver>,
}

impl HeldBack {
    pub(in crate::phases) const fn new(names: &'static [PhaseName]) -> Self {
        Self::among(&Structure::ALL, names)
    }

    /// Among phases of some structures only: the others are never looked at.
    pub(in crate::phases) const fn among(
        structures: &'static [Structure],
        names: &'static [PhaseName],
    ) -> Self {
        Self {
            structures,
            names,
            solver: None,
        }
    }

    /// Lowest height of each phase held back above the equilibrium of all others, in the order in
    /// which they are held, in units of RT per mole of atoms: negative where the phase would form.
    /// Composition and temperature are not checked.
    pub(in crate::phases) fn heights<const N: usize>(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
        groups: [&[PhaseName]; N],
    ) -> Result<[f64; N], EquilibriumError> {
        let amounts = Amounts::new(steel);
        let solver = self.solve(steel, temperature_c)?;
        Ok(groups.map(|names| {
            let heights = names.iter().map(|name| solver.height_of(*name, &amounts));
            heights.fold(FAR, f64::min)
        }))
    }

    /// Height of the lowest of all phases held back.
    pub(in crate::phases) fn height(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
    ) -> Result<f64, EquilibriumError> {
        let [height] = self.heights(steel, temperature_c, [self.names])?;
        Ok(height)
    }

    /// Equilibrium of all phases but those held back.
    pub(in crate::phases) fn at(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
    ) -> Result<Equilibrium, EquilibriumError> {
        let solver = self.solve(steel, temperature_c)?;
        Ok(read(solver, &Amounts::new(steel), temperature_c))
    }

    fn solve(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
    ) -> Result<&mut Solver, EquilibriumError> {
        let amounts = Amounts::new(steel);
        let is_of_it = |s: &Solver| s.phases.present == amounts.present;
        if !self.solver.as_ref().is_some_and(is_of_it) {
            self.solver = None;
        }
        let solver = self.solver.get_or_insert_with(|| {
            let mut solver = Solver::of(Phases::of(self.structures, &amounts.present));
            for slot in &mut solver.phases.slots {
                slot.suspended = self.names.contains(&slot.name);
            }
            solver
        });
        solver.solve(&amounts, temperature_c + ZERO_C_K)?;
        Ok(solver)
    }
}
