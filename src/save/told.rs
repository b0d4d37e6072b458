//! What is wrong with a text, in words that have room in a line, however long what they repeat.

use std::fmt::Display;

/// Most letters of a fault that repeats parts of a text.
const LONGEST_FAULT: usize = 240;

/// A fault in words.
pub(crate) fn told(fault: &impl Display) -> String {
    shortened(&fault.to_string(), LONGEST_FAULT)
}

/// The first letters of a text, with a sign where more follow.
pub(super) fn shortened(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    text.chars().take(most - 1).chain(['…']).collect()
}
