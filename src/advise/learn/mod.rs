//! Learning from the logbook: what hardness that was measured says of the furnace, the quenchant, the
//! heat of steel, the temper oven and the tester.
//!
//! Everything that is open about a route (`advise::OpenInput`) is divided into what is the same in
//! every run and what is anew in each. What is the same is an unknown, shared by all runs with the
//! same furnace, quenchant or heat; beforehand it is normal about none, as wide as its band says. What
//! is anew is scatter, shared by all that is measured on one piece. The most probable values are
//! found by damped Gauss-Newton steps: trials say what the plans come to and, by differences, how that
//! changes and by how much it bends; readings that lie far off are weighed down
//! (`sources::holland_welsch_1977`). Bands after are those of normal errors about the most probable
//! values.
//!
//! The heat's chemistry is no unknown by itself: where only the grade is known, it widens what is
//! open about hardenability and hardness. What was done otherwise than planned is told in words, which
//! nothing here reads: the run is taken as planned and marked. A steady error of the tester cannot be
//! told from the hardness of a heat; the answer says which unknowns cannot be told apart.

mod answer;
mod correction;
mod estimate;
mod left_out;
mod logged;
mod model;
mod next;
mod plan;
mod read_at;
mod run;
mod set_point;
mod slot;
mod straighten;
mod unknown;
mod words;

pub use answer::{Band, Compared, Entangled, Learned, Learnt, Prediction};
pub use correction::{Corrected, Correction};
pub use logged::{LoggedReading, LoggedRun, NotUsed, Unusable, Unused};
pub use next::{Measurement, NextMeasurement};
pub use read_at::ReadAt;
pub(crate) use read_at::is_outside;
pub use run::LearnRun;
pub use set_point::SetPoint;
pub use unknown::{Owner, UnknownKind};

use super::error::AdviseError;
use super::shop::Shop;
use crate::route::Route;

/// What runs, the oldest first, teach about a shop and about a route planned in it; without a route
/// about that of the last run.
///
/// A shop tells the furnaces apart, by band and thermocouple of the route, and gives the error of
/// the tester; without one all runs are taken to share one furnace, whose offset is told and acts
/// nowhere. Of a route that several furnaces fit nothing is learnt about the furnace. Nothing of it changes any
/// prediction: see [`Learned::correction`].
///
/// # Errors
/// A shop that makes no sense, a route without an outcome, neither a run nor a route, more than 5000
/// runs, or measurements that cannot be brought together with the models.
pub fn learn(
    runs: &[LoggedRun],
    shop: Option<&Shop>,
    route: Option<&Route>,
) -> Result<Learned, AdviseError> {
    let mut run = LearnRun::new(runs, shop, route)?;
    while run.step()? {}
    run.so_far().ok_or(AdviseError::NotSolved)
}

#[cfg(test)]
mod again_tests;
#[cfg(test)]
mod answer_tests;
#[cfg(test)]
mod simulated;
#[cfg(test)]
mod tests;
