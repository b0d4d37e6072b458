//! The speed of a quench as its handle has it: which quenchant of its kind, and how it is stirred.

use crate::plot::Shown;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::heat::MediumChoice;
use recalesce::route::{AGITATION_RANGE, Quench, bath_to_pass, of_its_kind};

/// One step of the agitation factor.
pub(super) const AGITATION_STEP: f64 = 0.05;
/// Quenchants of a kind stand one above the other on the scale of the handle, this far apart: more
/// than a bath can be stirred.
const APART: f64 = 10.0;

/// The place of a quenchant among those of its kind, from the slowest, and how its bath is stirred.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Speed {
    place: usize,
    of: usize,
    agitation: f64,
}

impl Speed {
    pub(super) fn of(quench: &Quench) -> Self {
        let name = quench.medium.listed().unwrap_or_default();
        let kind = of_its_kind(name);
        let (of, place) = kind.fold((0_usize, 0_usize), |(of, place), medium| {
            (of + 1, if medium.name == name { of } else { place })
        });
        Self {
            place: of.saturating_sub(1 + place),
            of,
            agitation: quench.agitation,
        }
    }

    /// Where it stands.
    pub(super) fn value(self) -> f64 {
        self.value_with(self.agitation)
    }

    fn value_with(self, agitation: f64) -> f64 {
        let (least, most) = AGITATION_RANGE;
        // One stirred harder than the handle goes stands at its end, not at the next quenchant.
        APART * self.place as f64 + agitation.clamp(least, most)
    }

    /// Where it can stand.
    pub(super) fn range(self) -> (f64, f64) {
        let (least, most) = AGITATION_RANGE;
        (least, APART * self.of.saturating_sub(1) as f64 + most)
    }

    /// The value so many steps on; where the bath cannot be stirred so, how much sooner the piece is
    /// to pass, as a factor.
    pub(super) fn stepped(self, steps: f64) -> Result<f64, f64> {
        let (least, most) = AGITATION_RANGE;
        let next = (self.agitation / AGITATION_STEP + steps).round() * AGITATION_STEP;
        if (least..=most).contains(&next) {
            Ok(self.value_with(next))
        } else {
            Err(next.max(0.5 * least) / self.agitation)
        }
    }
}

/// Takes the quenchant and the stir that a value of the handle stands for.
pub(super) fn take_speed(quench: &mut Quench, value: f64) {
    let now = Speed::of(quench);
    let place = (value / APART) as usize;
    // Without what the sum has rounded.
    quench.agitation = (1e6 * (value - APART * place as f64)).round() / 1e6;
    if place != now.place {
        let name = quench.medium.listed().unwrap_or_default();
        let faster = now.of.saturating_sub(1 + place);
        if let Some(medium) = of_its_kind(name).nth(faster) {
            quench.medium = MediumChoice::Named(medium.name.clone());
        }
    }
}

/// The value with which the curve passes the level of the handle at a column of the chart, px, or where
/// it stands, sooner by a factor.
pub(crate) fn pass(bench: Bench, shown: Shown, column: Option<f64>, sooner: f64) -> Option<f64> {
    let scene = shown.get_untracked()?;
    let [x, y] = scene.handles.first()?.at_px;
    let [time_s, temperature_c] = scene.plane.to_data([column.unwrap_or(x), y]);
    let outcome = bench.outcome_now()?;
    let planned = outcome.quench.deciding_curve()?;
    bench.route.with_untracked(|route| {
        let (medium, agitation) =
            bath_to_pass(route, planned, temperature_c, time_s / sooner).ok()?;
        let quench = Quench {
            medium,
            agitation,
            ..route.quench.clone()
        };
        Some(Speed::of(&quench).value())
    })
}
