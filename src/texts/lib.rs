//! Every text that the page and the rooms of its core say, in one place, by who says it: constants, and
//! functions where a value enters, which comes as the words or the number that the text shows. No logic but
//! that of grammar and of which sentence follows, and no markup. A translation is a second set behind the
//! same names.
#![allow(
    missing_docs,
    reason = "a text says what it is, and its name what it is for"
)]

pub mod advise;
pub mod charts;
pub mod constituents;
pub mod grammar;
pub mod hardness;
pub mod heat;
pub mod numeric;
pub mod page;
pub mod phases;
pub mod route;
pub mod save;
pub mod soak;
pub mod sources;
pub mod steel;
pub mod teach;
pub mod transform;
pub mod units;
