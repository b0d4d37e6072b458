//! Para-equilibrium: only carbon moves between austenite, ferrite and cementite; the metals stay
//! in the proportions of the steel in all of them. The fast limit, before alloying elements have
//! had time to spread.

use super::slots::{Amounts, MASSES, Phases, Slot, element};
use super::state::{check, formula_volume_cm3, shares};
use super::{Equilibrium, EquilibriumError, PhaseAmount, PhaseName, ZERO_C_K};
use crate::phases::gibbs::{Component, Derivatives, ELEMENT_ORDER, ELEMENTS, MOST};
use crate::steel::Composition;

/// Newton steps for a common tangent, and the largest change of a carbon ratio that ends them.
const MOST_STEPS: usize = 60;
const SETTLED: f64 = 1e-12;

/// Largest share of the carbon sites that austenite and ferrite may fill in the search.
const MOST_FILLED: f64 = 0.25;

/// Energy of a phase per mole of metal atoms, in units of RT, against moles of carbon per mole of
/// metal atoms.
#[derive(Debug, Clone, Copy)]
struct Point {
    carbon: f64,
    energy: f64,
    slope: f64,
    curvature: f64,
}

impl Point {
    /// Where its tangent meets the axis of no carbon: the potential of the metal mixture.
    fn metal_potential(&self) -> f64 {
        self.energy - self.slope * self.carbon
    }
}

/// Place of a phase, its share of the metal atoms, and its point.
type Share = (usize, f64, Point);

/// A phase with its metals frozen.
struct Frozen<'a> {
    phases: &'a Phases,
    slot: &'a Slot,
    y: [f64; MOST],
    carbon_place: Option<usize>,
    vacancy_place: Option<usize>,
    /// Metal and carbon sites per formula unit.
    metal_sites: f64,
    carbon_sites: f64,
}

/// Para-equilibrium of a steel at a temperature in °C between austenite, ferrite and cementite.
///
/// # Errors
/// A composition that is no steel or outside [`super::RANGE`], a temperature outside 600 to
/// 1250 °C, or a search that did not come to rest.
pub fn para_equilibrium(
    steel: &Composition,
    temperature_c: f64,
) -> Result<Equilibrium, EquilibriumError> {
    check(steel, temperature_c)?;
    let amounts = Amounts::new(steel);
    let mut phases = Phases::new(&amounts.present);
    phases.set_temperature(temperature_c + ZERO_C_K);
    let carbon = amounts
        .place(Component::C)
        .map_or(0.0, |place| amounts.moles[place]);
    let total = carbon / (1.0 - carbon);
    let frozen: Vec<Frozen<'_>> = [
        PhaseName::Austenite,
        PhaseName::Ferrite,
        PhaseName::Cementite,
    ]
    .into_iter()
    .filter_map(|name| Frozen::new(&phases, name, &amounts))
    .collect();
    let mut work = Derivatives::ZERO;
    // the lowest of all single phases and pairs that can hold the steel's carbon
    let mut best: Option<(f64, Vec<Share>)> = None;
    let mut offer = |energy: f64, set: Vec<Share>| {
        if energy.is_finite() && best.as_ref().is_none_or(|(lowest, _)| energy < *lowest) {
            best = Some((energy, set));
        }
    };
    for (i, phase) in frozen.iter().enumerate() {
        if phase.can_hold(total) {
            let point = phase.at(total, &mut work);
            offer(point.energy, vec![(i, 1.0, point)]);
        }
        for (j, other) in frozen.iter().enumerate().skip(i + 1) {
            let Some((a, b)) = common_tangent(phase, other, &mut work) else {
                continue;
            };
            let share = (b.carbon - total) / (b.carbon - a.carbon);
            if (0.0..=1.0).contains(&share) {
                let energy = share * a.energy + (1.0 - share) * b.energy;
                offer(energy, vec![(i, share, a), (j, 1.0 - share, b)]);
            }
        }
    }
    let (energy, set) = best.ok_or(EquilibriumError::NotConverged { temperature_c })?;
    let rt = phases.models.first().map_or(0.0, |model| model.rt());
    let found = set
        .iter()
        .map(|(i, metal, point)| read(&frozen[*i], *metal, point.carbon, &amounts))
        .collect();
    Ok(Equilibrium {
        temperature_c,
        phases: shares(found),
        gibbs_energy_j_mol: energy * rt / (1.0 + total),
        carbon_potential_j_mol: (carbon > 0.0)
            .then(|| set.first().map(|(_, _, point)| point.slope * rt))
            .flatten(),
        balance_error: 0.0,
    })
}

