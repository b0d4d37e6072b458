//! The runs of a logbook and what can be done to them.

use super::{Id, Run, RunFieldError, check_run};
use crate::numeric::order::sort_by;
use recalesce_texts::save::logbook as texts;
use std::collections::BTreeMap;

/// Most runs in a logbook.
pub const MOST_RUNS: usize = 5000;

/// Runs by their identity. All make sense, and their number is limited.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Logbook {
    runs: BTreeMap<Id, Run>,
}

/// Why the logbook refuses.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LogbookError {
    /// The logbook is full.
    #[error("{}", texts::full(MOST_RUNS))]
    Full,
    /// The run makes no sense.
    #[error("{}", texts::run_not_kept(&.0.to_string()))]
    Run(#[from] RunFieldError),
}

impl Logbook {
    /// All runs, in the order of their identities.
    pub fn runs(&self) -> impl Iterator<Item = &Run> {
        self.runs.values()
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.runs.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.runs.is_empty()
    }

    /// One run.
    #[must_use]
    pub fn get(&self, id: &Id) -> Option<&Run> {
        self.runs.get(id)
    }

    /// Puts a run in, in place of the one with its identity, which is given back.
    ///
    /// # Errors
    /// A run that makes no sense, or a new one where there is no room.
    pub fn put(&mut self, run: Run) -> Result<Option<Run>, LogbookError> {
        check_run(&run)?;
        if self.runs.len() >= MOST_RUNS && !self.runs.contains_key(&run.id) {
            return Err(LogbookError::Full);
        }
        Ok(self.runs.insert(run.id.clone(), run))
    }

    /// Takes a run out; putting it back undoes it.
    pub fn remove(&mut self, id: &Id) -> Option<Run> {
        self.runs.remove(id)
    }

    /// The grades of its runs in words, each once, in the order of the alphabet.
    #[must_use]
    pub fn grades(&self) -> Vec<String> {
        let mut grades: Vec<String> = Vec::new();
        for run in self.runs() {
            if !grades.iter().any(|grade| grade == run.grade()) {
                grades.push(run.grade().to_owned());
            }
        }
        sort_by(&mut grades, String::cmp);
        grades
    }
}
