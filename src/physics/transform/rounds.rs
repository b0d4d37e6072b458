//! Which round cools at its centre like a place on the end-quench bar.
//!
//! Two published steps, both by half martensite: the table of ASTM A255 that gives the ideal diameter
//! of a steel by the place on the bar where it is half martensite, and Grossmann's severity, which
//! gives the round that an ideal one stands for in a real quench. Both hold for the centre. Of other
//! places in a round the equivalence is not given: the half-temperature time behind the severity puts
//! three quarters of the radius two fifths too thin in oil (charts recalled), so for them the cooling
//! of the piece itself is laid beside the bar instead.
//!
//! On the kept rows of handbooks, charts and lectures the diameters lie within 15 % but for rounds
//! under an inch, which are up to two fifths too thin in water.

use super::end_quench::{MM_PER_INCH, interpolate};
use crate::heat::{HeatError, grossmann_critical_diameter_mm, grossmann_ideal_diameter_mm};
use crate::sources::astm_a255::IDEAL_DIAMETER_INCH;
use crate::steel::OutOfRange;
use recalesce_texts::transform as texts;

/// Places on the bar that the table of the standard covers, mm.
const BAR_MM: (f64, f64) = (0.5 * MM_PER_INCH / 16.0, MM_PER_INCH);
/// Ideal diameters that it covers, mm.
const IDEAL_MM: (f64, f64) = (0.27 * MM_PER_INCH, 4.57 * MM_PER_INCH);

const MODEL: &str = texts::ROUNDS_AND_BAR;

/// Why there is no equivalent.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RoundError {
    /// Outside of the table of the standard.
    #[error(transparent)]
    Table(#[from] OutOfRange),
    /// A diameter or a severity that no round and no quench has.
    #[error(transparent)]
    Heat(#[from] HeatError),
}

/// Diameter of the round, mm, whose centre cools in an ideal quench like a place on the bar, mm from
/// its quenched end: the ideal diameter of a steel that is half martensite there.
///
/// # Errors
/// A place outside 0.8 to 25.4 mm.
pub fn ideal_round_like_bar_mm(distance_mm: f64) -> Result<f64, RoundError> {
    OutOfRange::check(MODEL, texts::DISTANCE_FROM_END, "mm", distance_mm, BAR_MM)?;
    let sixteenths = 16.0 * distance_mm / MM_PER_INCH;
    Ok(MM_PER_INCH * interpolate(&IDEAL_DIAMETER_INCH, sixteenths))
}

/// Diameter of the round, mm, whose centre cools in a quench of severity H, 1/in, like a place on the
/// bar, mm from its quenched end.
///
/// # Errors
/// A place outside 0.8 to 25.4 mm, a severity outside 0.001 to 100 1/in.
pub fn round_like_bar_mm(distance_mm: f64, severity_per_in: f64) -> Result<f64, RoundError> {
    let ideal_mm = ideal_round_like_bar_mm(distance_mm)?;
    Ok(grossmann_critical_diameter_mm(ideal_mm, severity_per_in)?)
}

/// Place on the bar, mm from its quenched end, that cools like the centre of a round of this diameter,
/// mm, in an ideal quench.
///
/// # Errors
/// A diameter outside 6.9 to 116 mm.
pub fn bar_like_ideal_round_mm(diameter_mm: f64) -> Result<f64, RoundError> {
    OutOfRange::check(MODEL, texts::IDEAL_DIAMETER, "mm", diameter_mm, IDEAL_MM)?;
    let rows = IDEAL_DIAMETER_INCH.map(|(sixteenths, inch)| (inch, sixteenths));
    Ok(interpolate(&rows, diameter_mm / MM_PER_INCH) * MM_PER_INCH / 16.0)
}

/// Place on the bar, mm from its quenched end, that cools like the centre of a round of this diameter,
/// mm, in a quench of severity H, 1/in.
///
/// # Errors
/// A diameter or a severity that none has, or a round that cools outside of the table.
pub fn bar_like_round_mm(diameter_mm: f64, severity_per_in: f64) -> Result<f64, RoundError> {
    bar_like_ideal_round_mm(grossmann_ideal_diameter_mm(diameter_mm, severity_per_in)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_round_leads_back_to_its_place() {
        for severity in [0.3, 1.0, 4.0] {
            for mm in [2.0, 9.0, 25.0] {
                let diameter_mm = round_like_bar_mm(mm, severity).unwrap();
                let back_mm = bar_like_round_mm(diameter_mm, severity).unwrap();
                approx::assert_relative_eq!(back_mm, mm, max_relative = 1e-6);
            }
        }
    }

    /// A faster quench, and a place further along, stand for a thicker round; none is thicker than the
    /// ideal one.
    #[test]
    fn diameters_rise_with_distance_and_severity() {
        let at = |mm, severity| round_like_bar_mm(mm, severity).unwrap();
        assert!(at(9.0, 0.3) < at(9.0, 1.0) && at(9.0, 1.0) < at(15.0, 1.0));
        assert!(at(15.0, 50.0) < ideal_round_like_bar_mm(15.0).unwrap());
    }

    #[test]
    fn outside_of_the_table_there_is_none() {
        assert!(matches!(
            round_like_bar_mm(40.0, 1.0),
            Err(RoundError::Table(_))
        ));
        assert!(matches!(
            round_like_bar_mm(f64::NAN, 1.0),
            Err(RoundError::Table(_))
        ));
        assert!(matches!(
            bar_like_round_mm(300.0, 1.0),
            Err(RoundError::Table(_))
        ));
        assert!(matches!(
            bar_like_round_mm(30.0, 0.0),
            Err(RoundError::Heat(_))
        ));
    }
}
