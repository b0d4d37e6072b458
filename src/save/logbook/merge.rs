//! Taking the runs of a file into a logbook: first a look at what they would change.

use super::{Logbook, Run};

/// What to do with a run of the file whose identity the logbook has, with other contents.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Differing {
    /// The logbook's stays, the file's is left.
    Leave,
    /// The file's takes its place.
    Replace,
    /// Both are kept, the file's under an identity of its own.
    KeepBoth,
}

/// What a file would bring.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Merge {
    /// Runs that the logbook does not have.
    pub new: Vec<Run>,
    /// Runs that it has with other contents, as the file has them.
    pub differing: Vec<Run>,
    /// How many it has just so.
    pub same: usize,
}

impl Merge {
    /// Compares a file with a logbook; changes nothing.
    #[must_use]
    pub fn of(book: &Logbook, file: &Logbook) -> Self {
        let mut merge = Self::default();
        for run in file.runs() {
            match book.get(&run.id) {
                None => merge.new.push(run.clone()),
                Some(own) if own == run => merge.same += 1,
                Some(_) => merge.differing.push(run.clone()),
            }
        }
        merge
    }

    /// The runs to put into the logbook. It may have got runs since the look: one that it has by now
    /// counts as differing.
    #[must_use]
    pub fn taken(&self, book: &Logbook, differing: Differing) -> Vec<Run> {
        let is_new = |run: &&Run| book.get(&run.id).is_none();
        let mut taken: Vec<Run> = self.new.iter().filter(is_new).cloned().collect();
        let known = self.new.iter().filter(|run| !is_new(run));
        for run in known.chain(&self.differing) {
            match differing {
                Differing::Leave => {}
                Differing::Replace => taken.push(run.clone()),
                Differing::KeepBoth => {
                    let is_taken =
                        |id: &_| book.get(id).is_some() || taken.iter().any(|run| run.id == *id);
                    if let Some(id) = run.id.beside(is_taken) {
                        taken.push(Run { id, ..run.clone() });
                    }
                }
            }
        }
        taken
    }
}
