//! Words of the logbook.

use std::fmt::Display;

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

#[inline]
pub(crate) fn change_of_run(words: &str) -> String {
    format!("{words} a change of this run")
}

pub(crate) const HARDNESS: &str = "Hardness";
pub(crate) const SCALE: &str = "Scale";
pub(crate) const PLACE: &str = "Place";
pub(crate) const WHEN: &str = "When";
pub(crate) const REMOVE: &str = "Remove";
pub(crate) const TEST: &str = "Test";
pub(crate) const RESULT: &str = "Result";
pub(crate) const UNIT: &str = "Unit";
pub(crate) const NO_HARDNESS_GIVEN: &str = "The model gave no hardness for this route.";

#[inline]
pub(crate) fn predicted(hrc: &str, band: &str, model: &str) -> String {
    format!("Predicted {hrc} ± {band} HRC by model {model}")
}

pub(crate) const COUNTED_WITH_LEARNT: &str = ", counted with what the logbook had taught";

#[inline]
pub(crate) fn not_measured(said: &str) -> String {
    format!("{said}; not measured after the last step yet.")
}

pub(crate) const INSIDE: &str = "inside";
pub(crate) const OUTSIDE: &str = "outside";

#[inline]
pub(crate) fn measured(said: &str, hrc: &str, difference: &str, side: &str) -> String {
    format!("{said}; measured {hrc} HRC: {difference}, {side} the band.")
}

#[inline]
pub(crate) fn run_deleted(piece: &str, day: impl Display) -> String {
    format!("The run of “{piece}” on {day} is deleted.")
}

pub(crate) const ALL_RUNS: &str = "All runs";
pub(crate) const PUT_ROUTE_ON_BENCH: &str = "Put its route on the bench";
pub(crate) const DELETE: &str = "Delete";
pub(crate) const DAY_OF_QUENCH: &str = "Day of the quench";
pub(crate) const ADD_A_READING: &str = "Add a hardness reading";
pub(crate) const GRAIN_BY_FRACTURE: &str = "Grain by fracture, ASTM number";
pub(crate) const AUSTENITE_VOL: &str = "Retained austenite, vol %";
pub(crate) const COUPON: &str = "Coupon quenched beside it: hardness, look of its fracture";
pub(crate) const IN_USE: &str = "In use";
pub(crate) const ABOUT_USE: &str = "Whatever the shop goes by: cuts until it no longer shaves, flex of the cutting edge on a brass rod, chips.";
pub(crate) const ADD_A_TEST: &str = "Add a test in use";
pub(crate) const REALLY_DONE: &str = "What was really done";
pub(crate) const NEWEST_FIRST: &str = "newest first";
pub(crate) const BY_PIECE: &str = "by piece";
pub(crate) const BY_GRADE: &str = "by grade";
pub(crate) const FARTHEST: &str = "farthest from predicted";
pub(crate) const MEASURED_ONLY: &str = "measured only";
pub(crate) const AS_TAUGHT: &str = ", as taught";

#[inline]
pub(crate) fn on_average(
    runs: usize,
    of: &str,
    average: &str,
    least: &str,
    most: &str,
    inside: usize,
) -> String {
    format!(
        "{runs} measured{of}: {average} HRC from the prediction on average, from {least} to {most}; {inside} inside the band."
    )
}

#[inline]
pub(crate) fn runs_of(shown: usize, all: usize) -> String {
    format!("{shown} of {all} runs")
}

#[inline]
pub(crate) fn show_more(left: usize) -> String {
    format!("Show more, {left} left")
}

pub(crate) const NO_CHART_YET: &str = "Measured hardness stands here against the predicted, once a run has a reading after its last step.";

#[inline]
pub(crate) fn side_by_side(day: &str) -> String {
    format!("Side by side: {day}")
}

#[inline]
pub(crate) fn nothing_imported(reason: impl Display) -> String {
    format!("Nothing was imported. {reason}")
}

pub(crate) const LOGBOOK_TO_IMPORT: &str = "Logbook to import";

#[inline]
pub(crate) fn file_holds(new: usize, same: usize, differing: usize) -> String {
    format!(
        "The file holds {new} new, {same} that you have just so, {differing} that you have otherwise."
    )
}

#[inline]
pub(crate) fn cannot_be_read(left: usize, faults: &str) -> String {
    format!("{left} cannot be read. {faults}")
}

pub(crate) const ADD_NEW: &str = "Add the new";
pub(crate) const ADD_AND_REPLACE: &str = "Add, and replace those that differ";
pub(crate) const ADD_AND_KEEP_BOTH: &str = "Add, and keep both";
pub(crate) const LEAVE_IT: &str = "Leave it";
pub(crate) const NO_IMAGE: &str = "it is no image that this browser knows";

#[inline]
pub(crate) fn photo_not_added(why: &str) -> String {
    format!("The photo was not added: {why}.")
}

pub(crate) const PHOTO_OF_RUN: &str = "Photo of the run";
pub(crate) const REMOVE_PHOTO: &str = "Remove the photo";
pub(crate) const ADD_A_PHOTO: &str = "Add a photo";
pub(crate) const PHOTO_TO_ADD: &str = "Photo to add";
pub(crate) const TICK_TWO: &str = "Tick two runs to see them side by side.";
pub(crate) const SIDE_BY_SIDE: &str = "Side by side, what differs first";
pub(crate) const PUT_AWAY: &str = "Put them away";
pub(crate) const TICK_ONE_MORE: &str = "Tick one more to see the two side by side.";
