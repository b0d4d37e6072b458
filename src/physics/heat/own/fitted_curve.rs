//! What a fit to a measured curve found.

use super::band::{band_factor, mean_ln_h};
use super::curve_error::CurveFitError;
use super::figures::{Compared, QuenchantFigures};
use super::fit_curve::{CurveFit, KNOTS, ROUGHNESS, UNKNOWNS};
use super::measured;
use crate::heat::probe::probe_from;
use crate::heat::{HeatTransfer, OwnMedium};
use crate::numeric::least_squares::Normal;
use serde::{Deserialize, Serialize};

/// A knot of whose value the readings decide less than this is decided by its neighbours.
const DECIDED_BY_READINGS: f64 = 0.5;
/// Spacing of differences in the logarithm of the coefficient.
const SPACING: f64 = 0.01;
/// A fit that misses the readings by more, K, and by more times their scatter, is none (expert
/// values).
const MOST_RMS_K: f64 = 5.0;
const MOST_RMS_OVER_EXPECTED: f64 = 4.0;

/// One knot of the curve found.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct FittedKnot {
    /// Temperature of the surface, °C.
    pub surface_c: f64,
    /// Heat-transfer coefficient, W/m²K.
    pub h_w_m2k: f64,
    /// Standard deviation of its logarithm: what scatter and smoothness leave open.
    pub ln_h_sd: f64,
    /// Whether the readings say little about it by itself, and the smoothness of the curve fills
    /// it in from its neighbours.
    pub from_neighbours: bool,
}

/// A heat-transfer curve found from a measured curve of the probe.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FittedCurve {
    /// The curve and its bath, with its band and the figures read off.
    pub medium: OwnMedium,
    /// Its knots, by rising temperature, with how well each is known.
    pub knots: Vec<FittedKnot>,
    /// Time since entry, s, measured and computed temperature, °C.
    pub points: Vec<[f64; 3]>,
    /// The figures read off the measured curve beside those of the computed one.
    pub compared: Vec<Compared>,
    /// Root mean square of computed less measured temperature, K.
    pub rms_k: f64,
    /// What it should come to by the scatter of the readings, K.
    pub expected_rms_k: f64,
    /// By how much later than read or found the probe entered the bath, s.
    pub entry_shift_s: f64,
    /// The heat transfer that decides whether the pearlite nose is passed lies between the curve
    /// divided by this factor and the curve times it, nine times in ten.
    pub h_band_factor: f64,
}

impl CurveFit {
    /// The curve as far as it is found; complete when the steps are done.
    ///
    /// The couple sees only what comes through to the centre: a narrow peak of boiling comes out
    /// with the right heat but not the right height, and the time of a plate is known better than
    /// any single knot.
    ///
    /// # Errors
    /// Readings that do not determine the curve, or that no curve in this bath runs through.
    pub fn fitted(&self) -> Result<FittedCurve, CurveFitError> {
        let undetermined = CurveFitError::Undetermined;
        let (rms_k, expected_rms_k) = (self.rms_k(), self.expected_rms_k());
        if rms_k > MOST_RMS_K.max(MOST_RMS_OVER_EXPECTED * expected_rms_k) {
            return Err(CurveFitError::NotFollowed { rms_k });
        }
        let curve = self.medium_at(&self.at);
        let resolved = curve.resolve().map_err(|_| undetermined)?;
        let computed = probe_from(&resolved, self.start_c).map_err(|_| undetermined)?;
        let computed = QuenchantFigures::from(&computed);
        let measured = measured::figures(&self.points, self.noise_k, self.at[KNOTS]);
        let readings = self.linearise();
        // How smooth the curve had to be says nothing on how smooth boiling is: corners as sharp
        // as boiling has must lie in the band.
        let [.., roughest] = ROUGHNESS;
        let mut covariance = self
            .with_prior(&readings, roughest)
            .covariance()
            .map_err(|_| undetermined)?;
        // What the model cannot follow counts as scatter, too.
        let excess = self.misfit(&self.run, &self.at) / self.points.len() as f64;
        for row in &mut covariance {
            row.iter_mut().for_each(|entry| *entry *= excess.max(1.0));
        }
        let h_band_factor = self.band(&covariance).ok_or(undetermined)?;
        let medium = OwnMedium {
            h_band_factor: Some(h_band_factor),
            figures: measured,
            ..curve
        };
        // A band so wide that nobody would use it is no answer.
        medium.resolve().map_err(|_| undetermined)?;
        let points = self.run.spots(&self.points, self.at[KNOTS]);
        Ok(FittedCurve {
            knots: self.knots(&readings, &covariance, excess.max(1.0)),
            points: points
                .into_iter()
                .zip(&self.points)
                .map(|(spot, p)| {
                    let time_s = p.time_s - self.at[KNOTS];
                    [time_s, p.temperature_c, self.run.at(spot)[0]]
                })
                .collect(),
            compared: measured.beside(&computed),
            rms_k,
            expected_rms_k,
            entry_shift_s: self.at[KNOTS],
            h_band_factor,
            medium,
        })
    }

    fn knots(
        &self,
        readings: &Normal<UNKNOWNS>,
        covariance: &[[f64; UNKNOWNS]; UNKNOWNS],
        excess: f64,
    ) -> Vec<FittedKnot> {
        self.knots_c
            .iter()
            .zip(&self.at)
            .zip(covariance)
            .enumerate()
            .map(|(i, ((&surface_c, ln_h), row))| {
                // The diagonal of what readings and prior together make of the readings' share.
                let share = readings.times(row).get(i).copied().unwrap_or_default() / excess;
                let variance = row.get(i).copied().unwrap_or_default();
                FittedKnot {
                    surface_c,
                    h_w_m2k: ln_h.exp(),
                    ln_h_sd: variance.sqrt(),
                    from_neighbours: share < DECIDED_BY_READINGS,
                }
            })
            .collect()
    }

    fn band(&self, covariance: &[[f64; UNKNOWNS]; UNKNOWNS]) -> Option<f64> {
        let level = |at: &[f64; UNKNOWNS]| {
            let curve = HeatTransfer::new(&self.medium_at(at).h_w_m2k).ok()?;
            Some(mean_ln_h(&curve))
        };
        let here = level(&self.at)?;
        let mut slopes = [0.0; UNKNOWNS];
        for (i, slope) in slopes.iter_mut().enumerate().take(KNOTS) {
            let mut beside = self.at;
            *beside.get_mut(i)? += SPACING;
            *slope = (level(&beside)? - here) / SPACING;
        }
        let variance: f64 = covariance
            .iter()
            .zip(&slopes)
            .map(|(row, a)| a * row.iter().zip(&slopes).map(|(c, b)| c * b).sum::<f64>())
            .sum();
        Some(band_factor(variance))
    }
}
