//! Experiments: their list, and the guide that stands above the bench while one runs.

use crate::panels::lessons::take_link;
use crate::panels::lessons_guide::Guide;
use crate::panels::lessons_list::LessonsPlace;
use crate::state::Bench;
use leptos::prelude::*;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Teaching {
    /// Shows the list.
    pub(crate) show: fn() -> AnyView,
    /// Shows the guide.
    pub(crate) guide: fn() -> AnyView,
    /// Puts the experiment that the address brings on the list.
    pub(crate) take_link: fn(Bench),
}

/// Brings the part.
#[wasm_split(lessons, fallible)]
pub(crate) fn teaching() -> Result<Teaching, SplitLoaderError> {
    Ok(Teaching {
        show,
        guide,
        take_link,
    })
}

fn show() -> AnyView {
    view! { <LessonsPlace /> }.into_any()
}

fn guide() -> AnyView {
    view! { <Guide /> }.into_any()
}
