//! Where searches begin: a single phase with the steel's composition, and the points from which
//! each phase looks for its lowest height above the plane of potentials.

use super::PhaseName;
use super::slots::{Amounts, Phases, Slot};
use crate::phases::gibbs::{Component, Derivatives, ELEMENTS, MOST, PhaseModel};

/// Puts the whole steel into austenite, or into ferrite where austenite is suspended.
pub(super) fn single_phase(phases: &mut Phases, amounts: &Amounts) {
    let carbon = amounts
        .place(Component::C)
        .map_or(0.0, |place| amounts.moles[place]);
    let metal = 1.0 - carbon;
    let suspended = phases
        .slots
        .iter()
        .any(|slot| slot.name == PhaseName::Austenite && slot.suspended);
    let name = if suspended {
        PhaseName::Ferrite
    } else {
        PhaseName::Austenite
    };
    for slot in phases.slots.iter_mut().filter(|slot| slot.name == name) {
        let model = &phases.models[slot.model];
        let carbon_sites = model
            .variables
            .iter()
            .find(|variable| variable.constituent == Component::Va)
            .map_or(1.0, |variable| variable.sites);
        let filled = (carbon / metal / carbon_sites).min(0.9);
        for (fraction, variable) in slot.y.iter_mut().zip(&model.variables) {
            *fraction = match (variable.constituent, variable.element) {
                (Component::C, _) => filled,
                (Component::Va, _) => 1.0 - filled,
                (_, Some(place)) => amounts.moles[place] / metal,
                (_, None) => 0.0,
            };
        }
        slot.active = true;
        slot.amount = metal;
    }
}

/// Site fractions from which the lowest height of a phase is sought.
pub(super) fn starts(
    phases: &Phases,
    slot: &Slot,
    amounts: &Amounts,
    potentials: &[f64; ELEMENTS],
    work: &mut Derivatives,
) -> Vec<[f64; MOST]> {
    let model = &phases.models[slot.model];
    let carbon_filled = match slot.name {
        PhaseName::Austenite => 0.04,
        PhaseName::Ferrite => 3e-4,
        _ => 0.93,
    };
    let rich_in: &[Component] = match slot.name {
        PhaseName::Austenite | PhaseName::Ferrite | PhaseName::Cementite => &[],
        PhaseName::Mc => &[Component::V, Component::Mo, Component::W, Component::Cr],
        PhaseName::M7C3 => &[Component::Cr],
        PhaseName::M23C6 | PhaseName::M6C => &[Component::Cr, Component::Mo, Component::W],
    };
    let bulk = |constituent: Component| {
        amounts
            .place(constituent)
            .map_or(0.0, |place| amounts.moles[place])
    };
    let mut found = vec![near_ideal(
        model,
        mixture(model, carbon_filled, bulk),
        potentials,
        work,
    )];
    for rich in rich_in.iter().filter(|c| amounts.present.contains(c)) {
        found.push(mixture(model, carbon_filled, |constituent| {
            bulk(constituent) * 0.25 + if constituent == *rich { 0.75 } else { 0.0 }
        }));
    }
    found
}

/// Site fractions with given shares of the metals on every sublattice.
fn mixture(
    model: &PhaseModel,
    carbon_filled: f64,
    share: impl Fn(Component) -> f64,
) -> [f64; MOST] {
    let mut y = [0.0; MOST];
    for (fraction, variable) in y.iter_mut().zip(&model.variables) {
        *fraction = match variable.constituent {
            Component::C => carbon_filled,
            Component::Va => 1.0 - carbon_filled,
            metal => share(metal).max(1e-12),
        };
    }
    normalise(model, &mut y);
    y
}

/// The metals as an ideal mixture would choose them at the given potentials.
fn near_ideal(
    model: &PhaseModel,
    mut y: [f64; MOST],
    potentials: &[f64; ELEMENTS],
    work: &mut Derivatives,
) -> [f64; MOST] {
    model.without_mixing(&y, work);
    let per_rt = 1.0 / model.rt();
    let mut logs = [f64::NEG_INFINITY; MOST];
    for (i, variable) in model.variables.iter().enumerate() {
        if let (Some(element), true) = (variable.element, variable.constituent != Component::C) {
            logs[i] = potentials[element] - work.gradient[i] * per_rt / variable.sites;
        }
    }
    for sublattice in 0..model.sublattices {
        let of_it = |i: &usize| model.variables[*i].sublattice == sublattice;
        let members: Vec<usize> = (0..model.variables.len()).filter(of_it).collect();
        let largest = members
            .iter()
            .fold(f64::NEG_INFINITY, |m, i| m.max(logs[*i]));
        if largest.is_finite() {
            for i in members {
                y[i] = (logs[i] - largest).exp().max(1e-20);
            }
        }
    }
    normalise(model, &mut y);
    y
}

fn normalise(model: &PhaseModel, y: &mut [f64; MOST]) {
    for sublattice in 0..model.sublattices {
        let mut sum = 0.0;
        for (fraction, variable) in y.iter().zip(&model.variables) {
            if variable.sublattice == sublattice {
                sum += fraction;
            }
        }
        for (fraction, variable) in y.iter_mut().zip(&model.variables) {
            if variable.sublattice == sublattice {
                *fraction /= sum;
            }
        }
    }
}
