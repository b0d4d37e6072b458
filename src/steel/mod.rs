//! Composition of a steel, the grades by their designations, and validity ranges of models.

mod composition;
mod validity;

pub use composition::{Composition, CompositionError, Element};
pub use validity::{CompositionRange, OutOfRange};
