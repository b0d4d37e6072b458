//! What is wrong with an experiment. Its fields are named as its file names them.

#[inline]
pub fn too_large(bytes: usize, most: usize) -> String {
    format!("The experiment has {bytes} bytes; at most {most} are read.")
}

#[inline]
pub fn not_read(fault: &str) -> String {
    format!("The experiment cannot be read: {fault}.")
}

#[inline]
pub fn no_experiment(format: &str) -> String {
    format!("This is no experiment: \"format\" has to be \"{format}\".")
}

#[inline]
pub fn version(found: &str, read: u64) -> String {
    format!(
        "The experiment is of version {found}; version {read} is read. A newer page may read it."
    )
}

/// In place of a version.
pub const NO_VERSION: &str = "none";

#[inline]
pub fn bad_route(fault: &str) -> String {
    format!("The route of the experiment: {fault}.")
}

pub const UNKNOWN_FIELD: &str =
    "no such field is known; title, about, minutes, route, steps and at_the_forge are";
pub const MISSING: &str = "it is missing";

#[inline]
pub fn letters(found: usize, most: usize) -> String {
    format!("has {found} letters; 1 to {most} are allowed")
}

#[inline]
pub fn steps(found: usize, most: usize) -> String {
    format!("there are {found}; 1 to {most} are allowed")
}

pub const MINUTES: &str = "1 to 120 are allowed";
pub const CHOICES: &str = "2 to 6 are allowed";

#[inline]
pub fn no_choice(right: usize, choices: usize) -> String {
    format!("{right} is none of {choices} choices")
}

pub const NO_GOAL: &str = "one goal or more is needed";
pub const NOT_ABOVE_ZERO: &str = "a number above zero is needed";
pub const ENDS_NO_NUMBERS: &str = "least and most have to be numbers";
pub const NO_END: &str = "least or most is needed";

#[inline]
pub fn ends_crossed(least: f64, most: f64) -> String {
    format!("least, {least}, is above most, {most}")
}

/// `text` begins at a brace.
#[inline]
pub fn no_temperature(text: &str) -> String {
    format!("“{text}” is no temperature; {{790 °C}} or {{15 K}} is allowed")
}
