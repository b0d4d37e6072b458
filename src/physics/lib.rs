//! What steel does as it is heated, held, quenched and tempered: the rooms of physics, each a step of
//! the way from a composition to a hardness.
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
//!
//! They are a package of their own so that they can be optimised for speed where the rest of the page
//! is for weight. Routes through them, and all that is made of those, are in `recalesce`.
#![cfg_attr(
    not(test),
    warn(clippy::unwrap_used, clippy::expect_used, clippy::panic)
)]

pub mod hardness;
pub mod heat;
pub mod numeric;
pub mod phases;
pub mod soak;
pub mod sources;
pub mod steel;
pub mod transform;
pub mod units;
