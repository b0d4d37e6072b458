//! An equilibrium as the rest of the program sees it, and the doors that give one.

use super::slots::{Amounts, MASSES, Slot, element};
use super::solver::Solver;
use super::{EquilibriumError, PhaseName, ZERO_C_K};
use crate::numeric::order;
use crate::phases::gibbs::{Component, ELEMENT_ORDER, ELEMENTS, GAS_CONSTANT};
use crate::sources::pearson_1967;
use crate::steel::{Composition, CompositionRange, Element, OutOfRange};
use recalesce_texts::phases as texts;

/// Compositions for which the equilibrium model holds. Phosphorus and sulphur are not in it:
/// their place is taken by iron.
pub const RANGE: CompositionRange = CompositionRange {
    model: MODEL,
    limits_wt: &[
        (Element::C, 0.0, 2.5),
        (Element::Mn, 0.0, 3.0),
        (Element::Si, 0.0, 3.0),
        (Element::Cr, 0.0, 18.0),
        (Element::Ni, 0.0, 4.0),
        (Element::Mo, 0.0, 2.0),
        (Element::V, 0.0, 1.2),
        (Element::W, 0.0, 4.0),
    ],
};

/// The model as the page names it.
pub(super) const MODEL: &str = texts::EQUILIBRIUM_MODEL;

/// Temperatures for which it holds, °C.
const TEMPERATURES_C: (f64, f64) = (600.0, 1250.0);

/// One phase in an equilibrium.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct PhaseAmount {
    /// The phase.
    pub name: PhaseName,
    /// Its share of the mass.
    pub mass_fraction: f64,
    /// Its share of the volume.
    pub volume_fraction: f64,
    /// Its share of the atoms.
    pub mole_fraction: f64,
    /// What it is made of, wt %; phosphorus and sulphur are zero.
    pub composition: Composition,
}

/// An equilibrium.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Equilibrium {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// The stable phases in the order of [`PhaseName::ALL`]. A carbide that has separated into two
    /// compositions is one entry with their mean.
    pub phases: Vec<PhaseAmount>,
    /// Gibbs energy, J per mole of atoms, against the elements in their reference states.
    pub gibbs_energy_j_mol: f64,
    /// Chemical potential of carbon, J/mol; `None` without carbon.
    pub carbon_potential_j_mol: Option<f64>,
    /// Largest error of any element's balance, moles per mole of atoms.
    pub balance_error: f64,
}

impl Equilibrium {
    /// A phase, if it is stable.
    #[must_use]
    pub fn phase(&self, name: PhaseName) -> Option<&PhaseAmount> {
        self.phases.iter().find(|phase| phase.name == name)
    }

    /// Share of the volume that a phase takes; zero when it is not stable.
    #[must_use]
    pub fn volume_fraction(&self, name: PhaseName) -> f64 {
        self.phase(name).map_or(0.0, |phase| phase.volume_fraction)
    }

    /// Share of the volume that all carbides take.
    #[must_use]
    pub fn carbide_volume_fraction(&self) -> f64 {
        let carbides = self.phases.iter().filter(|phase| phase.name.is_carbide());
        // not `sum`, which gives minus zero for nothing
        carbides.fold(0.0, |sum, phase| sum + phase.volume_fraction)
    }
}

/// Equilibrium of a steel at a temperature in °C.
///
/// # Errors
/// A composition that is no steel or outside [`RANGE`], a temperature outside 600 to 1250 °C, or
/// a search that did not come to rest.
pub fn equilibrium(
    steel: &Composition,
    temperature_c: f64,
) -> Result<Equilibrium, EquilibriumError> {
    EquilibriumSeries::default().at(steel, temperature_c)
}

/// Austenite at full equilibrium at a temperature in °C: its amount and what is dissolved in it;
/// `None` where none is stable.
///
/// # Errors
/// As [`equilibrium`].
pub fn full_equilibrium_austenite(
    steel: &Composition,
    temperature_c: f64,
) -> Result<Option<PhaseAmount>, EquilibriumError> {
    let found = equilibrium(steel, temperature_c)?;
    Ok(found.phase(PhaseName::Austenite).copied())
}

/// Equilibria one after another, each begun from the last: many times faster than one by one
/// when temperature or composition change little between them. The results do not depend on
/// what came before.
#[derive(Debug, Clone, Default)]
pub struct EquilibriumSeries {
    solver: Option<Solver>,
}

impl EquilibriumSeries {
    /// Equilibrium of a steel at a temperature in °C.
    ///
    /// # Errors
    /// As [`equilibrium`].
    pub fn at(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
    ) -> Result<Equilibrium, EquilibriumError> {
        check(steel, temperature_c)?;
        let amounts = Amounts::new(steel);
        let solver = self.solver_for(&amounts);
        solver.solve(&amounts, temperature_c + ZERO_C_K)?;
        Ok(read(solver, &amounts, temperature_c))
    }

    /// Equilibrium of a steel at a temperature in °C with one phase kept out: what there would be
    /// if that phase could not form. Its Gibbs energy is above that of [`Self::at`] wherever the
    /// phase is stable.
    ///
    /// # Errors
    /// As [`equilibrium`].
    pub fn without(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
        phase: PhaseName,
    ) -> Result<Equilibrium, EquilibriumError> {
        check(steel, temperature_c)?;
        let amounts = Amounts::new(steel);
        let solver = self.solver_for(&amounts);
        solver.suspend(Some(phase));
        let solved = solver.solve(&amounts, temperature_c + ZERO_C_K);
        let found = solved.map(|()| read(solver, &amounts, temperature_c));
        solver.suspend(None);
        solver.forget();
        found
    }

