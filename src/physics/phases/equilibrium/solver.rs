//! The search for an equilibrium: from the last one, from austenite, or by cooling, changing the
//! set of phases until every phase in it has a positive amount and no other would form.

use super::response::Response;
use super::slots::{Amounts, Phases, Slot};
use super::{EquilibriumError, PhaseName, start};
use crate::phases::gibbs::{Derivatives, ELEMENTS};

/// Most slots: the seven phases and other compositions of some.
pub(super) const SLOTS: usize = 20;

/// Scaled step below which site fractions count as settled: finally, and before phases are added.
pub(super) const SETTLED: f64 = 1e-6;
const NEARLY_SETTLED: f64 = 3e-3;

/// Most changes of the set.
const MOST_CHANGES: usize = 40;

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
    /// Scaled step below which site fractions count as settled in the end.
    settled: f64,
    solved: bool,
    pub(super) way: Way,
    pub(super) newcomer: Option<usize>,
    pub(super) searched: Option<(f64, [f64; ELEMENTS])>,
    pub(super) work: Derivatives,
    pub(super) responses: Vec<Option<Response>>,
}

impl Solver {
    pub(super) fn new(amounts: &Amounts) -> Self {
        Self::of(Phases::new(&amounts.present))
    }

    pub(super) fn of(phases: Phases) -> Self {
        let responses = vec![None; phases.slots.len()];
        Self {
            phases,
            potentials: [0.0; ELEMENTS],
            balance_error: f64::INFINITY,
            steps: 0,
            settled: SETTLED,
            solved: false,
            way: Way::Plain,
            newcomer: None,
            searched: None,
            work: Derivatives::ZERO,
            responses,
        }
    }

    /// The same solver, content with what boundaries on a map need: the error left after a step is
    /// near the square of the step.
    pub(super) fn for_map(mut self) -> Self {
        self.settled = SETTLED.sqrt();
        self
    }

    /// Equilibrium of one mole of atoms at a temperature in kelvin; the result is in the slots.
    pub(super) fn solve(&mut self, amounts: &Amounts, kelvin: f64) -> Result<(), EquilibriumError> {
        self.steps = 0;
        let failure = |_| EquilibriumError::NotConverged {
            temperature_c: kelvin - crate::phases::equilibrium::ZERO_C_K,
        };
        #[cfg(any(test, feature = "watched-solver"))]
        {
            crate::numeric::effort::count(|effort| effort.searches += 1);
            if super::fault::strikes() {
                self.solved = false;
                return Err(failure(Stuck));
            }
        }
        if !kelvin.is_finite() {
            return Err(failure(Stuck));
        }
        if self.solved {
            self.phases.set_temperature(kelvin);
            if self.settle(amounts).is_ok() {
                return Ok(());
            }
        }
        for way in [Way::Plain, Way::SwapMatrix, Way::Patient] {
            self.way = way;
            let found = self.start_from_austenite(amounts, kelvin);
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
        self.potentials = [0.0; ELEMENTS];
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
        let mut freed = 0.0;
        for slot in &mut self.phases.slots {
            slot.suspended = Some(slot.name) == name;
            if slot.suspended {
                freed += slot.amount;
                slot.active = false;
                slot.amount = 0.0;
            }
        }
        // what it held goes to the other of austenite and ferrite
        let mut slots = self.phases.slots.iter_mut();
        if slots.all(|s| !s.active || s.name.is_carbide()) {
            let other = self
                .phases
                .slots
                .iter_mut()
                .find(|s| !s.suspended && s.warm && !s.name.is_carbide());
            match other {
                Some(other) => {
                    other.active = true;
                    other.amount = freed;
                }
                None => self.solved = false,
            }
        }
    }

    fn start_from_austenite(&mut self, amounts: &Amounts, kelvin: f64) -> Result<(), Stuck> {
        self.phases.set_temperature(kelvin);
        self.forget();
        start::single_phase(&mut self.phases, amounts);
        self.settle(amounts)
    }

    pub(super) fn by_cooling(&mut self, amounts: &Amounts, kelvin: f64) -> Result<(), Stuck> {
        let mut at = HOT_K.max(kelvin);
        self.start_from_austenite(amounts, at)?;
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
            let before = self.potentials;
            self.newton(amounts, self.settled)?;
            let searching = self.search_due(amounts);
            if searching {
                self.search(amounts);
            }
            let unstable = self.unstable();
            if let Some(slot) = unstable {
                self.search_around(slot);
            }
            let moved = before
                .iter()
                .zip(self.potentials)
                .fold(0.0_f64, |m, (a, b)| m.max((a - b).abs()));
            // heights move no more than the potentials do
            let clear = !searching && unstable.is_none() && self.lowest_outside() > 2.0 * moved;
            if !clear && self.add_best(amounts)? {
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
pub(super) enum Way {
    /// As it comes.
    Plain,
    /// Ferrite that comes in takes the place of austenite, until it turns out that both stay.
    SwapMatrix,
    /// Phases with a negative amount are kept for longer.
    Patient,
}

/// No equilibrium from this start.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stuck;
