//! Finding a route: from what the use asks for and what the shop owns to routes in order of how well
//! they serve, each with its chance; and where there is none, what stands in the way.
//!
//! One stock serves all, a soak serves all quenches, a quench all colds and tempers, so that
//! thousands of routes cost some dozens of coolings. The best of them are then sampled over what is
//! open; see [`super::spread()`].

mod chance;
mod nearest;
mod options;
mod rank;
mod run;

pub use nearest::{Limit, Nearest};
pub use rank::{FoundRoute, TradeOff};
pub use run::FindRun;

use super::error::{AdviseError, check};
use super::inputs::Tolerances;
use super::shop::Shop;
use crate::route::{Property, Route, Target};
use serde::{Deserialize, Serialize};

/// What a piece is for: by it routes are ranked that are about as likely to meet the target.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Purpose {
    /// A cutting edge.
    Edge,
    /// A spring.
    Spring,
    /// Standing abrasion.
    Wear,
    /// Standing blows.
    Impact,
}

impl Purpose {
    /// What it asks of the piece beside its hardness.
    #[must_use]
    pub const fn property(self) -> Property {
        match self {
            Self::Edge => Property::Edge,
            Self::Spring | Self::Impact => Property::Toughness,
            Self::Wear => Property::Wear,
        }
    }
}

/// What a route must keep to. A limit that is none is not set.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Limits {
    /// Most retained austenite after the last step, volume fraction.
    pub most_austenite: Option<f64>,
    /// Coarsest grain, ASTM number.
    pub least_grain_astm: Option<f64>,
    /// Whether a cold step is out of the question.
    pub no_cold: bool,
    /// Longest time of soak, cold and tempers together, h.
    pub longest_h: Option<f64>,
}

impl Limits {
    fn check(&self) -> Result<(), AdviseError> {
        let limit = |field, value: Option<f64>, range, unit| {
            value.map_or(Ok(()), |value| check(field, value, range, unit))
        };
        limit("most_austenite", self.most_austenite, (0.0, 1.0), "")?;
        limit("least_grain_astm", self.least_grain_astm, (-2.0, 15.0), "")?;
        limit("longest_h", self.longest_h, (0.1, 1000.0), "h")
    }
}

/// What is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sought {
    /// Hardness range.
    pub target: Target,
    /// What the piece is for.
    #[serde(rename = "use")]
    pub purpose: Purpose,
    /// What the route must keep to.
    #[serde(default)]
    pub limits: Limits,
}

/// What a search has found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Found {
    /// Routes that meet the target and keep to the limits as planned, the best first.
    pub routes: Vec<FoundRoute>,
    /// Hardness against toughness: of all routes that harden and keep to the limits those that none
    /// other beats in both, the hardest first.
    pub trade_off: Vec<TradeOff>,
    /// Routes that were computed.
    pub tried: usize,
    /// What stands in the way, where no route was found.
    pub nearest: Option<Nearest>,
}

/// Finds routes for the piece of a route: its steel, structure, section and time in air count; its
/// furnace, soak, quench, cold, tempers and target are those that are sought. How far a temper may
/// be off is that of the shop's oven, whatever the tolerances say.
///
/// # Errors
/// A shop, limits or tolerances that make no sense; a steel that the equilibrium does not cover; or
/// not one soak and quench of the shop that can be computed.
pub fn find(
    piece: &Route,
    shop: &Shop,
    sought: &Sought,
    tolerances: &Tolerances,
    seed: u32,
) -> Result<Found, AdviseError> {
    let mut run = FindRun::new(piece, shop, sought, tolerances, seed)?;
    while run.step() {}
    run.so_far()
}

#[cfg(test)]
mod taught_tests;
#[cfg(test)]
mod tests;
