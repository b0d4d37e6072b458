//! Words around all parts: what is said of links, of what the browser keeps, and below the page.

use std::fmt::Display;

pub const FOOT: &str = "Predictions are for planning and teaching. A part whose failure can injure someone must be tested. Local codes, the supplier's data sheet and licensed practice come first.";

#[inline]
pub fn unread(what: &str, reason: &str, is_aside: bool) -> String {
    let where_it_is = if is_aside {
        "It is set aside in this browser, and the page goes on without it."
    } else {
        NO_ROOM_ASIDE
    };
    format!("{what} could not be read: {reason} {where_it_is}")
}

/// Where what cannot be read cannot be set aside either.
pub const NO_ROOM_ASIDE: &str = "This browser has no room to set it aside: it stays as it is, and nothing else is kept in its place until you have saved it as a file.";
/// What is to be kept where such a text stands.
pub const PLACE_HELD: &str =
    "Not kept: what could not be read still stands in its place. Save it as a file first.";
pub const SAVE_HELD: &str = "Save what could not be read";
pub const HELD_NOT_SAVED: &str =
    "The browser takes no file: what could not be read still stands in it.";
pub const HELD_TOO: &str = "There is one more that could not be read.";

pub const LAST_BENCH: &str = "The bench of your last visit";
pub const LAST_BENCH_NOT_ASIDE: &str = "This browser has no room to set the bench of your last visit aside: it stays as it is, and nothing else is kept in its place until you have saved it as a file.";

#[inline]
pub fn shelf_routes_unread(count: usize, routes: &str, is_aside: bool) -> String {
    let where_it_is = if is_aside {
        "The shelf as it was is set aside in this browser."
    } else {
        NO_ROOM_ASIDE
    };
    format!("{count} {routes} of the shelf could not be read. {where_it_is}")
}

pub const YOUR_SHELF: &str = "Your shelf";
pub const NO_ADDRESS: &str = "The page has no address.";
pub const THE_LINK: &str = "The link";

#[inline]
pub fn on_clipboard(what: &str) -> String {
    format!("{what} is on the clipboard.")
}

#[inline]
pub fn clipboard_shut(shown: &str) -> String {
    format!("The browser keeps its clipboard shut. Copy this: {shown}")
}

#[inline]
pub fn link_not_opened(reason: impl Display) -> String {
    format!("The route of the link was not opened. {reason}")
}

pub const LINK_ON_BENCH: &str = "The link's route is on the bench.";
pub const LINK_ON_BENCH_ONE_KEPT: &str =
    "The link's route is on the bench; the one before is on the shelf.";
pub const PART_NOT_LOADED: &str = "This part of the page could not be loaded.";
pub const PART_NOT_LOADED_TRY_AGAIN: &str =
    "This part of the page could not be loaded. Check the connection and try again.";
pub const TRY_AGAIN: &str = "Try again";
pub const DONE: &str = "Done";

#[inline]
pub fn between(least: &str, most: &str) -> String {
    format!("Between {least} and {most}.")
}

#[inline]
pub fn less(quantity: &str) -> String {
    format!("{quantity}: less")
}

#[inline]
pub fn more(quantity: &str) -> String {
    format!("{quantity}: more")
}

#[inline]
pub fn range(least: &str, most: &str) -> String {
    format!("{least} to {most}")
}

pub const WRITE_A_BAND: &str = "Write a band such as 8 °C.";
pub const WRITE_A_DIFFERENCE: &str = "Write a difference such as 4 °C or −4 °C.";

#[inline]
pub fn not_a_number(text: &str, advice: &str) -> String {
    format!("“{text}” is not a number. {advice}")
}

pub const COPY_LINK: &str = "Copy link";
pub const FILE_UNREADABLE: &str = "That file cannot be read.";
pub const NO_FILE_OFFERED: &str = "The file could not be offered.";
pub const EXPORT_TO_FILE: &str = "Export to a file";
pub const WORKING_IT_OUT: &str = "Working it out.";
pub const STORE_CLOSED: &str =
    "This browser keeps nothing for the page. Export the shelf to a file instead.";
pub const STORE_FULL: &str =
    "The browser's store is full. Export the shelf to a file and remove some routes.";
pub const UNDO: &str = "Undo";
pub const DISMISS: &str = "Dismiss";
pub const BEFORE: &str = "Before";
pub const SOAK: &str = "Soak";
pub const QUENCH: &str = "Quench";
pub const TEMPER: &str = "Temper";
pub const STAGE: &str = "Stage";
pub const DUPLICATE: &str = "Duplicate";
pub const LOADING: &str = "Loading.";

/// Where two threads have come to grief over the same.
pub const BROKEN_OFF: &str = "The browser broke this off twice. Ask again.";

/// Where every thread ends as it comes.
pub const ALONE: &str = "The browser ends the thread beside the page again and again. What it did the page now works out by itself, and may stand still for a moment. To try with a thread again, reload.";
