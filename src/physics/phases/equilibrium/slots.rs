//! The phases that a stable set is chosen from, with their present state.

use super::PhaseName;
use crate::phases::gibbs::{
    AtTemperature, Component, ELEMENT_ORDER, ELEMENTS, MOST, PhaseModel, Structure,
};
use crate::steel::{Composition, Element};

/// Filled share of the carbon sites above which the face-centred phase is MC.
pub(super) const MC_CARBON: f64 = 0.3;

/// Contents below this, wt %, are left out: they have no effect that could be seen.
const LEAST_WT: f64 = 1e-6;

/// Atomic masses used with the parameters, g/mol, in the order of [`ELEMENT_ORDER`].
pub(super) const MASSES: [f64; ELEMENTS] = [
    12.011, 51.996, 55.847, 54.938, 95.94, 58.69, 28.0855, 50.9415, 183.85,
];

/// The element of a composition that a component stands for; iron is the balance.
pub(super) const fn element(component: Component) -> Option<Element> {
    match component {
        Component::C => Some(Element::C),
        Component::Cr => Some(Element::Cr),
        Component::Mn => Some(Element::Mn),
        Component::Mo => Some(Element::Mo),
        Component::Ni => Some(Element::Ni),
        Component::Si => Some(Element::Si),
        Component::V => Some(Element::V),
        Component::W => Some(Element::W),
        Component::Fe | Component::Va => None,
    }
}

/// Moles of the elements present in one mole of atoms of a steel.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Amounts {
    /// Elements present, in alphabetical order.
    pub(super) present: Vec<Component>,
    /// Mole fractions, in the same order.
    pub(super) moles: [f64; ELEMENTS],
}

impl Amounts {
    /// Iron is the balance of the elements described; phosphorus and sulphur count as iron.
    pub(super) fn new(steel: &Composition) -> Self {
        let mut present = Vec::with_capacity(ELEMENTS);
        let mut moles = [0.0; ELEMENTS];
        let mut balance_wt = 100.0;
        for component in ELEMENT_ORDER {
            if let Some(element) = element(component) {
                balance_wt -= steel.get(element).max(0.0);
            }
        }
        for (component, mass) in ELEMENT_ORDER.into_iter().zip(MASSES) {
            let wt = element(component).map_or(balance_wt, |e| steel.get(e));
            if wt >= LEAST_WT {
                moles[present.len()] = wt / mass;
                present.push(component);
            }
        }
        let sum: f64 = moles.iter().sum();
        moles.iter_mut().for_each(|m| *m /= sum);
        Self { present, moles }
    }

    pub(super) fn count(&self) -> usize {
        self.present.len()
    }

    /// Place of an element among those present.
    pub(super) fn place(&self, component: Component) -> Option<usize> {
        self.present.iter().position(|c| *c == component)
    }
}

/// One phase that may take part.
#[derive(Debug, Clone)]
pub(super) struct Slot {
    pub(super) name: PhaseName,
    /// Place of its compiled structure.
    pub(super) model: usize,
    /// Site fractions.
    pub(super) y: [f64; MOST],
    /// Moles of formula units in one mole of atoms of steel.
    pub(super) amount: f64,
    /// Part of the stable set.
    pub(super) active: bool,
    /// A second composition of a phase that has another slot.
    pub(super) second: bool,
    /// Never considered, for the search of boundaries.
    pub(super) suspended: bool,
    /// The site fractions are those of an earlier minimum and a good start.
    pub(super) warm: bool,
    /// Height above the plane of potentials, per mole of atoms, in units of RT.
    pub(super) height: f64,
}

/// The compiled phases for one set of elements, with the numbers of one temperature.
#[derive(Debug, Clone)]
pub(super) struct Phases {
    pub(super) present: Vec<Component>,
    pub(super) models: Vec<PhaseModel>,
    pub(super) slots: Vec<Slot>,
    pub(super) kelvin: f64,
}

impl Phases {
    pub(super) fn new(present: &[Component]) -> Self {
        Self::of(&Structure::ALL, present)
    }

    /// Those of some structures only.
    pub(super) fn of(structures: &[Structure], present: &[Component]) -> Self {
        let mut models = Vec::new();
        let mut slots = Vec::new();
        for &structure in structures {
            let Some(model) = PhaseModel::new(structure, present) else {
                continue;
            };
            let names: &[PhaseName] = match structure {
                Structure::Fcc if present.contains(&Component::C) => {
                    &[PhaseName::Austenite, PhaseName::Mc]
                }
                Structure::Fcc => &[PhaseName::Austenite],
                Structure::Bcc => &[PhaseName::Ferrite],
                Structure::Cementite => &[PhaseName::Cementite],
                Structure::M7C3 => &[PhaseName::M7C3],
                Structure::M23C6 => &[PhaseName::M23C6],
                Structure::M6C => &[PhaseName::M6C],
            };
            for name in names {
                slots.push(Slot {
                    name: *name,
                    model: models.len(),
                    y: [0.0; MOST],
                    amount: 0.0,
                    active: false,
                    second: false,
                    suspended: false,
                    warm: false,
                    height: f64::INFINITY,
                });
            }
            models.push(model);
        }
        Self {
            present: present.to_vec(),
            models,
            slots,
            kelvin: f64::NAN,
        }
    }

    /// Sets the numbers of a temperature, if they are not there already.
    pub(super) fn set_temperature(&mut self, kelvin: f64) {
        if self.kelvin == kelvin {
            return;
        }
        let at = AtTemperature::new(kelvin);
        for model in &mut self.models {
            model.set_temperature(&at);
        }
        self.kelvin = kelvin;
    }

    /// The face-centred slots are told apart by their carbon; other phases are what they are.
    pub(super) fn is_itself(&self, slot: &Slot) -> bool {
        model_is(slot.name, &self.models[slot.model], &slot.y)
    }
}

/// True when site fractions belong to the phase of a name: austenite and MC share a structure and
/// are told apart by how far carbon fills its sites.
pub(super) fn model_is(name: PhaseName, model: &PhaseModel, y: &[f64; MOST]) -> bool {
    let filled = || {
        let mut sites = model.variables.iter().zip(y);
        sites
            .find(|(variable, _)| variable.constituent == Component::C)
            .map_or(0.0, |(_, fraction)| *fraction)
    };
    match name {
        PhaseName::Austenite => filled() < MC_CARBON,
        PhaseName::Mc => filled() >= MC_CARBON,
        _ => true,
    }
}
