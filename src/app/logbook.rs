//! The logbook on the page: the runs, the one that is open, and what of it the browser keeps.
//! Runs are held whole; photos are read for the run that is open.

use super::browser::chance;
use super::browser::channel::Channel;
use super::browser::decimals;
use super::browser::records::{Change, Records, Store, part_in_use};
use super::browser::storage;
use super::logbook_photos::stored_photo;
use super::logbook_undo::without_photos;
use super::state::{Notice, Undo};
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::route::{Outcome, Route};
use recalesce::save::History;
use recalesce::save::logbook::{
    Day, Draft, Filter, Id, Logbook, LogbookError, Merge, Order, Photo, Run, RunFieldError, Step,
    Steps, check_run, read_logbook, write_run,
};
use recalesce_texts::page as texts;
use std::collections::{BTreeMap, VecDeque};
use std::rc::Rc;
use std::sync::Arc;

/// Name of the channel on which tabs tell each other of changes.
const CHANNEL: &str = "recalesce.logbook";
/// Part of the browser's store from which the page says that it will be full.
const NEARLY_FULL: f64 = 0.8;

/// How far the logbook of the last visits has been read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Reading {
    /// It has not been asked for.
    Unasked,
    /// It is being read.
    Out,
    /// It is there, as far as there is any.
    Done,
}

/// What an import would bring, and its photos.
#[derive(Clone)]
pub(crate) struct Incoming {
    /// The runs.
    pub(crate) merge: Merge,
    /// The photos that came along.
    pub(crate) photos: BTreeMap<Id, Photo>,
    /// What could not be read.
    pub(crate) rejected: Vec<String>,
}

/// Handles to everything of the logbook; copied into its panels.
#[derive(Clone, Copy)]
pub(crate) struct Log {
    /// The runs.
    pub(crate) book: RwSignal<Logbook>,
    /// How far they have been read.
    pub(crate) reading: RwSignal<Reading>,
    /// What is wrong with the browser's store, or soon will be.
    pub(crate) trouble: RwSignal<Option<&'static str>>,
    /// The run that is open.
    pub(crate) open: RwSignal<Option<Id>>,
    /// Its texts as they are typed.
    pub(crate) draft: RwSignal<Option<Draft>>,
    /// What is wrong with them.
    pub(crate) faults: RwSignal<Vec<RunFieldError>>,
    /// Photos of the open run; all of them where the browser keeps none.
    pub(crate) photos: RwSignal<BTreeMap<Id, Photo>>,
    /// What the list is asked for.
    pub(crate) filter: RwSignal<Filter>,
    /// Its order.
    pub(crate) order: RwSignal<Order>,
    /// The file that waits for a decision.
    pub(crate) incoming: RwSignal<Option<Arc<Incoming>>>,
    /// Whether a change of the open run can be undone, and done again.
    pub(crate) can: RwSignal<(bool, bool)>,
    /// Runs that stand side by side: one, or two.
    pub(crate) beside: RwSignal<Vec<Id>>,
    pub(super) history: StoredValue<Option<History<Run>>>,
    /// The open run as it was when it was opened: what differs since is one change of the book.
    pub(super) opened_as: StoredValue<Option<Run>>,
    /// What has been changed in the book.
    pub(super) steps: StoredValue<Steps>,
    /// Changes that wait to be made, one after the other, and whether one is being made.
    pub(super) to_make: StoredValue<(VecDeque<Step>, bool)>,
    /// Whether a change of the book can be undone, and done again.
    pub(crate) can_book: RwSignal<(bool, bool)>,
    notice: RwSignal<Option<Notice>>,
    records: StoredValue<Option<Rc<Records>>, LocalStorage>,
    channel: StoredValue<Option<Channel>, LocalStorage>,
    /// Runs logged before those of the last visits were there.
    waiting: StoredValue<Vec<Run>>,
}

impl Log {
    /// The logbook, not read yet.
    pub(crate) fn new(notice: RwSignal<Option<Notice>>) -> Self {
        Self {
            book: RwSignal::default(),
            reading: RwSignal::new(Reading::Unasked),
            trouble: RwSignal::new(None),
            open: RwSignal::new(None),
            draft: RwSignal::new(None),
            faults: RwSignal::default(),
            photos: RwSignal::default(),
            filter: RwSignal::default(),
            order: RwSignal::default(),
            incoming: RwSignal::new(None),
            can: RwSignal::default(),
            beside: RwSignal::default(),
            history: StoredValue::new(None),
            opened_as: StoredValue::new(None),
            steps: StoredValue::default(),
            to_make: StoredValue::default(),
            can_book: RwSignal::default(),
            notice,
            records: StoredValue::new_local(None),
            channel: StoredValue::new_local(None),
            waiting: StoredValue::default(),
        }
    }

    /// Says a line above the place.
    pub(crate) fn say(self, text: impl Into<String>, is_wrong: bool, undo: Option<Undo>) {
        self.notice.set(Some(Notice {
            text: text.into(),
            is_wrong,
            undo,
        }));
    }

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

