//! What plans come to, and how that changes with everything that can be off: one quench, or two, a
//! step.

use super::model::Model;
use super::plan::Linear;
use super::slot::Slot;
use crate::advise::error::AdviseError;
use crate::soak::SoakEnd;

/// Plans that are being straightened where the unknowns have certain values.
#[derive(Clone)]
pub(super) struct Straightening {
    /// Values of the unknowns in their own units.
    values: Vec<f64>,
    /// What is left to do, the last first: a plan, and what to change; none for the plan itself.
    jobs: Vec<(usize, Option<Slot>)>,
    /// Of each plan from the first on.
    first: usize,
    /// The piece of the plan in work after its soak; none where it does not harden.
    soaked: Option<SoakEnd>,
    linears: Vec<Linear>,
}

impl Straightening {
    /// All plans of a model from a place on, at values of the unknowns in standard deviations.
    pub(super) fn from(first: usize, model: &Model, at: &[f64]) -> Self {
        let mut jobs: Vec<(usize, Option<Slot>)> = Vec::new();
        for (place, plan) in model.plans.iter().enumerate().skip(first) {
            jobs.push((place, None));
            jobs.extend(plan.quench_slots().map(|slot| (place, Some(slot))));
        }
        jobs.reverse();
        Self {
            values: model.values(at),
            jobs,
            first,
            soaked: None,
            linears: vec![Linear::default(); model.plans.len().saturating_sub(first)],
        }
    }

    /// Does the next job; false when all are done. A piece that does not harden at these values has
    /// no number.
    ///
    /// # Errors
    /// A plan without a steel, which is a fault of the program.
    pub(super) fn step(&mut self, model: &Model) -> Result<bool, AdviseError> {
        let Some((place, slot)) = self.jobs.pop() else {
            return Ok(false);
        };
        let linear = place
            .checked_sub(self.first)
            .and_then(|place| self.linears.get_mut(place));
        if let (Some(plan), Some(linear)) = (model.plans.get(place), linear) {
            let steel = model.trial_steel(plan.steel)?;
            let off = plan.off(&self.values);
            if slot.is_none() {
                self.soaked = plan.soak(steel, &off).ok();
            }
            match (&self.soaked, slot) {
                (None, _) => {}
                (Some(soaked), None) => {
                    *linear = plan.centre(steel, soaked, &off).unwrap_or_default();
                }
                (Some(soaked), Some(slot)) => plan.change_with(steel, soaked, &off, slot, linear),
            }
        }
        Ok(!self.jobs.is_empty())
    }

    pub(super) fn done(self) -> Vec<Linear> {
        self.linears
    }
}
