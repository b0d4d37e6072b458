//! The logbook on the page: the runs, and the one that is open.
//! Runs are held whole; photos are read for the run that is open.

use super::browser::chance;
use super::browser::channel::Channel;
use super::browser::decimals;
use super::browser::records::{Change, Records, Store};
use super::logbook_store::stored;
use super::logbook_undo::without_photos;
use super::state::{Notice, Undo};
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::route::{Outcome, Route};
use recalesce::save::History;
use recalesce::save::logbook::{
    Day, Draft, Filter, Id, Logbook, LogbookError, Merge, Order, Photo, Run, RunFieldError, Step,
    Steps, check_run,
};
use std::collections::{BTreeMap, VecDeque};
use std::rc::Rc;
use std::sync::Arc;

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
    pub(super) records: StoredValue<Option<Rc<Records>>, LocalStorage>,
    pub(super) channel: StoredValue<Option<Channel>, LocalStorage>,
    /// Runs logged before those of the last visits were there.
    pub(super) waiting: StoredValue<Vec<Run>>,
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

    /// Says a notice over the page.
    pub(crate) fn say(self, text: impl Into<String>, is_wrong: bool, undo: Option<Undo>) {
        self.notice.set(Some(Notice {
            text: text.into(),
            is_wrong,
            undo,
        }));
    }

    /// Shows another state of the book. Texts that are being typed stay unless their run is what
    /// has changed.
    pub(super) fn take_over(self, book: Logbook) {
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
    pub(super) fn put_open(self, runs: Vec<Run>) {
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
}
