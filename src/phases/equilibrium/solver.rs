//! The stable set and its amounts: Newton's method on chemical potentials, phase amounts and site
//! fractions, with phases added by their driving force and dropped when their amount turns
//! negative.

use super::response::Response;
use super::slots::{Amounts, Phases, Slot};
use super::{EquilibriumError, PhaseName, start};
use crate::numeric::dense;
use crate::phases::gibbs::{Component, Derivatives, ELEMENTS, MOST};

/// Most phases at once (the phase rule) and rows of Newton's system.
const MOST_ACTIVE: usize = ELEMENTS;
const ROWS: usize = ELEMENTS + MOST_ACTIVE;

/// Most slots: the seven phases and other compositions of some.
const SLOTS: usize = 20;

/// Change of temperature, K, and of composition, sum of mole fractions, after which phases with
/// several minima are searched anew.
const SEARCHED_K: f64 = 40.0;
/// The same with molybdenum and tungsten together, whose M6C separates readily.
const SEARCHED_MO_W_K: f64 = 10.0;
const SEARCHED_MOLES: f64 = 0.01;

/// Height, in units of RT per mole of atoms, up to which a further minimum of a phase is kept in
/// view, and difference in site fractions that makes it another one.
const IN_VIEW: f64 = 0.15;
const OTHER_MINIMUM: f64 = 0.02;

/// Largest error of any element's balance, moles per mole of atoms.
const BALANCE: f64 = 1e-11;

/// Scaled step below which site fractions count as settled: finally, and before phases are added.
const SETTLED: f64 = 1e-6;
const NEARLY_SETTLED: f64 = 3e-3;

/// Driving force that adds a phase, in units of RT per mole of atoms: 1e-3 J/mol at 1000 K.
pub(super) const DRIVING_FORCE: f64 = 1.2e-7;

/// Largest difference in site fractions of two compositions of a phase that count as one.
const TWIN: f64 = 1e-3;

/// Limits on work: Newton steps for one set, and changes of the set.
const MOST_STEPS: usize = 60;
const MOST_CHANGES: usize = 40;

/// Steps in a row with a negative amount after which a phase is dropped, and the same for the
/// phase that came last: it came because it lowers the energy, so others give way first.
const PATIENCE: u8 = 2;
const PATIENCE_WITH_NEWCOMER: u8 = 8;

/// Temperature where nearly every steel is austenite, K, and the step of cooling from there.
const HOT_K: f64 = 1523.15;
const COOLING_STEP_K: f64 = 20.0;

/// Finds equilibria of steels with the same elements, from the last one where that helps.
#[derive(Debug, Clone)]
pub(super) struct Solver {
    pub(super) phases: Phases,
    /// Chemical potentials of the elements present, in units of RT.
    pub(super) potentials: [f64; ELEMENTS],
    /// Largest error of any element's balance, moles per mole of atoms.
    pub(super) balance_error: f64,
    /// Newton steps taken for the last equilibrium.
    pub(super) steps: usize,
    solved: bool,
    way: Way,
    newcomer: Option<usize>,
    searched: Option<(f64, [f64; ELEMENTS])>,
    work: Derivatives,
    responses: Vec<Option<Response>>,
}

impl Solver {
    pub(super) fn new(amounts: &Amounts) -> Self {
        let phases = Phases::new(&amounts.present);
        let responses = vec![None; phases.slots.len()];
        Self {
            phases,
            potentials: [0.0; ELEMENTS],
            balance_error: f64::INFINITY,
            steps: 0,
            solved: false,
            way: Way::Plain,
            newcomer: None,
            searched: None,
            work: Derivatives::ZERO,
            responses,
        }
    }

    /// Equilibrium of one mole of atoms at a temperature in kelvin; the result is in the slots.
    pub(super) fn solve(&mut self, amounts: &Amounts, kelvin: f64) -> Result<(), EquilibriumError> {
        self.steps = 0;
        let failure = |_| EquilibriumError::NotConverged {
            temperature_c: kelvin - crate::phases::equilibrium::ZERO_C_K,
        };
        if self.solved {
            self.phases.set_temperature(kelvin);
            if self.settle(amounts).is_ok() {
                return Ok(());
            }
        }
        for way in [Way::Plain, Way::SwapMatrix, Way::Patient] {
            self.way = way;
            let found = self.from_austenite(amounts, kelvin);
            self.way = Way::Plain;
            if found.is_ok() {
                return Ok(());
            }
        }
        self.by_cooling(amounts, kelvin).map_err(failure)
    }

