//! Words of what is saved: what is wrong with a file, a link, a shelf or a logbook, and tables.

pub mod embed;
pub mod file;
pub mod link;
pub mod logbook;
pub mod run;
pub mod shelf;
pub mod table;
