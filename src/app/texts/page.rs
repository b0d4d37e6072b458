//! Words around all parts: what is said of links, of what the browser keeps, and below the page.

use std::fmt::Display;

pub(crate) const FOOT: &str = "Predictions are for planning and teaching. A part whose failure can injure someone must be tested. Local codes, the supplier’s data sheet and licensed practice come first.";

#[inline]
pub(crate) fn unread(what: &str, reason: &str, is_aside: bool) -> String {
    let where_it_is = if is_aside {
        "It is set aside in this browser, and the page goes on without it."
    } else {
        NO_ROOM_ASIDE
    };
    format!("{what} could not be read: {reason} {where_it_is}")
}

/// Where what cannot be read cannot be set aside either.
pub(crate) const NO_ROOM_ASIDE: &str =
    "This browser has no room to set it aside: the next change is written over it.";

pub(crate) const LAST_BENCH: &str = "The bench of your last visit";
pub(crate) const LAST_BENCH_NOT_ASIDE: &str = "This browser has no room to set the bench of your last visit aside: the next change is written over it.";

#[inline]
pub(crate) fn shelf_routes_unread(count: usize, routes: &str, is_aside: bool) -> String {
    let where_it_is = if is_aside {
        "The shelf as it was is set aside in this browser."
    } else {
        NO_ROOM_ASIDE
    };
    format!("{count} {routes} of the shelf could not be read. {where_it_is}")
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

/// Where every thread ends as it comes.
pub(crate) const ALONE: &str = "The browser ends the thread beside the page again and again. What it did the page now works out by itself, and may stand still for a moment. To try with a thread again, reload.";
