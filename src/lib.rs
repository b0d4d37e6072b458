//! What a hardenable steel does in the furnace, the quench and the temper.
//!
//! The rooms, in the order in which imports may point:
//!
//! | room | answers |
//! |---|---|
//! | [`numeric`], [`units`] | root finding, linear solves, interpolation; scales, parsing and formatting |
//! | [`steel`] | composition, grades, validity ranges |
//! | [`sources`] | published constants, one file per publication |
//! | [`phases`] | critical temperatures, equilibrium, the phase map |
//! | [`soak`] | carbon in solution, carbide left, grain |
//! | [`heat`] | sections, quench media, conduction, the standard probe |
//! | [`transform`] | isothermal curves, additivity, martensite, end-quench |
//! | [`hardness`] | as-quenched, mixtures, tempering, scales |
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
pub mod hardness;
pub mod heat;
pub mod numeric;
pub mod phases;
pub mod route;
pub mod save;
pub mod soak;
pub mod sources;
pub mod steel;
pub mod teach;
pub mod terminal;
pub mod transform;
pub mod units;
