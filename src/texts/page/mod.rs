//! Words of the page itself: labels, headings, hints and messages, a file for each part of it.

pub mod card;
pub mod charts;
pub mod class;
pub mod decide;
pub mod embed;
pub mod furnace;
pub mod general;
pub mod hardenability;
pub mod header;
pub mod in_use;
pub mod lessons;
pub mod logbook;
pub mod media;
pub mod outcome;
pub mod own;
pub mod piece;
pub mod quench;
pub mod saved;
pub mod shelf;
pub mod soak;
pub mod sources;
pub mod steel;
pub mod steps;
pub mod strip;
pub mod temper;
pub mod why;
