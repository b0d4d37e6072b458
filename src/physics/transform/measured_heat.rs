//! A heat of steel known by its own end-quench test: how deep it really hardens, and how much later
//! than computed its transformations begin.

use super::Austenite;
use super::end_quench::{MM_PER_INCH, dividing_factor, rate_of_diameter_k_per_s};
use super::kinetics::Kinetics;
use crate::sources::astm_a255;
use crate::steel::{Composition, OutOfRange};
use crate::units::NumberOutside;
use recalesce_texts::transform as texts;
use serde::{Deserialize, Serialize};
use std::fmt;

/// A measured point of an end-quenched bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BarPoint {
    /// Distance from the quenched end, mm: 1 to 80.
    pub distance_mm: f64,
    /// Hardness, HRC: 15 to 70.
    pub hrc: f64,
}

/// What an end-quench test tells of its heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredHeat {
    /// Ideal diameter, mm.
    pub ideal_diameter_mm: f64,
    /// Hardness of the quenched end, HRC.
    pub initial_hrc: f64,
    /// Standard deviation of the points about the curve, HRC.
    pub residual_hrc: f64,
    /// How many times later than computed ferrite, pearlite and bainite begin.
    pub delay_factor: f64,
}

/// Why points tell nothing of a heat.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MeasuredHeatError {
    /// Too few or too many.
    Count(usize),
    /// A distance or a hardness that no bar has.
    Point(NumberOutside),
    /// All points are about as hard as the end, or all soft.
    NoFall(f64, f64),
    /// The points are far from any curve of a bar.
    NoCurve(f64),
    /// The steel lies outside of the kinetics.
    Steel(#[from] OutOfRange),
}

impl MeasuredHeatError {
    /// What is wrong. One text for all kinds: derived for each by itself, the page would be heavier.
    fn said(&self) -> String {
        match self {
            Self::Count(count) => texts::points_needed(FEWEST, MOST, *count),
            Self::Point(point) => texts::point_outside(
                point.field,
                point.value,
                [point.least, point.most],
                point.unit,
            ),
            Self::NoFall(first, last) => texts::no_fall(*first, *last),
            Self::NoCurve(hrc) => texts::no_curve(*hrc),
            Self::Steel(error) => error.to_string(),
        }
    }
}

impl fmt::Display for MeasuredHeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said())
    }
}

/// Fewest and most points of a test.
const FEWEST: usize = 3;
const MOST: usize = 40;
/// Distances that can be given, mm, and hardness, HRC.
const DISTANCE_MM: (f64, f64) = (1.0, 80.0);
const HARDNESS_HRC: (f64, f64) = (15.0, 70.0);
/// Ideal diameters between which one is sought, mm. Beyond 116 mm, the last row of the standard's
/// table, the rate goes on as its last two rows do.
const DIAMETER_MM: (f64, f64) = (10.0, 180.0);
/// Grain of the test: bars are austenitised for fine grain.
const GRAIN_ASTM: f64 = astm_a255::GRAIN_ASTM;
/// Most carbon that the test dissolves, wt %.
const MOST_CARBON_WT: f64 = 0.75;
/// How well the hardness of the end is known from the carbon, and a point of a bar, HRC.
const INITIAL_SD_HRC: f64 = 1.5;
const POINT_SD_HRC: f64 = 1.0;
/// Misfit that is no scatter, HRC.
const LARGEST_RESIDUAL_HRC: f64 = 5.0;
/// Diameters tried.
const TRIED: usize = 60;
const MM_PER_SIXTEENTH: f64 = 25.4 / 16.0;

