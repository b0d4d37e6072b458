//! How one phase answers to chemical potentials: Newton's step in its site fractions as a linear
//! function of the potentials (Hillert's formulation of equilibrium).
//!
//! Site fractions are scaled by their square roots: the ideal entropy of mixing then gives a
//! multiple of the identity however small a fraction is, and steps are taken in the logarithm.

#![allow(
    clippy::needless_range_loop,
    reason = "indices run over several arrays at once"
)]

use crate::numeric::dense::{cholesky, cholesky_solve};
use crate::phases::gibbs::{Derivatives, ELEMENTS, MOST, PhaseModel};

/// Most sublattices with more than one constituent.
const SUBLATTICES: usize = 2;

/// Weight that keeps the scaled Hessian positive along the normals of the site balances, where
/// its curvature has no meaning.
const NORMAL_WEIGHT: f64 = 1e3;

/// Largest rise and fall of the logarithm of a site fraction in one step.
const LARGEST_RISE: f64 = 2.5;
const LARGEST_FALL: f64 = 4.0;

/// Newton's step of one phase as a function of the potentials; energies in units of RT.
#[derive(Debug, Clone)]
pub(super) struct Response {
    /// Gibbs energy per formula unit.
    pub(super) energy: f64,
    /// Atoms of each element per formula unit.
    pub(super) atoms: [f64; ELEMENTS],
    /// Scaled step per unit of each potential.
    by_potential: [[f64; MOST]; ELEMENTS],
    /// Scaled step at zero potentials, with the sign turned.
    by_gradient: [f64; MOST],
    roots: [f64; MOST],
    /// Curvature had to be added: the phase is unstable against separation here.
    pub(super) regularised: bool,
}

/// Second-order expansion of a phase at its site fractions.
struct Expansion {
    energy: f64,
    gradient: [f64; MOST],
    roots: [f64; MOST],
    factor: [[f64; MOST]; MOST],
    normals: Normals,
    regularised: bool,
}

impl Expansion {
    /// `None` when the energy is not a number or no positive curvature can be had.
    fn new(model: &PhaseModel, y: &[f64; MOST], work: &mut Derivatives) -> Option<Self> {
        let count = model.variables.len();
        let per_rt = 1.0 / model.rt();
        model.without_mixing(y, work);
        let mut roots = [0.0; MOST];
        for i in 0..count {
            roots[i] = y[i].sqrt();
        }
        let mut curvature = [[0.0; MOST]; MOST];
        let mut energy = work.value * per_rt;
        let mut gradient = [0.0; MOST];
        for i in 0..count {
            let variable = &model.variables[i];
            let log = y[i].ln();
            energy += variable.sites * y[i] * log;
            gradient[i] = roots[i] * (work.gradient[i] * per_rt + variable.sites * (log + 1.0));
            for j in 0..=i {
                let normal = if variable.sublattice == model.variables[j].sublattice {
                    NORMAL_WEIGHT
                } else {
                    0.0
                };
                curvature[i][j] = roots[i] * roots[j] * (work.hessian[i][j] * per_rt + normal);
            }
            curvature[i][i] += variable.sites;
        }
        if !energy.is_finite() {
            return None;
        }
        let mut factor = curvature;
        let mut regularised = false;
        let mut added = 0.01;
        while cholesky(&mut factor, count).is_err() {
            regularised = true;
            added *= 4.0;
            if added > 1e5 {
                return None;
            }
            factor = curvature;
            for (i, row) in factor.iter_mut().enumerate().take(count) {
                row[i] += added;
            }
        }
        Some(Self {
            energy,
            gradient,
            normals: Normals::new(model, &factor, &roots),
            roots,
            factor,
            regularised,
        })
    }

    fn project(&self, vector: &mut [f64; MOST], count: usize) {
        self.normals.project(&self.factor, vector, count);
    }
}

/// A step of one phase towards its lowest height above a fixed plane of potentials.
pub(super) struct Descent {
    /// Height before the step, per mole of atoms, in units of RT.
    pub(super) height: f64,
    /// Scaled length of the step.
    pub(super) length: f64,
    /// Curvature had to be added.
    pub(super) regularised: bool,
}

impl Descent {
    /// Takes one step; `None` as for an expansion.
    pub(super) fn step(
        model: &PhaseModel,
        y: &mut [f64; MOST],
        potentials: &[f64; ELEMENTS],
        work: &mut Derivatives,
    ) -> Option<Self> {
        let expansion = Expansion::new(model, y, work)?;
        let (mut height, mut size) = (expansion.energy, 0.0);
        for (potential, n) in potentials.iter().zip(model.atoms(y)) {
            height -= potential * n;
            size += n;
        }
        let mut step = [0.0; MOST];
        for (i, variable) in model.variables.iter().enumerate() {
            let potential = variable.element.map_or(0.0, |e| potentials[e]);
            step[i] = expansion.roots[i] * variable.sites * potential - expansion.gradient[i];
        }
        expansion.project(&mut step, model.variables.len());
        Some(Self {
            height: height / size,
            length: take_step(model, &expansion.roots, &step, y),
            regularised: expansion.regularised,
        })
    }
}

