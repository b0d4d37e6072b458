//! Phases outside the present set: how far each lies above the plane of potentials, whether one
//! would form, and further minima of carbides that can separate into two compositions.

use super::newton::{MOST_STEPS, ROWS};
use super::response::Descent;
use super::slots::{Amounts, Slot, model_is};
use super::solver::{SLOTS, Solver, Stuck, Way};
use super::{PhaseName, start};
use crate::numeric::dense;
use crate::phases::gibbs::{Component, ELEMENTS, MOST};

/// Change of temperature, K, and of composition, sum of mole fractions, after which phases with
/// several minima are searched anew.
const SEARCHED_K: f64 = 40.0;

/// The same with molybdenum and tungsten together, whose M6C separates readily.
const SEARCHED_MO_W_K: f64 = 10.0;
const SEARCHED_MOLES: f64 = 0.01;

/// Height, in units of RT per mole of atoms, up to which a further minimum of a phase is kept in
/// view, and difference in site fractions that makes it another one.
const IN_VIEW: f64 = 0.15;

/// Scaled step from which on the height left to fall is known well enough to give up.
const HALF_WAY: f64 = 0.5;
const OTHER_MINIMUM: f64 = 0.02;

/// Scaled step in which a minimum is reached, and in which one that is looked for is found: what is
/// left is about the square, and one that is kept in view is descended into again.
const SETTLED: f64 = 2e-4;
const FOUND: f64 = 2e-2;

/// By how much a step down may lead up, in units of RT per mole of atoms, before it is halved.
const TOO_FAR_UP: f64 = 0.03;

/// Driving force that adds a phase, in units of RT per mole of atoms: 1e-3 J/mol at 1000 K.
pub(super) const DRIVING_FORCE: f64 = 1.2e-7;

impl Solver {
    /// Finds the heights of all phases outside the set and adds the one with the largest driving
    /// force, if any has one. True when the set has changed.
    pub(super) fn add_best(&mut self, amounts: &Amounts) -> Result<bool, Stuck> {
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

    /// Lowest height of the phases outside the set when they were last looked at.
    pub(super) fn lowest_outside(&self) -> f64 {
        let outside = self
            .phases
            .slots
            .iter()
            .filter(|s| !s.active && !s.suspended);
        outside.map(|s| s.height).fold(f64::INFINITY, f64::min)
    }

    /// Height of a phase that is kept out, at the present potentials; infinite where it has no
    /// minimum.
    pub(super) fn height_of(&mut self, name: PhaseName, amounts: &Amounts) -> f64 {
        let mut lowest = f64::INFINITY;
        for slot in 0..self.phases.slots.len() {
            let state = &self.phases.slots[slot];
            if state.name == name && !state.active && (state.warm || !state.second) {
                lowest = lowest.min(self.lowest(slot, amounts).0);
            }
        }
        lowest
    }

    /// Lowest point of a phase above the plane of potentials near where it was, or from its first
    /// start: its height and site fractions. Infinite when it has no minimum there.
    fn lowest(&mut self, slot: usize, amounts: &Amounts) -> (f64, [f64; MOST]) {
        let (warm, second, y) = {
            let state = &self.phases.slots[slot];
            (state.warm, state.second, state.y)
        };
        if warm {
            let found = self.descend(slot, y);
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
        self.descend(slot, y)
    }

    pub(super) fn search_due(&self, amounts: &Amounts) -> bool {
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

    /// True when a phase of the set has this structure and nearly these site fractions.
    pub(super) fn is_taken(&self, slot: usize, y: &[f64; MOST]) -> bool {
        let model = self.phases.slots[slot].model;
        let near = |(a, b): (&f64, &f64)| (a - b).abs() < OTHER_MINIMUM;
        let mut active = self.phases.slots.iter().filter(|s| s.active);
        active.any(|other| other.model == model && other.y.iter().zip(y).all(near))
    }

    /// Looks from several starts for further minima of phases that can have them, such as carbides
    /// of molybdenum and tungsten or vanadium, and keeps those in view as slots of their own.
    pub(super) fn search(&mut self, amounts: &Amounts) {
        for slot in 0..self.phases.slots.len() {
            let name = self.phases.slots[slot].name;
            if self.phases.slots[slot].second || !start::has_several_minima(name, &amounts.present)
            {
                continue;
            }
            for y in start::others(&self.phases, slot, amounts) {
                let (height, y) = self.descend_below(IN_VIEW, slot, y);
                if height < IN_VIEW {
                    self.keep_in_view(slot, height, y);
                }
            }
        }
        self.searched = Some((self.phases.kelvin, amounts.moles));
    }

    /// A phase of the set that would separate into two compositions.
    pub(super) fn unstable(&self) -> Option<usize> {
        self.phases
            .slots
            .iter()
            .zip(&self.responses)
            .position(|(slot, response)| {
                slot.active && response.as_ref().is_some_and(|r| r.regularised)
            })
    }

    /// Looks for minima on all sides of an unstable phase.
    pub(super) fn search_around(&mut self, slot: usize) {
        let state = self.phases.slots[slot].clone();
        let count = self.phases.models[state.model].variables.len();
        for i in 0..count {
            for factor in [2.0, 0.5] {
                let mut y = state.y;
                y[i] = (y[i] * factor).min(0.95);
                start::normalise(&self.phases.models[state.model], &mut y);
                let (height, y) = self.descend(slot, y);
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

    fn descend(&mut self, slot: usize, y: [f64; MOST]) -> (f64, [f64; MOST]) {
        self.descend_below(f64::INFINITY, slot, y)
    }

    /// Minimum reached from given site fractions, given up when it will not be below `limit`.
    fn descend_below(&mut self, limit: f64, slot: usize, mut y: [f64; MOST]) -> (f64, [f64; MOST]) {
        let state = &self.phases.slots[slot];
        let model = &self.phases.models[state.model];
        let name = state.name;
        let settled = if limit.is_finite() { FOUND } else { SETTLED };
        let mut before = (f64::INFINITY, y);
        for _ in 0..MOST_STEPS {
            let here = y;
            let Some(step) = Descent::step(model, &mut y, &self.potentials, &mut self.work) else {
                break;
            };
            let (height, length) = (step.height, step.length);
            if !length.is_finite() || !model_is(name, model, &y) {
                break;
            }
            if limit.is_finite() && height > before.0 + TOO_FAR_UP {
                // one of several minima is looked for, and a long step leads over to another: back
                // half of the way
                y = std::array::from_fn(|i| f64::midpoint(before.1[i], here[i]));
                continue;
            }
            before = (height.min(before.0), here);
            // near the minimum, the height left to fall is under half the squared length
            if length < HALF_WAY && before.0 - 0.5 * length > limit {
                break;
            }
            if length < settled && !step.regularised {
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
