//! The logbook: what was really done to a piece, what was measured on it, and what was predicted.
//! Pure: identities and days come from outside, since nothing here has a clock or chance.

mod agreement;
mod beside;
mod book;
mod check;
mod csv;
mod day;
mod draft;
mod file;
mod id;
mod list;
mod logged;
mod merge;
mod photo;
mod place;
mod predicted;
mod run;
mod steps;

pub use agreement::{Agreement, agreement};
pub use beside::{Beside, beside};
pub use book::{Logbook, LogbookError, MOST_RUNS};
pub use check::{
    LONGEST_NOTES, MOST_PHOTOS, MOST_READINGS, MOST_USE_TESTS, RunFieldError, check_run,
};
pub use csv::write_csv;
pub(crate) use csv::{add_line, words};
pub use day::Day;
pub use draft::{Draft, DraftReading, DraftUseTest};
pub use file::{LARGEST_LOGBOOK_BYTES, LoadedLogbook, read_logbook, write_logbook, write_run};
pub use id::Id;
pub use list::{Filter, Listed, Order, list};
pub use merge::{Differing, Merge};
pub use photo::Photo;
pub use predicted::{Compared, Predicted, PredictedAt};
pub use run::{After, Done, Reading, Run, UseTest};
pub use steps::{Step, Steps};
