//! How a piece cools after a step before hardening.

use super::step::{PriorStep, SlowCooling};
use crate::heat::{CoolingCurve, Place, Quenching, cool, cool_turning};
use crate::route::error::RouteError;
use crate::route::hardening::Hardening;
use crate::route::plan::Route;

/// The piece is cold when it can be taken in the hand, °C.
const COLD_C: f64 = 45.0;
/// Steel that hardens in air is annealed when it is led down no faster, K/h, and at least so far
/// below A1, K. Common practice, no source: 10 to 30 K/h to 540 to 650 °C.
const ANNEALS_K_PER_H: f64 = 40.0;
const ANNEALS_BELOW_A1_K: f64 = 60.0;
/// Points of a cooling in the furnace.
const FURNACE_POINTS: u32 = 96;
/// The air about it, °C.
const ROOM_C: f64 = 20.0;
/// Time constant of what follows a furnace cooling in still air, s: nothing forms any more.
const AFTER_S: f64 = 900.0;

/// The cooling of the slowest place.
pub(super) struct Cooling {
    pub(super) curve: CoolingCurve,
    /// Whether the furnace leads it so slowly, and so far below A1, that even steel that hardens in
    /// air is annealed.
    pub(super) is_annealing: bool,
}

/// Cools the piece of a steel with its A1 from a temperature, °C, as the step tells.
pub(super) fn cooled(
    route: &Route,
    step: &PriorStep,
    from_c: f64,
    a1_c: f64,
    hardening: Option<&Hardening>,
) -> Result<Cooling, RouteError> {
    match &step.cooling {
        SlowCooling::Medium { medium } => {
            let medium = medium.resolve()?;
            let quench = Quenching {
                section: route.section,
                medium: &medium,
                agitation: 1.0,
                start_c: from_c,
                air_delay_s: 0.0,
                end_c: COLD_C.max(medium.bath_c + 1.0).min(from_c - 1.0),
                then: &[],
                martensite_start_c: None,
            };
            let mut cooled = match hardening {
                Some(hardening) => cool_turning(&quench, &mut hardening.turning())?,
                None => cool(&quench)?,
            };
            Ok(Cooling {
                curve: cooled.curves.swap_remove(cooled.slowest),
                is_annealing: false,
            })
        }
        SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        } => Ok(Cooling {
            curve: furnace(from_c, *rate_k_per_h, *until_c),
            is_annealing: *rate_k_per_h <= ANNEALS_K_PER_H && *until_c <= a1_c - ANNEALS_BELOW_A1_K,
        }),
    }
}

/// A furnace that is led down, and still air after it.
fn furnace(from_c: f64, rate_k_per_h: f64, until_c: f64) -> CoolingCurve {
    let rate_k_per_s = rate_k_per_h / 3600.0;
    let until_c = until_c.min(from_c);
    let led_s = (from_c - until_c) / rate_k_per_s;
    let mut curve = CoolingCurve {
        place: Place::Centre,
        time_s: Vec::new(),
        temperature_c: Vec::new(),
        rate_k_per_s: Vec::new(),
    };
    let mut add = |time_s: f64, temperature_c: f64, rate: f64| {
        curve.time_s.push(time_s);
        curve.temperature_c.push(temperature_c);
        curve.rate_k_per_s.push(rate);
    };
    add(0.0, from_c, rate_k_per_s);
    if led_s > 0.0 {
        for i in 1..=FURNACE_POINTS {
            let way = f64::from(i) / f64::from(FURNACE_POINTS);
            add(way * led_s, from_c + way * (until_c - from_c), rate_k_per_s);
        }
    }
    let over_k = until_c - ROOM_C;
    if over_k > COLD_C - ROOM_C {
        let end_s = AFTER_S * (over_k / (COLD_C - ROOM_C)).ln();
        for i in 1..=FURNACE_POINTS / 4 {
            let time_s = end_s * f64::from(i) / f64::from(FURNACE_POINTS / 4);
            let left_k = over_k * (-time_s / AFTER_S).exp();
            add(led_s + time_s, ROOM_C + left_k, left_k / AFTER_S);
        }
    }
    curve
}
