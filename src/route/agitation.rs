//! How hard a bath has to be stirred for the piece to pass a temperature at a time, and which bath it
//! has to be where stirring is not enough.

use super::baths::Baths;
use super::other_quenches::compared_section;
use super::plan::{Quench, Route};
use super::shop_media::of_its_kind;
use crate::heat::{CoolingCurve, HeatError, Leave, MediumChoice, Quenching, Section, cool};

/// Range of the agitation factor that the page lets the user set.
pub const AGITATION_RANGE: (f64, f64) = (0.4, 2.5);

/// Most steps of the search for an agitation, and how near two of them have to come: the dependence is
/// close to a power law.
const AGITATION_STEPS: usize = 6;
const AGITATION_TOLERANCE: f64 = 2e-3;

/// The quenchant and the agitation with which the deciding place, whose cooling curve as planned is
/// `curve`, passes a temperature after a given time. The agitation is within [`AGITATION_RANGE`]; where
/// none there does it the quenchant gives way to the next slower or faster one of its kind in the list,
/// in its listed bath, and at the ends of the kind the agitation ends. A blade is followed by the plate
/// of its spine, which is passed later or sooner in the same proportion.
///
/// # Errors
/// When the route's quench cannot be computed.
pub fn bath_to_pass(
    route: &Route,
    curve: &CoolingCurve,
    temperature_c: f64,
    time_s: f64,
) -> Result<(MediumChoice, f64), super::RouteError> {
    let (least, most) = AGITATION_RANGE;
    let mut tried = route.clone();
    let as_it_is =
        |tried: Route, agitation: f64| Ok((tried.quench.medium, agitation.clamp(least, most)));
    let Some(pass) = Pass::of(route, curve, temperature_c, time_s)? else {
        return as_it_is(tried, route.quench.agitation);
    };
    let mut agitation = pass.agitation(route)?;
    let kind: Vec<&str> = route.quench.medium.listed().map_or_else(Vec::new, |name| {
        of_its_kind(name)
            .map(|medium| medium.name.as_str())
            .collect()
    });
    let mut place = kind
        .iter()
        .position(|name| route.quench.medium.listed() == Some(*name));
    let is_slower = agitation < least;
    while !(least..=most).contains(&agitation) && (agitation < least) == is_slower {
        // The kind stands from fast to slow.
        let next = place.and_then(|place| {
            if is_slower {
                place.checked_add(1)
            } else {
                place.checked_sub(1)
            }
        });
        let Some(name) = next.and_then(|next| kind.get(next)) else {
            break;
        };
        place = next;
        tried.quench = Quench {
            medium: MediumChoice::Named((*name).to_owned()),
            agitation: 1.0,
            ..tried.quench
        };
        agitation = pass.agitation(&tried)?;
    }
    as_it_is(tried, agitation)
}

/// A temperature that is to be passed at a time.
struct Pass {
    temperature_c: f64,
    /// Time in the bath until then, s, of the section by which the piece is followed.
    wanted_s: f64,
}

impl Pass {
    /// What a route has to do for its deciding place, whose curve is `curve`, to pass a temperature
    /// at a time; none where that does not go by the first bath.
    fn of(
        route: &Route,
        curve: &CoolingCurve,
        temperature_c: f64,
        time_s: f64,
    ) -> Result<Option<Self>, super::RouteError> {
        let Some(planned_s) = curve.time_to_c(temperature_c) else {
            return Ok(None);
        };
        let in_bath_s = |time_s: f64| in_bath_s(route, time_s);
        // What is passed in a later bath does not go by the stir of the first.
        let is_later = match route.quench.then.first().map(|next| next.leave) {
            Some(Leave::AfterS(stay_s)) => in_bath_s(planned_s) > stay_s,
            Some(Leave::AtC(leave_c)) => temperature_c < leave_c,
            None => false,
        };
        if is_later {
            return Ok(None);
        }
        let slower = in_bath_s(time_s) / in_bath_s(planned_s);
        let (least, most) = AGITATION_RANGE;
        let baths = Baths::of(&route.quench)?;
        let section = compared_section(route.section);
        let planned = route.quench.agitation.clamp(least, most);
        let passing = passing_s(route, &baths, section, planned, temperature_c)?;
        Ok(passing.map(|now_s| Self {
            temperature_c,
            wanted_s: in_bath_s(now_s) * slower,
        }))
    }

