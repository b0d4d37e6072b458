//! Controls that the panels share: a word of a sentence that opens, a typed quantity, a choice.

mod choice;
mod file_button;
mod handle;
pub(crate) mod quantities;
mod typed;
mod word;

pub(crate) use choice::{Alternative, Alternatives, Choice, Entry, Segment};
pub(crate) use file_button::FileButton;
pub(crate) use handle::{Grip, Handle};
pub(crate) use typed::{Quantity, Typed, stepped};
pub(crate) use word::Word;

use leptos::prelude::*;

/// A part of a view that is made anew whenever what it reads changes. As a closure in the view, but
/// of one type for all: of that, each closure has its own 1 to 2 kB of the page's program.
pub(crate) fn live(part: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let part: Box<dyn Fn() -> AnyView + Send> = Box::new(part);
    part.into_any()
}
