//! Words of the logbook.

pub(crate) const EXPORT_NOW: &str = "Export now";

#[inline]
pub(crate) fn change_of_logbook(words: &str) -> String {
    format!("{words} a change of the logbook")
}

pub(crate) const NOTHING_LOGGED: &str = "Nothing is logged yet. Put a route on the bench, harden the piece, log the run, and write down what the tester and the cutting edge say. After a few runs you see how far your furnace and your oil are from the model.";
pub(crate) const OPENING: &str = "Opening the logbook.";
pub(crate) const ABOUT: &str = "What you really did, what you measured, and what was predicted that day. It stays in this browser; export it to carry it elsewhere.";
pub(crate) const LOG_BENCH_ROUTE: &str = "Log a run of the bench’s route";
pub(crate) const EXPORT_LIST: &str = "Export the list as CSV";
pub(crate) const CLOSED: &str = "This browser keeps no logbook for the page: what you log is here until the page is closed. Export it to a file.";
pub(crate) const FULL: &str = "The browser’s store is full: what you log now is here until the page is closed. Export it to a file, then delete old runs or photos.";
pub(crate) const SOON_FULL: &str = "The browser’s store will soon be full. Export the logbook to a file, then delete old runs or photos.";

#[inline]
pub(crate) fn unread(unread: usize) -> String {
    format!(
        "{unread} of the logbook’s runs could not be read. They are left as they are in this browser."
    )
}

pub(crate) const CHANGED_SINCE: &str =
    "It has been changed since, here or in another window, and stays as it is.";
pub(crate) const PHOTO_GONE: &str = "The photo is gone.";
pub(crate) const LOGBOOK: &str = "Logbook";
