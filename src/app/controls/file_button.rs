//! A button that lets the user pick a file.

use leptos::html::Input;
use leptos::prelude::*;
use web_sys::File;

/// The button, and the field behind it that asks the browser.
#[component]
pub(crate) fn FileButton(
    /// The words on the button.
    words: &'static str,
    /// What the file is, for screen readers.
    name: &'static str,
    /// Kinds of file, as the browser has them.
    accept: &'static str,
    /// Called with the file picked.
    #[prop(into)]
    pick: Callback<File>,
) -> impl IntoView {
    let field = NodeRef::<Input>::new();
    let picked = move |_| {
        if let Some(input) = field.get_untracked() {
            if let Some(file) = input.files().and_then(|list| list.get(0)) {
                pick.run(file);
            }
            // So that the same file can be picked again.
            input.set_value("");
        }
    };
    let press = move |_| {
        if let Some(input) = field.get_untracked() {
            input.click();
        }
    };
    view! {
        <button type="button" class="press" on:click=press>
            {words}
        </button>
        <input
            node_ref=field
            class="unseen"
            type="file"
            accept=accept
            tabindex="-1"
            aria-label=name
            on:change=picked
        />
    }
    .into_any()
}
