//! Words of the search for a route.

pub mod nearest;
pub mod rank;