/// The best hardness of the end for a diameter, and what is left, in squares of standard deviations.
fn fit_of(points: &[BarPoint], expected_hrc: f64, ln_mm: f64) -> (f64, f64) {
    let di_inch = ln_mm.exp() / MM_PER_INCH;
    let share =
        |point: &BarPoint| 1.0 / dividing_factor(point.distance_mm / MM_PER_SIXTEENTH, di_inch);
    let weight = (POINT_SD_HRC / INITIAL_SD_HRC).powi(2);
    let (mut top, mut bottom) = (weight * expected_hrc, weight);
    for point in points {
        top += share(point) * point.hrc;
        bottom += share(point).powi(2);
    }
    let initial_hrc = top / bottom;
    let missed: f64 = points
        .iter()
        .map(|point| (point.hrc - initial_hrc * share(point)).powi(2))
        .sum();
    (
        initial_hrc,
        missed / POINT_SD_HRC.powi(2) + ((initial_hrc - expected_hrc) / INITIAL_SD_HRC).powi(2),
    )
}

/// Reads an end-quench test of a heat: least squares over the ideal diameter with this project's
/// dividing factor, the end held to the hardness of its carbon; then the ratio of the critical rates
/// for half martensite, computed over measured.
///
/// # Errors
/// Points that make no sense or show no fall, a steel with more than 0.75 % C, of which the test
/// does not dissolve all, or outside the kinetics.
pub fn measured_heat(
    steel: &Composition,
    points: &[BarPoint],
) -> Result<MeasuredHeat, MeasuredHeatError> {
    check(points)?;
    OutOfRange::check(
        texts::TEST_OF_A_HEAT,
        "C",
        "wt %",
        steel.c,
        (0.10, MOST_CARBON_WT),
    )?;
    let kinetics = Kinetics::new(&Austenite {
        composition: *steel,
        grain_astm: GRAIN_ASTM,
        undissolved_carbide_volume_fraction: 0.0,
    })?;
    let expected_hrc = astm_a255::initial_hrc(steel.c);
    let (low, high) = (DIAMETER_MM.0.ln(), DIAMETER_MM.1.ln());
    let step = (high - low) / TRIED as f64;
    let missed = |ln_mm: f64| fit_of(points, expected_hrc, ln_mm).1;
    let best = (0..=TRIED)
        .map(|i| low + step * i as f64)
        .min_by(|a, b| missed(*a).total_cmp(&missed(*b)))
        .unwrap_or(low);
    if best <= low || best >= high {
        return Err(MeasuredHeatError::NoFall(DIAMETER_MM.0, DIAMETER_MM.1));
    }
    // A parabola through the best of the diameters tried and its neighbours.
    let [less, here, more] = [-1.0, 0.0, 1.0].map(|side| missed(best + side * step));
    let bend = less - 2.0 * here + more;
    let ln_mm =
        best + (0.5 * step * (less - more) / bend.max(f64::MIN_POSITIVE)).clamp(-step, step);
    let (initial_hrc, left) = fit_of(points, expected_hrc, ln_mm);
    // A diameter three times larger or smaller has to fit clearly worse.
    let is_seen = [-1.0, 1.0].map(|side| missed(ln_mm + side * 3.0_f64.ln()) > left + 4.0);
    if is_seen.contains(&false) {
        return Err(MeasuredHeatError::NoFall(DIAMETER_MM.0, DIAMETER_MM.1));
    }
    let off = (initial_hrc - expected_hrc) / INITIAL_SD_HRC;
    let freedom = points.len().saturating_sub(2).max(1) as f64;
    let residual_hrc = POINT_SD_HRC * ((left - off * off).max(0.0) / freedom).sqrt();
    if residual_hrc > LARGEST_RESIDUAL_HRC {
        return Err(MeasuredHeatError::NoCurve(residual_hrc));
    }
    let computed = kinetics.critical_cooling(0.5)?.rate_k_per_s;
    let ideal_diameter_mm = ln_mm.exp();
    Ok(MeasuredHeat {
        ideal_diameter_mm,
        initial_hrc,
        residual_hrc,
        delay_factor: computed / rate_of_diameter_k_per_s(ideal_diameter_mm / MM_PER_INCH),
    })
}

