//! Words around all parts: what is said of links, of what the browser keeps, and below the page.

use std::fmt::Display;

pub(crate) const FOOT: &str = "Predictions are for planning and teaching. A part whose failure can injure someone must be tested. Local codes, the supplier’s data sheet and licensed practice come first.";

#[inline]
pub(crate) fn set_aside(what: &str, reason: &str) -> String {
    format!(
        "{what} could not be read: {reason} It is set aside in this browser, and the page goes on without it."
    )
}

pub(crate) const LAST_BENCH: &str = "The bench of your last visit";

#[inline]
pub(crate) fn shelf_routes_unread(count: usize, routes: &str) -> String {
    format!(
        "{count} {routes} of the shelf could not be read. The shelf as it was is set aside in this browser."
    )
}

pub(crate) const YOUR_SHELF: &str = "Your shelf";
pub(crate) const NO_ADDRESS: &str = "The page has no address.";
pub(crate) const THE_LINK: &str = "The link";

#[inline]
pub(crate) fn on_clipboard(what: &str) -> String {
    format!("{what} is on the clipboard.")
}

#[inline]
pub(crate) fn clipboard_shut(shown: &str) -> String {
    format!("The browser keeps its clipboard shut. Copy this: {shown}")
}

#[inline]
pub(crate) fn link_not_opened(reason: impl Display) -> String {
    format!("The route of the link was not opened. {reason}")
}

pub(crate) const LINK_ON_BENCH: &str = "The link’s route is on the bench.";
pub(crate) const LINK_ON_BENCH_ONE_KEPT: &str =
    "The link’s route is on the bench; the one before is on the shelf.";
pub(crate) const PART_NOT_LOADED: &str = "This part of the page could not be loaded.";
pub(crate) const PART_NOT_LOADED_TRY_AGAIN: &str =
    "This part of the page could not be loaded. Check the connection and try again.";
pub(crate) const TRY_AGAIN: &str = "Try again";

#[inline]
pub(crate) fn between(least: &str, most: &str) -> String {
    format!("Between {least} and {most}.")
}

pub(crate) const WRITE_A_BAND: &str = "Write a band such as 8 °C.";
pub(crate) const WRITE_A_DIFFERENCE: &str = "Write a difference such as 4 °C or −4 °C.";

#[inline]
pub(crate) fn not_a_number(text: &str, advice: &str) -> String {
    format!("“{text}” is not a number. {advice}")
}

pub(crate) const COPY_LINK: &str = "Copy link";
pub(crate) const FILE_UNREADABLE: &str = "That file cannot be read.";
pub(crate) const NO_FILE_OFFERED: &str = "The file could not be offered.";
pub(crate) const EXPORT_TO_FILE: &str = "Export to a file";
pub(crate) const WORKING_IT_OUT: &str = "Working it out.";
pub(crate) const STORE_CLOSED: &str =
    "This browser keeps nothing for the page. Export the shelf to a file instead.";
pub(crate) const STORE_FULL: &str =
    "The browser's store is full. Export the shelf to a file and remove some routes.";
pub(crate) const UNDO: &str = "Undo";
pub(crate) const DISMISS: &str = "Dismiss";
pub(crate) const BEFORE: &str = "Before";
pub(crate) const SOAK: &str = "Soak";
pub(crate) const QUENCH: &str = "Quench";
pub(crate) const TEMPER: &str = "Temper";
pub(crate) const STAGE: &str = "Stage";
pub(crate) const REDO: &str = "Redo";
pub(crate) const DUPLICATE: &str = "Duplicate";
pub(crate) const LOADING: &str = "Loading.";

/// Where two threads have come to grief over the same.
pub(crate) const BROKEN_OFF: &str = "The browser broke this off twice. Ask again.";
