//! Hardness along the bar of the end-quench (Jominy) test, from what forms in it.

use super::{AutoTempered, Hardness, auto_tempered};
use crate::heat::{HeatError, end_quench_bar};
use crate::steel::OutOfRange;
use crate::transform::{Fractions, Kinetics, TurningPiece};

/// A place on the bar.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct BarPlace {
    /// Distance from the quenched end, mm.
    pub distance_mm: f64,
    /// Cooling rate at 700 °C, K/s.
    pub rate_at_700c_k_per_s: f64,
    /// Volume fractions.
    pub fractions: Fractions,
    /// Hardness.
    pub hardness: Hardness,
}

/// Why there is no bar.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BarError {
    /// The bar cannot be cooled from this temperature.
    #[error(transparent)]
    Heat(#[from] HeatError),
    /// The steel lies outside of a model.
    #[error(transparent)]
    Model(#[from] OutOfRange),
}

/// Quenches the bar from `start_c`, °C, and tells what forms and how hard it is at each sixteenth of
/// an inch to 2 in: heat flow with heat of transformation, additivity, and the hardness of the mixture
/// less what its martensite has tempered on the way down.
///
/// At the middle of a steel's chemical range it lies inside the end-quench bands kept here at 70 of
/// 72 positions, whose rows took part in the fit of the kinetics. From the middles of the bands it
/// differs by 3.2 HRC on average, partly because a middle is the mean of a lean and a rich heat,
/// which falls less steeply than either of them: the mean of two such bars is within 2.3 HRC.
///
/// # Errors
/// A start outside 760 to 1200 °C, or a steel outside the hardness of mixtures.
pub fn end_quenched(kinetics: &Kinetics, start_c: f64) -> Result<Vec<BarPlace>, BarError> {
    let bar = end_quench_bar(start_c, &mut TurningPiece::new(kinetics, 0.0))?;
    let mut places = Vec::with_capacity(bar.curves.len());
    for (&distance_mm, curve) in bar.distance_mm.iter().zip(&bar.curves) {
        let transformed = kinetics.along(&curve.time_s, &curve.temperature_c)?;
        let fractions = transformed.fractions;
        let auto = AutoTempered::along(&transformed.history);
        let dissolved = &kinetics.austenite().composition;
        places.push(BarPlace {
            distance_mm,
            rate_at_700c_k_per_s: curve.rate_at_c(700.0).unwrap_or_default(),
            fractions,
            hardness: auto_tempered(dissolved, &fractions, &transformed.formed, &auto)?,
        });
    }
    Ok(places)
}
