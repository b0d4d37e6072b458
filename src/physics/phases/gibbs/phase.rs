//! One phase of the compound energy formalism, compiled for the elements present.

use super::lattice::Structure;
use super::magnetic::add_magnetic;
use super::parameters::{Component, Kind};
use super::polynomial::{Derivatives, MOST, Polynomial};
use super::temperature::AtTemperature;

/// Gas constant that the parameters were assessed with, J/(mol K).
pub(crate) const GAS_CONSTANT: f64 = 8.3145;

/// Elements described: iron and eight others.
pub(crate) const ELEMENTS: usize = 9;

/// The elements in the order of their places in vectors.
pub(crate) const ELEMENT_ORDER: [Component; ELEMENTS] = [
    Component::C,
    Component::Cr,
    Component::Fe,
    Component::Mn,
    Component::Mo,
    Component::Ni,
    Component::Si,
    Component::V,
    Component::W,
];

/// A site fraction: whose it is and what it counts for.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Variable {
    /// Place of the element among those present; `None` for empty sites.
    pub(crate) element: Option<usize>,
    /// The constituent.
    pub(crate) constituent: Component,
    /// Sites of its sublattice per formula unit.
    pub(crate) sites: f64,
    /// Sublattice, counted over those with variables.
    pub(crate) sublattice: usize,
}

/// A phase, with numbers for one temperature.
#[derive(Debug, Clone)]
pub(crate) struct PhaseModel {
    pub(crate) structure: Structure,
    pub(crate) variables: Vec<Variable>,
    /// Sublattices with variables.
    pub(crate) sublattices: usize,
    /// Atoms per formula unit of elements that fill a sublattice alone.
    pub(crate) fixed_atoms: [f64; ELEMENTS],
    energy: Polynomial,
    ordering: Polynomial,
    moment: Polynomial,
    kelvin: f64,
}

impl PhaseModel {
    /// Compiles a structure for the elements present; `None` when it cannot form from them.
    pub(crate) fn new(structure: Structure, present: &[Component]) -> Option<Self> {
        let place_of = |c: Component| present.iter().position(|p| *p == c);
        let there = |c: Component| c == Component::Va || place_of(c).is_some();
        let mut variables = Vec::new();
        let mut fixed_atoms = [0.0; ELEMENTS];
        let mut places: Vec<Vec<(Component, Option<usize>)>> = Vec::new();
        let mut sublattices = 0;
        for (sites, constituents) in structure.sublattices() {
            let mut row = Vec::new();
            let alone = constituents.len() == 1;
            for constituent in constituents.iter().filter(|c| there(**c)) {
                if alone {
                    row.push((*constituent, None));
                    fixed_atoms[place_of(*constituent)?] += sites;
                } else {
                    row.push((*constituent, Some(variables.len())));
                    variables.push(Variable {
                        element: place_of(*constituent),
                        constituent: *constituent,
                        sites: *sites,
                        sublattice: sublattices,
                    });
                }
            }
            if row.is_empty() {
                return None;
            }
            sublattices += usize::from(!alone);
            places.push(row);
        }
        let find = |s: usize, c: Component| places[s].iter().find(|(known, _)| *known == c);
        let collect = |kind| {
            Polynomial::collect(
                structure.parameters(),
                kind,
                |s, c| find(s, c).is_some(),
                |s, c| find(s, c).and_then(|(_, variable)| *variable),
            )
        };
        Some(Self {
            structure,
            energy: collect(Kind::Energy),
            ordering: collect(Kind::Ordering),
            moment: collect(Kind::Moment),
            variables,
            sublattices,
            fixed_atoms,
            kelvin: f64::NAN,
        })
    }

    /// Sets the numbers for a temperature.
    pub(crate) fn set_temperature(&mut self, at: &AtTemperature) {
        self.energy.set_temperature(at);
        self.ordering.set_temperature(at);
        self.moment.set_temperature(at);
        self.kelvin = at.kelvin;
    }

    /// R T at the temperature set, J/mol.
    pub(crate) fn rt(&self) -> f64 {
        GAS_CONSTANT * self.kelvin
    }

    /// Gibbs energy, J per mole of formula units, with gradient and full Hessian in site
    /// fractions, without the ideal entropy of mixing.
    pub(crate) fn without_mixing(&self, y: &[f64; MOST], out: &mut Derivatives) {
        let count = self.variables.len();
        out.clear(count);
        self.energy.add_to(y, out);
        if let (Some(magnetism), false) = (self.structure.magnetism(), self.ordering.is_empty()) {
            let mut ordering = Derivatives::ZERO;
            let mut moment = Derivatives::ZERO;
            self.ordering.add_to(y, &mut ordering);
            self.moment.add_to(y, &mut moment);
            add_magnetic(
                magnetism,
                self.rt(),
                self.kelvin,
                &ordering,
                &moment,
                count,
                out,
            );
        }
        out.mirror(count);
    }

    /// Adds the ideal entropy of mixing to value, gradient and Hessian.
    pub(crate) fn add_mixing(&self, y: &[f64; MOST], out: &mut Derivatives) {
        let rt = self.rt();
        for (i, variable) in self.variables.iter().enumerate() {
            if y[i] > 0.0 {
                let a = rt * variable.sites;
                let log = y[i].ln();
                out.value += a * y[i] * log;
                out.gradient[i] += a * (log + 1.0);
                out.hessian[i][i] += a / y[i];
            }
        }
    }

    /// Moles of each element present per mole of formula units.
    pub(crate) fn atoms(&self, y: &[f64; MOST]) -> [f64; ELEMENTS] {
        let mut atoms = self.fixed_atoms;
        for (variable, fraction) in self.variables.iter().zip(y) {
            if let Some(element) = variable.element {
                atoms[element] += variable.sites * fraction;
            }
        }
        atoms
    }
}
