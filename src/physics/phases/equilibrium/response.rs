//! How one phase answers to chemical potentials: Newton's step in its site fractions as a linear
//! function of the potentials (Hillert's formulation of equilibrium).
//!
//! Site fractions are scaled by their square roots: the ideal entropy of mixing then gives a
//! multiple of the identity however small a fraction is, and steps are taken in the logarithm.

#![allow(
    clippy::needless_range_loop,
    reason = "indices run over several arrays at once"
)]

use crate::numeric::dense::{cholesky, cholesky_backward, cholesky_forward};
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
    factor: [[f64; MOST]; MOST],
    /// Half solved: the scaled step per unit of each potential.
    by_potential: [[f64; MOST]; ELEMENTS],
    /// Half solved: the scaled step at zero potentials, with the sign turned.
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
    balances: Balances,
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
        // the curvature in the upper triangle, its factor in the lower
        let mut factor = [[0.0; MOST]; MOST];
        let mut energy = work.value * per_rt;
        let mut gradient = [0.0; MOST];
        let mut diagonal = [0.0; MOST];
        for (i, variable) in model.variables.iter().enumerate() {
            let log = y[i].ln();
            energy += variable.sites * y[i] * log;
            gradient[i] = roots[i] * (work.gradient[i] * per_rt + variable.sites * (log + 1.0));
            for (j, other) in model.variables.iter().enumerate().take(i + 1) {
                let normal = if variable.sublattice == other.sublattice {
                    NORMAL_WEIGHT
                } else {
                    0.0
                };
                factor[j][i] = roots[i] * roots[j] * (work.hessian[i][j] * per_rt + normal);
            }
            diagonal[i] = factor[i][i] + variable.sites;
        }
        if !energy.is_finite() {
            return None;
        }
        let mut added = 0.0;
        while !factorised(&mut factor, &diagonal, added, count) {
            added = if added == 0.0 { 0.04 } else { 4.0 * added };
            if added > 1e5 {
                return None;
            }
        }
        Some(Self {
            energy,
            gradient,
            balances: Balances::new(model, &factor, &roots),
            roots,
            factor,
            regularised: added > 0.0,
        })
    }

    /// Half solves for a right-hand side that is zero before place `from`, under the site balances.
    fn half_solve(&self, vector: &mut [f64; MOST], from: usize, count: usize) {
        cholesky_forward(&self.factor, vector, from, count);
        self.balances.keep(vector, count);
    }
}

/// Puts the factor of the matrix in the upper triangle into the lower, with a diagonal of its own
/// and something added to it; false where that is not positive.
fn factorised(
    matrix: &mut [[f64; MOST]; MOST],
    diagonal: &[f64; MOST],
    added: f64,
    count: usize,
) -> bool {
    for i in 0..count {
        for j in 0..i {
            matrix[i][j] = matrix[j][i];
        }
        matrix[i][i] = diagonal[i] + added;
    }
    cholesky(matrix, count).is_ok()
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
        let count = model.variables.len();
        expansion.half_solve(&mut step, 0, count);
        cholesky_backward(&expansion.factor, &mut step, count);
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
        expansion.half_solve(&mut by_gradient, 0, count);
        let mut by_potential = [[0.0; MOST]; ELEMENTS];
        for (element, step) in by_potential.iter_mut().enumerate().take(elements) {
            let mut first = None;
            for (i, variable) in model.variables.iter().enumerate() {
                if variable.element == Some(element) {
                    step[i] = expansion.roots[i] * variable.sites;
                    first = first.or(Some(i));
                }
            }
            if let Some(first) = first {
                expansion.half_solve(step, first, count);
            }
        }
        Some(Self {
            energy: expansion.energy,
            atoms: model.atoms(y),
            factor: expansion.factor,
            by_potential,
            by_gradient,
            roots: expansion.roots,
            regularised: expansion.regularised,
        })
    }

    /// Change of the atoms of `of` per unit of the potential of `by`, and at zero potentials.
    pub(super) fn uptake(&self, of: usize, by: Option<usize>) -> f64 {
        let step = by.map_or(&self.by_gradient, |element| &self.by_potential[element]);
        dot(&self.by_potential[of], step)
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
        let mut step = self.by_gradient.map(|g| -g);
        for (potential, by) in potentials.iter().zip(&self.by_potential).take(elements) {
            for (z, by) in step.iter_mut().zip(by).take(count) {
                *z += potential * by;
            }
        }
        cholesky_backward(&self.factor, &mut step, count);
        take_step(model, &self.roots, &step, y)
    }
}

/// The site balances, half solved, at right angles to each other and of length one: a half solved
/// step that is at right angles to them keeps the sum of the fractions of every sublattice.
struct Balances {
    count: usize,
    normals: [[f64; MOST]; SUBLATTICES],
}

impl Balances {
    fn new(model: &PhaseModel, factor: &[[f64; MOST]; MOST], roots: &[f64; MOST]) -> Self {
        let mut made = Self {
            count: 0,
            normals: [[0.0; MOST]; SUBLATTICES],
        };
        for sublattice in 0..model.sublattices.min(SUBLATTICES) {
            let mut normal = [0.0; MOST];
            for (i, variable) in model.variables.iter().enumerate() {
                if variable.sublattice == sublattice {
                    normal[i] = roots[i];
                }
            }
            cholesky_forward(factor, &mut normal, 0, model.variables.len());
            made.keep(&mut normal, model.variables.len());
            let length = dot(&normal, &normal).sqrt();
            made.normals[sublattice] = normal.map(|value| value / length);
            made.count += 1;
        }
        made
    }

    /// Takes from a half solved vector what would change a balance.
    fn keep(&self, vector: &mut [f64; MOST], count: usize) {
        for normal in &self.normals[..self.count] {
            let mut along = 0.0;
            for i in 0..count {
                along += normal[i] * vector[i];
            }
            for i in 0..count {
                vector[i] -= along * normal[i];
            }
        }
    }
}

/// Scalar product; what is not used is zero.
fn dot(a: &[f64; MOST], b: &[f64; MOST]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
