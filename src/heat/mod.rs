//! Sections, quench media, conduction in the piece, and the standard probe.

mod choice;
mod conduct;
mod curve;
mod end_quench;
mod media;
mod medium;
mod mesh;
mod piece;
mod probe;
mod properties;
mod quench;
mod section;
mod severity;
mod thermometry;
mod trace;

pub use choice::{MediumChoice, OwnMedium};
pub use curve::{CoolingCurve, Place};
pub use end_quench::{end_quench_curve, jominy_rate_at_704c};
pub use media::{media, medium};
pub use medium::{ClassFigures, Confidence, Family, HeatTransfer, Medium, MediumError};
pub use mesh::Shape;
pub use piece::Piece;
pub use probe::{ProbeFigures, nickel_ball_s, probe};
pub use properties::Material;
pub use quench::{Cooled, HeatError, Quenching, cool};
pub use section::{Section, SectionError};
pub use severity::{
    grossmann_critical_diameter_mm, grossmann_ideal_diameter_mm, half_temperature_fourier,
};
pub use thermometry::{ThermocoupleClass, furnace_uniformity_k, type_k_tolerance_k};
