//! Words of the logbook.

use std::fmt::Display;

pub const EXPORT_NOW: &str = "Export now";
pub const UNDO_OF_LOGBOOK: &str = "Undo in the logbook";
pub const REDO_OF_LOGBOOK: &str = "Redo in the logbook";
pub const NOTHING_LOGGED: &str = "Nothing is logged yet. Put a route on the bench, harden the piece, log the run, and write down what the tester and the cutting edge say. After a few runs you see how far your furnace and your oil are from the model.";
pub const OPENING: &str = "Opening the logbook.";
pub const ABOUT: &str = "What you really did, what you measured, and what was predicted that day. It stays in this browser; export it to carry it elsewhere.";
pub const LOG_BENCH_ROUTE: &str = "Log a run of the bench's route";
pub const EXPORT_LIST: &str = "Export the list as CSV";
pub const CLOSED: &str = "This browser keeps no logbook for the page: what you log is here until the page is closed. Export it to a file.";
pub const FULL: &str = "The browser's store is full: what you log now is here until the page is closed. Export it to a file, then delete old runs or photos.";
pub const SOON_FULL: &str = "The browser's store will soon be full. Export the logbook to a file, then delete old runs or photos.";

#[inline]
pub fn unread(unread: usize) -> String {
    match unread {
        1 => "One of the logbook's runs could not be read. It is left as it is in this browser."
            .to_owned(),
        _ => format!(
            "{unread} of the logbook's runs could not be read. They are left as they are in this browser."
        ),
    }
}

pub const CHANGED_SINCE: &str =
    "It has been changed since, here or in another window, and stays as it is.";
pub const PHOTO_GONE: &str = "The photo is gone.";
pub const LOGBOOK: &str = "Logbook";
pub const UNDO_OF_RUN: &str = "Undo in this run";
pub const REDO_OF_RUN: &str = "Redo in this run";
pub const HARDNESS: &str = "Hardness";
pub const SCALE: &str = "Scale";
pub const PLACE: &str = "Place";
pub const WHEN: &str = "When";
pub const REMOVE: &str = "Remove";
pub const TEST: &str = "Test";
pub const RESULT: &str = "Result";
pub const UNIT: &str = "Unit";
pub const NO_HARDNESS_GIVEN: &str = "The model gave no hardness for this route.";

/// `figure` is a hardness with its band, `model` empty or what follows.
#[inline]
pub fn predicted(figure: &str, model: &str) -> String {
    format!("Predicted {figure}\u{a0}HRC{model}")
}

/// `place` stands at the head of the sentence.
#[inline]
pub fn predicted_at(place: &str, figure: &str, model: &str) -> String {
    format!("{place} predicted {figure}\u{a0}HRC{model}")
}

#[inline]
pub fn by_model(model: &str) -> String {
    format!(" by model {model}")
}

/// Of a blade: by which words a reading is laid beside the one or the other.
#[inline]
pub fn counts_where_told([outside, deciding]: [&str; 2]) -> String {
    format!("Say where each was read: “{outside}” or “{deciding}”.")
}

/// Of another section.
#[inline]
pub fn counts_outside([outside, deciding]: [&str; 2]) -> String {
    format!("A reading is taken to be of the {outside}, unless its place says “{deciding}”.")
}

pub const NO_PLACE: &str = "no place told";

#[inline]
pub fn read_elsewhere(places: &str) -> String {
    format!("Read elsewhere, and compared with nothing: {places}.")
}

pub const COUNTED_WITH_LEARNT: &str = ", counted with what the logbook had taught";

#[inline]
pub fn not_measured(said: &str) -> String {
    format!("{said}; not measured after the last step yet.")
}

pub const INSIDE: &str = "inside";
pub const OUTSIDE: &str = "outside";

#[inline]
pub fn measured(said: &str, hrc: &str, difference: &str, side: &str) -> String {
    format!("{said}; measured {hrc}\u{a0}HRC: {difference}, {side} the band.")
}

#[inline]
pub fn run_deleted(piece: &str, day: impl Display) -> String {
    format!("The run of “{piece}” on {day} is deleted.")
}

