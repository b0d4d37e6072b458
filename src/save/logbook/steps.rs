//! Changes of a logbook that can be undone and done again, one after the other or out of turn.

use super::{Id, Logbook, Photo, Run};
use crate::save::MOST_UNDONE;
use std::collections::{BTreeMap, VecDeque};

/// A change: some runs as they were, and as they are since. A run that is only on one side came or
/// went.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Step {
    /// As they were.
    pub before: Vec<Run>,
    /// As they are since.
    pub after: Vec<Run>,
}

impl Step {
    /// The change back.
    #[must_use]
    pub fn turned(self) -> Self {
        Self {
            before: self.after,
            after: self.before,
        }
    }

    /// Whether a logbook holds the runs as they were before, and none that it would overwrite unseen.
    #[must_use]
    pub fn fits(&self, book: &Logbook) -> bool {
        let is_new = |run: &&Run| self.before.iter().all(|before| before.id != run.id);
        let mut comes = self.after.iter().filter(is_new);
        self.before.iter().all(|run| book.get(&run.id) == Some(run))
            && comes.all(|run| book.get(&run.id).is_none())
    }

    /// The runs that go with it.
    #[must_use]
    pub fn gone(&self) -> Vec<Id> {
        let stays = |run: &&Run| self.after.iter().all(|after| after.id != run.id);
        let gone = self.before.iter().filter(stays);
        gone.map(|run| run.id.clone()).collect()
    }
}

/// The changes so far, the latest last, and those that were undone.
#[derive(Debug, Clone, Default)]
pub struct Steps {
    past: VecDeque<(u64, Step)>,
    /// The next one last.
    future: Vec<(u64, Step)>,
    made: u64,
    photos: BTreeMap<Id, Photo>,
}

impl Steps {
    /// Takes a change down, which ends what had been undone; gives the number that it goes by. Of more
    /// than [`MOST_UNDONE`] the oldest is let go.
    pub fn record(&mut self, step: Step) -> u64 {
        self.made += 1;
        self.past.push_back((self.made, step));
        if self.past.len() > MOST_UNDONE {
            self.past.pop_front();
        }
        self.future.clear();
        self.let_photos_go();
        self.made
    }

    /// Goes back by one: what to change.
    pub fn undo(&mut self) -> Option<Step> {
        let (number, step) = self.past.pop_back()?;
        self.future.push((number, step.clone()));
        Some(step.turned())
    }

    /// Goes forward again by one: what to change.
    pub fn redo(&mut self) -> Option<Step> {
        let (number, step) = self.future.pop()?;
        self.past.push_back((number, step.clone()));
        Some(step)
    }

    /// Undoes one out of turn, if it still can be: what to change.
    pub fn undo_number(&mut self, number: u64) -> Option<Step> {
        if self.past.back().is_some_and(|(last, _)| *last == number) {
            return self.undo();
        }
        let at = self.past.iter().position(|(other, _)| *other == number)?;
        let (_, step) = self.past.remove(at)?;
        self.future.clear();
        Some(step.turned())
    }

    /// Keeps photos that have gone with a change, for when it is undone.
    pub fn keep_photos(&mut self, photos: BTreeMap<Id, Photo>) {
        self.photos.extend(photos);
    }

    /// Those of the kept photos that some runs show.
    #[must_use]
    pub fn photos_of(&self, runs: &[Run]) -> BTreeMap<Id, Photo> {
        let ids = runs.iter().flat_map(|run| &run.photos);
        ids.filter_map(|id| Some((id.clone(), self.photos.get(id)?.clone())))
            .collect()
    }

    /// Whether there is something to undo, and something to do again.
    #[must_use]
    pub fn can(&self) -> (bool, bool) {
        (!self.past.is_empty(), !self.future.is_empty())
    }

    /// Lets go of photos that no change would bring back.
    fn let_photos_go(&mut self) {
        let steps = self.past.iter().chain(&self.future);
        let runs: Vec<&Run> = steps
            .flat_map(|(_, step)| step.before.iter().chain(&step.after))
            .collect();
        self.photos
            .retain(|id, _| runs.iter().any(|run| run.photos.contains(id)));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::Route;
    use crate::save::logbook::Day;

    fn run(name: &str, notes: &str) -> Run {
        let id = Id::try_from(name.to_owned()).unwrap();
        let day = Day::parse("2026-03-02").unwrap();
        Run {
            notes: notes.to_owned(),
            ..Run::of(id, day, Route::example(), None)
        }
    }

    fn enter(book: &mut Logbook, step: Step) {
        for id in step.gone() {
            book.remove(&id);
        }
        for run in step.after {
            book.put(run).unwrap();
        }
    }

    /// A run that has become another since, or has come by another way, is not overwritten unseen.
    #[test]
    fn a_step_fits_only_the_book_that_it_was_made_of() {
        let mut book = Logbook::default();
        let edit = Step {
            before: vec![run("a", "")],
            after: vec![run("a", "edited")],
        };
        let come = Step {
            before: vec![],
            after: vec![run("b", "")],
        };
        assert!(!edit.fits(&book) && come.fits(&book));
        book.put(run("a", "")).unwrap();
        book.put(run("b", "of another window")).unwrap();
        assert!(edit.fits(&book) && !come.fits(&book));
        book.put(run("a", "written since")).unwrap();
        assert!(!edit.fits(&book));
    }

    /// Added, edited, imported over, deleted: back to the start and forward to the end is the same book.
    #[test]
    fn every_kind_of_change_is_undone_and_done_again() {
        let steps = [
            Step {
                before: vec![],
                after: vec![run("a", "")],
            },
            Step {
                before: vec![run("a", "")],
                after: vec![run("a", "edited")],
            },
            Step {
                before: vec![run("a", "edited")],
                after: vec![run("a", "of the file"), run("b", "new")],
            },
            Step {
                before: vec![run("b", "new")],
                after: vec![],
            },
        ];
        let (mut book, mut made) = (Logbook::default(), Steps::default());
        let mut states = vec![book.clone()];
        for step in steps {
            made.record(step.clone());
            enter(&mut book, step);
            states.push(book.clone());
        }
        for state in states.iter().rev().skip(1) {
            enter(&mut book, made.undo().unwrap());
            assert_eq!(book, *state);
        }
        assert_eq!(made.undo(), None);
        assert_eq!(made.can(), (false, true));
        for state in states.iter().skip(1) {
            enter(&mut book, made.redo().unwrap());
            assert_eq!(book, *state);
        }
        assert_eq!(made.redo(), None);
    }

    #[test]
    fn a_change_is_undone_out_of_turn_once() {
        let mut made = Steps::default();
        let deleted = made.record(Step {
            before: vec![run("a", "")],
            after: vec![],
        });
        made.record(Step {
            before: vec![],
            after: vec![run("b", "")],
        });
        let back = made.undo_number(deleted).unwrap();
        assert_eq!(back.after, [run("a", "")]);
        assert_eq!(made.undo_number(deleted), None);
        assert_eq!(made.undo().unwrap().gone(), [run("b", "").id]);
        assert_eq!(made.can(), (false, true));
    }

    #[test]
    fn as_many_are_kept_as_of_a_route() {
        let mut made = Steps::default();
        for number in 0..MOST_UNDONE + 5 {
            made.record(Step {
                before: vec![],
                after: vec![run(&format!("run-{number}"), "")],
            });
        }
        let count = std::iter::from_fn(|| made.undo()).count();
        assert_eq!(count, MOST_UNDONE);
    }
}
