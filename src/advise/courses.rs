//! How several routes go, to be laid over one another.

use super::error::AdviseError;
use crate::route::{Route, run};
use serde::{Deserialize, Serialize};

/// The courses of one route; empty where the models do not reach.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Courses {
    /// Time at temperature, min, and carbon in solution, wt % of the austenite.
    pub carbon: Vec<[f64; 2]>,
    /// Time from leaving the furnace, s, and temperature of the place that decides, °C.
    pub cooling: Vec<[f64; 2]>,
    /// Temperature of all tempers, °C, and hardness after them, HRC, where the target is laid against it.
    pub temper: Vec<[f64; 2]>,
}

impl Courses {
    /// Those of a route.
    ///
    /// # Errors
    /// As [`crate::route::run`].
    pub fn of(route: &Route) -> Result<Self, AdviseError> {
        let outcome = run(route)?;
        let soak = outcome.soak.history.iter();
        let deciding = outcome.quench.curves.get(outcome.quench.deciding);
        let temper = outcome.temper.given();
        Ok(Self {
            carbon: soak
                .map(|point| [point.time_s / 60.0, point.carbon_wt])
                .collect(),
            cooling: deciding.map_or_else(Vec::new, |curve| {
                let times = curve.time_s.iter().copied();
                let points = times.zip(curve.temperature_c.iter().copied());
                points.map(|(time_s, c)| [time_s, c]).collect()
            }),
            temper: temper.map_or_else(Vec::new, |temper| {
                let points = temper.curve.iter();
                points
                    .map(|point| [point.temperature_c, point.hrc])
                    .collect()
            }),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// They end where the outcome stands.
    #[test]
    fn courses_are_those_of_the_outcome() {
        let mut route = Route::example();
        route.quench.air_delay_s = 2.0;
        let outcome = run(&route).unwrap();
        let courses = Courses::of(&route).unwrap();
        let first = courses.cooling.first().unwrap();
        assert!(first[0] == 0.0 && (first[1] - route.soak.temperature_c).abs() < 1e-6);
        let last = courses.cooling.last().unwrap();
        assert!(last[1] <= route.quench.end_c + 40.0);
        let end = outcome.soak.end;
        let at_end = courses
            .carbon
            .iter()
            .min_by(|a, b| {
                let off = |point: &[f64; 2]| (60.0 * point[0] - end.time_s).abs();
                off(a).total_cmp(&off(b))
            })
            .unwrap();
        assert!((at_end[1] - end.carbon_wt).abs() < 0.01);
        let tempers = outcome.temper.given().unwrap();
        assert_eq!(courses.temper.len(), tempers.curve.len());
        route.soak.temperature_c = 660.0;
        assert!(Courses::of(&route).is_err());
    }
}