    /// The agitation of a route's bath that does it: one outside [`AGITATION_RANGE`] is the sign that
    /// none in it does.
    fn agitation(&self, route: &Route) -> Result<f64, super::RouteError> {
        let (least, most) = AGITATION_RANGE;
        let baths = Baths::of(&route.quench)?;
        let section = compared_section(route.section);
        let mut agitation = route.quench.agitation.clamp(least, most);
        for _ in 0..AGITATION_STEPS {
            let tried = agitation.clamp(least, most);
            let passing = passing_s(route, &baths, section, tried, self.temperature_c)?;
            let Some(now_s) = passing.map(|now_s| in_bath_s(route, now_s)) else {
                break;
            };
            let ratio = now_s / self.wanted_s;
            agitation = tried * ratio;
            if (ratio - 1.0).abs() < AGITATION_TOLERANCE || agitation.clamp(least, most) == tried {
                break;
            }
        }
        Ok(agitation)
    }
}

/// Time in the bath, s: the delay in air does not depend on it.
fn in_bath_s(route: &Route, time_s: f64) -> f64 {
    (time_s - route.quench.air_delay_s).max(1e-3)
}

/// How far below a temperature a quench is followed to see when it is passed, K.
const PAST_K: f64 = 5.0;

/// A quench is followed at least so far, °C: the heat room ends none hotter than 600 °C.
const HOTTEST_END_C: f64 = 590.0;

/// A quench that is followed until a temperature is passed.
pub(super) fn until_past<'m>(
    route: &Route,
    baths: &'m Baths,
    section: Section,
    agitation: f64,
    temperature_c: f64,
) -> Quenching<'m> {
    Quenching {
        section,
        agitation,
        end_c: (temperature_c - PAST_K)
            .min(HOTTEST_END_C)
            .max(route.quench.end_c),
        ..baths.quenching(route)
    }
}

/// Time from leaving the furnace at which the slowest place of a section passes a temperature, s;
/// none when it stays above.
///
/// # Errors
/// When the quench cannot be computed.
fn passing_s(
    route: &Route,
    baths: &Baths,
    section: Section,
    agitation: f64,
    temperature_c: f64,
) -> Result<Option<f64>, HeatError> {
    let cooled = cool(&until_past(route, baths, section, agitation, temperature_c))?;
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
                route.quench.agitation = bath_to_pass(&route, curve, temperature_c, time_s)
                    .unwrap()
                    .1;
                let dragged = crate::route::run(&route).unwrap().quench;
                let passes_s = dragged.curves[dragged.deciding]
                    .time_to_c(temperature_c)
                    .unwrap();
                approx::assert_relative_eq!(passes_s, time_s, max_relative = accuracy);
            }
        }
    }

    /// Dragged on beyond what stirring allows, the next quenchant of the kind takes over where the one
    /// before ended, and no other kind.
    #[test]
    fn a_quench_goes_on_into_the_next_of_its_kind() {
        // O1 turns into nothing on the way, whose heat would hold the curve up.
        let mut route = Route::example();
        route.take_grade(crate::steel::find("O1").unwrap());
        route.section = Section::Plate { thickness_mm: 3.0 };
        let passes = |route: &Route| {
            let quench = crate::route::run(route).unwrap().quench;
            let curve = quench.curves[quench.deciding].clone();
            (curve.time_to_c(400.0).unwrap(), curve)
        };
        for (factor, end) in [(0.93, "oil_fast"), (1.08, "oil_slow")] {
            let mut seen = vec!["oil_medium".to_owned()];
            let (mut before_s, mut curve) = passes(&route);
            let mut pulled = route.clone();
            for _ in 0..60 {
                let wanted_s = 1.0 + (before_s - 1.0) * factor;
                let (medium, agitation) = bath_to_pass(&pulled, &curve, 400.0, wanted_s).unwrap();
                let name = medium.listed().unwrap().to_owned();
                pulled.quench.medium = medium;
                pulled.quench.agitation = agitation;
                let passed = passes(&pulled);
                let is_at_end = agitation == AGITATION_RANGE.0 || agitation == AGITATION_RANGE.1;
                if !is_at_end {
                    approx::assert_relative_eq!(passed.0, wanted_s, max_relative = 0.01);
                }
                if seen.last() != Some(&name) {
                    seen.push(name);
                }
                (before_s, curve) = passed;
            }
            assert_eq!(seen.last().map(String::as_str), Some(end), "{seen:?}");
            assert!(seen.len() > 1, "{seen:?}");
        }
        // A quenchant of the user's own has no kind.
        let own = crate::heat::OwnMedium {
            h_w_m2k: vec![[0.0, 800.0], [900.0, 800.0]],
            bath_c: 50.0,
            ..crate::heat::OwnMedium::default()
        };
        route.quench.medium = MediumChoice::Own(own);
        let (before_s, curve) = passes(&route);
        let (medium, agitation) = bath_to_pass(&route, &curve, 400.0, 0.1 * before_s).unwrap();
        assert_eq!(
            (medium, agitation),
            (route.quench.medium, AGITATION_RANGE.1)
        );
    }
}
