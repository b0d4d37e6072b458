//! A quenchant of the user's own: from the figures on its sheet to a heat-transfer curve.
//!
//! [`fit_figures`] takes the nickel-ball time and the figures of the 12.5 mm probe, as many as
//! there are, to the curve with which the computed tests give the same.

mod figures;
mod fit_figures;
mod shape;

pub use figures::{Compared, Figure, FigureError, QuenchantFigures};
pub use fit_figures::{FiguresFit, fit_figures};
