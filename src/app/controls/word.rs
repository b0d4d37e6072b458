//! A word of a sentence that is a control: pressed, it opens a small panel below itself.

use crate::state::bench;
use leptos::ev;
use leptos::html::Span;
use leptos::prelude::*;
use recalesce_texts::page::general::DONE;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, Node};

/// Where a panel begins, CSS pixels from the side of its sentence: under its word.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Side {
    /// From the left.
    Left(f64),
    /// From the right, where the word stands too far right for a panel to open rightward.
    Right(f64),
}

/// How far a panel reaches beyond its word, so that its text begins where the word does.
const OVERHANG_PX: f64 = 8.0;
/// Part of the window's width from which panels open leftward, so that the outcome stays in view.
const LEFTWARD_FROM: f64 = 0.55;

/// Where the panel of a word opens.
fn side_of(word: &Element) -> Option<Side> {
    let sentence = word.closest("p").ok()??.get_bounding_client_rect();
    let place = word.get_bounding_client_rect();
    let width = web_sys::window()?.inner_width().ok()?.as_f64()?;
    Some(if place.left() > LEFTWARD_FROM * width {
        Side::Right(sentence.right() - place.right() - OVERHANG_PX)
    } else {
        Side::Left(place.left() - sentence.left() - OVERHANG_PX)
    })
}

/// A pressable word with a panel below its sentence, where it covers no other word of it. Escape,
/// a press outside, the word itself, or the focus that goes elsewhere closes the panel; on a phone, where
/// it covers most of the page, a button as well.
#[component]
pub(crate) fn Word(
    /// The word as it stands in the sentence.
    #[prop(into)]
    text: Signal<String>,
    /// What the word sets, for the panel's head and for screen readers.
    name: &'static str,
    /// Whether the word is the user's own, in which a point stays a point.
    #[prop(optional, into)]
    is_own: Signal<bool>,
    /// The comma or full stop behind it, which stays on its line.
    #[prop(optional, into)]
    mark: Signal<&'static str>,
    /// What the panel holds.
    children: ChildrenFn,
) -> impl IntoView {
    let parts = bench().parts;
    let open = RwSignal::new(false);
    let side = RwSignal::new(Side::Left(0.0));
    let root = NodeRef::<Span>::new();

    let holds = move |target: Option<web_sys::EventTarget>| {
        root.try_get_untracked()
            .flatten()
            .zip(target)
            .is_some_and(|(span, target)| {
                target
                    .dyn_ref::<Node>()
                    .is_some_and(|node| span.contains(Some(node)))
            })
    };
    let outside = window_event_listener(ev::pointerdown, move |press| {
        if open.try_get_untracked().unwrap_or(false) && !holds(press.target()) {
            open.set(false);
        }
    });
    // The focus goes nowhere when a part of the panel without a field is pressed, or another window.
    let left = move |focus: ev::FocusEvent| {
        let next = focus.related_target();
        if next.is_some() && !holds(next) {
            open.set(false);
        }
    };
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
    // When it opens, and when what it holds arrives only then.
    Effect::new(move |before: Option<bool>| {
        let is_shown = open.get() && parts.panels.is_there();
        if is_shown && before == Some(false) {
            request_animation_frame(focus_first);
        }
        is_shown
    });
    let toggle = move |_| {
        if let Some(place) = root.get_untracked().and_then(|span| side_of(&span)) {
            side.set(place);
        }
        open.update(|is_open| *is_open = !*is_open);
    };
    let close = move || {
        open.set(false);
        let button = root
            .get_untracked()
            .and_then(|span| span.query_selector("button").ok().flatten())
            .and_then(|element| element.dyn_into::<HtmlElement>().ok());
        if let Some(button) = button {
            let _ = button.focus();
        }
    };
    let close_on_escape = move |key: ev::KeyboardEvent| {
        if key.key() == "Escape" && open.get_untracked() {
            key.stop_propagation();
            close();
        }
    };
    let panel = move || {
        open.get().then(|| {
            view! {
                <span
                    class="panel"
                    class:from-right=move || matches!(side.get(), Side::Right(_))
                    role="dialog"
                    aria-label=name
                    style:display="block"
                    style:--side=move || match side.get() {
                        Side::Left(px) | Side::Right(px) => format!("{px:.0}px"),
                    }
                >
                    {children()}
                    <button type="button" class="press done" on:click=move |_| close()>
                        {DONE}
                    </button>
                </span>
            }
        })
    };
    view! {
        <span class="word" node_ref=root on:keydown=close_on_escape on:focusout=left>
            <button
                type="button"
                title=name
                aria-haspopup="dialog"
                translate=move || is_own.get().then_some("no")
                aria-expanded=move || open.get().to_string()
                on:click=toggle
            >
                {text}
            </button>
            {mark}
            {panel}
        </span>
    }
    .into_any()
}
