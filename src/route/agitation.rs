//! How hard a bath has to be stirred for the piece to pass a temperature at a time.

use super::baths::Baths;
use super::other_quenches::compared_section;
use super::plan::Route;
use crate::heat::{CoolingCurve, HeatError, Leave, Quenching, Section, cool};

/// Range of the agitation factor that the page lets the user set.
pub const AGITATION_RANGE: (f64, f64) = (0.4, 2.5);

/// Steps of the search for an agitation: the dependence is close to a power law.
const AGITATION_STEPS: usize = 3;

/// The agitation with which the deciding place, whose cooling curve as planned is `curve`, passes a
/// temperature after a given time, within [`AGITATION_RANGE`]. A blade is followed by the plate of
/// its spine, which is passed later or sooner in the same proportion.
///
/// # Errors
/// When the route's quench cannot be computed.
pub fn agitation_to_pass(
    route: &Route,
    curve: &CoolingCurve,
    temperature_c: f64,
    time_s: f64,
) -> Result<f64, super::RouteError> {
    let baths = Baths::of(&route.quench)?;
    let (least, most) = AGITATION_RANGE;
    let delay_s = route.quench.air_delay_s;
    // The delay in air does not depend on the bath.
    let in_bath_s = |time_s: f64| (time_s - delay_s).max(1e-3);
    let planned = route.quench.agitation.clamp(least, most);
    let Some(planned_s) = curve.time_to_c(temperature_c) else {
        return Ok(planned);
    };
    // What is passed in a later bath does not go by the stir of the first.
    let is_later = match route.quench.then.first().map(|next| next.leave) {
        Some(Leave::AfterS(stay_s)) => in_bath_s(planned_s) > stay_s,
        Some(Leave::AtC(leave_c)) => temperature_c < leave_c,
        None => false,
    };
    if is_later {
        return Ok(planned);
    }
    let slower = in_bath_s(time_s) / in_bath_s(planned_s);
    let section = compared_section(route.section);
    let mut agitation = planned;
    let mut wanted_s = None;
    for _ in 0..AGITATION_STEPS {
        let passing = passing_s(route, &baths, section, agitation, temperature_c)?;
        let Some(now_s) = passing.map(in_bath_s) else {
            break;
        };
        let wanted_s = *wanted_s.get_or_insert(now_s * slower);
        agitation = (agitation * now_s / wanted_s).clamp(least, most);
    }
    Ok(agitation)
}

/// How far below a temperature a quench is followed to see when it is passed, K.
const PAST_K: f64 = 5.0;

/// A quench is followed at least so far, °C: the heat room ends none hotter than 600 °C.
const HOTTEST_END_C: f64 = 590.0;

/// Time from leaving the furnace at which the slowest place of a section passes a temperature, s;
/// none when it stays above.
///
/// # Errors
/// When the quench cannot be computed.
pub(super) fn passing_s(
    route: &Route,
    baths: &Baths,
    section: Section,
    agitation: f64,
    temperature_c: f64,
) -> Result<Option<f64>, HeatError> {
    let cooled = cool(&Quenching {
        section,
        agitation,
        end_c: (temperature_c - PAST_K)
            .min(HOTTEST_END_C)
            .max(route.quench.end_c),
        ..baths.quenching(route)
    })?;
    Ok(cooled
        .slowest()
        .and_then(|curve| curve.time_to_c(temperature_c)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Dragged to a time, the piece passes there: a plate exactly, a blade nearly.
    #[test]
    fn a_quench_dragged_to_a_time_passes_then() {
        let plate = Section::Plate { thickness_mm: 3.0 };
        for (section, accuracy) in [(plate, 0.003), (Route::example().section, 0.02)] {
            for (temperature_c, part) in [(540.0, 0.8), (540.0, 1.4), (650.0, 1.2), (300.0, 0.9)] {
                let mut route = Route {
                    section,
                    ..Route::example()
                };
                let planned = crate::route::run(&route).unwrap().quench;
                let curve = &planned.curves[planned.deciding];
                let time_s = 1.0 + (curve.time_to_c(temperature_c).unwrap() - 1.0) * part;
                route.quench.agitation =
                    agitation_to_pass(&route, curve, temperature_c, time_s).unwrap();
                let dragged = crate::route::run(&route).unwrap().quench;
                let passes_s = dragged.curves[dragged.deciding]
                    .time_to_c(temperature_c)
                    .unwrap();
                approx::assert_relative_eq!(passes_s, time_s, max_relative = accuracy);
            }
        }
    }
}