fn check(points: &[BarPoint]) -> Result<(), MeasuredHeatError> {
    if !(FEWEST..=MOST).contains(&points.len()) {
        return Err(MeasuredHeatError::Count(points.len()));
    }
    for point in points {
        NumberOutside::check(texts::DISTANCE, point.distance_mm, DISTANCE_MM, "mm")
            .and_then(|()| NumberOutside::check(texts::HARDNESS, point.hrc, HARDNESS_HRC, "HRC"))
            .map_err(MeasuredHeatError::Point)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::transform::end_quench;

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

    fn points_of(steel: &Composition) -> Vec<BarPoint> {
        let curve = end_quench(steel, GRAIN_ASTM).unwrap();
        let points = curve.distance_mm.iter().zip(&curve.hrc).step_by(3);
        points
            .map(|(&distance_mm, &hrc)| BarPoint { distance_mm, hrc })
            .collect()
    }

    /// The curve of a diameter gives the diameter back, with a little scatter as well.
    #[test]
    fn a_computed_bar_gives_its_diameter_back() {
        let di_mm = end_quench(&cr_mo(), GRAIN_ASTM).unwrap().ideal_diameter_mm;
        let exact = measured_heat(&cr_mo(), &points_of(&cr_mo())).unwrap();
        assert!(
            (exact.ideal_diameter_mm / di_mm - 1.0).abs() < 0.01,
            "{exact:?}"
        );
        assert!(exact.residual_hrc < 0.2);
        let scattered: Vec<BarPoint> = points_of(&cr_mo())
            .into_iter()
            .zip(
                [0.8, -0.6, 0.3, -0.9, 0.7, 0.2, -0.5, 0.4]
                    .into_iter()
                    .cycle(),
            )
            .map(|(point, off)| BarPoint {
                hrc: point.hrc + off,
                ..point
            })
            .collect();
        let found = measured_heat(&cr_mo(), &scattered).unwrap();
        assert!(
            (found.ideal_diameter_mm / di_mm - 1.0).abs() < 0.06,
            "{found:?}"
        );
    }

    /// A leaner heat of the same grade begins sooner, a richer one later.
    #[test]
    fn leaner_heats_begin_sooner() {
        let heat = |factor: f64| {
            let steel = Composition {
                cr: factor * cr_mo().cr,
                mn: factor * cr_mo().mn,
                ..cr_mo()
            };
            measured_heat(&cr_mo(), &points_of(&steel))
                .unwrap()
                .delay_factor
        };
        let [lean, usual, rich] = [0.85, 1.0, 1.15].map(heat);
        assert!(
            lean < 0.8 * usual && rich > 1.25 * usual,
            "{lean} {usual} {rich}"
        );
    }

    #[test]
    fn what_tells_nothing_is_refused() {
        let at = |points: &[(f64, f64)]| {
            let points: Vec<BarPoint> = points
                .iter()
                .map(|&(distance_mm, hrc)| BarPoint { distance_mm, hrc })
                .collect();
            measured_heat(&cr_mo(), &points)
        };
        let flat = at(&[(1.5, 56.0), (3.0, 56.0), (5.0, 56.0)]);
        assert!(
            matches!(flat, Err(MeasuredHeatError::NoFall(..))),
            "{flat:?}"
        );
        assert_eq!(at(&[(1.5, 56.0)]), Err(MeasuredHeatError::Count(1)));
        let absurd = at(&[(1.5, 56.0), (3.0, 5600.0), (9.0, 40.0)]);
        assert!(matches!(absurd, Err(MeasuredHeatError::Point { .. })));
        let nan = at(&[(1.5, 56.0), (f64::NAN, 50.0), (9.0, 40.0)]);
        assert!(matches!(nan, Err(MeasuredHeatError::Point { .. })));
        let upside = at(&[(1.5, 25.0), (9.0, 40.0), (20.0, 56.0), (30.0, 56.0)]);
        assert!(upside.is_err());
    }
}
