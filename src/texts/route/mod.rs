//! Words of the room route: what comes out of a route, and why.

pub mod card;
pub mod cautions;
pub mod end_quench;
pub mod error;
pub mod fields;
pub mod in_lines;
pub mod in_use;
pub mod plan;
pub mod prior;
pub mod why;
