//! The end-quench test of what the soak dissolved: how deep this steel hardens, told in the trade's
//! measures.

use super::error::RouteError;
use super::hardening::Hardening;
use super::outcome::Outcome;
use super::plan::Route;
use crate::hardness::{BarPlace, end_quenched};
use crate::heat::{grossmann_critical_diameter_mm, jominy_rate_at_704c};
use crate::numeric::roots::{Crossing, falling_root};
use crate::sources::grossmann_1964::{Agitation, BRINE, OIL, Row, WATER, severity_per_in};
use crate::transform::{
    EndQuench, MeasuredHeat, end_quench, measured_end_quench, measured_heat, round_like_bar_mm,
};
use recalesce_texts::route::end_quench as texts;

/// Temperature of the rates along the bar, °C.
const RATE_C: f64 = 704.0;
/// Ends of the bar that are compared with the piece, mm.
const BAR_MM: (f64, f64) = (25.4 / 16.0, 50.8);
/// Where the search for a rate begins, mm, and how the logarithm of the rate usually falls with
/// that of the distance.
const MIDDLE_MM: f64 = 12.7;
const USUAL_SLOPE: f64 = -1.6;
/// Where the C scale ends, HRC: what is softer counts as this.
const LEAST_HRC: f64 = 20.0;
/// Quenches for which a critical diameter is told.
const QUENCHES: [(&str, Row, Agitation); 4] = [
    (texts::OIL_STILL, OIL, Agitation::Still),
    (texts::OIL_GOOD, OIL, Agitation::Good),
    (texts::WATER_STILL, WATER, Agitation::Still),
    (texts::BRINE_VIOLENT, BRINE, Agitation::Violent),
];

/// A round in a quench: one that just hardens at its centre, or that cools there like a place on the bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CriticalDiameter {
    /// The quench.
    pub quench: &'static str,
    /// Its severity H, 1/in.
    pub severity_per_in: f64,
    /// Diameter, mm.
    pub diameter_mm: f64,
}

/// The end-quench test of a route's austenite.
#[derive(Debug, Clone, PartialEq)]
pub struct EndQuenchTest {
    /// The curve told, with ideal diameter and band.
    pub curve: EndQuench,
    /// The simulated bar from the soak temperature; empty outside of the hardness of mixtures.
    pub bar: Vec<BarPlace>,
    /// Distance at which the bar cools at 704 °C as the deciding place of the piece does, mm.
    pub piece_mm: Option<f64>,
    /// Rounds whose centre cools like that place; none beyond the standard's table, 25.4 mm.
    pub like_piece: Vec<CriticalDiameter>,
    /// What the user's own test of the heat tells.
    pub measured: Option<MeasuredHeat>,
    /// Rounds that just get half martensite at the centre.
    pub critical_diameters: Vec<CriticalDiameter>,
}

impl EndQuenchTest {
    /// Half width of the band of the curve at each of its distances, HRC: its error on the bands kept
    /// here, or where they lie further off, the distance of the simulated bar and of the standard's
    /// polynomials. A curve through the user's own points has the scatter of those.
    #[must_use]
    pub fn band_hrc(&self) -> Vec<f64> {
        let usual = self.curve.band_hrc;
        if self.measured.is_some() {
            return vec![usual; self.curve.hrc.len()];
        }
        let standard = self.curve.standard_hrc.as_deref().unwrap_or_default();
        let told = self.curve.hrc.iter().enumerate();
        told.map(|(i, hrc)| {
            let bar = self.bar.get(i).map(|place| place.hardness.hrc_carried());
            let others = [bar, standard.get(i).copied()].into_iter().flatten();
            others.fold(usual, |band, other| {
                band.max((other.max(LEAST_HRC) - hrc).abs())
            })
        })
        .collect()
    }
}

/// The end-quench test of a route whose outcome is known.
///
/// # Errors
/// Where neither the standard nor the kinetics cover the dissolved composition.
pub fn end_quench_test(route: &Route, outcome: &Outcome) -> Result<EndQuenchTest, RouteError> {
    let soak = &outcome.soak;
    let measured = if route.end_quench.is_empty() {
        None
    } else {
        measured_heat(&route.composition, &route.end_quench).ok()
    };
    let curve = match &measured {
        Some(heat) => measured_end_quench(heat),
        None => end_quench(&soak.dissolved, soak.end.grain_astm)?,
    };
    let bar = Hardening::of_route(route, &soak.end, &soak.dissolved)
        .ok()
        .and_then(|hardening| end_quenched(hardening.kinetics(), route.soak.temperature_c).ok());
    let rate = outcome
        .quench
        .deciding_curve()
        .and_then(|curve| curve.rate_at_c(RATE_C));
    let piece_mm = rate.and_then(distance_of_rate_mm);
    Ok(EndQuenchTest {
        critical_diameters: in_quenches(|severity_per_in| {
            grossmann_critical_diameter_mm(curve.ideal_diameter_mm, severity_per_in).ok()
        }),
        bar: bar.unwrap_or_default(),
        piece_mm,
        like_piece: in_quenches(|severity_per_in| {
            round_like_bar_mm(piece_mm?, severity_per_in).ok()
        }),
        measured,
        curve,
    })
}

