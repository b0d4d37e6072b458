//! A logbook from a file: first what it would bring, then what is wanted of it.

use crate::app::browser::files;
use crate::app::controls::live;
use crate::app::logbook::{Incoming, Log};
use crate::save::logbook::{Differing, Merge, read_logbook};
use leptos::ev;
use leptos::html::Input;
use leptos::prelude::*;
use std::sync::Arc;

/// Most faults that are told one by one.
const FAULTS: usize = 5;

/// Looks at the text of a file; changes nothing yet.
fn look(log: Log, text: Option<String>) {
    let Some(text) = text else {
        return log.say("That file cannot be read.", true, None);
    };
    match read_logbook(&text) {
        Err(reason) => log.say(format!("Nothing was imported. {reason}"), true, None),
        Ok(loaded) => {
            let merge = log
                .book
                .with_untracked(|book| Merge::of(book, &loaded.book));
            log.incoming.set(Some(Arc::new(Incoming {
                merge,
                photos: loaded.photos,
                rejected: loaded.rejected,
            })));
        }
    }
}

/// The button that opens a file; it may be dropped on it as well.
#[component]
pub(super) fn FilePicker(log: Log) -> impl IntoView {
    let picker = NodeRef::<Input>::new();
    let picked = move |_| {
        if let Some(input) = picker.get_untracked() {
            if let Some(file) = input.files().and_then(|list| list.get(0)) {
                files::read_text(&file, move |text| look(log, text));
            }
            // So that the same file can be picked again.
            input.set_value("");
        }
    };
    let dropped = move |drop: ev::DragEvent| {
        let files = drop.data_transfer().and_then(|data| data.files());
        if let Some(file) = files.and_then(|list| list.get(0)) {
            drop.prevent_default();
            files::read_text(&file, move |text| look(log, text));
        }
    };
    let dragged = |drag: ev::DragEvent| drag.prevent_default();
    let watched = [
        window_event_listener(ev::dragover, dragged),
        window_event_listener(ev::drop, dropped),
    ];
    on_cleanup(move || watched.into_iter().for_each(|listener| listener.remove()));
    view! {
        <button
            type="button"
            class="press"
            on:click=move |_| {
                if let Some(input) = picker.get_untracked() {
                    input.click();
                }
            }
        >
            "Import a file"
        </button>
        <span class="hint">"or drop it here"</span>
        <input
            node_ref=picker
            class="unseen"
            type="file"
            accept="application/json,.json"
            tabindex="-1"
            aria-label="Logbook to import"
            on:change=picked
        />
    }
    .into_any()
}

/// What a file would bring, and the choices.
#[component]
pub(super) fn Import(log: Log) -> impl IntoView {
    live(move || {
        let Some(incoming) = log.incoming.get() else {
            return ().into_any();
        };
        let Incoming {
            merge, rejected, ..
        } = incoming.as_ref();
        let (new, differing) = (merge.new.len(), merge.differing.len());
        let words = format!(
            "The file holds {new} new, {} that you have just so, {differing} that you have otherwise.",
            merge.same
        );
        let named: Vec<String> = merge
            .differing
            .iter()
            .take(FAULTS)
            .map(|run| format!("{}, {}", run.route.piece, run.day))
            .collect();
        let named = (differing > 0).then(|| format!("Otherwise: {}.", named.join("; ")));
        let left = rejected.len();
        let faults = rejected.iter().take(FAULTS).cloned().collect::<Vec<_>>();
        let faults = (left > 0).then(|| format!("{left} cannot be read. {}", faults.join("; ")));
        let choices = [
            (Differing::Leave, "Add the new", new > 0),
            (
                Differing::Replace,
                "Add, and replace those that differ",
                differing > 0,
            ),
            (Differing::KeepBoth, "Add, and keep both", differing > 0),
        ];
        let buttons = choices
            .into_iter()
            .filter(|(_, _, is_offered)| *is_offered)
            .map(|(differing, words, _)| {
                view! {
                    <button type="button" class="press" on:click=move |_| log.take_in(differing)>
                        {words}
                    </button>
                }
            });
        view! {
            <section class="message incoming" aria-label="Import" role="status">
                <p>{words}</p>
                <p>{named}</p>
                <p class="wrong">{faults}</p>
                <div class="actions">
                    {buttons.collect_view()}
                    <button
                        type="button"
                        class="press"
                        on:click=move |_| log.incoming.set(None)
                    >
                        "Leave it"
                    </button>
                </div>
            </section>
        }
        .into_any()
    })
}
