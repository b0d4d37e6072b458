//! How one phase answers to chemical potentials: Newton's step in its site fractions as a linear
//! function of the potentials (Hillert's formulation of equilibrium).
//!
//! Site fractions are scaled by their square roots: the ideal entropy of mixing then gives a
//! multiple of the identity however small a fraction is, and steps are taken in the logarithm.

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
        let per_rt = 1.0 / model.rt();
        model.without_mixing(y, work);
        let mut roots = [0.0; MOST];
        for i in 0..count {
            roots[i] = y[i].sqrt();
        }
        let mut curvature = [[0.0; MOST]; MOST];
        let mut energy = work.value * per_rt;
        let mut by_gradient = [0.0; MOST];
        for i in 0..count {
            let variable = &model.variables[i];
            let log = y[i].ln();
            energy += variable.sites * y[i] * log;
            by_gradient[i] = roots[i] * (work.gradient[i] * per_rt + variable.sites * (log + 1.0));
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
        let mut response = Self {
            energy,
            atoms: model.atoms(y),
            by_potential: [[0.0; MOST]; ELEMENTS],
            by_gradient,
            roots,
            regularised,
        };
        let normals = Normals::new(model, &factor, &roots);
        normals.project(&factor, &mut response.by_gradient, count);
        for element in 0..elements {
            let step = &mut response.by_potential[element];
            let mut any = false;
            for (i, variable) in model.variables.iter().enumerate() {
                if variable.element == Some(element) {
                    step[i] = roots[i] * variable.sites;
                    any = true;
                }
            }
            if any {
                normals.project(&factor, step, count);
            }
        }
        Some(response)
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
        let count = model.variables.len();
        let mut length = 0.0;
        let mut sums = [0.0; SUBLATTICES];
        for i in 0..count {
            let mut z = -self.by_gradient[i];
            for (potential, by) in potentials.iter().zip(&self.by_potential).take(elements) {
                z += potential * by[i];
            }
            length += z * z;
            let log = (z / self.roots[i]).clamp(-LARGEST_FALL, LARGEST_RISE);
            y[i] = (y[i] * log.exp()).clamp(1e-30, 1.0);
            sums[model.variables[i].sublattice] += y[i];
        }
        for (fraction, variable) in y.iter_mut().zip(&model.variables) {
            *fraction /= sums[variable.sublattice];
        }
        length.sqrt()
    }

    /// Energy above the plane of the potentials, per mole of atoms, in units of RT.
    pub(super) fn above_plane(&self, potentials: &[f64; ELEMENTS], elements: usize) -> f64 {
        let mut height = self.energy;
        let mut atoms = 0.0;
        for (potential, n) in potentials.iter().zip(&self.atoms).take(elements) {
            height -= potential * n;
            atoms += n;
        }
        height / atoms
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
