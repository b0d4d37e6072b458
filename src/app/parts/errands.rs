//! What the second thread does, and the page where there is none.

use crate::app::browser::worker::Answer;
use crate::app::errand::{self, Brought, Errand};
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// From an errand to what comes of it, telling how far it is.
type Done = fn(Errand, &dyn Fn(&Brought)) -> Brought;

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Errands {
    /// Does an errand.
    pub(crate) done: Done,
    /// Does one from text to texts.
    pub(crate) answer: Answer,
}

/// Brings the part.
#[wasm_split(errands, fallible)]
pub(crate) fn errands() -> Result<Errands, SplitLoaderError> {
    Ok(Errands {
        done: Errand::done,
        answer: errand::answer,
    })
}
