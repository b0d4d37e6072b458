//! Routes in the page's address: given away and taken in.

use super::browser::{address, clipboard};
use super::state::{Bench, Notice, Place, Undo};
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::save::{self, ShownChart};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// The address that brings a route, or why there is none.
pub(crate) fn address_of(route: &Route) -> Result<String, String> {
    let link = save::write_link(route).map_err(|reason| reason.to_string())?;
    address::with_route(&link).ok_or_else(|| texts::general::NO_ADDRESS.to_owned())
}

/// The address that shows one chart of a route by itself, or why there is none.
pub(crate) fn address_of_chart(route: &Route, chart: ShownChart) -> Result<String, String> {
    let text = save::write_shown(route, chart).map_err(|reason| reason.to_string())?;
    address::with_route(&text).ok_or_else(|| texts::general::NO_ADDRESS.to_owned())
}

/// Puts the address that brings a route onto the clipboard, and says what came of it.
pub(crate) fn copy(bench: Bench, route: &Route) {
    copy_text(bench, address_of(route), texts::general::THE_LINK);
}

/// Puts a text onto the clipboard, and says what came of it.
pub(crate) fn copy_text(bench: Bench, text: Result<String, String>, what: &'static str) {
    match text {
        Err(reason) => say(bench, reason, true, None),
        Ok(text) => {
            let shown = text.clone();
            clipboard::copy(&text, move |is_copied| {
                let words = if is_copied {
                    texts::general::on_clipboard(what)
                } else {
                    texts::general::clipboard_shut(&shown)
                };
                say(bench, words, false, None);
            });
        }
    }
}

/// Takes in what the address brings, now and whenever it brings something: a route or an experiment.
pub(crate) fn follow(bench: Bench) {
    // After the first look of what writes the bench, so that the new route is written.
    Effect::new(move |_| untrack(|| look(bench)));
    let changed = window_event_listener_untyped("hashchange", move |_| look(bench));
    on_cleanup(move || changed.remove());
}

/// Takes in what the address brings, once the part that reads it is there.
fn look(bench: Bench) {
    if address::shown_chart().is_some() {
        // Not on the bench, but instead of it.
        address::reload();
    } else if address::brings_something() {
        bench
            .parts
            .places
            .then(bench, move |part| (part.take_link)(bench));
    }
}

/// Takes the address's route in, or hands its experiment to the part that reads it.
pub(super) fn take(bench: Bench) {
    let Some(link) = address::take_route() else {
        let teaching = bench.parts.teaching;
        return teaching.then(bench, move |part| (part.take_link)(bench));
    };
    match save::read_link(&link) {
        Err(reason) => say(bench, texts::general::link_not_opened(&reason), true, None),
        Ok(route) => open(bench, route),
    }
}

/// Puts a route on the bench. What was there stays: on the shelf, and for the undo.
fn open(bench: Bench, route: Route) {
    let before = bench.route.get_untracked();
    bench.is_guided.set(false);
    bench.place.set(Place::Bench);
    if before == route {
        return say(bench, texts::general::LINK_ON_BENCH.to_owned(), false, None);
    }
    let is_known = before == Route::whole_example()
        || before == Route::example()
        || bench
            .shelf
            .with_untracked(|shelf| shelf.items().iter().any(|item| item.route == before));
    let mut kept = None;
    if !is_known {
        let name = before.name();
        bench
            .shelf
            .update(|shelf| kept = shelf.add(&name, before.clone()).ok());
    }
    bench.route.set(route);
    let words = match kept {
        None => texts::general::LINK_ON_BENCH,
        Some(_) => texts::general::LINK_ON_BENCH_ONE_KEPT,
    };
    let undo: Undo = Arc::new(move || {
        bench.route.set(before.clone());
        if let Some(id) = kept {
            // One that is off the shelf already needs no removing.
            bench.shelf.update(|shelf| drop(shelf.delete(id)));
        }
    });
    say(bench, words.to_owned(), false, Some(undo));
}

fn say(bench: Bench, text: String, is_wrong: bool, undo: Option<Undo>) {
    bench.notice.set(Some(Notice {
        text,
        is_wrong,
        undo,
    }));
}
