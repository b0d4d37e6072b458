//! What the browser keeps between visits: the open bench, the shelf, what the user prefers to see.
//! Text that cannot be read is set aside and told, never overwritten unseen.

use super::browser::{root, storage, theme::Theme};
use super::state::{Bench, Notice};
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::save::{self, Preferences, Shelf};
use recalesce_texts::page as texts;
use std::time::Duration;

/// Quiet time after a change before it is written, so that a drag writes once.
const QUIET: Duration = Duration::from_millis(300);

fn wrong(text: String) -> Notice {
    Notice {
        text,
        is_wrong: true,
        undo: None,
    }
}

/// Adds a line to what the user is told.
fn tell(notice: &mut Option<Notice>, line: String) {
    let before = notice.take().map(|n| n.text + " ").unwrap_or_default();
    *notice = Some(wrong(before + &line));
}

/// Sets a text aside that cannot be read, and says so.
fn set_aside(key: &'static str, text: &str, what: &str, reason: &str, notice: &mut Option<Notice>) {
    let is_aside = storage::set_aside_or_hold(key, text);
    tell(notice, texts::general::unread(what, reason, is_aside));
}

/// Says at once where nothing that is done here will be there at the next visit.
pub(super) fn warn_of_closed_storage(notice: &mut Option<Notice>) {
    if !storage::is_open() {
        tell(notice, texts::general::STORE_CLOSED.to_owned());
    }
}

/// The route that was on the bench, or the project's own example.
pub(super) fn bench(notice: &mut Option<Notice>) -> Route {
    // Another window may have another route on its bench.
    let Some(text) = storage::read_of_window(storage::BENCH) else {
        return Route::whole_example();
    };
    if root::starts_fresh() {
        if !storage::set_aside_or_hold(storage::BENCH, &text) {
            tell(notice, texts::general::LAST_BENCH_NOT_ASIDE.to_owned());
        }
        return Route::whole_example();
    }
    match save::read_bench(&text) {
        Ok(item) => item.route,
        Err(reason) => {
            set_aside(
                storage::BENCH,
                &text,
                texts::general::LAST_BENCH,
                &reason.to_string(),
                notice,
            );
            Route::whole_example()
        }
    }
}

/// The shelf of the last visit.
pub(super) fn shelf(notice: &mut Option<Notice>) -> Shelf {
    let Some(text) = storage::read(storage::SHELF) else {
        return Shelf::default();
    };
    match save::read(&text) {
        Ok(loaded) => {
            if !loaded.rejected.is_empty() {
                let is_aside = storage::set_aside_or_hold(storage::SHELF, &text);
                let count = loaded.rejected.len();
                let routes = if count == 1 { "route" } else { "routes" };
                tell(
                    notice,
                    texts::general::shelf_routes_unread(count, routes, is_aside),
                );
            }
            loaded.shelf
        }
        Err(reason) => {
            set_aside(
                storage::SHELF,
                &text,
                texts::general::YOUR_SHELF,
                &reason.to_string(),
                notice,
            );
            Shelf::default()
        }
    }
}

/// What the user prefers to see; the defaults where nothing is kept.
pub(super) fn preferences() -> Preferences {
    storage::read(storage::PREFERENCES)
        .and_then(|text| save::read_preferences(&text).ok())
        .unwrap_or_default()
}

/// What was last seen of the shelf in the browser's store, so that what another window writes there is
/// joined with what is done here, not written over.
#[derive(Default)]
pub(crate) struct SeenShelf {
    /// Its text as it was read or written last.
    pub(crate) now: Option<String>,
    /// Its text before it was written here.
    before: Option<String>,
    /// Whether another window has written what cannot be read here: it stays as it is.
    pub(crate) is_unreadable: bool,
}

impl SeenShelf {
    /// What both windows know of a text that another has written: what was seen here last, but where both
    /// have written over the same, each before it saw the other's.
    pub(crate) fn common(&self) -> Option<String> {
        let over = storage::read(storage::SHELF_OVER);
        let is_over = |text: &Option<String>| over.as_ref() == Some(&mark(text));
        let is_at_once = is_over(&self.before) && !is_over(&self.now);
        let known = if is_at_once { &self.before } else { &self.now };
        known.clone()
    }

    /// Writes a text over the one that was seen last.
    fn put(&mut self, text: String) -> Result<(), &'static str> {
        storage::write(storage::SHELF_OVER, &mark(&self.now))?;
        storage::write(storage::SHELF, &text)?;
        self.before = self.now.replace(text);
        Ok(())
    }
}

/// By what a text is known again: its FNV-1a checksum, shorter by far than any hasher of a library.
fn mark(text: &Option<String>) -> String {
    let bytes = text.iter().flat_map(|text| text.bytes());
    let sum = bytes.fold(0x811c_9dc5_u32, |sum, byte| {
        (sum ^ u32::from(byte)).wrapping_mul(0x0100_0193)
    });
    sum.to_string()
}