/// A diameter, mm, in each of the quenches that are told, by their severity, 1/in.
fn in_quenches(diameter_mm: impl Fn(f64) -> Option<f64>) -> Vec<CriticalDiameter> {
    let told = QUENCHES.iter().filter_map(|(quench, row, agitation)| {
        let [least, most] = severity_per_in(row, *agitation)?;
        let severity_per_in = 0.5 * (least + most);
        Some(CriticalDiameter {
            quench,
            severity_per_in,
            diameter_mm: diameter_mm(severity_per_in)?,
        })
    });
    told.collect()
}

/// Where the bar cools at 704 °C with a rate; none beyond its ends.
fn distance_of_rate_mm(rate_k_per_s: f64) -> Option<f64> {
    let excess = |ln_mm: f64| {
        let rate = jominy_rate_at_704c(ln_mm.exp().clamp(BAR_MM.0, BAR_MM.1)).ok()?;
        Some((rate / rate_k_per_s).ln())
    };
    let range = (BAR_MM.0.ln(), BAR_MM.1.ln());
    match falling_root(excess, MIDDLE_MM.ln(), range, USUAL_SLOPE, 1e-4)? {
        Crossing::At(ln_mm) => Some(ln_mm.exp()),
        Crossing::Before | Crossing::Beyond => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::Section;
    use crate::route::run;
    use crate::transform::BarPoint;

    fn test_of(grade: &str, diameter_mm: f64) -> (Route, EndQuenchTest) {
        let mut route = Route::example();
        route.take_grade(crate::steel::find(grade).unwrap());
        route.section = Section::Round { diameter_mm };
        let outcome = run(&route).unwrap();
        let test = end_quench_test(&route, &outcome).unwrap();
        (route, test)
    }

    /// The centre of a round in oil that is not stirred is told to cool like rounds of about its own
    /// diameter in such oil: conduction with boiling against the trade's severity.
    #[test]
    fn the_centre_of_a_round_is_like_itself() {
        let mut route = Route::example();
        route.take_grade(crate::steel::find("4140").unwrap());
        route.section = Section::Round { diameter_mm: 30.0 };
        route.quench.medium = crate::heat::MediumChoice::Named("oil_slow".to_owned());
        let outcome = run(&route).unwrap();
        let test = end_quench_test(&route, &outcome).unwrap();
        let like = test.like_piece[0];
        assert_eq!(like.quench, "oil, still");
        assert!((20.0..45.0).contains(&like.diameter_mm), "{like:?}");
    }

    /// A thicker round cools like a place further from the quenched end.
    #[test]
    fn thicker_pieces_lie_further_along_the_bar() {
        let [thin, thick] = [15.0, 40.0].map(|mm| test_of("4140", mm).1.piece_mm.unwrap());
        assert!(thin < thick, "{thin} {thick}");
    }

    /// A heat that was measured to harden deeper has more time at the nose, and its own curve.
    #[test]
    fn a_measured_heat_shifts_the_verdict() {
        let mut route = Route::example();
        route.take_grade(crate::steel::find("4140").unwrap());
        route.section = Section::Round { diameter_mm: 40.0 };
        let seconds = |route: &Route| {
            let outcome = run(route).unwrap();
            outcome.quench.transformed.given().unwrap().margin.seconds
        };
        let computed = seconds(&route);
        let measured = |rows: [(f64, f64); 5]| {
            let points = rows.map(|(distance_mm, hrc)| BarPoint { distance_mm, hrc });
            let mut route = route.clone();
            route.end_quench = points.to_vec();
            route
        };
        let deep = measured([
            (1.5, 57.0),
            (9.0, 55.5),
            (20.0, 51.0),
            (30.0, 46.5),
            (45.0, 41.0),
        ]);
        let lean = measured([
            (1.5, 57.0),
            (5.0, 47.0),
            (9.0, 38.0),
            (20.0, 29.0),
            (40.0, 25.0),
        ]);
        assert!(seconds(&deep) > computed && seconds(&lean) < computed);
        let test = end_quench_test(&deep, &run(&deep).unwrap()).unwrap();
        assert!(test.measured.unwrap().delay_factor > 1.0);
    }

    #[test]
    fn critical_diameters_rise_with_severity_and_stay_below_the_ideal() {
        let (_, test) = test_of("4140", 20.0);
        let rounds = &test.critical_diameters;
        assert_eq!(rounds.len(), QUENCHES.len());
        assert!(
            rounds
                .windows(2)
                .all(|pair| pair[0].diameter_mm < pair[1].diameter_mm)
        );
        assert!(rounds[3].diameter_mm < test.curve.ideal_diameter_mm);
        assert_eq!(test.bar.len(), 32);
        let band = test.band_hrc();
        let off =
            |i: usize| (test.bar[i].hardness.hrc_carried().max(20.0) - test.curve.hrc[i]).abs();
        assert!((0..32).all(|i| band[i] >= test.curve.band_hrc && band[i] >= off(i) - 1e-9));
    }
}
