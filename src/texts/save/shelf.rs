//! What is wrong with a route or its name on the shelf.

/// Name of a route that has neither a name nor a description of its piece.
pub const UNNAMED: &str = "Route";

#[inline]
pub fn full(most: usize) -> String {
    format!("The shelf holds {most} routes and no more. Export and delete some.")
}

pub const GONE: &str = "This route is no longer on the shelf.";
pub const EMPTY_NAME: &str = "Write a name.";

#[inline]
pub fn long_name(length: usize, most: usize) -> String {
    format!("The name has {length} characters; {most} are allowed.")
}

#[inline]
pub fn name_taken(name: &str) -> String {
    format!("Another route is called “{name}”.")
}
