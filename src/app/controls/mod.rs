//! Controls that the panels share: a word of a sentence that opens, a typed quantity, a choice.

mod choice;
mod handle;
pub(crate) mod quantities;
mod typed;
mod word;

pub(crate) use choice::{Alternative, Alternatives, Choice, Entry, Segment};
pub(crate) use handle::{Chevrons, Grip, Handle};
pub(crate) use typed::{Quantity, Typed};
pub(crate) use word::Word;
