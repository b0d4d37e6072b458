//! The logbook: its list, or the run that is open; runs in and out.

use super::logbook_import::{FilePicker, Import};
use super::logbook_list::{List, with_list};
use super::logbook_run::{OpenRun, turn};
use crate::browser::files;
use crate::controls::live;
use crate::logbook::{Log, Reading};
use crate::state::{Bench, Place, bench};
use crate::undo::undo_key;
use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::route::Route;
use recalesce::save::WriteError;
use recalesce::save::logbook::{Id, write_csv, write_logbook};
use recalesce::units::format_fixed;
use recalesce_texts::page as texts;

/// Logs a run of the route on the bench, and opens it.
pub(crate) fn log(bench: Bench) {
    let outcome = bench.outcome_now();
    let is_of_route = bench.computed.with_untracked(|c| c.error.is_none());
    let outcome = outcome.filter(|_| is_of_route);
    let route = Route {
        taught: bench.real.with_untracked(|real| real.taught),
        ..bench.route.get_untracked()
    };
    bench.log.log(route, outcome.as_deref());
    bench.place.set(Place::Logbook);
}

/// A difference of hardness with its sign.
pub(super) fn signed(difference_hrc: f64) -> String {
    let sign = if difference_hrc > 0.0 { "+" } else { "" };
    format!("{sign}{}", format_fixed(difference_hrc, 1))
}

fn offer(log: Log, name: &str, mime: &str, text: Result<String, WriteError>) {
    let wrong = match text {
        Ok(text) => files::offer(name, mime, &text)
            .is_none()
            .then(|| texts::general::NO_FILE_OFFERED.to_owned()),
        Err(reason) => Some(reason.to_string()),
    };
    if let Some(wrong) = wrong {
        log.say(wrong, true, None);
    }
}

/// The listed runs as a table for a spreadsheet.
fn export_csv(log: Log) {
    let text = with_list(log, write_csv);
    if files::offer_table("recalesce-logbook.csv", &text).is_none() {
        log.say(texts::general::NO_FILE_OFFERED.to_owned(), true, None);
    }
}

/// The whole logbook with its photos.
fn export_json(log: Log) {
    spawn_local(async move {
        let ids: Vec<Id> = log
            .book
            .with_untracked(|book| book.runs().flat_map(|run| run.photos.clone()).collect());
        let photos = log.photos_of(&ids).await;
        let text = log
            .book
            .with_untracked(|book| write_logbook(book.runs(), &photos));
        offer(log, "recalesce-logbook.json", "application/json", text);
    });
}

/// The logbook.
#[component]
pub(crate) fn LogbookPlace() -> impl IntoView {
    let log = bench().log;
    log.read();
    let keys = window_event_listener(ev::keydown, move |key| {
        match undo_key(&key) {
            Some(true) => log.back(),
            Some(false) => log.forward(),
            None => return,
        }
        key.prevent_default();
    });
    on_cleanup(move || keys.remove());
    let is_open = Memo::new(move |_| log.open.with(Option::is_some));
    let inside = live(move || {
        if is_open.get() {
            view! { <OpenRun log=log /> }.into_any()
        } else {
            view! { <Runs log=log /> }.into_any()
        }
    });
    let trouble = live(move || {
        let line = log.trouble.get().map(|line| {
            view! {
                <p class="message wrong-input" role="status">
                    <span>{line}</span>
                    <button type="button" class="press" on:click=move |_| export_json(log)>
                        {texts::logbook::EXPORT_NOW}
                    </button>
                </p>
            }
        });
        line.into_any()
    });
    view! {
        <main class="leaf logbook">
            {trouble}
            {inside}
        </main>
    }
    .into_any()
}

#[component]
fn Runs(log: Log) -> impl IntoView {
    let bench = bench();
    let is_empty = Memo::new(move |_| log.book.with(|book| book.is_empty()));
    let content = live(move || {
        if !is_empty.get() {
            return view! { <List log=log /> }.into_any();
        }
        let words = if log.reading.get() == Reading::Done {
            texts::logbook::NOTHING_LOGGED
        } else {
            texts::logbook::OPENING
        };
        view! { <p>{words}</p> }.into_any()
    });
    view! {
        <h2>{texts::logbook::LOGBOOK}</h2>
        <p>
            {texts::logbook::ABOUT}
        </p>
        <div class="actions">
            <button type="button" class="press go" on:click=move |_| self::log(bench)>
                {texts::logbook::LOG_BENCH_ROUTE}
            </button>
            <button
                type="button"
                class="press"
                disabled=is_empty
                on:click=move |_| export_json(log)
            >
                {texts::general::EXPORT_TO_FILE}
            </button>
            <button
                type="button"
                class="press"
                disabled=is_empty
                on:click=move |_| untrack(|| export_csv(log))
            >
                {texts::logbook::EXPORT_LIST}
            </button>
            <FilePicker log=log />
            {turn(texts::logbook::UNDO_OF_LOGBOOK, move || log.can_book.get().0, move || log.back())}
            {turn(texts::logbook::REDO_OF_LOGBOOK, move || log.can_book.get().1, move || log.forward())}
        </div>
        <Import log=log />
        {content}
    }
    .into_any()
}