/// Says what could not be written, once.
fn report(state: Bench, result: Result<(), String>) {
    if let Err(text) = result {
        let told = state
            .notice
            .with_untracked(|n| n.as_ref().is_some_and(|n| n.text == text));
        if !told {
            state.notice.set(Some(wrong(text)));
        }
    }
}

/// Writes the shelf over what the browser has.
pub(crate) fn put_shelf(state: Bench) {
    let Some(written) = state.shelf.try_with_untracked(save::write_shelf) else {
        return;
    };
    let put = written.map_err(|e| e.to_string()).and_then(|text| {
        let mut put = Ok(());
        state.seen_shelf.update_value(|seen| put = seen.put(text));
        put.map_err(str::to_owned)
    });
    report(state, put);
}

/// Whether another window has written a shelf that is not known here. What joins the two does so, now
/// or once it has come.
fn is_to_join(state: Bench) -> bool {
    let stored = storage::read(storage::SHELF);
    let (is_unreadable, is_new) = state
        .seen_shelf
        .with_value(|seen| (seen.is_unreadable, seen.now != stored));
    if is_unreadable {
        return true;
    }
    if is_new && let Some(part) = state.parts.panels.now() {
        (part.join_shelf)(state);
    }
    is_new
}

/// Writes each of the three when it changes. What cannot be written is said once.
pub(super) fn keep(state: Bench) {
    state
        .seen_shelf
        .update_value(|seen| seen.now = storage::read(storage::SHELF));
    Effect::new(move || {
        if state.parts.panels.is_there() {
            is_to_join(state);
        }
    });
    let write_route = move || {
        // The route of an experiment is not the user's own, which waits for its end.
        if state.is_guided.try_get_untracked() == Some(true) {
            return;
        }
        let Some(route) = state.route.try_get_untracked() else {
            return;
        };
        // A route that makes no sense is still on the bench; only a sensible one is kept.
        if let Ok(text) = save::write_bench(&route.piece, &route) {
            // What is held would be forgotten at a reload, if this window had another.
            if !storage::is_held(storage::BENCH) {
                storage::write_of_window(storage::BENCH, &text);
            }
            report(
                state,
                storage::write(storage::BENCH, &text).map_err(str::to_owned),
            );
        }
    };
    let write_shelf = move || {
        if !is_to_join(state) {
            put_shelf(state);
        }
    };
    let write_preferences = move || {
        let preferences = Preferences {
            temperature_scale: state.scale.get_untracked(),
            length_unit: state.length.get_untracked(),
            // Also where it could not be loaded; none where the browser's language decides.
            decimal_comma: root::said("wanted").map(|wanted| wanted == "true"),
            theme: match (
                state.is_theme_chosen.get_untracked(),
                state.theme.get_untracked(),
            ) {
                (false, _) => save::Theme::System,
                (true, Theme::Day) => save::Theme::Light,
                (true, Theme::Shop) => save::Theme::Dark,
            },
        };
        if let Ok(text) = save::write_preferences(preferences) {
            report(
                state,
                storage::write(storage::PREFERENCES, &text).map_err(str::to_owned),
            );
        }
    };
    let pending = [
        after_quiet(move || state.route.track(), write_route),
        after_quiet(move || state.shelf.track(), write_shelf),
        after_quiet(
            move || {
                state.scale.track();
                state.length.track();
                state.has_decimal_comma.track();
                state.theme.track();
            },
            write_preferences,
        ),
    ];
    // What is still waiting when the page is left is written at once.
    let leaving = window_event_listener_untyped("pagehide", move |_| {
        for (waiting, write) in
            pending
                .iter()
                .zip([&write_route as &dyn Fn(), &write_shelf, &write_preferences])
        {
            let was_waiting = waiting
                .try_update_value(|handle| handle.take().map(|handle| handle.clear()).is_some());
            if was_waiting == Some(true) {
                write();
            }
        }
    });
    let elsewhere = window_event_listener_untyped("storage", move |_| {
        is_to_join(state);
    });
    on_cleanup(move || {
        leaving.remove();
        elsewhere.remove();
    });
}

/// A write that waits for quiet.
type Waiting = StoredValue<Option<TimeoutHandle>, LocalStorage>;

/// Runs `write` once things are quiet after a change of what `track` reads; not for the first look.
fn after_quiet(track: impl Fn() + 'static, write: impl Fn() + Copy + 'static) -> Waiting {
    let waiting: Waiting = StoredValue::new_local(None);
    Effect::new(move |before: Option<()>| {
        track();
        if before.is_some() {
            waiting.update_value(|handle| {
                if let Some(handle) = handle.take() {
                    handle.clear();
                }
                *handle = set_timeout_with_handle(
                    move || {
                        waiting.try_update_value(|handle| *handle = None);
                        write();
                    },
                    QUIET,
                )
                .ok();
            });
        }
    });
    waiting
}
