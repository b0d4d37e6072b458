//! Words of the room route: what comes out of a route, and why.

pub mod departures;
pub mod outcome;
