//! Para-equilibrium: only carbon moves between austenite, ferrite and cementite; the metals stay
//! in the proportions of the steel in all of them. The fast limit, before alloying elements have
//! had time to spread. And the same beside a carbide of other metals than the steel's, which it
//! leaves behind in the austenite at its surface as it dissolves.

use super::frozen::{Frozen, Point, common_tangent, mass_of};
use super::slots::{Amounts, Phases, element};
use super::state::{check, check_temperature, formula_volume_cm3, shares};
use super::{Equilibrium, EquilibriumError, PhaseAmount, PhaseName, ZERO_C_K};
use crate::phases::gibbs::{Component, Derivatives, ELEMENTS, Structure};
use crate::steel::Composition;

/// Place of a phase, its share of the metal atoms, and its point.
type Share = (usize, f64, Point);

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

/// Carbon of austenite beside cementite when no metal moves, wt %: where dissolving goes over from
/// the pace of carbon to that of the metals.
///
/// The cementite keeps the metals of `cementite`, and so does the austenite that it becomes, at
/// its surface; further off the metals are those of `austenite`. Carbon is even over both. None
/// where they have no common tangent. Iron is the balance of both; the carbon in `austenite` does
/// not count.
///
/// # Errors
/// A temperature outside 600 to 1250 °C.
pub fn carbon_beside_cementite_wt(
    austenite: &Composition,
    cementite: &Composition,
    temperature_c: f64,
) -> Result<Option<f64>, EquilibriumError> {
    check_temperature(temperature_c)?;
    let mut work = Derivatives::ZERO;
    let prepared = |metals: &Composition| {
        let amounts = Amounts::new(metals);
        let structures = [Structure::Fcc, Structure::Cementite];
        let mut phases = Phases::of(&structures, &amounts.present);
        phases.set_temperature(temperature_c + ZERO_C_K);
        (amounts, phases)
    };
    let (amounts, phases) = prepared(cementite);
    let found = Frozen::new(&phases, PhaseName::Austenite, &amounts)
        .zip(Frozen::new(&phases, PhaseName::Cementite, &amounts))
        .and_then(|(surface, carbide)| common_tangent(&surface, &carbide, &mut work));
    let Some((surface, _)) = found else {
        return Ok(None);
    };
    let (amounts, phases) = prepared(&austenite.with_carbon(1.0));
    let carbon = Frozen::new(&phases, PhaseName::Austenite, &amounts)
        .and_then(|further_off| further_off.with_slope(surface.slope, &mut work));
    Ok(carbon.map(|carbon| carbon_wt(carbon, &amounts)))
}

/// Carbon in weight per cent, of so many moles per mole of metal atoms.
fn carbon_wt(carbon: f64, amounts: &Amounts) -> f64 {
    let (mut metal_g, mut metal_moles, mut carbon_g) = (0.0, 0.0, 0.0);
    for (component, moles) in amounts.present.iter().zip(amounts.moles) {
        let mass = mass_of(*component);
        if *component == Component::C {
            carbon_g = carbon * mass;
        } else {
            metal_g += moles * mass;
            metal_moles += moles;
        }
    }
    100.0 * carbon_g / (carbon_g + metal_g / metal_moles)
}

/// One phase, with mass, volume and atoms for the metal atoms in it.
fn read(frozen: &Frozen<'_>, metal: f64, carbon: f64, amounts: &Amounts) -> PhaseAmount {
    let carbon_place = amounts.place(Component::C);
    let metal_share = 1.0 - carbon_place.map_or(0.0, |place| amounts.moles[place]);
    let mut grams = [0.0; ELEMENTS];
    for (place, component) in amounts.present.iter().enumerate() {
        let mass = mass_of(*component);
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
    use crate::steel::Element;

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

    /// Beside cementite of the steel's own metals: the austenite of para-equilibrium. Chromium in
    /// the carbide holds carbon back.
    #[test]
    fn carbon_beside_cementite_is_that_of_para_equilibrium() {
        // so much carbon that some stays in carbide
        let steel = steel(1.9, 0.35, 0.25, 1.45);
        for at_c in [780.0, 845.0] {
            let austenite = para_equilibrium(&steel, at_c).unwrap();
            assert!(austenite.phase(PhaseName::Cementite).is_some());
            let austenite = austenite.phase(PhaseName::Austenite).unwrap().composition;
            let beside = |cementite: &Composition| {
                let found = carbon_beside_cementite_wt(&austenite, cementite, at_c);
                found.unwrap().unwrap()
            };
            let cementite = austenite.with_carbon(6.7);
            // the same metals per iron: scaled from austenite's carbon to cementite's
            let mut scaled = cementite;
            for element in [Element::Mn, Element::Si, Element::Cr] {
                scaled.set(
                    element,
                    austenite.get(element) * (100.0 - 6.7) / (100.0 - austenite.c),
                );
            }
            // metals are taken as if austenite held 1 % carbon, here 1.2 to 1.5
            approx::assert_relative_eq!(beside(&scaled), austenite.c, max_relative = 1e-3);
            let enriched = Composition { cr: 7.0, ..scaled };
            assert!(beside(&enriched) < 0.8 * beside(&scaled));
        }
    }
}
