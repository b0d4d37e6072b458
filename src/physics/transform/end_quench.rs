//! The end-quench (Jominy) curve and the ideal diameter.

use super::Austenite;
use super::kinetics::Kinetics;
use super::measured_heat::MeasuredHeat;
use crate::sources::{astm_a255, astm_a255_cooling_rates, dividing_factor_fit, isothermal_fit};
use crate::steel::{Composition, OutOfRange};
use recalesce_texts::transform as texts;

/// How an end-quench curve was computed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EndQuenchMethod {
    /// Ideal diameter by the factors of ASTM A255, inside the compositions it states.
    AstmA255,
    /// From the user's own test of the heat.
    Measured,
    /// From the kinetics: the rate for half martensite, its place on the bar, its ideal diameter.
    Kinetics,
}

/// An end-quench curve.
#[derive(Debug, Clone, PartialEq)]
pub struct EndQuench {
    /// Distances from the quenched end, mm.
    pub distance_mm: Vec<f64>,
    /// Hardness at each distance, HRC, by this project's dividing factor: mean error 1.5 HRC on
    /// the band rows kept here, [`dividing_factor_fit::LEFT_OUT`] on a steel left out of its fit.
    pub hrc: Vec<f64>,
    /// The same by the polynomials of ASTM A255, inside the compositions it states; as recalled
    /// they read low on the tail (mean error 2.8 HRC on the same rows). The difference is a
    /// measure of what is uncertain.
    pub standard_hrc: Option<Vec<f64>>,
    /// Ideal diameter: round that just gets half martensite at its centre in an ideal quench, mm.
    pub ideal_diameter_mm: f64,
    /// How it was computed.
    pub method: EndQuenchMethod,
    /// Error to expect of the hardness, HRC.
    pub band_hrc: f64,
}

pub(super) const MM_PER_INCH: f64 = 25.4;
/// Last distance given, sixteenths of an inch: two inches.
const LAST_SIXTEENTH: i32 = 32;
/// Least hardness given, HRC: below it the scale ends.
const LEAST_HRC: f64 = 20.0;
/// Scatter of points on a bar that no test undercuts, HRC.
const LEAST_MEASURED_BAND_HRC: f64 = 1.0;

/// Ideal diameter by the factors of ASTM A255, inch.
fn ideal_diameter_inch(steel: &Composition, grain_astm: f64) -> f64 {
    let grain = astm_a255::FACTOR_PER_GRAIN_NUMBER.powf(astm_a255::GRAIN_ASTM - grain_astm);
    astm_a255::carbon_factor_inch(steel.c) * astm_a255::alloy_factor(steel) * grain
}

/// Dividing factor for any distance, sixteenths of an inch, and ideal diameter, inch: this project's fit.
pub(super) fn dividing_factor(sixteenths: f64, di_inch: f64) -> f64 {
    dividing_factor_fit::FITTED.at(sixteenths, di_inch)
}

/// Dividing factor by the polynomials of ASTM A255, straight between their distances and carried
/// on by the compact one beyond the last; never under 1, never falling along the bar.
fn standard_dividing_factor(sixteenths: f64, di_inch: f64) -> f64 {
    let mut before = (1.0, 1.0);
    for row in &astm_a255::DIVIDING_FACTORS {
        let own = if di_inch >= row.limit_inch {
            1.0
        } else {
            let sum = row
                .coefficients
                .iter()
                .rev()
                .fold(0.0, |sum, a| sum * di_inch + a);
            sum.max(1.0)
        };
        let here = (row.sixteenths, own.max(before.1));
        if sixteenths <= here.0 {
            let part = ((sixteenths - before.0) / (here.0 - before.0)).max(0.0);
            return before.1 + part * (here.1 - before.1);
        }
        before = here;
    }
    let (last, factor) = before;
    factor * dividing_factor(sixteenths, di_inch) / dividing_factor(last, di_inch)
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
    let rows: Vec<(f64, f64)> = astm_a255_cooling_rates::RATE_AT_704C
        .iter()
        .rev()
        .map(|[sixteenths, rate]| (rate.ln(), sixteenths.ln()))
        .collect();
    interpolate(&rows, rate_k_per_s.ln()).exp()
}

