//! Where a model may be used: ranges of composition and of other inputs, and the refusal outside.

use super::{Composition, Element};

/// A refusal: a model was asked outside the range for which it is known to hold.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error(
    "{model} knows {quantity} from {least} to {largest} {unit}; this is {value:.3}. No number is given."
)]
pub struct OutOfRange {
    /// The model that refuses, as the page names it.
    pub model: &'static str,
    /// The quantity out of range, as the page names it.
    pub quantity: &'static str,
    /// Its value.
    pub value: f64,
    /// Smallest value allowed.
    pub least: f64,
    /// Largest value allowed.
    pub largest: f64,
    /// Unit of the three numbers.
    pub unit: &'static str,
}

impl OutOfRange {
    /// Checks that `value` lies in `least..=largest`.
    ///
    /// # Errors
    /// The refusal itself when it does not, or is not a number.
    pub fn check(
        model: &'static str,
        quantity: &'static str,
        unit: &'static str,
        value: f64,
        (least, largest): (f64, f64),
    ) -> Result<(), Self> {
        if (least..=largest).contains(&value) {
            return Ok(());
        }
        Err(Self {
            model,
            quantity,
            value,
            least,
            largest,
            unit,
        })
    }
}

/// The compositions for which a model holds: per element the least and largest content, wt %.
/// An element that is not listed is not limited.
#[derive(Debug, Clone, Copy)]
pub struct CompositionRange {
    /// The model, as the page names it.
    pub model: &'static str,
    /// Limits per element, wt %.
    pub limits_wt: &'static [(Element, f64, f64)],
}

impl CompositionRange {
    /// Checks a composition against every limit.
    ///
    /// # Errors
    /// The first limit that is broken.
    pub fn check(&self, steel: &Composition) -> Result<(), OutOfRange> {
        for &(element, least, largest) in self.limits_wt {
            OutOfRange::check(
                self.model,
                element.symbol(),
                "wt %",
                steel.get(element),
                (least, largest),
            )?;
        }
        Ok(())
    }
}