    /// Forgets the last equilibrium, so that the next one is found from austenite.
    pub(super) fn forget(&mut self) {
        self.solved = false;
        self.searched = None;
        for slot in &mut self.phases.slots {
            slot.active = false;
            slot.warm = false;
            slot.amount = 0.0;
        }
    }

    /// What the next search begins from.
    pub(super) fn save(&self) -> Saved {
        Saved {
            slots: self.phases.slots.clone(),
            potentials: self.potentials,
            searched: self.searched,
            solved: self.solved,
        }
    }

    /// Returns to a state saved before.
    pub(super) fn restore(&mut self, saved: Saved) {
        self.responses.resize(saved.slots.len(), None);
        self.phases.slots = saved.slots;
        self.potentials = saved.potentials;
        self.searched = saved.searched;
        self.solved = saved.solved;
    }

    /// Keeps one phase out of every set, or none.
    pub(super) fn suspend(&mut self, name: Option<PhaseName>) {
        for slot in &mut self.phases.slots {
            slot.suspended = Some(slot.name) == name;
            if slot.suspended {
                slot.active = false;
                slot.amount = 0.0;
            }
        }
    }

    fn from_austenite(&mut self, amounts: &Amounts, kelvin: f64) -> Result<(), Stuck> {
        self.phases.set_temperature(kelvin);
        self.forget();
        start::single_phase(&mut self.phases, amounts);
        self.settle(amounts)
    }

    pub(super) fn by_cooling(&mut self, amounts: &Amounts, kelvin: f64) -> Result<(), Stuck> {
        let mut at = HOT_K.max(kelvin);
        self.from_austenite(amounts, at)?;
        while at > kelvin {
            at = (at - COOLING_STEP_K).max(kelvin);
            self.phases.set_temperature(at);
            self.settle(amounts)?;
        }
        Ok(())
    }

    /// Changes the set until every phase in it has a positive amount and no other would form.
    fn settle(&mut self, amounts: &Amounts) -> Result<(), Stuck> {
        self.solved = false;
        self.newcomer = None;
        for _ in 0..MOST_CHANGES {
            self.newton(amounts, NEARLY_SETTLED)?;
            if self.add_best(amounts)? {
                continue;
            }
            self.newton(amounts, SETTLED)?;
            if self.search_due(amounts) {
                self.search(amounts);
            }
            if let Some(slot) = self.unstable() {
                self.search_around(slot, amounts);
            }
            if self.add_best(amounts)? {
                continue;
            }
            let sound = self
                .phases
                .slots
                .iter()
                .all(|slot| !slot.active || (self.phases.is_itself(slot) && slot.amount > 0.0));
            // an unstable phase with nothing below it is at its critical point
            if !sound {
                return Err(Stuck);
            }
            for slot in &mut self.phases.slots {
                slot.warm |= slot.active;
            }
            self.solved = true;
            return Ok(());
        }
        Err(Stuck)
    }

    /// Iterates on the present set, dropping phases on the way, to a scaled step length.
    fn newton(&mut self, amounts: &Amounts, tolerance: f64) -> Result<(), Stuck> {
        let mut negative = [0_u8; SLOTS];
        for _ in 0..MOST_STEPS {
            self.steps += 1;
            let (new_amounts, rows) = self.linear_step(amounts)?;
            let elements = amounts.count();
            // the most negative phase loses patience first
            let mut worst: Option<(usize, f64)> = None;
            let mut length = 0.0_f64;
            // carbides alone cannot hold the composition of a steel
            let solutions = rows
                .iter()
                .filter(|slot| !self.phases.slots[**slot].name.is_carbide())
                .count();
            for (row, slot) in rows.iter().enumerate() {
                let value = new_amounts[row];
                let response = self.responses[*slot].as_ref().ok_or(Stuck)?;
                let state = &mut self.phases.slots[*slot];
                let name = state.name;
                length = length.max(response.step(
                    &self.phases.models[state.model],
                    &self.potentials,
                    elements,
                    &mut state.y,
                ));
                if value > 0.0 {
                    state.amount = value;
                    negative[*slot] = 0;
                } else {
                    state.amount = (0.1 * state.amount).max(1e-9);
                    negative[*slot] += 1;
                    let size: f64 = value * response.atoms.iter().sum::<f64>();
                    let droppable = name.is_carbide() || solutions > 1;
                    let patience = if self.newcomer == Some(*slot) {
                        PATIENCE_WITH_NEWCOMER
                    } else if self.way == Way::Patient {
                        2 * PATIENCE
                    } else {
                        PATIENCE
                    };
                    if droppable
                        && negative[*slot] >= patience
                        && worst.is_none_or(|(_, w)| size < w)
                    {
                        worst = Some((*slot, size));
                    }
                }
            }
            if let (Some((slot, _)), true) = (worst, rows.len() > 1) {
                self.phases.slots[slot].active = false;
                self.phases.slots[slot].amount = 0.0;
                negative = [0; SLOTS];
                continue;
            }
            if !length.is_finite() {
                return Err(Stuck);
            }
            self.balance_error = self.balance(amounts);
            if length < tolerance
                && negative.iter().all(|n| *n == 0)
                && (self.balance_error < BALANCE || tolerance > SETTLED)
            {
                return Ok(());
            }
        }
        Err(Stuck)
    }

