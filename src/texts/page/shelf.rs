//! Words of the shelf.

use std::fmt::Display;

#[inline]
pub fn kept_as(name: &str) -> String {
    format!("Kept on the shelf as “{name}”.")
}

#[inline]
pub fn nothing_imported(reason: impl Display) -> String {
    format!("Nothing was imported. {reason}")
}

#[inline]
pub fn no_room(count: usize) -> String {
    format!("no room for {count}")
}

#[inline]
pub fn fault_of_route(number: usize, why: impl Display) -> String {
    format!("route {number}: {why}")
}

#[inline]
pub fn imported_but(count: usize, left_out: &str) -> String {
    format!("{count} imported. Left out: {left_out}")
}

#[inline]
pub fn of_steel(grade: &str) -> String {
    format!(" of {grade}; ")
}

#[inline]
pub fn held(temperature: &str, time: &str) -> String {
    format!("{temperature} for {time}")
}

#[inline]
pub fn cold(held: &str) -> String {
    format!("cold bath {held}; ")
}

/// What a route does, with the number of its steps before hardening; a cold bath and tempers may be none.
pub fn steps(
    size: &str,
    before: usize,
    soak: &str,
    bath: &str,
    cold: &str,
    tempers: &str,
    [least, most]: [&str; 2],
) -> String {
    let before = match before {
        0 => String::new(),
        1 => "1 step before hardening; ".to_owned(),
        _ => format!("{before} steps before hardening; "),
    };
    let (temper, tempers) = match tempers {
        "" => ("no temper", ""),
        _ => ("temper ", tempers),
    };
    format!(
        "{size}; {before}soak {soak}; {bath}; {cold}{temper}{tempers}; for {least} to {most}\u{a0}HRC"
    )
}

#[inline]
pub fn off_the_shelf(name: &str) -> String {
    format!("“{name}” is off the shelf.")
}

pub const PUT_ON_BENCH: &str = "Put on the bench";
pub const MOVE_UP: &str = "Move up";
pub const MOVE_DOWN: &str = "Move down";
pub const TAKE_OFF: &str = "Take off";

#[inline]
pub fn copy_link_of(chart: &str) -> String {
    format!("Copy link: {chart}")
}

pub const LINK_TO_CHART: &str = "The link to the chart";

#[inline]
pub fn copy_frame_of(chart: &str) -> String {
    format!("Copy text for a web page: {chart}")
}

pub const FRAME: &str = "The text for a web page";
pub const COPY_FRAME: &str = "Copy text for a web page";
pub const ONE_CHART: &str = "One chart of the bench's route, for a slide or a web page";
pub const SHOWN_BY_ITSELF: &str = "It is shown by itself, with the route as it is now. The route travels in the link; whoever opens it keeps their own bench.";
pub const ABOUT: &str = "Routes that you keep. They stay in this browser; export them to a file to carry them elsewhere.";
pub const KEEP_ROUTE: &str = "Keep the bench's route";
pub const COPY_LINK_TO_IT: &str = "Copy a link to it";
pub const IMPORT_FILE: &str = "Import a file";
pub const FILE_TO_IMPORT: &str = "File to import";
pub const EMPTY: &str = "The shelf is empty. Keep a route and it stands here.";

#[inline]
pub fn imported(count: usize) -> String {
    format!("{count} imported.")
}

pub const NAME: &str = "Name";
pub const UP: &str = "Up";
pub const DOWN: &str = "Down";
pub const SHELF: &str = "Shelf";

pub const UNREAD_FROM_ELSEWHERE: &str = "Another window has written a shelf that cannot be read whole here. It stays as it is, and this window keeps no more of its own shelf: load this page anew.";

pub fn no_room_for_both(left_out: &str, are_aside: bool) -> String {
    let where_they_are = if are_aside {
        "both shelves as they were are set aside in this browser."
    } else {
        "this browser has no room to set both shelves aside as they were. Export the shelf to a file in the other window."
    };
    format!(
        "The shelf is full. Of what two windows have added there was no room for {left_out}; {where_they_are}"
    )
}

pub fn kept_twice(others: &str) -> String {
    format!(
        "Two windows have changed the same route of the shelf. It is kept as both left it; the other is {others}."
    )
}
