//! What a route's steel alone decides: kept while soak, quench and temper are tried out.

use super::baths::Baths;
use super::error::RouteError;
use super::outcome::Outcome;
use super::plan::Route;
use super::prior::{Prior, PriorStep, stock_before_soak};
use super::run::HardenedRoute;
use super::spread::Heats;
use super::validate::validate;
use crate::heat::Section;
use crate::phases::{CriticalTemperatures, critical_temperatures};
use crate::soak::{GrainAt, StartingStructure, Stock, overheated};
use crate::steel::Composition;
use crate::transform::BarPoint;

/// A steel and its structure, prepared for all routes that begin with it. A route with what runs have
/// taught is brought in as [`Route::as_taught`] gives it.
#[derive(Debug, Clone)]
pub struct Prepared {
    composition: Composition,
    start: StartingStructure,
    prior_steps: Vec<PriorStep>,
    /// What the steps before hardening were computed for, where there are any.
    section: Section,
    end_quench: Vec<BarPoint>,
    pub(super) critical: CriticalTemperatures,
    pub(super) stock: Stock,
    pub(super) heats: Heats,
    pub(super) prior: Prior,
    grade: Option<String>,
}

impl Prepared {
    /// Prepares the steel of a route.
    ///
    /// # Errors
    /// When the equilibrium does not cover the composition.
    pub fn of(route: &Route) -> Result<Self, RouteError> {
        let critical = critical_temperatures(&route.composition)?;
        let bought = Stock::new(&route.composition, route.start)?;
        let prior = Prior::of(route, &bought, critical.a1_c);
        Ok(Self {
            composition: route.composition,
            start: route.start,
            prior_steps: route.prior.clone(),
            section: route.section,
            end_quench: route.end_quench.clone(),
            critical,
            stock: bought.restructured(prior.structure),
            heats: Heats::of(route, prior.structure),
            prior,
            grade: route.grade.clone(),
        })
    }

    /// Whether a route begins with this steel and structure.
    #[must_use]
    pub fn is_of(&self, route: &Route) -> bool {
        self.composition == route.composition
            && self.start == route.start
            && self.prior_steps == route.prior
            && (route.prior.is_empty()
                || self.section == route.section && self.end_quench == route.end_quench)
            && self.grade == route.grade
    }

    /// As [`run`]: the same outcome to the last bit. A route of another steel is prepared anew.
    ///
    /// # Errors
    /// As [`run`].
    pub fn run(&self, route: &Route) -> Result<Outcome, RouteError> {
        if !self.is_of(route) {
            return anew(route);
        }
        validate(route)?;
        Ok(HardenedRoute::of(route, Baths::of(&route.quench)?, self)?.finished(route))
    }

    /// Soaks and quenches a route; for [`HardenedRoute::run`], while what follows is tried out. A
    /// route of another steel is prepared anew.
    ///
    /// # Errors
    /// As [`run`].
    pub fn harden(&self, route: &Route) -> Result<HardenedRoute, RouteError> {
        validate(route)?;
        let baths = Baths::of(&route.quench)?;
        if self.is_of(route) {
            HardenedRoute::of(route, baths, self)
        } else {
            HardenedRoute::of(route, baths, &Self::of(route)?)
        }
    }

    /// As [`overheating`]. A route of another steel is prepared anew.
    ///
    /// # Errors
    /// As [`run`].
    pub fn overheating(&self, route: &Route) -> Result<[GrainAt; 3], RouteError> {
        if !self.is_of(route) {
            return overheating(route);
        }
        validate(route)?;
        grains(&self.stock, route)
    }
}

/// The grain that the same soak gives in a furnace that is too hot. Apart from the outcome, as it
/// takes three more soaks.
///
/// # Errors
/// As [`run`].
pub fn overheating(route: &Route) -> Result<[GrainAt; 3], RouteError> {
    validate(route)?;
    grains(&stock_before_soak(route)?, route)
}

fn grains(stock: &Stock, route: &Route) -> Result<[GrainAt; 3], RouteError> {
    let time_s = 60.0 * route.soak.time_min;
    Ok(overheated(stock, route.soak.temperature_c, time_s)?)
}

/// Computes the whole outcome of a route. Pure: the same route gives the same outcome.
///
/// # Errors
/// When the route makes no sense or nothing hardens: a field out of range, a soak below A1, a
/// composition that the equilibrium does not cover. A model that only refuses its own part is
/// told inside the outcome as [`super::Known::Refused`].
pub fn run(route: &Route) -> Result<Outcome, RouteError> {
    validate(route)?;
    anew(&route.as_taught())
}

/// The same of a route as its pieces go through it.
pub(super) fn anew(route: &Route) -> Result<Outcome, RouteError> {
    validate(route)?;
    let baths = Baths::of(&route.quench)?;
    Ok(HardenedRoute::of(route, baths, &Prepared::of(route)?)?.finished(route))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A drag over soaks, there and back, on one preparation: what was asked before leaves no trace.
    #[test]
    fn what_is_kept_changes_no_bit() {
        for designation in ["52100", "4140", "A2"] {
            let mut route = Route::example();
            route.take_grade(crate::steel::find(designation).unwrap());
            let prepared = Prepared::of(&route).unwrap();
            let planned_c = route.soak.temperature_c;
            for over_k in [0.0, 35.0, 12.0, -8.0, 0.0] {
                route.soak.temperature_c = planned_c + over_k;
                assert_eq!(prepared.run(&route), run(&route));
                assert_eq!(prepared.overheating(&route), overheating(&route));
                let hardened = prepared.harden(&route).unwrap();
                for temper_c in [180.0, 240.0, 180.0] {
                    route.tempers[0].temperature_c = temper_c;
                    assert!(hardened.is_of(&route));
                    assert_eq!(hardened.run(&route), run(&route));
                }
                route.cold = None;
                assert_eq!(hardened.run(&route), run(&route));
            }
        }
    }

    #[test]
    fn another_steel_is_prepared_anew() {
        let prepared = Prepared::of(&Route::example()).unwrap();
        let mut other = Route::example();
        other.composition.c = 0.8;
        assert_eq!(prepared.run(&other), run(&other));
        other.start = StartingStructure::FinePearlite;
        assert_eq!(prepared.run(&other), run(&other));
    }
}
