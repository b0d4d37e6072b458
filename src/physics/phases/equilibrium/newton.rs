//! Newton's method on chemical potentials, phase amounts and site fractions for the present set;
//! a phase whose amount stays negative is dropped.

#![allow(
    clippy::needless_range_loop,
    reason = "indices run over several arrays at once"
)]

use super::response::Response;
use super::slots::Amounts;
use super::solver::{SETTLED, SLOTS, Solver, Stuck, Way};
use crate::numeric::dense;
use crate::phases::gibbs::ELEMENTS;

/// Most phases at once (the phase rule) and rows of Newton's system.
const MOST_ACTIVE: usize = ELEMENTS;
pub(super) const ROWS: usize = ELEMENTS + MOST_ACTIVE;

/// Largest error of any element's balance, moles per mole of atoms.
const BALANCE: f64 = 1e-11;

/// Largest difference in site fractions of two compositions of a phase that count as one.
const TWIN: f64 = 1e-3;

/// Most Newton steps for one set.
pub(super) const MOST_STEPS: usize = 60;

/// Steps in a row with a negative amount after which a phase is dropped, and the same for the
/// phase that came last: it came because it lowers the energy, so others give way first.
const PATIENCE: u8 = 2;
const PATIENCE_WITH_NEWCOMER: u8 = 8;

impl Solver {
    /// Iterates on the present set, dropping phases on the way, to a scaled step length.
    pub(super) fn newton(&mut self, amounts: &Amounts, tolerance: f64) -> Result<(), Stuck> {
        let mut negative = [0_u8; SLOTS];
        for _ in 0..MOST_STEPS {
            self.steps += 1;
            #[cfg(any(test, feature = "watched-solver"))]
            crate::numeric::effort::count(|effort| effort.newton_steps += 1);
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
                right[a] += state.amount * response.uptake(a, None);
                for b in 0..=a {
                    let uptake = state.amount * response.uptake(a, Some(b));
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
        self.potentials = [0.0; ELEMENTS];
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
}