    /// Expands the active phases and solves for potentials and amounts.
    fn linear_step(
        &mut self,
        amounts: &Amounts,
    ) -> Result<([f64; MOST_ACTIVE], Vec<usize>), Stuck> {
        self.join_twins();
        let elements = amounts.count();
        let mut matrix = [[0.0; ROWS]; ROWS];
        let mut right = [0.0; ROWS];
        right[..elements].copy_from_slice(&amounts.moles[..elements]);
        let active: Vec<usize> = (0..self.phases.slots.len())
            .filter(|s| self.phases.slots[*s].active)
            .collect();
        if active.is_empty() || active.len() > elements.min(MOST_ACTIVE) {
            return Err(Stuck);
        }
        for (place, slot) in active.iter().enumerate() {
            let state = &self.phases.slots[*slot];
            let model = &self.phases.models[state.model];
            let response =
                Response::expand(model, &state.y, elements, &mut self.work).ok_or(Stuck)?;
            let row = elements + place;
            for a in 0..elements {
                matrix[row][a] = response.atoms[a];
                matrix[a][row] = response.atoms[a];
                right[a] += state.amount * response.uptake(model, a, None);
                for b in 0..=a {
                    let uptake = state.amount * response.uptake(model, a, Some(b));
                    matrix[a][b] += uptake;
                    if a != b {
                        matrix[b][a] += uptake;
                    }
                }
            }
            right[row] = response.energy;
            self.responses[*slot] = Some(response);
        }
        dense::solve(&mut matrix, &mut right, elements + active.len()).map_err(|_| Stuck)?;
        if right[..elements].iter().any(|mu| !mu.is_finite()) {
            return Err(Stuck);
        }
        self.potentials[..elements].copy_from_slice(&right[..elements]);
        let mut new_amounts = [0.0; MOST_ACTIVE];
        new_amounts[..active.len()].copy_from_slice(&right[elements..elements + active.len()]);
        Ok((new_amounts, active))
    }

    /// Two compositions of one phase that have become the same are one.
    fn join_twins(&mut self) {
        for second in 1..self.phases.slots.len() {
            for first in 0..second {
                let (a, b) = (&self.phases.slots[first], &self.phases.slots[second]);
                let same = a.active
                    && b.active
                    && a.model == b.model
                    && a.y.iter().zip(&b.y).all(|(a, b)| (a - b).abs() < TWIN);
                if same {
                    let amount = b.amount;
                    self.phases.slots[first].amount += amount;
                    let state = &mut self.phases.slots[second];
                    state.active = false;
                    state.warm = false;
                    state.amount = 0.0;
                }
            }
        }
    }

    /// Largest error of any element's balance.
    fn balance(&self, amounts: &Amounts) -> f64 {
        let mut error = amounts.moles;
        for slot in self.phases.slots.iter().filter(|s| s.active) {
            let atoms = self.phases.models[slot.model].atoms(&slot.y);
            for (e, n) in error.iter_mut().zip(atoms) {
                *e -= slot.amount * n;
            }
        }
        error.iter().fold(0.0_f64, |m, e| m.max(e.abs()))
    }

