//! Undo and redo of the route on the bench and of the shelf. A drag is one step: a state counts once
//! things are quiet.

use super::state::Place;
use leptos::ev;
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::save::{History, Shelf};
use std::sync::Arc;
use std::time::Duration;
use wasm_bindgen::JsCast;

/// Quiet time after a change before it counts as a step.
const QUIET: Duration = Duration::from_millis(350);

/// What is undone together.
#[derive(Debug, Clone, PartialEq)]
struct Now {
    route: Route,
    /// Shared by all states between which it has not changed.
    shelf: Arc<Shelf>,
}

/// Handles to what can be undone.
#[derive(Clone, Copy)]
pub(crate) struct UndoHandle {
    route: RwSignal<Route>,
    shelf: RwSignal<Shelf>,
    history: StoredValue<History<Now>>,
    waiting: StoredValue<Option<TimeoutHandle>, LocalStorage>,
    /// Whether there is something to undo, and something to do again.
    pub(crate) can: RwSignal<(bool, bool)>,
}

impl UndoHandle {
    /// Begins with what the page opens with.
    pub(crate) fn new(route: RwSignal<Route>, shelf: RwSignal<Shelf>) -> Self {
        let now = Now {
            route: route.get_untracked(),
            shelf: Arc::new(shelf.get_untracked()),
        };
        Self {
            route,
            shelf,
            history: StoredValue::new(History::new(now)),
            waiting: StoredValue::new_local(None),
            can: RwSignal::new((false, false)),
        }
    }

    /// Takes the present state down at once.
    fn record(self) {
        self.waiting.update_value(|handle| {
            if let Some(handle) = handle.take() {
                handle.clear();
            }
        });
        let (Some(route), Some(shelf)) = (
            self.route.try_get_untracked(),
            self.shelf.try_get_untracked(),
        ) else {
            return;
        };
        self.history.update_value(|history| {
            let before = &history.now().shelf;
            let shelf = if **before == shelf {
                before.clone()
            } else {
                Arc::new(shelf)
            };
            history.record(Now { route, shelf });
        });
        self.tell();
    }

    /// Takes over the shelf that another tab has changed: its changes are not undone here.
    pub(crate) fn shelf_from_elsewhere(self, shelf: Shelf) {
        self.record();
        let shared = Arc::new(shelf.clone());
        self.history
            .update_value(|history| history.rewrite(|now| now.shelf = shared.clone()));
        self.shelf.set(shelf);
    }

    fn tell(self) {
        let can = self.history.with_value(History::can);
        if self.can.get_untracked() != can {
            self.can.set(can);
        }
    }

    /// Goes back by one step.
    pub(crate) fn undo(self) {
        self.record();
        self.go(History::undo);
    }

    /// Goes forward again by one step.
    pub(crate) fn redo(self) {
        self.record();
        self.go(History::redo);
    }

    fn go(self, step: impl FnOnce(&mut History<Now>) -> Option<&Now>) {
        let mut reached = None;
        self.history
            .update_value(|history| reached = step(history).cloned());
        if let Some(Now { route, shelf }) = reached {
            if self.route.with_untracked(|now| *now != route) {
                self.route.set(route);
            }
            if self.shelf.with_untracked(|now| *now != *shelf) {
                self.shelf.set(shelf.as_ref().clone());
            }
        }
        self.tell();
    }
}

/// Takes every change down, and listens to the keys where what they undo can be seen.
pub(super) fn follow(handle: UndoHandle, place: RwSignal<Place>) {
    Effect::new(move |before: Option<()>| {
        handle.route.track();
        handle.shelf.track();
        if before.is_none() {
            return;
        }
        handle.waiting.update_value(|waiting| {
            if let Some(waiting) = waiting.take() {
                waiting.clear();
            }
            *waiting = set_timeout_with_handle(move || handle.record(), QUIET).ok();
        });
    });
    let keys = window_event_listener(ev::keydown, move |key| {
        if !matches!(place.get_untracked(), Place::Bench | Place::Shelf) {
            return;
        }
        match undo_key(&key) {
            Some(true) => handle.undo(),
            Some(false) => handle.redo(),
            None => return,
        }
        key.prevent_default();
    });
    on_cleanup(move || keys.remove());
}

/// Whether a key asks to undo, or to do again; neither in a field, which undoes its own text.
pub(crate) fn undo_key(key: &web_sys::KeyboardEvent) -> Option<bool> {
    let in_field = key
        .target()
        .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
        .is_some_and(|element| matches!(element.tag_name().as_str(), "INPUT" | "TEXTAREA"));
    if in_field || !(key.ctrl_key() || key.meta_key()) || key.alt_key() {
        return None;
    }
    match (key.key().to_ascii_lowercase().as_str(), key.shift_key()) {
        ("z", false) => Some(true),
        ("z", true) | ("y", false) => Some(false),
        _ => None,
    }
}
