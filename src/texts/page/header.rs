//! Words of the page's head.

pub const UNDO_AND_REDO: &str = "Undo and redo";
pub const UNDO_KEYS: &str = "Undo on bench and shelf (Ctrl+Z)";
pub const UNDO_LAST: &str = "Undo the last change of bench or shelf";
pub const REDO_KEYS: &str = "Redo on bench and shelf (Ctrl+Shift+Z)";
pub const REDO_UNDONE: &str = "Redo what was undone of bench or shelf";
pub const PRINT_CARD: &str = "Print the card";
pub const KEEP_ON_SHELF: &str = "Keep on the shelf";
pub const LOG_A_RUN: &str = "Log a run";
pub const HOW_SHOWN: &str = "Units and theme";
pub const TEMPERATURES: &str = "Temperatures";
pub const LENGTHS: &str = "Lengths";
pub const DECIMALS: &str = "Decimals";
pub const THEME: &str = "Theme";
pub const DAY: &str = "day";
pub const SHOP: &str = "shop";
pub const BENCH: &str = "Bench";
pub const DECIDE: &str = "Decide";
pub const EXPERIMENTS: &str = "Experiments";
pub const SHELF: &str = "Shelf";
pub const LOGBOOK: &str = "Logbook";
pub const SOURCES: &str = "Sources";
pub const PLACES: &str = "Places";
pub const PROJECT: &str = "Recalesce";
