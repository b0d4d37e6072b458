//! The quench again, place by place: temperature and structure across the section at every time.

use super::baths::Baths;
use super::error::RouteError;
use super::hardening::Hardening;
use super::plan::Route;
use super::prepared::Prepared;
use super::run::soak_for;
use super::validate::validate;
use crate::heat::{CoolingCurve, cool_across};
use crate::transform::Fractions;

/// A quench across the section.
#[derive(Debug, Clone, PartialEq)]
pub struct Replay {
    /// Curves at evenly spaced places, all with the same times: from the centre to the surface, of
    /// a blade from edge to spine.
    pub curves: Vec<CoolingCurve>,
    /// What each place consists of at each time.
    pub fractions: Vec<Vec<Fractions>>,
}

/// A place at one time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlaceThen {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Volume fractions.
    pub fractions: Fractions,
}

impl Replay {
    /// The end of the quench, s from leaving the furnace.
    #[must_use]
    pub fn end_s(&self) -> f64 {
        let times = self.curves.first().map(|curve| &curve.time_s);
        times.and_then(|t| t.last().copied()).unwrap_or_default()
    }

    /// Every place at a time, s from leaving the furnace.
    #[must_use]
    pub fn at(&self, time_s: f64) -> Vec<PlaceThen> {
        let then = |(curve, fractions): (&CoolingCurve, &Vec<Fractions>)| {
            let before = curve.time_s.partition_point(|t| *t <= time_s);
            Some(PlaceThen {
                temperature_c: curve.temperature_at_s(time_s)?,
                fractions: *fractions.get(before.saturating_sub(1))?,
            })
        };
        self.curves
            .iter()
            .zip(&self.fractions)
            .filter_map(then)
            .collect()
    }
}

impl Prepared {
    /// The quench of a route across its section; the route has to begin with this steel.
    ///
    /// # Errors
    /// As [`super::run`], and where the kinetics do not cover the dissolved composition.
    pub fn replay(&self, route: &Route) -> Result<Replay, RouteError> {
        validate(route)?;
        let hold = self.stock.at(route.soak.temperature_c)?;
        let soaked = soak_for(&hold, route.soak.time_min)?;
        let hardening = Hardening::of_route(route, &soaked.end, &soaked.dissolved)?;
        let baths = Baths::of(&route.quench)?;
        let curves = cool_across(&baths.quenching(route), &mut hardening.turning())?;
        let fractions = curves
            .iter()
            .map(|curve| hardening.history(curve))
            .collect::<Result<_, _>>()?;
        Ok(Replay { curves, fractions })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::Section;

    #[test]
    fn the_replay_ends_as_the_quench_does() {
        for section in [
            Section::Plate { thickness_mm: 8.0 },
            Section::Round { diameter_mm: 12.0 },
            Section::Square { side_mm: 10.0 },
            Route::example().section,
        ] {
            let route = Route {
                section,
                ..Route::example()
            };
            let prepared = Prepared::of(&route).unwrap();
            let replay = prepared.replay(&route).unwrap();
            let outcome = prepared.run(&route).unwrap();
            let start = replay.at(0.0);
            assert!(
                start
                    .iter()
                    .all(|place| (place.temperature_c - 830.0).abs() < 1e-6)
            );
            assert!(start.iter().all(|place| place.fractions.martensite == 0.0));
            let end = replay.at(replay.end_s());
            if let Section::Plate { .. } = section {
                let centre = outcome.quench.transformed.given().unwrap().fractions;
                let told = end.first().unwrap().fractions;
                approx::assert_abs_diff_eq!(told.martensite, centre.martensite, epsilon = 2e-3);
            }
            for place in &end {
                let f = place.fractions;
                let sum =
                    f.ferrite + f.pearlite + f.bainite + f.martensite + f.austenite + f.carbide;
                approx::assert_abs_diff_eq!(sum, 1.0, epsilon = 1e-9);
                assert!(f.martensite > 0.5);
            }
        }
    }
}