    /// Finds the heights of all phases outside the set and adds the one with the largest driving
    /// force, if any has one. True when the set has changed.
    fn add_best(&mut self, amounts: &Amounts) -> Result<bool, Stuck> {
        let elements = amounts.count();
        let mut best: Option<(usize, f64)> = None;
        for slot in 0..self.phases.slots.len() {
            let state = &self.phases.slots[slot];
            if state.active {
                if !self.phases.is_itself(state) {
                    return Err(Stuck);
                }
                continue;
            }
            if state.second && !state.warm {
                continue;
            }
            let (name, second) = (state.name, state.second);
            let (mut height, y) = self.lowest(slot, amounts);
            // austenite and MC may have no minimum of their own; others have one always
            let may_be_none = second || matches!(name, PhaseName::Austenite | PhaseName::Mc);
            if height == f64::INFINITY && !may_be_none {
                return Err(Stuck);
            }
            // a minimum that a phase of the set is already in lies on the plane, give or take
            if self.is_taken(slot, &y) {
                height = f64::INFINITY;
            }
            let state = &mut self.phases.slots[slot];
            state.height = height;
            state.warm = height.is_finite();
            if state.warm {
                state.y = y;
            }
            if height < -DRIVING_FORCE && !state.suspended && best.is_none_or(|(_, b)| height < b) {
                best = Some((slot, height));
            }
        }
        let Some((slot, _)) = best else {
            return Ok(false);
        };
        let active = self.phases.slots.iter().filter(|s| s.active).count();
        if active >= elements {
            self.exchange(slot, elements)?;
        }
        let atoms: f64 = self.phases.models[self.phases.slots[slot].model]
            .atoms(&self.phases.slots[slot].y)
            .iter()
            .sum();
        self.newcomer = Some(slot);
        if self.way == Way::SwapMatrix && self.phases.slots[slot].name == PhaseName::Ferrite {
            self.way = Way::Plain;
            let others = self.phases.slots.iter_mut();
            for other in others.filter(|s| s.active && s.name == PhaseName::Austenite) {
                other.active = false;
                other.amount = 0.0;
            }
        }
        // another set has other potentials, with other minima
        self.searched = None;
        let state = &mut self.phases.slots[slot];
        state.active = true;
        state.amount = state.amount.max(1e-3 / atoms);
        Ok(true)
    }

    /// Lowest point of a phase above the plane of potentials near where it was, or from its first
    /// start: its height and site fractions. Infinite when it has no minimum there.
    fn lowest(&mut self, slot: usize, amounts: &Amounts) -> (f64, [f64; MOST]) {
        let (warm, second, y) = {
            let state = &self.phases.slots[slot];
            (state.warm, state.second, state.y)
        };
        if warm {
            let found = self.descend(slot, y, amounts.count());
            if found.0.is_finite() || second {
                return found;
            }
        }
        let y = start::first(
            &self.phases,
            slot,
            amounts,
            &self.potentials,
            &mut self.work,
        );
        self.descend(slot, y, amounts.count())
    }

    /// True when a phase of the set has this structure and nearly these site fractions.
    fn is_taken(&self, slot: usize, y: &[f64; MOST]) -> bool {
        let model = self.phases.slots[slot].model;
        let near = |(a, b): (&f64, &f64)| (a - b).abs() < OTHER_MINIMUM;
        let mut active = self.phases.slots.iter().filter(|s| s.active);
        active.any(|other| other.model == model && other.y.iter().zip(y).all(near))
    }

    fn search_due(&self, amounts: &Amounts) -> bool {
        let both = [Component::Mo, Component::W].map(|c| amounts.place(c).is_some());
        let reach_k = if both == [true, true] {
            SEARCHED_MO_W_K
        } else {
            SEARCHED_K
        };
        self.searched.is_none_or(|(kelvin, moles)| {
            let moved: f64 = moles
                .iter()
                .zip(amounts.moles)
                .map(|(a, b)| (a - b).abs())
                .sum();
            (kelvin - self.phases.kelvin).abs() > reach_k || moved > SEARCHED_MOLES
        })
    }

    /// Looks from several starts for further minima of phases that can have them, such as carbides
    /// of molybdenum and tungsten or vanadium, and keeps those in view as slots of their own.
    fn search(&mut self, amounts: &Amounts) {
        for slot in 0..self.phases.slots.len() {
            let name = self.phases.slots[slot].name;
            if self.phases.slots[slot].second || !start::has_several_minima(name, &amounts.present)
            {
                continue;
            }
            for y in start::others(&self.phases, slot, amounts) {
                let (height, y) = self.descend(slot, y, amounts.count());
                if height < IN_VIEW {
                    self.keep_in_view(slot, height, y);
                }
            }
        }
        self.searched = Some((self.phases.kelvin, amounts.moles));
    }

