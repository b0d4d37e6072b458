//! Words of the page's head.

pub(crate) const UNDO_AND_REDO: &str = "Undo and redo";
pub(crate) const UNDO_KEYS: &str = "Undo (Ctrl+Z)";
pub(crate) const UNDO_LAST: &str = "Undo the last change";
pub(crate) const REDO_KEYS: &str = "Redo (Ctrl+Shift+Z)";
pub(crate) const REDO_UNDONE: &str = "Redo what was undone";
pub(crate) const PRINT_THE: &str = "Print the ";
pub(crate) const ON_THE_SHELF: &str = " on the shelf";
pub(crate) const LOG_A_RUN: &str = "Log a run";
