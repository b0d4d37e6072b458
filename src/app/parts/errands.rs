//! What the second thread does, and the page where there is none.

use crate::browser::worker::Answer;
use crate::errand;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Errands {
    /// Does an errand, from text to texts.
    pub(crate) answer: Answer,
}

/// Brings the part.
#[wasm_split(errands, fallible)]
pub(crate) fn errands() -> Result<Errands, SplitLoaderError> {
    Ok(Errands {
        answer: errand::answer,
    })
}