impl<'a> Frozen<'a> {
    fn new(phases: &'a Phases, name: PhaseName, amounts: &Amounts) -> Option<Self> {
        let slot = phases.slots.iter().find(|slot| slot.name == name)?;
        let model = &phases.models[slot.model];
        let carbon = amounts
            .place(Component::C)
            .map_or(0.0, |place| amounts.moles[place]);
        let mut frozen = Self {
            phases,
            slot,
            y: [0.0; MOST],
            carbon_place: None,
            vacancy_place: None,
            metal_sites: 0.0,
            carbon_sites: 0.0,
        };
        for (i, variable) in model.variables.iter().enumerate() {
            match (variable.constituent, variable.element) {
                (Component::C, _) => frozen.carbon_place = Some(i),
                (Component::Va, _) => {
                    frozen.vacancy_place = Some(i);
                    frozen.carbon_sites = variable.sites;
                }
                (_, Some(place)) => {
                    frozen.y[i] = amounts.moles[place] / (1.0 - carbon);
                    frozen.metal_sites = variable.sites;
                }
                (_, None) => {}
            }
        }
        if let (None, Some(place)) = (frozen.vacancy_place, amounts.place(Component::C)) {
            frozen.carbon_sites = model.fixed_atoms[place];
        }
        Some(frozen)
    }

    /// Carbon per metal atom when every carbon site is filled.
    fn filled(&self) -> f64 {
        self.carbon_sites / self.metal_sites
    }

    fn has_fixed_carbon(&self) -> bool {
        self.vacancy_place.is_none()
    }

    fn can_hold(&self, carbon: f64) -> bool {
        if self.has_fixed_carbon() {
            (carbon - self.filled()).abs() < 1e-9
        } else {
            carbon < MOST_FILLED * self.filled()
        }
    }

    fn at(&self, carbon: f64, work: &mut Derivatives) -> Point {
        let model = &self.phases.models[self.slot.model];
        let mut y = self.y;
        let share = carbon / self.filled();
        if let (Some(c), Some(va)) = (self.carbon_place, self.vacancy_place) {
            y[c] = share;
            y[va] = 1.0 - share;
        } else if let Some(va) = self.vacancy_place {
            y[va] = 1.0;
        }
        model.without_mixing(&y, work);
        model.add_mixing(&y, work);
        let per_metal = 1.0 / (model.rt() * self.metal_sites);
        let (mut slope, mut curvature) = (0.0, 0.0);
        if let (Some(c), Some(va)) = (self.carbon_place, self.vacancy_place) {
            let g = &work.hessian;
            slope = (work.gradient[c] - work.gradient[va]) * per_metal / self.filled();
            curvature = (g[c][c] - 2.0 * g[c][va] + g[va][va]) * per_metal
                / (self.filled() * self.filled());
        }
        Point {
            carbon,
            energy: work.value * per_metal,
            slope,
            curvature,
        }
    }
}

/// The two points with a common tangent, the first with less carbon or the second of fixed carbon.
fn common_tangent(
    a: &Frozen<'_>,
    b: &Frozen<'_>,
    work: &mut Derivatives,
) -> Option<(Point, Point)> {
    if a.has_fixed_carbon() || a.carbon_place.is_none() {
        return None;
    }
    let start = |phase: &Frozen<'_>| match phase.slot.name {
        PhaseName::Cementite => phase.filled(),
        PhaseName::Ferrite => 3e-4 * phase.filled(),
        _ => 0.03 * phase.filled(),
    };
    let (mut ca, mut cb) = (start(a), start(b));
    // steps in the logarithm, held so that neither phase fills up or empties at once
    let moved = |carbon: f64, step: f64, most: f64| {
        (carbon * (step / carbon).clamp(-1.5, 1.5).exp()).min(MOST_FILLED * most)
    };
    for _ in 0..MOST_STEPS {
        let (pa, pb) = (a.at(ca, work), b.at(cb, work));
        let step_a;
        let step_b;
        if b.has_fixed_carbon() {
            // the tangent at a must pass through b
            let miss = pa.energy + pa.slope * (pb.carbon - ca) - pb.energy;
            step_a = -miss / (pa.curvature * (pb.carbon - ca));
            step_b = 0.0;
        } else {
            // equal slopes and equal potentials of the metal
            let slopes = pb.slope - pa.slope;
            let metals = pb.metal_potential() - pa.metal_potential();
            step_a = (metals + cb * slopes) / ((cb - ca) * pa.curvature);
            step_b = (metals + ca * slopes) / ((cb - ca) * pb.curvature);
        }
        if !(step_a.is_finite() && step_b.is_finite()) {
            return None;
        }
        if step_a.abs() < SETTLED && step_b.abs() < SETTLED {
            return (pa.curvature > 0.0).then_some((pa, pb));
        }
        ca = moved(ca, step_a, a.filled());
        if !b.has_fixed_carbon() {
            cb = moved(cb, step_b, b.filled());
        }
    }
    None
}