    /// Shows another state of the book. Texts that are being typed stay unless their run is what
    /// has changed.
    fn take_over(self, book: Logbook) {
        let id = self.open.get_untracked();
        let run = |book: &Logbook| id.as_ref().and_then(|id| book.get(id)).cloned();
        let (before, now) = (self.book.with_untracked(run), run(&book));
        self.book.set(book);
        if before != now {
            // What another tab has changed is not undone here.
            self.opened_as.set_value(None);
            match now {
                Some(run) => self.open(&run),
                None => self.close(),
            }
        }
    }

    /// Logs a run of a route, and opens it; says why where it cannot be logged.
    pub(crate) fn log(self, route: Route, outcome: Option<&Outcome>) {
        let (Ok(id), Ok(day)) = (Id::try_from(chance::digits()), Day::parse(&chance::today()))
        else {
            return;
        };
        let run = Run::of(id, day, route, outcome);
        if let Err(reason) = check_run(&run) {
            return self.say(LogbookError::from(reason).to_string(), true, None);
        }
        self.open(&run);
        self.record(Step {
            before: Vec::new(),
            after: vec![run.clone()],
        });
        if self.reading.get_untracked() == Reading::Done {
            self.put_open(vec![run]);
        } else {
            self.waiting.update_value(|waiting| waiting.push(run));
            self.read();
        }
    }

    /// Puts runs of which one is open; where there is no room for it, it is closed.
    fn put_open(self, runs: Vec<Run>) {
        if !self.put(runs) {
            self.close();
        }
    }

    /// Opens a run.
    pub(crate) fn open(self, run: &Run) {
        self.note_edit();
        self.opened_as.set_value(Some(run.clone()));
        self.history
            .set_value(Some(History::new(without_photos(run.clone()))));
        self.can.set((false, false));
        self.show(run);
    }

    /// Shows the texts of a run.
    pub(super) fn show(self, run: &Run) {
        self.draft.set(Some(Draft::of(run)));
        self.faults.set(Vec::new());
        self.open.set(Some(run.id.clone()));
        let wanted = run.photos.clone();
        spawn_local(async move {
            let found = self.photos_of(&wanted).await;
            // What could not be stored is nowhere else.
            let is_kept = self.records().is_some() && !self.is_full();
            self.photos.update(|photos| {
                if is_kept {
                    photos.clear();
                }
                photos.extend(found);
            });
        });
    }

    /// Back to the list.
    pub(crate) fn close(self) {
        self.note_edit();
        self.opened_as.set_value(None);
        self.open.set(None);
        self.draft.set(None);
        self.faults.set(Vec::new());
    }

    /// The open run.
    pub(crate) fn opened(self) -> Option<Run> {
        let id = self.open.get()?;
        self.book.with(|book| book.get(&id).cloned())
    }

    /// Changes the texts of the open run, and in the run what is right of them.
    pub(crate) fn type_in(self, change: impl FnOnce(&mut Draft)) {
        let Some(mut run) = untrack(|| self.opened()) else {
            return;
        };
        let mut faults = Vec::new();
        self.draft.update(|draft| {
            if let Some(draft) = draft {
                change(draft);
                faults = draft.apply(&mut run, decimals::have_comma());
            }
        });
        self.faults.set(faults);
        self.put(vec![run]);
        self.can.set((true, false));
    }

    /// Puts runs into the book and the browser's store, in place of those of their identities; says
    /// what is refused, and whether nothing was.
    pub(crate) fn put(self, runs: Vec<Run>) -> bool {
        let mut kept = Vec::new();
        let mut refused = None;
        self.book.update(|book| {
            for run in runs {
                if book.get(&run.id) == Some(&run) {
                    continue;
                }
                match book.put(run.clone()) {
                    Ok(_) => kept.push(run),
                    Err(reason) => refused = Some(reason),
                }
            }
        });
        self.store(kept.iter().filter_map(stored).collect());
        let is_whole = refused.is_none();
        if let Some(reason) = refused {
            self.say(reason.to_string(), true, None);
        }
        is_whole
    }

    /// Takes runs and their photos out of the book and the store.
    pub(super) fn take_out(self, ids: &[Id]) -> Vec<Run> {
        let mut gone = Vec::new();
        self.book
            .update(|book| gone.extend(ids.iter().filter_map(|id| book.remove(id))));
        let out = |store, id: &Id| Change {
            store,
            key: id.to_string(),
            text: None,
        };
        let runs = gone.iter().map(|run| out(Store::Runs, &run.id));
        let changes = self.book.with_untracked(|book| {
            // A photo that another run still shows stays.
            let is_shown = |id: &Id| book.runs().any(|run| run.photos.contains(id));
            let photos = gone.iter().flat_map(|run| &run.photos);
            let unseen = photos.filter(|id| !is_shown(id));
            runs.chain(unseen.map(|id| out(Store::Photos, id)))
                .collect()
        });
        self.store(changes);
        gone
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

    fn is_full(self) -> bool {
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
fn stored(run: &Run) -> Option<Change> {
    Some(Change {
        store: Store::Runs,
        key: run.id.to_string(),
        text: Some(write_run(run).ok()?),
    })
}
