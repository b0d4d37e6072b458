//! The place where routes are found, weighed and judged.

use crate::panels::decide::DecidePlace;
use leptos::prelude::*;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Deciding {
    /// Shows the place.
    pub(crate) show: fn() -> AnyView,
}

/// Brings the part.
#[wasm_split(decide, fallible)]
pub(crate) fn deciding() -> Result<Deciding, SplitLoaderError> {
    Ok(Deciding { show })
}

fn show() -> AnyView {
    view! { <DecidePlace /> }.into_any()
}
