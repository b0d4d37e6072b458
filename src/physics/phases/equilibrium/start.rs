//! Where searches begin: a single phase with the steel's composition, and the points from which
//! each phase looks for its lowest height above the plane of potentials.

use super::PhaseName;
use super::slots::{Amounts, Phases, Slot};
use crate::phases::gibbs::{Component, Derivatives, ELEMENTS, MOST, PhaseModel};

/// Puts the whole steel into austenite or, where that is suspended, into ferrite with its carbon
/// in cementite.
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
    let can_hold_carbon = |slot: &Slot| slot.name == PhaseName::Cementite && !slot.suspended;
    let beside_cementite = suspended && carbon > 1e-3 && phases.slots.iter().any(can_hold_carbon);
    for slot in phases.slots.iter_mut().filter(|slot| slot.name == name) {
        let model = &phases.models[slot.model];
        let carbon_sites = model
            .variables
            .iter()
            .find(|variable| variable.constituent == Component::Va)
            .map_or(1.0, |variable| variable.sites);
        let filled = if beside_cementite {
            carbon_filled(name).min(carbon)
        } else {
            (carbon / metal / carbon_sites).min(0.9)
        };
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
    if !beside_cementite {
        return;
    }
    if let Some(slot) = phases.slots.iter_mut().find(|slot| can_hold_carbon(slot)) {
        slot.y = mixture(&phases.models[slot.model], 1.0, |_, constituent| {
            bulk(amounts, constituent)
        });
        slot.active = true;
        slot.amount = carbon;
    }
}

/// Site fractions from which the lowest height of a phase is sought first: austenite and ferrite
/// like the steel, a carbide with its metals as an ideal mixture would take them.
pub(super) fn first(
    phases: &Phases,
    slot: usize,
    amounts: &Amounts,
    potentials: &[f64; ELEMENTS],
    work: &mut Derivatives,
) -> [f64; MOST] {
    let name = phases.slots[slot].name;
    let model = &phases.models[phases.slots[slot].model];
    let y = mixture(model, carbon_filled(name), |_, constituent| {
        bulk(amounts, constituent)
    });
    if name.is_carbide() {
        near_ideal(model, y, potentials, work)
    } else {
        y
    }
}

/// Site fractions from which further minima of a phase are sought.
pub(super) fn others(phases: &Phases, slot: usize, amounts: &Amounts) -> Vec<[f64; MOST]> {
    let name = phases.slots[slot].name;
    let model = &phases.models[phases.slots[slot].model];
    let there = |mains: &&[Option<Component>; 2]| {
        let mut named = mains.iter().flatten();
        named.all(|c| amounts.present.contains(c))
    };
    main_elements(name)
        .iter()
        .filter(there)
        .map(|mains| {
            mixture(model, carbon_filled(name), |sublattice, constituent| {
                let share = bulk(amounts, constituent);
                match mains.get(sublattice).copied().flatten() {
                    Some(main) if main == constituent => 0.75 + 0.25 * share,
                    Some(_) => 0.25 * share,
                    None => share,
                }
            })
        })
        .collect()
}

const fn carbon_filled(name: PhaseName) -> f64 {
    match name {
        PhaseName::Austenite => 0.04,
        PhaseName::Ferrite => 3e-4,
        _ => 0.93,
    }
}

fn bulk(amounts: &Amounts, constituent: Component) -> f64 {
    amounts
        .place(constituent)
        .map_or(0.0, |place| amounts.moles[place])
}

/// Elements that may be the main one of each sublattice, where a phase has several minima;
/// `None` leaves the steel's own proportions.
const fn main_elements(name: PhaseName) -> &'static [[Option<Component>; 2]] {
    const CR: Option<Component> = Some(Component::Cr);
    const FE: Option<Component> = Some(Component::Fe);
    const MO: Option<Component> = Some(Component::Mo);
    const V: Option<Component> = Some(Component::V);
    const W: Option<Component> = Some(Component::W);
    match name {
        PhaseName::Austenite | PhaseName::Cementite => &[],
        PhaseName::Ferrite => &[[None, None], [W, None], [MO, None]],
        PhaseName::Mc => &[[V, None], [MO, None], [W, None], [CR, None]],
        PhaseName::M7C3 => &[[CR, None]],
        PhaseName::M23C6 => &[[CR, CR], [CR, MO], [CR, W], [FE, MO], [FE, W]],
        PhaseName::M6C => &[
            [MO, FE],
            [MO, MO],
            [MO, W],
            [MO, CR],
            [W, FE],
            [W, MO],
            [W, W],
            [W, CR],
            [FE, MO],
            [FE, W],
        ],
    }
}

/// Phases that can separate into two compositions, given the elements.
pub(super) fn has_several_minima(name: PhaseName, present: &[Component]) -> bool {
    let of = |elements: &[Component]| elements.iter().filter(|e| present.contains(e)).count();
    match name {
        PhaseName::Ferrite => of(&[Component::Mo, Component::W]) > 0,
        PhaseName::Mc => of(&[Component::V, Component::Mo, Component::W]) > 1,
        PhaseName::M6C => of(&[Component::Mo, Component::W]) > 0,
        PhaseName::M23C6 => of(&[Component::Mo, Component::W]) > 0 && of(&[Component::Cr]) > 0,
        _ => false,
    }
}

/// Site fractions with given shares of the metals on every sublattice.
fn mixture(
    model: &PhaseModel,
    carbon_filled: f64,
    share: impl Fn(usize, Component) -> f64,
) -> [f64; MOST] {
    let mut y = [0.0; MOST];
    for (fraction, variable) in y.iter_mut().zip(&model.variables) {
        *fraction = match variable.constituent {
            Component::C => carbon_filled,
            Component::Va => 1.0 - carbon_filled,
            metal => share(variable.sublattice, metal).max(1e-12),
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

/// Makes the fractions of every sublattice add up to one.
pub(super) fn normalise(model: &PhaseModel, y: &mut [f64; MOST]) {
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
