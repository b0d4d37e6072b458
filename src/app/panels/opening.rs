//! A part of the bench that opens.

use crate::parts::panels::{Panel, panel as show};
use leptos::prelude::*;

/// A title that opens its panel; nothing of it is made before.
#[component]
pub(super) fn Opening(title: &'static str, panel: Panel) -> impl IntoView {
    let is_open = RwSignal::new(false);
    view! {
        <details
            class="table-view"
            on:toggle=move |event| {
                is_open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
            }
        >
            <summary>{title}</summary>
            {move || is_open.get().then(|| show(panel))}
        </details>
    }
    .into_any()
}
