//! An opened number: what stands behind it.

use crate::parts::panels::{Panel, panel};
use crate::state::bench;
use leptos::html::Dialog;
use leptos::prelude::*;
use recalesce::route::{NumberKey, explain};

/// How a number comes about.
#[component]
pub(crate) fn Explained(
    /// The number.
    key: NumberKey,
) -> impl IntoView {
    let bench = bench();
    let inside = move || {
        let outcome = bench.outcome()?;
        let why = explain(key, &bench.route.get(), &outcome, bench.scale.get());
        let rows = why
            .rows
            .into_iter()
            .map(|(term, text)| view! { <dt>{term}</dt><dd>{text}</dd> })
            .collect_view();
        Some(view! {
            <h2>{why.title}</h2>
            <p class="figure">{why.figure} " " <small>{why.band}</small></p>
            <p class="equation">{why.equation}</p>
            <dl>{rows}</dl>
        })
    };
    inside.into_any()
}

/// The panel, a modal dialog while a number is open.
#[component]
pub(crate) fn Opened() -> impl IntoView {
    let bench = bench();
    let dialog = NodeRef::<Dialog>::new();
    Effect::new(move |_| {
        let is_open = bench.opened.get().is_some();
        if let Some(element) = dialog.get() {
            if is_open && !element.open() {
                // Refused only where the dialog is open already.
                let _ = element.show_modal();
            } else if !is_open && element.open() {
                element.close();
            }
        }
    });
    let body = move || bench.opened.get().map(|key| panel(Panel::Opened(key)));
    view! {
        <dialog
            class="opened"
            node_ref=dialog
            aria-label="Where this number comes from"
            on:close=move |_| bench.opened.set(None)
        >
            {body}
            <button type="button" class="press" on:click=move |_| bench.opened.set(None)>
                "Close"
            </button>
        </dialog>
    }
    .into_any()
}
