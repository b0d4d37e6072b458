//! Words of the room route: what comes out of a route, and why.

pub mod cold;
pub mod departures;
pub mod explain;
pub mod explain_prior;
pub mod explain_soak;
pub mod outcome;
pub mod places;
pub mod quench_notes;
pub mod soak_notes;
