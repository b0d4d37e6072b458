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
mod figure_error;
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
pub use figure_error::FigureError;
pub use figures::{Compared, Figure, QuenchantFigures};
pub use fit_curve::{CurveFit, CurveFitProgress};
pub use fit_figures::{FiguresFit, fit_figures};
pub use fitted_curve::{FittedCurve, FittedKnot};
pub use probe_curve::{CurveOptions, ProbeCurve};

use crate::units::{TemperatureScale, outside_on_scale};
use recalesce_texts::heat::own as texts;

/// Baths of liquid quenchants, °C.
const BATH_RANGE_C: [f64; 2] = [-20.0, 250.0];

/// That a bath is none of these, with temperatures on a scale.
fn bath_outside(bath_c: f64, scale: TemperatureScale) -> String {
    let [least, most] = BATH_RANGE_C;
    let (told, unit) = outside_on_scale([bath_c, least, most], "°C", scale);
    texts::bath_outside(&told, unit)
}
