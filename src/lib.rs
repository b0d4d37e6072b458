//! What a hardenable steel does in the furnace, the quench and the temper.
//!
//! Below are the rooms of physics, from [`numeric`] to [`hardness`]: a package of their own, at hand here
//! by their names. On them stand, in the order in which imports may point:
//!
//! | room | answers |
//! |---|---|
//! | [`route`] | the pipeline from a route to its outcome, and the verdicts |
//! | [`advise`] | finding a route, how sure it is, what matters, what a logbook teaches |
//! | [`save`] | the file format, its versions and checks |
//! | [`teach`] | experiments: lessons on the live bench, as data |
//! | [`terminal`] | questions and answers, one JSON object a line |
//! | [`chart`] | scenes in data units, clipping, drawing over any backend |
//!
//! One door leads into the physics:
//!
//! ```
//! use recalesce::route::{Route, run};
//!
//! let outcome = run(&Route::example())?;
//! assert!(outcome.soak.end.carbon_wt < outcome.soak.limit.austenite.c);
//! # Ok::<(), recalesce::route::RouteError>(())
//! ```
#![cfg_attr(
    not(test),
    warn(clippy::unwrap_used, clippy::expect_used, clippy::panic)
)]

pub mod advise;
pub mod chart;
pub mod route;
pub mod save;
pub mod teach;
pub mod terminal;

pub use recalesce_physics::{
    hardness, heat, numeric, phases, soak, sources, steel, transform, units,
};