/// One phase, with mass, volume and atoms for the metal atoms in it.
fn read(frozen: &Frozen<'_>, metal: f64, carbon: f64, amounts: &Amounts) -> PhaseAmount {
    let carbon_place = amounts.place(Component::C);
    let metal_share = 1.0 - carbon_place.map_or(0.0, |place| amounts.moles[place]);
    let mut grams = [0.0; ELEMENTS];
    for (place, component) in amounts.present.iter().enumerate() {
        let of_it = ELEMENT_ORDER
            .iter()
            .zip(MASSES)
            .find(|(c, _)| *c == component);
        let mass = of_it.map_or(0.0, |(_, mass)| mass);
        let atoms = if Some(place) == carbon_place {
            carbon
        } else {
            amounts.moles[place] / metal_share
        };
        grams[place] = atoms * mass;
    }
    let total: f64 = grams.iter().sum();
    let mut composition = Composition::default();
    for (component, mass) in amounts.present.iter().zip(grams) {
        if let Some(element) = element(*component) {
            composition.set(element, 100.0 * mass / total);
        }
    }
    let formulas = metal / frozen.metal_sites;
    PhaseAmount {
        name: frozen.slot.name,
        mass_fraction: metal * total,
        volume_fraction: formulas
            * formula_volume_cm3(frozen.slot.name, carbon * frozen.metal_sites),
        mole_fraction: metal * (1.0 + carbon),
        composition,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phases::equilibrium::equilibrium;

    fn steel(c: f64, mn: f64, si: f64, cr: f64) -> Composition {
        Composition {
            c,
            mn,
            si,
            cr,
            ..Composition::default()
        }
    }

    /// Without alloying elements there is nothing to freeze.
    #[test]
    fn iron_and_carbon_give_the_same_as_full_equilibrium() {
        for (c, at_c) in [
            (0.2, 780.0),
            (0.5, 700.0),
            (1.2, 850.0),
            (0.8, 900.0),
            (0.0, 800.0),
        ] {
            let full = equilibrium(&steel(c, 0.0, 0.0, 0.0), at_c).unwrap();
            let para = para_equilibrium(&steel(c, 0.0, 0.0, 0.0), at_c).unwrap();
            assert_eq!(full.phases.len(), para.phases.len());
            for (a, b) in full.phases.iter().zip(&para.phases) {
                assert_eq!(a.name, b.name);
                approx::assert_relative_eq!(a.mass_fraction, b.mass_fraction, epsilon = 1e-7);
                approx::assert_relative_eq!(a.composition.c, b.composition.c, epsilon = 1e-7);
            }
            approx::assert_relative_eq!(
                full.gibbs_energy_j_mol,
                para.gibbs_energy_j_mol,
                epsilon = 1e-3
            );
        }
    }

    #[test]
    fn freezing_the_metals_costs_energy_and_carbon_is_conserved() {
        for cr in [0.0, 0.8, 1.45] {
            for at_c in [680.0, 760.0, 800.0, 845.0, 900.0, 1000.0] {
                let steel = steel(1.0, 0.35, 0.25, cr);
                let full = equilibrium(&steel, at_c).unwrap();
                let para = para_equilibrium(&steel, at_c).unwrap();
                assert!(para.gibbs_energy_j_mol >= full.gibbs_energy_j_mol - 1e-4);
                let carbon: f64 = para
                    .phases
                    .iter()
                    .map(|p| p.mass_fraction * p.composition.c)
                    .sum();
                approx::assert_relative_eq!(carbon, 1.0, epsilon = 1e-8);
            }
        }
    }
}
