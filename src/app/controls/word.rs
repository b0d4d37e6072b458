//! A word of a sentence that is a control: pressed, it opens a small panel below itself.

use leptos::ev;
use leptos::html::Span;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, Node};

/// A pressable word with a panel. Escape, a press outside, or the word itself closes the panel.
#[component]
pub(crate) fn Word(
    /// The word as it stands in the sentence.
    #[prop(into)]
    text: Signal<String>,
    /// What the word sets, for the panel's head and for screen readers.
    name: &'static str,
    /// What the panel holds.
    children: ChildrenFn,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let from_right = RwSignal::new(false);
    let root = NodeRef::<Span>::new();

    let outside = window_event_listener(ev::pointerdown, move |press| {
        if !open.try_get_untracked().unwrap_or(false) {
            return;
        }
        let inside = root
            .try_get_untracked()
            .flatten()
            .zip(press.target())
            .is_some_and(|(span, target)| {
                target
                    .dyn_ref::<Node>()
                    .is_some_and(|node| span.contains(Some(node)))
            });
        if !inside {
            open.set(false);
        }
    });
    on_cleanup(move || outside.remove());

    let focus_first = move || {
        let field = root
            .get_untracked()
            .and_then(|span| {
                span.query_selector(".panel input, .panel [aria-selected=true], .panel button")
                    .ok()
                    .flatten()
            })
            .and_then(|element| element.dyn_into::<HtmlElement>().ok());
        if let Some(field) = field {
            let _ = field.focus();
        }
    };
    Effect::new(move |was_open: Option<bool>| {
        let is_open = open.get();
        if is_open && was_open == Some(false) {
            request_animation_frame(focus_first);
        }
        is_open
    });
    let toggle = move |_| {
        if let Some(span) = root.get_untracked() {
            let left = span.get_bounding_client_rect().left();
            let width = web_sys::window()
                .and_then(|w| w.inner_width().ok())
                .and_then(|w| w.as_f64())
                .unwrap_or(1200.0);
            from_right.set(left > width * 0.62);
        }
        open.update(|is_open| *is_open = !*is_open);
    };
    let close_on_escape = move |key: ev::KeyboardEvent| {
        if key.key() == "Escape" && open.get_untracked() {
            key.stop_propagation();
            open.set(false);
            let button = root
                .get_untracked()
                .and_then(|span| span.query_selector("button").ok().flatten())
                .and_then(|element| element.dyn_into::<HtmlElement>().ok());
            if let Some(button) = button {
                let _ = button.focus();
            }
        }
    };
    let panel = move || {
        open.get().then(|| {
            view! {
                <span
                    class="panel"
                    class:from-right=from_right
                    role="dialog"
                    aria-label=name
                    style:display="block"
                >
                    {children()}
                </span>
            }
        })
    };
    view! {
        <span class="word" node_ref=root on:keydown=close_on_escape>
            <button
                type="button"
                title=name
                aria-haspopup="dialog"
                aria-expanded=move || open.get().to_string()
                on:click=toggle
            >
                {text}
            </button>
            {panel}
        </span>
    }
    .into_any()
}
