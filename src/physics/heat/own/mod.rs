//! A quenchant of the user's own: from what is known of it to a heat-transfer curve.
//!
//! - [`fit_figures`] takes the nickel-ball time and the figures of the 12.5 mm probe, as many as
//!   there are, to the curve with which the computed tests give the same.
//! - [`ProbeCurve::read`] reads a measured curve of that probe from text,
//!   and [`CurveFit`] finds the curve with which the computed probe runs through the readings.

mod band;
mod curve_error;
mod curve_units;
mod entry;
mod figures;
mod fit_curve;
mod fit_figures;
mod fitted_curve;
mod forward;
mod measured;
mod noise;
mod probe_curve;
mod shape;
mod table;
mod thin;

pub use band::band_factor;
pub use curve_error::{CurveError, CurveFitError, CurveNote};
pub use figures::{Compared, Figure, FigureError, QuenchantFigures};
pub use fit_curve::{CurveFit, CurveFitProgress};
pub use fit_figures::{FiguresFit, fit_figures};
pub use fitted_curve::{FittedCurve, FittedKnot};
pub use probe_curve::{CurveOptions, ProbeCurve};

/// Baths of liquid quenchants, °C.
const BATH_RANGE_C: [f64; 2] = [-20.0, 250.0];
