//! The end-quench (Jominy) curve and the ideal diameter.

use super::Austenite;
use super::kinetics::Kinetics;
use crate::sources::{astm_a255, isothermal_fit, jominy_rates};
use crate::steel::{Composition, OutOfRange};

/// How an end-quench curve was computed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EndQuenchMethod {
    /// ASTM A255 inside the compositions it states.
    AstmA255,
    /// From the kinetics: the rate for half martensite, its place on the bar, its ideal diameter.
    Kinetics,
}

/// An end-quench curve.
#[derive(Debug, Clone, PartialEq)]
pub struct EndQuench {
    /// Distances from the quenched end, mm.
    pub distance_mm: Vec<f64>,
    /// Hardness at each distance, HRC.
    pub hrc: Vec<f64>,
    /// Ideal diameter: round that just gets half martensite at its centre in an ideal quench, mm.
    pub ideal_diameter_mm: f64,
    /// How it was computed.
    pub method: EndQuenchMethod,
    /// Error to expect of the hardness, HRC.
    pub band_hrc: f64,
}

const MM_PER_INCH: f64 = 25.4;
/// Least hardness given, HRC: below it the scale ends.
const LEAST_HRC: f64 = 20.0;

/// Ideal diameter by the factors of ASTM A255, inch.
fn ideal_diameter_inch(steel: &Composition, grain_astm: f64) -> f64 {
    let grain = astm_a255::FACTOR_PER_GRAIN_NUMBER.powf(astm_a255::GRAIN_ASTM - grain_astm);
    astm_a255::carbon_factor_inch(steel.c) * astm_a255::alloy_factor(steel) * grain
}

/// Dividing factor for any distance and diameter: this project's fit to 14 H bands,
/// leave-one-steel-out error 2.7 HRC.
fn compact_dividing_factor(sixteenths: f64, di_inch: f64) -> f64 {
    let reach = (sixteenths - 1.0).max(0.0) / (2.16 * di_inch.powf(1.61));
    1.0 + 1.36 * di_inch.powf(-0.25) * -(-reach.powf(1.70)).exp_m1()
}

/// Ideal diameter from the kinetics, inch.
fn diameter_of_half_martensite_inch(kinetics: &Kinetics) -> Result<f64, OutOfRange> {
    let rate = kinetics.critical_cooling(0.5)?.rate_k_per_s;
    let sixteenths = distance_of_rate(rate);
    Ok(interpolate(&astm_a255::IDEAL_DIAMETER_INCH, sixteenths))
}

/// Distance on the bar that cools with a rate at 704 °C, sixteenths of an inch; logarithmic
/// between the rows of the table and beyond them.
fn distance_of_rate(rate_k_per_s: f64) -> f64 {
    let rows: Vec<(f64, f64)> = jominy_rates::RATE_AT_704C_K_PER_S
        .iter()
        .rev()
        .map(|row| (row.1.ln(), row.0.ln()))
        .collect();
    interpolate(&rows, rate_k_per_s.ln()).exp()
}

/// Straight between rows of rising first column, and beyond the ends.
fn interpolate(rows: &[(f64, f64)], at: f64) -> f64 {
    let mut value = f64::NAN;
    for pair in rows.windows(2) {
        if let &[(x0, y0), (x1, y1)] = pair {
            value = y0 + (y1 - y0) * (at - x0) / (x1 - x0);
            if at <= x1 {
                break;
            }
        }
    }
    value
}

/// The end-quench curve of a composition that is wholly dissolved, at an austenite grain.
///
/// # Errors
/// Outside ASTM A255 and outside the range of the kinetics as well.
pub fn end_quench(steel: &Composition, grain_astm: f64) -> Result<EndQuench, OutOfRange> {
    OutOfRange::check(
        astm_a255::RANGE.model,
        "grain",
        "ASTM",
        grain_astm,
        isothermal_fit::GRAIN_RANGE_ASTM,
    )?;
    let steel = isothermal_fit::with_residuals(steel);
    let (di_inch, method, band_hrc) = if astm_a255::RANGE.check(&steel).is_ok() {
        let di = ideal_diameter_inch(&steel, grain_astm);
        (di, EndQuenchMethod::AstmA255, 3.0)
    } else {
        let kinetics = Kinetics::new(&Austenite {
            composition: steel,
            grain_astm,
            undissolved_carbide_volume_fraction: 0.0,
        })?;
        let di = diameter_of_half_martensite_inch(&kinetics)?;
        (di, EndQuenchMethod::Kinetics, 5.0)
    };
    let initial_hrc = astm_a255::initial_hrc(steel.c);
    let sixteenths = (1..=32).map(f64::from);
    Ok(EndQuench {
        distance_mm: sixteenths.clone().map(|j| j * MM_PER_INCH / 16.0).collect(),
        hrc: sixteenths
            .map(|j| (initial_hrc / compact_dividing_factor(j, di_inch)).max(LEAST_HRC))
            .collect(),
        ideal_diameter_mm: di_inch * MM_PER_INCH,
        method,
        band_hrc,
    })
}
