//! Words of the room route: what comes out of a route, and why.

pub mod card;
pub mod cautions;
pub mod cold;
pub mod departures;
pub mod end_quench;
pub mod error;
pub mod explain;
pub mod explain_prior;
pub mod explain_soak;
pub mod fields;
pub mod in_lines;
pub mod in_use;
pub mod outcome;
pub mod places;
pub mod plan;
pub mod prior;
pub mod quench_notes;
pub mod soak_notes;
pub mod why;
