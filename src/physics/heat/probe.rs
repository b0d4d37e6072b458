//! The standard tests of a quenchant, computed: the 12.5 mm probe and the nickel ball.

use super::curve::{CoolingCurve, Place};
use super::mesh::Shape;
use super::piece::Piece;
use super::{HeatError, Material, Medium};
use serde::Serialize;

/// Diameter of the probe of ISO 9950 and ASTM D6200, m.
const PROBE_DIAMETER_M: f64 = 12.5e-3;
/// Temperature of the probe when it enters the bath, °C.
const PROBE_START_C: f64 = 850.0;
/// Diameter of the ball of ASTM D3520, m: 7/8 in.
const BALL_DIAMETER_M: f64 = 22.225e-3;
/// Temperature of the ball when it enters the bath, °C.
const BALL_START_C: f64 = 885.0;
/// Curie temperature of nickel, °C: the clock stops when the magnet picks the ball up.
const BALL_END_C: f64 = 354.0;
/// Conductivity of nickel, W/mK (65 to 75, from memory).
const NICKEL_CONDUCTIVITY_W_MK: f64 = 70.0;
/// Density of nickel times a mean heat capacity between 354 and 885 °C of 530 J/kgK (480 to 600,
/// from memory), J/m³K.
const NICKEL_CAPACITY_J_M3K: f64 = 8900.0 * 530.0;

/// Where a ball with a parabolic profile has its mean temperature: the root of 3/5 of the radius
/// squared.
const MEAN_RADIUS: f64 = 0.7745966692414834;

/// Intervals along the radius.
const INTERVALS: usize = 24;
/// Largest error in one step, K.
const TOLERANCE_K: f64 = 0.02;
/// The probe is followed to this temperature, °C, or nearly to that of the bath.
const PROBE_END_C: f64 = 150.0;
/// Longest test, s.
const LONGEST_S: f64 = 3600.0;

/// Figures of the centre of the standard probe. A figure is missing when the probe does not get
/// so cold in that bath within an hour.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProbeFigures {
    /// Highest cooling rate, K/s.
    pub max_rate_k_per_s: f64,
    /// Temperature at the highest rate, °C.
    pub max_rate_at_c: f64,
    /// Cooling rate at 300 °C, K/s.
    pub rate_at_300c_k_per_s: Option<f64>,
    /// Time from entry to 600 °C, s.
    pub time_to_600c_s: Option<f64>,
    /// Time from entry to 400 °C, s.
    pub time_to_400c_s: Option<f64>,
    /// Time from entry to 200 °C, s.
    pub time_to_200c_s: Option<f64>,
    /// The whole curve of the centre.
    pub curve: CoolingCurve,
}

/// Computes the test of ISO 9950 and ASTM D6200 in the still bath: a cylinder of the nickel alloy
/// UNS N06600, 12.5 mm in diameter, at 850 °C, couple at the centre.
///
/// The probe is taken as long: its ends, which cool it about 10 % more, are left out, as they are
/// where heat transfer is worked back from a probe curve. The properties are known to 3 %, which
/// puts 2 % on the rates. The lag of the couple is left out and counts above 100 K/s.
///
/// # Errors
/// A bath that does not cool the probe to below 845 °C.
pub fn probe(medium: &Medium) -> Result<ProbeFigures, HeatError> {
    probe_from(medium, PROBE_START_C)
}

/// The probe as a piece.
pub(super) fn probe_piece() -> Piece {
    Piece {
        shape: Shape::Cylinder,
        size_m: 0.5 * PROBE_DIAMETER_M,
        material: Material::probe_alloy(),
        intervals: INTERVALS,
        tolerance_k: TOLERANCE_K,
    }
}

/// As [`probe`], from another temperature, °C.
pub(super) fn probe_from(medium: &Medium, start_c: f64) -> Result<ProbeFigures, HeatError> {
    check(medium, start_c)?;
    let until_c = PROBE_END_C.max(medium.bath_c + 1.0);
    let mut curves = probe_piece().cool(medium, 1.0, start_c, until_c, LONGEST_S, &[Place::Centre]);
    let curve = curves.pop().ok_or(HeatError::NotFinite)?;
    let (max_rate_k_per_s, max_rate_at_c) = curve
        .max_rate()
        .filter(|(rate, at)| rate.is_finite() && at.is_finite())
        .ok_or(HeatError::NotFinite)?;
    Ok(ProbeFigures {
        max_rate_k_per_s,
        max_rate_at_c,
        rate_at_300c_k_per_s: curve.rate_at_c(300.0),
        time_to_600c_s: curve.time_to_c(600.0),
        time_to_400c_s: curve.time_to_c(400.0),
        time_to_200c_s: curve.time_to_c(200.0),
        curve,
    })
}

/// Time that the nickel ball of ASTM D3520 takes from 885 to 354 °C in the still bath, s; nothing
/// when it takes more than an hour. The mean temperature of the ball counts: magnetism starts at its
/// surface and has to take hold of a good part of it.
///
/// # Errors
/// A bath that does not cool the ball to below 880 °C.
pub fn nickel_ball_s(medium: &Medium) -> Result<Option<f64>, HeatError> {
    check(medium, BALL_START_C)?;
    let piece = Piece {
        shape: Shape::Sphere,
        size_m: 0.5 * BALL_DIAMETER_M,
        material: Material::constant(NICKEL_CONDUCTIVITY_W_MK, NICKEL_CAPACITY_J_M3K),
        intervals: INTERVALS,
        tolerance_k: TOLERANCE_K,
    };
    // A little further than needed, so the end is passed and not just met.
    let until_c = (BALL_END_C - 1.0).max(medium.bath_c + 1.0);
    let mean = Place::Within(MEAN_RADIUS);
    let curves = piece.cool(medium, 1.0, BALL_START_C, until_c, LONGEST_S, &[mean]);
    Ok(curves.first().and_then(|curve| curve.time_to_c(BALL_END_C)))
}

fn check(medium: &Medium, start_c: f64) -> Result<(), HeatError> {
    if medium.bath_c + 5.0 < start_c {
        Ok(())
    } else {
        Err(HeatError::BathTooHot {
            bath_c: medium.bath_c,
            start_c,
        })
    }
}