    /// A phase of the set that would separate into two compositions.
    fn unstable(&self) -> Option<usize> {
        self.phases
            .slots
            .iter()
            .zip(&self.responses)
            .position(|(slot, response)| {
                slot.active && response.as_ref().is_some_and(|r| r.regularised)
            })
    }

    /// Looks for minima on all sides of an unstable phase.
    fn search_around(&mut self, slot: usize, amounts: &Amounts) {
        let state = self.phases.slots[slot].clone();
        let count = self.phases.models[state.model].variables.len();
        for i in 0..count {
            for factor in [2.0, 0.5] {
                let mut y = state.y;
                y[i] = (y[i] * factor).min(0.95);
                start::normalise(&self.phases.models[state.model], &mut y);
                let (height, y) = self.descend(slot, y, amounts.count());
                if height < -DRIVING_FORCE {
                    self.keep_in_view(slot, height, y);
                }
            }
        }
    }

    fn keep_in_view(&mut self, slot: usize, height: f64, y: [f64; MOST]) {
        let model = self.phases.slots[slot].model;
        let known = self.phases.slots.iter().any(|other| {
            let near = |(a, b): (&f64, &f64)| (a - b).abs() < OTHER_MINIMUM;
            other.model == model && (other.warm || other.active) && other.y.iter().zip(&y).all(near)
        });
        if known {
            return;
        }
        let state = Slot {
            y,
            height,
            warm: true,
            second: true,
            active: false,
            amount: 0.0,
            ..self.phases.slots[slot].clone()
        };
        let spare = self
            .phases
            .slots
            .iter()
            .position(|s| s.second && !s.active && !s.warm);
        if let Some(place) = spare {
            self.phases.slots[place] = state;
        } else if self.phases.slots.len() < SLOTS {
            self.phases.slots.push(state);
            self.responses.push(None);
        }
    }

    fn descend(&mut self, slot: usize, mut y: [f64; MOST], elements: usize) -> (f64, [f64; MOST]) {
        let state = &self.phases.slots[slot];
        let model = &self.phases.models[state.model];
        let mut trial = state.clone();
        for _ in 0..MOST_STEPS {
            let Some(response) = Response::expand(model, &y, elements, &mut self.work) else {
                break;
            };
            let height = response.above_plane(&self.potentials, elements);
            let length = response.step(model, &self.potentials, elements, &mut y);
            trial.y = y;
            if !length.is_finite() || !self.phases.is_itself(&trial) {
                break;
            }
            if length < 2e-4 && !response.regularised {
                return (height, y);
            }
        }
        (f64::INFINITY, y)
    }

    /// Makes room for a phase where the phase rule leaves none: the phase that would run out
    /// first as the new one grows leaves the set.
    fn exchange(&mut self, entering: usize, elements: usize) -> Result<(), Stuck> {
        let slots = &self.phases.slots;
        let atoms_of = |slot: usize| self.phases.models[slots[slot].model].atoms(&slots[slot].y);
        let active: Vec<usize> = (0..slots.len()).filter(|s| slots[*s].active).collect();
        let mut matrix = [[0.0; ROWS]; ROWS];
        let mut right = [0.0; ROWS];
        right[..ELEMENTS].copy_from_slice(&atoms_of(entering));
        for (column, slot) in active.iter().enumerate() {
            for (element, n) in atoms_of(*slot).iter().enumerate().take(elements) {
                matrix[element][column] = *n;
            }
        }
        dense::solve(&mut matrix, &mut right, elements).map_err(|_| Stuck)?;
        let leaving = active
            .iter()
            .zip(right)
            .filter(|(_, share)| *share > 0.0)
            .map(|(slot, share)| (*slot, slots[*slot].amount / share))
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .ok_or(Stuck)?;
        let state = &mut self.phases.slots[leaving.0];
        state.active = false;
        state.amount = 0.0;
        Ok(())
    }
}

/// State of a solver without its compiled phases.
#[derive(Debug, Clone)]
pub(super) struct Saved {
    slots: Vec<Slot>,
    potentials: [f64; ELEMENTS],
    searched: Option<(f64, [f64; ELEMENTS])>,
    solved: bool,
}

/// Ways of changing the set, tried one after another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    Plain,
    /// Ferrite that comes in takes the place of austenite, until it turns out that both stay.
    SwapMatrix,
    /// Phases with a negative amount are kept for longer.
    Patient,
}

/// No equilibrium from this start.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stuck;
