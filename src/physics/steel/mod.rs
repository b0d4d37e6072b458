//! Composition of a steel, the grades by their designations, and validity ranges of models.

mod composition;
mod grade_text;
mod grades;
mod heats;
mod list;
mod search;
mod validity;

pub use composition::{Composition, CompositionError, Element};
pub use grades::{Entry, Grade, Limits, UnknownGrade, find, grades};
pub use heats::OpenContent;
pub(crate) use list::{Line, List};
pub use search::search;
pub use validity::{CompositionRange, OutOfRange};
