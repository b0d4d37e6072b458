//! A logbook from a file: first what it would bring, then what is wanted of it.

use crate::browser::files;
use crate::controls::{FileButton, live};
use crate::logbook::{Incoming, Log};
use leptos::ev;
use leptos::prelude::*;
use recalesce::save::logbook::{Differing, Merge, read_logbook};
use recalesce_texts::page as texts;
use std::sync::Arc;
use web_sys::File;

/// Most faults that are told one by one.
const FAULTS: usize = 5;

/// Looks at the text of a file; changes nothing yet.
fn look(log: Log, text: Option<String>) {
    let Some(text) = text else {
        return log.say(texts::general::FILE_UNREADABLE, true, None);
    };
    match read_logbook(&text) {
        Err(reason) => log.say(texts::logbook::nothing_imported(reason), true, None),
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
    let read = move |file: File| files::read_text(&file, move |text| look(log, text));
    let dropped = move |drop: ev::DragEvent| {
        let files = drop.data_transfer().and_then(|data| data.files());
        if let Some(file) = files.and_then(|list| list.get(0)) {
            drop.prevent_default();
            read(file);
        }
    };
    let dragged = |drag: ev::DragEvent| drag.prevent_default();
    let watched = [
        window_event_listener(ev::dragover, dragged),
        window_event_listener(ev::drop, dropped),
    ];
    on_cleanup(move || watched.into_iter().for_each(|listener| listener.remove()));
    view! {
        <FileButton
            words=texts::shelf::IMPORT_FILE
            name=texts::logbook::LOGBOOK_TO_IMPORT
            accept="application/json,.json"
            pick=read
        />
        <span class="hint">{texts::own::OR_DROP}</span>
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
        let words = texts::logbook::file_holds(new, merge.same, differing);
        let named: Vec<String> = merge
            .differing
            .iter()
            .take(FAULTS)
            .map(|run| format!("“{}”, {}", run.route.piece, run.day))
            .collect();
        let named = (differing > 0).then(|| texts::logbook::otherwise(&named.join("; ")));
        let left = rejected.len();
        let faults = rejected.iter().take(FAULTS).cloned().collect::<Vec<_>>();
        let faults = (left > 0).then(|| texts::logbook::cannot_be_read(left, &faults.join("; ")));
        let choices = [
            (Differing::Leave, texts::logbook::ADD_NEW, new > 0),
            (
                Differing::Replace,
                texts::logbook::ADD_AND_REPLACE,
                differing > 0,
            ),
            (
                Differing::KeepBoth,
                texts::logbook::ADD_AND_KEEP_BOTH,
                differing > 0,
            ),
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
            <section class="message incoming" aria-label=texts::logbook::IMPORT role="status">
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
                        {texts::logbook::LEAVE_IT}
                    </button>
                </div>
            </section>
        }
        .into_any()
    })
}
