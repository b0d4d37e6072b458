//! The quench again, place by place: temperature and structure across the section at every time.

use super::baths::Baths;
use super::error::RouteError;
use super::hardening::Hardening;
use super::plan::Route;
use super::prepared::Prepared;
use super::run::soak_for;
use super::validate::validate;
use crate::hardness::Hardness;
use crate::heat::{CoolingCurve, Place, cool_across};
use crate::transform::Fractions;

/// Time in which what is stopped is cooled, s: nothing but martensite forms in it.
const AT_ONCE_S: f64 = 1e-3;

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

/// The place that decides, at one time of the quench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stopped {
    /// Time from leaving the furnace, s.
    pub time_s: f64,
    /// Which place.
    pub place: Place,
    /// Temperature, °C.
    pub temperature_c: f64,
    /// How fast it falls, K/s.
    pub rate_k_per_s: f64,
    /// What it consists of so far, volume fractions.
    pub so_far: Fractions,
    /// Hardness if it were cooled from here at once to the end of the quench.
    pub hardness: Hardness,
}

/// A cooling stopped at a time of its curve, s, and taken to the end of the quench at once, °C. None
/// where the hardness is not known, or outside the times of the curve.
pub(super) fn stopped_at(
    hardening: &Hardening,
    whole: &CoolingCurve,
    end_c: f64,
    time_s: f64,
) -> Option<Stopped> {
    let count = whole.time_s.partition_point(|t| *t < time_s);
    let temperature_c = whole.temperature_at_s(time_s)?;
    let rate_k_per_s = *whole
        .rate_k_per_s
        .get(count.min(whole.rate_k_per_s.len().saturating_sub(1)))?;
    let mut curve = CoolingCurve {
        place: whole.place,
        time_s: whole.time_s.iter().copied().take(count).collect(),
        temperature_c: whole.temperature_c.iter().copied().take(count).collect(),
        rate_k_per_s: whole.rate_k_per_s.iter().copied().take(count).collect(),
    };
    let mut then = |time_s: f64, temperature_c: f64| {
        curve.time_s.push(time_s);
        curve.temperature_c.push(temperature_c);
        curve.rate_k_per_s.push(rate_k_per_s);
    };
    then(time_s, temperature_c);
    then(time_s + AT_ONCE_S, end_c.min(temperature_c));
    let history = hardening.history(&curve).ok()?;
    let so_far = *history.get(history.len().checked_sub(2)?)?;
    Some(Stopped {
        time_s,
        place: whole.place,
        temperature_c,
        rate_k_per_s,
        so_far,
        hardness: hardening.quench(&curve).ok()?.hardness,
    })
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
    use crate::route::run;

    /// Stopped before the nose all becomes martensite; later never harder; at the end the outcome.
    #[test]
    fn the_later_it_is_stopped_the_more_has_formed() {
        let mut route = Route::example();
        route.section = Section::Round { diameter_mm: 30.0 };
        let outcome = run(&route).unwrap();
        let end_s = *outcome
            .quench
            .deciding_curve()
            .unwrap()
            .time_s
            .last()
            .unwrap();
        let hardened = Prepared::of(&route).unwrap().harden(&route).unwrap();
        let at = |time_s: f64| hardened.stopped_at(time_s).unwrap();
        let [early, late] = [1.0, 60.0].map(at);
        assert!(early.so_far.austenite > 0.9 && early.hardness.hv > late.hardness.hv);
        assert!(late.so_far.pearlite > early.so_far.pearlite + 0.1);
        assert!(early.rate_k_per_s > 0.0 && early.temperature_c > late.temperature_c);
        let quenched = outcome
            .stages
            .iter()
            .find(|s| s.step == crate::route::Step::Quench);
        let told = quenched.unwrap().hardness.unwrap();
        assert!((at(end_s).hardness.hv - told.hv).abs() < 1.0);
    }

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
