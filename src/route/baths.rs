//! The baths of a quench, one after the other.

use super::outcome::Outcome;
use super::plan::{NextBath, Quench, Route};
use crate::heat::{CoolingCurve, LaterBath, Leave, Medium, MediumError, Quenching};

/// A stay this short in a bath above Ms is a step of the quench, not a hold for bainite, s.
const SHORTEST_HOLD_S: f64 = 60.0;
/// A piece has arrived in a bath when it is so near to it, K.
const ARRIVED_K: f64 = 10.0;

/// The baths of a route.
pub(super) struct Baths {
    /// The first.
    pub(super) first: Medium,
    /// Those after it.
    pub(super) later: Vec<LaterBath>,
}

impl Baths {
    /// Finds the baths of a quench.
    pub(super) fn of(quench: &Quench) -> Result<Self, MediumError> {
        Ok(Self {
            first: quench.medium.resolve()?,
            later: later_baths(&quench.then)?,
        })
    }

    /// All of them, in order.
    pub(super) fn media(&self) -> impl Iterator<Item = &Medium> {
        std::iter::once(&self.first).chain(self.later.iter().map(|bath| &bath.medium))
    }

    /// The bath in which the deciding place passes Ms; the first where nothing is known.
    pub(super) fn at_ms(&self, outcome: &Outcome) -> &Medium {
        let bath = outcome
            .quench
            .transformed
            .given()
            .map_or(0, |quenched| quenched.bath_at_ms);
        self.media().nth(bath).unwrap_or(&self.first)
    }

    /// The widest band factor of the baths up to one of them, counted from zero.
    pub(super) fn widest_band_factor(&self, last: usize) -> f64 {
        let bands = self.media().take(last + 1);
        bands.map(|medium| medium.h_band_factor).fold(1.0, f64::max)
    }

    /// The quench of a route in these baths.
    pub(super) fn quenching(&self, route: &Route) -> Quenching<'_> {
        Quenching {
            section: route.section,
            medium: &self.first,
            agitation: route.quench.agitation,
            start_c: route.soak.temperature_c,
            air_delay_s: route.quench.air_delay_s,
            end_c: route.quench.end_c,
            then: &self.later,
            martensite_start_c: None,
        }
    }

    /// Temperature of the bath above Ms in which the piece is held for bainite, °C, if any.
    pub(super) fn held_c(&self, ms_c: f64) -> Option<f64> {
        self.media()
            .zip(&self.later)
            .find_map(|(medium, next)| match next.leave {
                Leave::AfterS(stay_s) if stay_s >= SHORTEST_HOLD_S && medium.bath_c > ms_c => {
                    Some(medium.bath_c)
                }
                _ => None,
            })
    }
}

/// Finds the baths after the first.
///
/// # Errors
/// A quenchant that is not in the list, or whose curve is no curve.
pub fn later_baths(then: &[NextBath]) -> Result<Vec<LaterBath>, MediumError> {
    let bath = |next: &NextBath| {
        Ok(LaterBath {
            leave: next.leave,
            medium: next.medium.resolve()?,
            agitation: next.agitation,
        })
    };
    then.iter().map(bath).collect()
}

/// A cooling curve as far as its arrival in a bath in which bainite is wanted.
pub(super) fn until_arrival(curve: &CoolingCurve, bath_c: f64) -> CoolingCurve {
    let arrived = |t: &f64| *t <= bath_c + ARRIVED_K;
    let count = curve
        .temperature_c
        .iter()
        .position(arrived)
        .map_or(curve.time_s.len(), |last| last + 1);
    let part = |values: &[f64]| values.iter().take(count).copied().collect();
    CoolingCurve {
        place: curve.place,
        time_s: part(&curve.time_s),
        temperature_c: part(&curve.temperature_c),
        rate_k_per_s: part(&curve.rate_k_per_s),
    }
}
