//! What the browser keeps of the logbook: read from its database and written to it, run by run, and told to
//! the other tabs.

use super::browser::channel::Channel;
use super::browser::records::{Change, Records, Store, part_in_use};
use super::browser::storage;
use super::logbook::{Log, Reading};
use super::logbook_photos::stored_photo;
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::save::logbook::{Logbook, Run, read_logbook, write_run};
use recalesce_texts::page as texts;
use std::rc::Rc;

/// Name of the channel on which tabs tell each other of changes.
const CHANNEL: &str = "recalesce.logbook";
/// Part of the browser's store from which the page says that it will be full.
const NEARLY_FULL: f64 = 0.8;

impl Log {
    /// Reads what the browser keeps, the first time that the logbook is asked for.
    pub(crate) fn read(self) {
        if self.reading.get_untracked() != Reading::Unasked {
            return;
        }
        self.reading.set(Reading::Out);
        spawn_local(async move {
            match Records::open().await {
                Some(records) => {
                    self.records.set_value(Some(Rc::new(records)));
                    let channel = Channel::open(CHANNEL, move || spawn_local(self.read_again()));
                    self.channel.set_value(channel);
                    let typed = storage::read(storage::TYPED);
                    self.read_again().await;
                    self.look_at_room().await;
                    self.take_back(typed);
                }
                None => self.trouble.set(Some(texts::logbook::CLOSED)),
            }
            self.reading.set(Reading::Done);
            let waiting = self.waiting.try_update_value(std::mem::take);
            self.put_open(waiting.unwrap_or_default());
        });
    }

    pub(super) fn records(self) -> Option<Rc<Records>> {
        self.records.get_value()
    }

    /// Takes over what is stored: at first, and when another tab has changed it. Not while this
    /// one holds what could not be stored.
    async fn read_again(self) {
        let Some(records) = self.records() else {
            return;
        };
        if self.is_full() {
            return;
        }
        let Some(stored) = records.all(Store::Runs).await else {
            return self.trouble.set(Some(texts::logbook::CLOSED));
        };
        let mut book = Logbook::default();
        let mut unread = 0;
        for (_, text) in stored {
            let loaded = read_logbook(&text);
            let runs = loaded.iter().flat_map(|loaded| loaded.book.runs());
            let put = runs.cloned().map(|run| book.put(run).is_ok());
            if put.filter(|is_in| *is_in).count() == 0 {
                unread += 1;
            }
        }
        if unread > 0 {
            self.say(texts::logbook::unread(unread), true, None);
        }
        if self.book.with_untracked(|now| *now != book) {
            self.take_over(book);
        }
    }

    /// Takes back a run that the last visit could not write to the database any more.
    fn take_back(self, typed: Option<String>) {
        // What a tab at work keeps has changed or gone since.
        if typed.is_some()
            && storage::read(storage::TYPED) == typed
            && let Some(loaded) = typed.and_then(|text| read_logbook(&text).ok())
        {
            // Kept again where the database does not have it.
            if self.put(loaded.book.runs().cloned().collect()) {
                storage::remove(storage::TYPED);
            }
        }
    }

    /// Writes changes to the browser's store, tells the other tabs, and looks at the room that is
    /// left. After a write that failed, the next one brings all that was not written.
    pub(super) fn store(self, mut changes: Vec<Change>) {
        let Some(records) = self.records() else {
            return;
        };
        if changes.is_empty() {
            return;
        }
        keep_typed(&changes);
        spawn_local(async move {
            let was_full = self.is_full();
            if was_full {
                changes.retain(|change| change.text.is_none());
                // By itself and first: it makes the room that the rest may need.
                if !changes.is_empty() && !records.change(&changes).await {
                    return self.trouble.set(Some(texts::logbook::FULL));
                }
                changes.clear();
                self.book
                    .with_untracked(|book| changes.extend(book.runs().filter_map(stored)));
                self.photos
                    .with_untracked(|photos| changes.extend(photos.iter().map(stored_photo)));
            }
            if !records.change(&changes).await {
                return self.trouble.set(Some(texts::logbook::FULL));
            }
            let typed = storage::read(storage::TYPED);
            if typed.is_some() && changes.iter().any(|change| change.text == typed) {
                storage::remove(storage::TYPED);
            }
            self.channel
                .with_value(|channel| channel.iter().for_each(Channel::call));
            // Not for every letter of a note.
            if was_full || changes.len() > 1 || changes.iter().any(|c| c.store == Store::Photos) {
                self.look_at_room().await;
            }
        });
    }

    pub(super) fn is_full(self) -> bool {
        self.trouble.get_untracked() == Some(texts::logbook::FULL)
    }

    /// Says so before the browser's store is full.
    async fn look_at_room(self) {
        let is_soon_full = part_in_use().await.is_some_and(|part| part >= NEARLY_FULL);
        self.trouble
            .set(is_soon_full.then_some(texts::logbook::SOON_FULL));
    }
}

/// A run that is being typed is kept at once as well, until the database has it: a reload cuts short
/// what the database writes.
fn keep_typed(changes: &[Change]) {
    if !changes.iter().any(|change| change.store == Store::Runs) {
        return;
    }
    match changes {
        // Without room for it the database has to do; what was typed before is older than what it has.
        [
            Change {
                text: Some(text), ..
            },
        ] => {
            if storage::write(storage::TYPED, text).is_err() {
                storage::remove(storage::TYPED);
            }
        }
        // An older text must not undo what else is done to runs.
        _ => storage::remove(storage::TYPED),
    }
}

/// A run as it is stored.
pub(super) fn stored(run: &Run) -> Option<Change> {
    Some(Change {
        store: Store::Runs,
        key: run.id.to_string(),
        text: Some(write_run(run).ok()?),
    })
}
