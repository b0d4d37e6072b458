//! Sections, quench media, conduction in the piece, and the standard probe.

mod choice;
mod section;

pub use choice::{MediumChoice, OwnMedium};
pub use section::{Section, SectionError};
