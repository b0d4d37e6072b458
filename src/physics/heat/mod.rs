//! Sections, quench media, conduction in the piece, and the standard probe.
//!
//! - [`media`] lists the quenchants; [`MediumChoice::resolve`] finds one or checks the user's own.
//! - [`cool`] takes a [`Quenching`] (section, medium, air delay, end) to [`CoolingCurve`]s at the
//!   places of the piece that matter.
//! - [`heat_up`] tells when the core of a section has come to the temperature of a furnace.
//! - [`probe`] and [`nickel_ball_s`] compute the standard tests of a medium, so that its figures
//!   can be laid beside measured ones.
//! - [`fit_figures`] finds the heat transfer of a quenchant of the user's own from such figures;
//!   [`ProbeCurve::read`] reads a measured curve of the probe and [`CurveFit`] works back from it.
//! - [`grossmann_ideal_diameter_mm`] and its inverse, [`agitation_factor`], [`end_quench_bar`]:
//!   what the hardenability of a steel is told in.
//! - [`Piece`] and [`Material`] are the solver without a steel, for checks and other materials.
//!
//! Properties are those of undercooled austenite; [`cool_turning`] adds those of what forms, and
//! its heat. Biot numbers
//! from lumped to 20 and more are computed, to 0.1 % of the range of temperature for constant
//! properties and 0.2 % of the times with boiling curves, a blade to 1 %. The heat transfer itself is known to
//! 30 % at best: [`Medium::h_band_factor`].

#[cfg(test)]
mod balance_tests;
mod bath;
mod blade;
mod chilling;
mod choice;
mod conduct;
mod curve;
mod cut;
mod element;
mod end_quench;
mod family;
mod hazard;
mod heat_transfer;
mod heating;
mod media;
mod medium;
mod medium_error;
mod mesh;
mod own;
mod piece;
mod probe;
mod properties;
mod quasi_steady;
mod quench;
mod quenching;
mod section;
mod severity;
mod thermometry;
mod title;
mod trace;
mod turning;
mod until;

pub use bath::BathRange;
pub use chilling::core_cold_s;
pub use choice::{LONGEST_TITLE, LaterBath, Leave, ListedAt, MediumChoice, OwnMedium};
pub use curve::{CoolingCurve, Place};
pub use end_quench::{EndQuenchBar, end_quench_bar, jominy_rate_at_704c};
pub use family::Family;
pub use hazard::{Hazard, Said};
pub use heat_transfer::HeatTransfer;
pub use heating::{AT_TEMPERATURE_K, FURNACE_AIR_W_M2K, Heating, heat_up};
pub use media::plate_to_nose_s;
pub use media::{MediumNote, media, medium, medium_note};
pub use medium::{ClassFigures, Confidence, EMISSIVITY, Medium};
pub use medium_error::MediumError;
pub use mesh::Shape;
pub use own::band_factor;
pub use own::{
    Compared, CurveError, CurveFit, CurveFitError, CurveFitProgress, CurveNote, CurveOptions,
    Figure, FigureError, FiguresFit, FittedCurve, FittedKnot, ProbeCurve, QuenchantFigures,
    fit_figures,
};
pub use piece::Piece;
pub use probe::{ProbeFigures, nickel_ball_s, probe};
pub use properties::Material;
pub use quasi_steady::quasi_steady_s;
pub use quench::{Cooled, cool, cool_across, cool_core, cool_turning};
pub use quenching::{AGITATION, HeatError, Quenching};
pub use section::{Grind, Section, SectionError};
pub use severity::{
    agitation_factor, equivalent_severity_per_in, grossmann_critical_diameter_mm,
    grossmann_ideal_diameter_mm, half_temperature_fourier,
};
pub use thermometry::{ThermocoupleClass, furnace_uniformity_k, type_k_tolerance_k};
pub use title::MediumTitle;
pub use turning::Turning;
