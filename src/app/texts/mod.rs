//! The page's own words, a file for each part of it: constants, and functions where a value enters. No logic
//! and no markup. Sentences that are computed are made by the core.

pub(crate) mod card;
pub(crate) mod charts;
pub(crate) mod class;
pub(crate) mod decide;
pub(crate) mod embed;
pub(crate) mod furnace;
pub(crate) mod hardenability;
pub(crate) mod header;
pub(crate) mod in_use;
pub(crate) mod lessons;
pub(crate) mod logbook;
pub(crate) mod media;
pub(crate) mod outcome;
pub(crate) mod own;
pub(crate) mod page;
pub(crate) mod piece;
pub(crate) mod quench;
pub(crate) mod shelf;
pub(crate) mod soak;
pub(crate) mod sources;
pub(crate) mod steel;
pub(crate) mod steps;
pub(crate) mod strip;
pub(crate) mod temper;
pub(crate) mod why;