/// Rate at 704 °C, K/s, of the place on the bar where a steel of this ideal diameter, inch, is half
/// martensite.
pub(super) fn rate_of_diameter_k_per_s(di_inch: f64) -> f64 {
    let rows = astm_a255::IDEAL_DIAMETER_INCH.map(|(sixteenths, inch)| (inch, sixteenths));
    let sixteenths = interpolate(&rows, di_inch);
    let rows: Vec<(f64, f64)> = astm_a255_cooling_rates::RATE_AT_704C
        .iter()
        .map(|[sixteenths, rate]| (sixteenths.ln(), rate.ln()))
        .collect();
    interpolate(&rows, sixteenths.ln()).exp()
}

/// Straight between rows of rising first column, and beyond the ends.
pub(super) fn interpolate(rows: &[(f64, f64)], at: f64) -> f64 {
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
        texts::GRAIN,
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
    Ok(EndQuench {
        distance_mm: sixteenths().map(|j| j * MM_PER_INCH / 16.0).collect(),
        hrc: curve(initial_hrc, di_inch, dividing_factor),
        standard_hrc: (method == EndQuenchMethod::AstmA255)
            .then(|| curve(initial_hrc, di_inch, standard_dividing_factor)),
        ideal_diameter_mm: di_inch * MM_PER_INCH,
        method,
        band_hrc,
    })
}

/// The end-quench curve of a heat that was measured: through its points, to their scatter.
#[must_use]
pub fn measured_end_quench(heat: &MeasuredHeat) -> EndQuench {
    EndQuench {
        distance_mm: sixteenths().map(|j| j * MM_PER_INCH / 16.0).collect(),
        hrc: curve(
            heat.initial_hrc,
            heat.ideal_diameter_mm / MM_PER_INCH,
            dividing_factor,
        ),
        standard_hrc: None,
        ideal_diameter_mm: heat.ideal_diameter_mm,
        method: EndQuenchMethod::Measured,
        band_hrc: heat.residual_hrc.max(LEAST_MEASURED_BAND_HRC),
    }
}

/// Places of the curve, sixteenths of an inch.
fn sixteenths() -> impl Iterator<Item = f64> {
    (1..=LAST_SIXTEENTH).map(f64::from)
}

/// Hardness along the bar by a dividing factor of distance and diameter.
fn curve(initial_hrc: f64, di_inch: f64, factor: fn(f64, f64) -> f64) -> Vec<f64> {
    sixteenths()
        .map(|j| (initial_hrc / factor(j, di_inch)).max(LEAST_HRC))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cr_mo() -> Composition {
        Composition {
            c: 0.40,
            mn: 0.85,
            si: 0.25,
            cr: 0.95,
            mo: 0.20,
            ..Composition::default()
        }
    }

    #[test]
    fn inside_the_standard_both_curves_are_given() {
        let curve = end_quench(&cr_mo(), 7.0);
        assert!(curve.is_ok_and(|c| {
            c.method == EndQuenchMethod::AstmA255
                && c.standard_hrc.is_some_and(|s| s.len() == c.hrc.len())
        }));
    }

    #[test]
    fn outside_the_standard_the_kinetics_answer() {
        let spring = Composition {
            si: 1.95,
            ..cr_mo()
        };
        let curve = end_quench(&spring, 7.0);
        assert!(
            curve.is_ok_and(|c| {
                c.method == EndQuenchMethod::Kinetics && c.standard_hrc.is_none()
            })
        );
    }

    #[test]
    fn rates_of_the_table_return_their_distance() {
        for [sixteenths, rate] in astm_a255_cooling_rates::RATE_AT_704C {
            assert!((distance_of_rate(*rate) / sixteenths - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn coarser_grain_hardens_deeper() {
        let di = |grain| end_quench(&cr_mo(), grain).map_or(f64::NAN, |c| c.ideal_diameter_mm);
        assert!(di(5.0) > di(8.0));
    }
}
