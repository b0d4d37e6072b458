//! What the second thread does, and the page where there is none.

use crate::app::errand::{self, Brought, Errand};
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Errands {
    /// Does an errand, telling how far it is.
    pub(crate) done: fn(Errand, &dyn Fn(&Brought)) -> Brought,
    /// Does one from text to texts.
    pub(crate) answer: fn(&str, &dyn Fn(&str)),
}

/// Brings the part.
#[wasm_split(errands, fallible)]
pub(crate) fn errands() -> Result<Errands, SplitLoaderError> {
    Ok(Errands {
        done: Errand::done,
        answer: errand::answer,
    })
}
