//! What a cold treatment gains, and what waiting for it costs.

use super::hardening::{Hardened, Hardening};
use super::outcome::ColdOutcome;
use super::plan::{Cold, Route};
use super::sentences::TELLABLE_HRC;
use crate::steel::OutOfRange;

/// The cold bath that is weighed when none is planned: dry ice in solvent.
const WEIGHED: Cold = Cold::FIRST_OFFERED;
/// Fall in retained austenite that is worth a cold bath by itself, volume fraction.
const WORTH_AUSTENITE: f64 = 0.04;
/// Further waiting whose cost is told, min.
const LONGER_MIN: f64 = 10.0;

/// A cold treatment of a quenched piece: the one planned, or the one weighed.
pub(super) struct Chilled {
    pub(super) piece: Hardened,
    pub(super) outcome: ColdOutcome,
}

impl Chilled {
    pub(super) fn of(
        route: &Route,
        hardening: &Hardening,
        quenched: &Hardened,
    ) -> Result<Self, OutOfRange> {
        let cold = route.cold.unwrap_or(WEIGHED);
        let later = Cold {
            delay_min: cold.delay_min + LONGER_MIN,
            ..cold
        };
        let piece = hardening.cold(quenched, &cold)?;
        let later = hardening.cold(quenched, &later)?;
        let gain_hrc = rise_hrc(quenched, &piece);
        let [before, after] = [quenched, &piece].map(|piece| piece.fractions.austenite);
        Ok(Self {
            piece,
            outcome: ColdOutcome {
                is_planned: route.cold.is_some(),
                temperature_c: cold.temperature_c,
                austenite_before: before,
                austenite_after: after,
                gain_hrc,
                austenite_lost_per_min: (later.fractions.austenite - after) / LONGER_MIN,
                gain_lost_hrc_per_min: rise_hrc(&later, &piece) / LONGER_MIN,
                is_worth_it: gain_hrc >= TELLABLE_HRC || before - after >= WORTH_AUSTENITE,
            },
        })
    }
}

fn rise_hrc(from: &Hardened, to: &Hardened) -> f64 {
    let [from, to] = [from, to].map(|piece| piece.hardness.hrc_carried());
    to - from
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::run;

    fn after(delay_min: f64) -> ColdOutcome {
        let mut route = Route::example();
        route.cold = Some(Cold {
            delay_min,
            ..WEIGHED
        });
        *run(&route).unwrap().cold.given().unwrap()
    }

    /// The cost by the minute is the slope of what later baths leave, and waiting costs most at
    /// first (Harris and Cohen 1949: the lag grows with the root of time).
    #[test]
    fn waiting_costs_what_a_later_bath_shows() {
        let [soon, later, late] = [0.0, 10.0, 600.0].map(after);
        let slope = (later.austenite_after - soon.austenite_after) / 10.0;
        assert!((soon.austenite_lost_per_min - slope).abs() < 1e-12);
        assert!(soon.austenite_lost_per_min > later.austenite_lost_per_min);
        assert!(later.austenite_lost_per_min > late.austenite_lost_per_min);
        assert!(late.gain_hrc < soon.gain_hrc && late.austenite_lost_per_min >= 0.0);
        assert!(soon.gain_lost_hrc_per_min > 0.0);
    }
}