    /// The solver for the elements present, with what it remembers.
    pub(super) fn solver_for(&mut self, amounts: &Amounts) -> &mut Solver {
        if self
            .solver
            .as_ref()
            .is_some_and(|s| s.phases.present != amounts.present)
        {
            self.solver = None;
        }
        self.solver.get_or_insert_with(|| Solver::new(amounts))
    }
}

/// Refuses what the model does not hold for.
pub(super) fn check(steel: &Composition, temperature_c: f64) -> Result<(), EquilibriumError> {
    steel.validate()?;
    RANGE.check(steel)?;
    check_temperature(temperature_c)
}

/// Refuses what the parameters do not describe.
pub(super) fn check_temperature(temperature_c: f64) -> Result<(), EquilibriumError> {
    OutOfRange::check(
        MODEL,
        texts::TEMPERATURE,
        "°C",
        temperature_c,
        TEMPERATURES_C,
    )?;
    Ok(())
}

/// Reads the equilibrium that a solver has found.
pub(super) fn read(solver: &Solver, amounts: &Amounts, temperature_c: f64) -> Equilibrium {
    let found = solver
        .phases
        .slots
        .iter()
        .filter(|slot| slot.active)
        .map(|slot| read_phase(solver, amounts, slot))
        .collect();
    let rt = GAS_CONSTANT * (temperature_c + ZERO_C_K);
    let energy: f64 = amounts
        .moles
        .iter()
        .zip(solver.potentials)
        .map(|(n, mu)| n * mu * rt)
        .sum();
    Equilibrium {
        temperature_c,
        phases: shares(found),
        gibbs_energy_j_mol: energy,
        carbon_potential_j_mol: amounts
            .place(Component::C)
            .map(|place| solver.potentials[place] * rt),
        balance_error: solver.balance_error,
    }
}

/// Turns masses, volumes and atoms into shares, in the order of [`PhaseName::ALL`].
pub(super) fn shares(mut phases: Vec<PhaseAmount>) -> Vec<PhaseAmount> {
    order::sort_by_key(&mut phases, |phase| phase.name);
    phases.dedup_by(|second, first| join(first, second));
    let (mut mass, mut volume, mut atoms) = (0.0, 0.0, 0.0);
    for phase in &phases {
        mass += phase.mass_fraction;
        volume += phase.volume_fraction;
        atoms += phase.mole_fraction;
    }
    for phase in &mut phases {
        phase.mass_fraction /= mass;
        phase.volume_fraction /= volume;
        phase.mole_fraction /= atoms;
    }
    phases
}

/// Adds a second composition of the same phase to the first; false when the phases differ.
fn join(first: &mut PhaseAmount, second: &PhaseAmount) -> bool {
    if first.name != second.name {
        return false;
    }
    let mass = first.mass_fraction + second.mass_fraction;
    for element in Element::ALL {
        let sum = first.composition.get(element) * first.mass_fraction
            + second.composition.get(element) * second.mass_fraction;
        first.composition.set(element, sum / mass);
    }
    first.mass_fraction = mass;
    first.volume_fraction += second.volume_fraction;
    first.mole_fraction += second.mole_fraction;
    true
}

/// One phase, with mass, volume and atoms in grams, cm³ and moles per mole of atoms of steel.
fn read_phase(solver: &Solver, amounts: &Amounts, slot: &Slot) -> PhaseAmount {
    let atoms = solver.phases.models[slot.model].atoms(&slot.y);
    let mut grams = [0.0; ELEMENTS];
    for (place, component) in amounts.present.iter().enumerate() {
        let mass = ELEMENT_ORDER
            .iter()
            .zip(MASSES)
            .find(|(c, _)| *c == component)
            .map_or(0.0, |(_, mass)| mass);
        grams[place] = atoms[place] * mass;
    }
    let total: f64 = grams.iter().sum();
    let mut composition = Composition::default();
    for (component, mass) in amounts.present.iter().zip(grams) {
        if let Some(element) = element(*component) {
            composition.set(element, 100.0 * mass / total);
        }
    }
    let carbon = amounts
        .place(Component::C)
        .map_or(0.0, |place| atoms[place]);
    PhaseAmount {
        name: slot.name,
        mass_fraction: slot.amount * total,
        volume_fraction: slot.amount * formula_volume_cm3(slot.name, carbon),
        mole_fraction: slot.amount * atoms.iter().sum::<f64>(),
        composition,
    }
}

/// Volume of one mole of formula units near 850 °C, cm³.
pub(super) const fn formula_volume_cm3(name: PhaseName, carbon_per_formula: f64) -> f64 {
    match name {
        PhaseName::Austenite => {
            pearson_1967::AUSTENITE_CM3 + pearson_1967::CARBON_IN_AUSTENITE_CM3 * carbon_per_formula
        }
        PhaseName::Ferrite => pearson_1967::FERRITE_CM3,
        PhaseName::Cementite => pearson_1967::CEMENTITE_CM3,
        PhaseName::M7C3 => pearson_1967::M7C3_CM3,
        PhaseName::M23C6 => pearson_1967::M23C6_CM3,
        PhaseName::M6C => pearson_1967::M6C_CM3,
        PhaseName::Mc => pearson_1967::MC_CM3,
    }
}
