//! Sections, quench media, conduction in the piece, and the standard probe.

mod choice;
mod conduct;
mod curve;
mod media;
mod medium;
mod mesh;
mod piece;
mod properties;
mod quench;
mod section;
mod trace;

pub use choice::{MediumChoice, OwnMedium};
pub use curve::{CoolingCurve, Place};
pub use media::{media, medium};
pub use medium::{ClassFigures, Confidence, Family, HeatTransfer, Medium, MediumError};
pub use mesh::Shape;
pub use piece::Piece;
pub use properties::Material;
pub use quench::{Cooled, HeatError, Quenching, cool};
pub use section::{Section, SectionError};
