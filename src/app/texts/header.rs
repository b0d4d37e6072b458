//! Words of the page's head.

pub(crate) const UNDO_AND_REDO: &str = "Undo and redo";
pub(crate) const UNDO_KEYS: &str = "Undo (Ctrl+Z)";
pub(crate) const UNDO_LAST: &str = "Undo the last change";
pub(crate) const REDO_KEYS: &str = "Redo (Ctrl+Shift+Z)";
pub(crate) const REDO_UNDONE: &str = "Redo what was undone";
pub(crate) const PRINT_THE: &str = "Print the ";
pub(crate) const ON_THE_SHELF: &str = " on the shelf";
pub(crate) const LOG_A_RUN: &str = "Log a run";
pub(crate) const TEMPERATURES: &str = "Temperatures";
pub(crate) const LENGTHS: &str = "Lengths";
pub(crate) const DECIMALS: &str = "Decimals";
pub(crate) const THEME: &str = "Theme";
pub(crate) const DAY: &str = "day";
pub(crate) const SHOP: &str = "shop";
pub(crate) const BENCH: &str = "Bench";
pub(crate) const DECIDE: &str = "Decide";
pub(crate) const EXPERIMENTS: &str = "Experiments";
pub(crate) const SHELF: &str = "Shelf";
pub(crate) const LOGBOOK: &str = "Logbook";
pub(crate) const SOURCES: &str = "Sources";
pub(crate) const PLACES: &str = "Places";
pub(crate) const CARD: &str = "card";
pub(crate) const KEEP: &str = "Keep";
pub(crate) const PROJECT: &str = "Recalesce";
