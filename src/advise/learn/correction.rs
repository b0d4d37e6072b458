//! What was learnt, as later predictions take it: only where the user has switched it on.

use super::unknown::{Owner, UnknownKind};
use crate::advise::shop::Shop;
use crate::route::{Deviation, Route};
use serde::{Deserialize, Serialize};

/// One thing that was learnt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Corrected {
    /// What.
    pub kind: UnknownKind,
    /// Of what.
    pub owner: Owner,
    /// Its most probable value, in its unit; of a factor the factor; of a furnace its whole offset.
    pub value: f64,
}

/// What a logbook has taught, off until it is switched on.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Correction {
    /// Whether later predictions follow it.
    pub is_on: bool,
    /// Everything that was learnt.
    pub learnt: Vec<Corrected>,
}

impl Correction {
    /// What it makes off about a route planned in a shop: nothing while it is switched off, nor of
    /// what the logbook tells nothing of. For [`crate::route::trial`].
    ///
    /// A furnace's offset is the whole of it: what the route already counts with is taken off. What
    /// the tester shows too much is no matter of the piece and left out.
    #[must_use]
    pub fn deviation(&self, route: &Route, shop: Option<&Shop>) -> Deviation {
        let mut off = Deviation::default();
        if !self.is_on {
            return off;
        }
        for corrected in &self.learnt {
            let Corrected { kind, owner, value } = corrected;
            if *owner != Owner::of(*kind, route, shop) {
                continue;
            }
            match kind {
                UnknownKind::FurnaceOffset => off.soak_k = value - route.furnace_offset_k,
                UnknownKind::QuenchSeverity => off.heat_transfer_factor = *value,
                UnknownKind::Hardenability => off.nose_time_factor = *value,
                UnknownKind::MartensiteStart => off.ms_k = *value,
                UnknownKind::TemperOvenOffset => off.temper_k = *value,
                UnknownKind::QuenchedHardness => off.quenched_hrc = *value,
                UnknownKind::TemperedHardness => off.tempered_hrc = *value,
                UnknownKind::Tester => {}
            }
        }
        off
    }
}