pub const ALL_RUNS: &str = "All runs";
pub const PUT_ROUTE_ON_BENCH: &str = "Put its route on the bench";
pub const DELETE: &str = "Delete";
pub const DAY_OF_QUENCH: &str = "Day of the quench";
pub const ADD_A_READING: &str = "Add a hardness reading";
pub const GRAIN_BY_FRACTURE: &str = "Grain by fracture, ASTM number";
pub const AUSTENITE_VOL: &str = "Retained austenite, vol %";
pub const COUPON: &str = "Coupon quenched beside it: hardness, look of its fracture";
pub const IN_USE: &str = "In use";
pub const ABOUT_USE: &str = "Whatever the shop goes by: cuts until it no longer shaves, flex of the cutting edge on a brass rod, chips.";
pub const ADD_A_TEST: &str = "Add a test in use";
pub const REALLY_DONE: &str = "What was really done";
pub const COLD: &str = "Cold";
pub const NOTES: &str = "Notes";
pub const DAY: &str = "Day";
pub const PIECE: &str = "Piece";
pub const GRADE: &str = "Grade";
pub const PREDICTED: &str = "Predicted";
pub const MEASURED: &str = "Measured";
pub const DIFFERENCE: &str = "Difference";
pub const RUNS: &str = "Runs";
pub const ALL_GRADES: &str = "all";
pub const FROM: &str = "From";
pub const TO: &str = "To";
pub const ORDER: &str = "Order";
pub const NEWEST_FIRST: &str = "newest first";
pub const BY_PIECE: &str = "by piece";
pub const BY_GRADE: &str = "by grade";
pub const FARTHEST: &str = "farthest from predicted";
pub const MEASURED_ONLY: &str = "measured only";
pub const AS_TAUGHT: &str = ", as taught";

#[inline]
pub fn on_average(
    runs: usize,
    grade: Option<&str>,
    average: &str,
    least: &str,
    most: &str,
    inside: usize,
) -> String {
    let of = grade.map_or_else(String::new, |grade| format!(" of {grade}"));
    format!(
        "{runs} measured{of}: {average}\u{a0}HRC from the prediction on average, from {least} to {most}; {inside} inside the band."
    )
}

#[inline]
pub fn runs_of(shown: usize, all: usize) -> String {
    format!("{shown} of {all} runs")
}

#[inline]
pub fn show_more(left: usize) -> String {
    format!("Show more, {left} left")
}

pub const NO_CHART_YET: &str = "Measured hardness stands here against the predicted, once a run has a reading after its last step.";

#[inline]
pub fn side_by_side(day: &str) -> String {
    format!("Side by side: {day}")
}

#[inline]
pub fn nothing_imported(reason: impl Display) -> String {
    format!("Nothing was imported. {reason}")
}

pub const LOGBOOK_TO_IMPORT: &str = "Logbook to import";
pub const IMPORT: &str = "Import";

#[inline]
pub fn file_holds(new: usize, same: usize, differing: usize) -> String {
    format!(
        "The file holds {new} new, {same} that you have just so, {differing} that you have otherwise."
    )
}

#[inline]
pub fn otherwise(runs: &str) -> String {
    format!("Otherwise: {runs}.")
}

#[inline]
pub fn cannot_be_read(left: usize, faults: &str) -> String {
    format!("{left} cannot be read. {faults}")
}

pub const ADD_NEW: &str = "Add the new";
pub const ADD_AND_REPLACE: &str = "Add, and replace those that differ";
pub const ADD_AND_KEEP_BOTH: &str = "Add, and keep both";
pub const LEAVE_IT: &str = "Leave it";

#[inline]
pub fn imported(count: usize) -> String {
    format!("{count} imported.")
}

pub const NO_IMAGE: &str = "it is no image that this browser knows";

#[inline]
pub fn photo_not_added(why: &str) -> String {
    format!("The photo was not added: {why}.")
}

pub const PHOTO_OF_RUN: &str = "Photo of the run";
pub const PHOTOS: &str = "Photos";
pub const REMOVE_PHOTO: &str = "Remove the photo";
pub const ADD_A_PHOTO: &str = "Add a photo";
pub const PHOTO_TO_ADD: &str = "Photo to add";
pub const TICK_TWO: &str = "Tick two runs to see them side by side.";
pub const SIDE_BY_SIDE: &str = "Side by side, what differs first";
pub const PUT_AWAY: &str = "Put them away";
pub const TICK_ONE_MORE: &str = "Tick one more to see the two side by side.";
