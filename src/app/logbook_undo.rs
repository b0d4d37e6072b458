//! What is undone in the logbook: changes of the open run, field by field, and changes of the book, run
//! by run.

use super::logbook::Log;
use super::state::Undo;
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::save::History;
use recalesce::save::logbook::{Differing, Id, Run, Step, Steps};
use recalesce_texts::page as texts;
use std::collections::BTreeMap;
use std::sync::Arc;

impl Log {
    /// Takes the open run down as it is: what is changed from here on is one step.
    pub(crate) fn note_down(self) {
        let Some(run) = untrack(|| self.opened()) else {
            return;
        };
        self.history.update_value(|history| {
            if let Some(history) = history {
                history.record(without_photos(run));
            }
        });
    }

    /// Goes back by one change of the open run.
    pub(crate) fn undo(self) {
        self.turn(History::undo);
    }

    /// Goes forward again by one.
    pub(crate) fn redo(self) {
        self.turn(History::redo);
    }

    fn turn(self, go: fn(&mut History<Run>) -> Option<&Run>) {
        self.note_down();
        let mut reached = None;
        let mut can = (false, false);
        self.history.update_value(|history| {
            if let Some(history) = history {
                reached = go(history).cloned();
                can = history.can();
            }
        });
        self.can.set(can);
        if let (Some(run), Some(now)) = (reached, untrack(|| self.opened())) {
            let run = Run {
                photos: now.photos,
                ..run
            };
            self.put(vec![run.clone()]);
            self.show(&run);
        }
    }

    /// Takes a change of the book down.
    pub(super) fn record(self, step: Step) -> u64 {
        let number = self.steps.try_update_value(|steps| steps.record(step));
        self.tell_book();
        number.unwrap_or_default()
    }

    /// The same, with what undoes it.
    pub(super) fn step(self, step: Step) -> Undo {
        let number = self.record(step);
        Arc::new(move || {
            self.note_edit();
            let back = self
                .steps
                .try_update_value(|steps| steps.undo_number(number));
            self.enter(back.flatten());
        })
    }

    fn tell_book(self) {
        let can = self.steps.with_value(Steps::can);
        if self.can_book.get_untracked() != can {
            self.can_book.set(can);
        }
    }

    /// What has been changed of the open run since it was opened is one change of the book.
    pub(super) fn note_edit(self) {
        let Some(before) = self.opened_as.get_value() else {
            return;
        };
        let now = self
            .book
            .with_untracked(|book| book.get(&before.id).cloned());
        if let Some(after) = now
            && after != before
        {
            self.opened_as.set_value(Some(after.clone()));
            self.record(Step {
                before: vec![before],
                after: vec![after],
            });
        }
    }

    /// Undoes the last change that can be seen: of the open run, or of the book.
    pub(crate) fn back(self) {
        if self.open.with_untracked(Option::is_some) && self.can.get_untracked().0 {
            return self.undo();
        }
        self.note_edit();
        let step = self.steps.try_update_value(Steps::undo);
        self.enter(step.flatten());
    }

    /// Does again what was undone last.
    pub(crate) fn forward(self) {
        if self.open.with_untracked(Option::is_some) && self.can.get_untracked().1 {
            return self.redo();
        }
        self.note_edit();
        let step = self.steps.try_update_value(Steps::redo);
        self.enter(step.flatten());
    }

    /// Makes a change once those before it are made: their photos are read first.
    fn enter(self, step: Option<Step>) {
        self.tell_book();
        let Some(step) = step else {
            return;
        };
        let is_busy = self.to_make.try_update_value(|(waiting, is_busy)| {
            waiting.push_back(step);
            std::mem::replace(is_busy, true)
        });
        if is_busy != Some(false) {
            return;
        }
        spawn_local(async move {
            while let Some(step) = self
                .to_make
                .try_update_value(|(waiting, _)| waiting.pop_front())
                .flatten()
            {
                self.make(step).await;
            }
            self.to_make.update_value(|(_, is_busy)| *is_busy = false);
        });
    }

    /// Makes a change; photos that go with it are kept for the way back. A run that has become another
    /// meanwhile stays as it is.
    async fn make(self, step: Step) {
        let photos: Vec<Id> = self.book.with_untracked(|book| {
            let runs = step.before.iter().filter_map(|run| book.get(&run.id));
            runs.flat_map(|run| run.photos.clone()).collect()
        });
        let photos = self.photos_of(&photos).await;
        if !self.book.with_untracked(|book| step.fits(book)) {
            let words = texts::logbook::CHANGED_SINCE;
            return self.say(words, true, None);
        }
        let gone = step.gone();
        let shown = self.open.get_untracked();
        self.steps.update_value(|steps| steps.keep_photos(photos));
        if shown.as_ref().is_some_and(|id| gone.contains(id)) {
            self.opened_as.set_value(None);
            self.close();
        }
        self.take_out(&gone);
        let back = self.steps.with_value(|steps| steps.photos_of(&step.after));
        self.keep_photos(back);
        self.put(step.after.clone());
        if let Some(run) = step
            .after
            .iter()
            .find(|run| Some(&run.id) == shown.as_ref())
        {
            self.opened_as.set_value(None);
            self.open(run);
        }
    }

    /// Takes runs out; their photos are read first, so that undoing brings all back.
    pub(crate) fn remove(self, ids: Vec<Id>, words: String) {
        if self
            .open
            .with_untracked(|open| open.as_ref().is_some_and(|id| ids.contains(id)))
        {
            self.close();
        }
        spawn_local(async move {
            let photos: Vec<Id> = self.book.with_untracked(|book| {
                let runs = ids.iter().filter_map(|id| book.get(id));
                runs.flat_map(|run| run.photos.clone()).collect()
            });
            let photos = self.photos_of(&photos).await;
            let before = self.take_out(&ids);
            let undo = self.step(Step {
                before,
                after: Vec::new(),
            });
            self.steps.update_value(|steps| steps.keep_photos(photos));
            self.say(words, false, Some(undo));
            leptos::task::tick().await;
            super::panels::shelf::focus_on_undo();
        });
    }

    /// Takes in the file that waits.
    pub(crate) fn take_in(self, differing: Differing) {
        let Some(incoming) = self.incoming.get_untracked() else {
            return;
        };
        self.incoming.set(None);
        let (runs, before, photos) = self.book.with_untracked(|book| {
            let runs = incoming.merge.taken(book, differing);
            let before: Vec<Run> = runs
                .iter()
                .filter_map(|run| book.get(&run.id).cloned())
                .collect();
            // A photo of the logbook is overwritten only where its run is.
            let is_own = |id: &Id| book.runs().any(|run| run.photos.contains(id));
            let mut photos = BTreeMap::new();
            let of_runs = runs.iter().flat_map(|run| &run.photos);
            let taken = of_runs
                .filter(|id| differing == Differing::Replace || !is_own(id))
                .filter_map(|id| incoming.photos.get_key_value(id))
                .map(|(id, photo)| (id.clone(), photo.clone()));
            photos.extend(taken);
            (runs, before, photos)
        });
        let words = texts::logbook::imported(runs.len());
        self.keep_photos(photos);
        let after = runs.clone();
        if self.put(runs) {
            let undo = self.step(Step { before, after });
            self.say(words, false, Some(undo));
        }
    }
}

/// A run as its fields are undone: photos are undone with the book.
pub(super) fn without_photos(run: Run) -> Run {
    Run {
        photos: Vec::new(),
        ..run
    }
}