/// Moves site fractions by a scaled step in their logarithms; gives the scaled length.
fn take_step(
    model: &PhaseModel,
    roots: &[f64; MOST],
    step: &[f64; MOST],
    y: &mut [f64; MOST],
) -> f64 {
    let mut length = 0.0;
    let mut sums = [0.0; SUBLATTICES];
    for (i, variable) in model.variables.iter().enumerate() {
        length += step[i] * step[i];
        let log = (step[i] / roots[i]).clamp(-LARGEST_FALL, LARGEST_RISE);
        y[i] = (y[i] * log.exp()).clamp(1e-30, 1.0);
        sums[variable.sublattice] += y[i];
    }
    for (fraction, variable) in y.iter_mut().zip(&model.variables) {
        *fraction /= sums[variable.sublattice];
    }
    length.sqrt()
}

impl Response {
    /// Expands the phase at its site fractions.
    /// `None` when the energy is not a number or no positive curvature can be had.
    pub(super) fn expand(
        model: &PhaseModel,
        y: &[f64; MOST],
        elements: usize,
        work: &mut Derivatives,
    ) -> Option<Self> {
        let count = model.variables.len();
        let expansion = Expansion::new(model, y, work)?;
        let mut by_gradient = expansion.gradient;
        expansion.project(&mut by_gradient, count);
        let mut by_potential = [[0.0; MOST]; ELEMENTS];
        for (element, step) in by_potential.iter_mut().enumerate().take(elements) {
            let mut any = false;
            for (i, variable) in model.variables.iter().enumerate() {
                if variable.element == Some(element) {
                    step[i] = expansion.roots[i] * variable.sites;
                    any = true;
                }
            }
            if any {
                expansion.project(step, count);
            }
        }
        Some(Self {
            energy: expansion.energy,
            atoms: model.atoms(y),
            by_potential,
            by_gradient,
            roots: expansion.roots,
            regularised: expansion.regularised,
        })
    }

    /// Change of the atoms of `of` per unit of the potential of `by`, and at zero potentials.
    pub(super) fn uptake(&self, model: &PhaseModel, of: usize, by: Option<usize>) -> f64 {
        let step = by.map_or(&self.by_gradient, |element| &self.by_potential[element]);
        let mut sum = 0.0;
        for (i, variable) in model.variables.iter().enumerate() {
            if variable.element == Some(of) {
                sum += variable.sites * self.roots[i] * step[i];
            }
        }
        sum
    }

    /// Takes the step that belongs to the potentials; gives its scaled length.
    pub(super) fn step(
        &self,
        model: &PhaseModel,
        potentials: &[f64; ELEMENTS],
        elements: usize,
        y: &mut [f64; MOST],
    ) -> f64 {
        let mut step = [0.0; MOST];
        for (i, z) in step.iter_mut().enumerate().take(model.variables.len()) {
            *z = -self.by_gradient[i];
            for (potential, by) in potentials.iter().zip(&self.by_potential).take(elements) {
                *z += potential * by[i];
            }
        }
        take_step(model, &self.roots, &step, y)
    }
}

/// The site balances, made orthogonal to the steps.
struct Normals {
    sublattices: usize,
    unit: [[f64; MOST]; SUBLATTICES],
    solved: [[f64; MOST]; SUBLATTICES],
    inverse: [[f64; SUBLATTICES]; SUBLATTICES],
}

impl Normals {
    fn new(model: &PhaseModel, factor: &[[f64; MOST]; MOST], roots: &[f64; MOST]) -> Self {
        let count = model.variables.len();
        let sublattices = model.sublattices.min(SUBLATTICES);
        let mut unit = [[0.0; MOST]; SUBLATTICES];
        for (i, variable) in model.variables.iter().enumerate() {
            unit[variable.sublattice][i] = roots[i];
        }
        let mut solved = unit;
        for vector in solved.iter_mut().take(sublattices) {
            cholesky_solve(factor, vector, count);
        }
        let dot =
            |s: usize, t: usize| -> f64 { (0..count).map(|i| unit[s][i] * solved[t][i]).sum() };
        let inverse = if sublattices == 2 {
            let (a, b, d) = (dot(0, 0), dot(0, 1), dot(1, 1));
            let determinant = a * d - b * b;
            [
                [d / determinant, -b / determinant],
                [-b / determinant, a / determinant],
            ]
        } else {
            [[1.0 / dot(0, 0), 0.0], [0.0, 0.0]]
        };
        Self {
            sublattices,
            unit,
            solved,
            inverse,
        }
    }

    /// Solves for a right-hand side under the site balances.
    fn project(&self, factor: &[[f64; MOST]; MOST], vector: &mut [f64; MOST], count: usize) {
        cholesky_solve(factor, vector, count);
        let mut along = [0.0; SUBLATTICES];
        for (s, value) in along.iter_mut().enumerate().take(self.sublattices) {
            *value = (0..count).map(|i| self.unit[s][i] * vector[i]).sum();
        }
        for s in 0..self.sublattices {
            let multiplier = self.inverse[s][0] * along[0] + self.inverse[s][1] * along[1];
            for i in 0..count {
                vector[i] -= multiplier * self.solved[s][i];
            }
        }
    }
}
