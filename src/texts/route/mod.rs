//! Words of the room route: what comes out of a route, and why.

pub mod card;
pub mod cautions;
pub mod plan;
pub mod prior;
