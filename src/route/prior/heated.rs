//! A step above A1: what dissolves, what grain results, what forms on cooling.

use super::cooling::{Cooling, cooled};
use super::made::Made;
use super::state::{PieceState, Settled};
use super::step::{PriorStep, Work};
use crate::heat::CoolingCurve;
use crate::route::error::RouteError;
use crate::route::hardening::Hardening;
use crate::route::plan::Route;
use crate::soak::{BoundaryCarbide, CarbideBalance, Network, Ripening, SoakEnd, Stock};
use crate::sources::astm_e112::grain_number;
use crate::steel::OutOfRange;

/// Time that new grains have to grow at the finishing temperature, s. Expert value.
const RECRYSTALLISED_S: f64 = 30.0;
/// Weight of the grain that had grown in the fire, in the logarithm: the hammer does not reach
/// everything in the last heat. Expert value.
const UNWORKED: f64 = 0.5;

/// What a step above A1 has made of the piece.
pub(super) struct Heated {
    pub(super) state: PieceState,
    pub(super) soaked: SoakEnd,
    pub(super) curve: CoolingCurve,
    pub(super) films: BoundaryCarbide,
}

/// Heats the piece, with what network it has, and lets it cool.
pub(super) fn heated(
    route: &Route,
    step: &PriorStep,
    stock: &Stock,
    network_before: Network,
    settled: &Settled,
    balance: Option<&CarbideBalance>,
) -> Result<Heated, RouteError> {
    let time_s = 60.0 * step.time_min;
    let mut soaked = stock.at(step.temperature_c)?.end(time_s)?;
    let mut from_c = step.temperature_c;
    if let Work::Forge { finish_c, .. } = step.work {
        from_c = finish_c;
        soaked.grain_um = forged_grain_um(stock, finish_c, soaked.grain_um, settled);
        soaked.point.grain_astm = grain_number(soaked.grain_um);
    }
    let hardening = Hardening::before_hardening(route, &soaked.point, &soaked.dissolved)
        .map(|hardening| hardening.with_films(balance.map(|balance| balance.films(&soaked))));
    let Cooling {
        curve,
        is_annealing,
    } = cooled(route, step, from_c, settled.a1_c, hardening.as_ref().ok())?;
    let formed = hardening.and_then(|hardening| hardening.cool(&curve));
    let films = match (&formed, balance) {
        (Ok(piece), _) => piece.films,
        (Err(_), Some(balance)) => {
            balance.on_boundaries(&soaked, &curve.time_s, &curve.temperature_c)
        }
        (Err(_), None) => BoundaryCarbide::default(),
    };
    let ripening = ripening(route, settled, &curve)?;
    let made = Made {
        steel: &route.composition,
        soaked: &soaked,
        settled,
        films: &films,
        network_before,
        ripening,
        outside_pearlite: stock.outside_pearlite(),
    };
    let state = match formed {
        Ok(piece) => made.known(&piece),
        Err(_) => made.unknown(is_annealing),
    };
    Ok(Heated {
        state,
        soaked,
        curve,
        films,
    })
}

/// Grain when the hammer stops: new grains where it has reached, the old ones where not.
fn forged_grain_um(stock: &Stock, finish_c: f64, grown_um: f64, settled: &Settled) -> f64 {
    let least_c = settled.a1_c + 10.0;
    let worked_um = stock
        .at(finish_c.max(least_c))
        .and_then(|hold| Ok(hold.end(RECRYSTALLISED_S)?.grain_um))
        .unwrap_or(grown_um)
        .min(grown_um);
    grown_um.powf(UNWORKED) * worked_um.powf(1.0 - UNWORKED)
}

/// What the way down from A1 does to carbide.
fn ripening(
    route: &Route,
    settled: &Settled,
    curve: &CoolingCurve,
) -> Result<Ripening, OutOfRange> {
    /// Below this carbide stays as it is, °C.
    const STILL_BELOW_C: f64 = 400.0;
    let mut all = Ripening::none();
    let points = curve.time_s.windows(2).zip(curve.temperature_c.windows(2));
    for (times, temperatures) in points {
        let (&[from_s, to_s], &[from_c, to_c]) = (times, temperatures) else {
            continue;
        };
        let middle_c = f64::midpoint(from_c, to_c);
        if middle_c < settled.a1_c && middle_c > STILL_BELOW_C {
            let step_s = (to_s - from_s).max(0.0);
            all = all.and(Ripening::held(&route.composition, middle_c, step_s)?);
        }
    }
    Ok(all)
}
