//! What is wrong with a file, or keeps one from being written.

#[inline]
pub fn too_large(bytes: usize, most: usize) -> String {
    format!("The file has {bytes} bytes; at most {most} are read.")
}

#[inline]
pub fn cut_short(line: usize) -> String {
    format!("The file is cut short: it ends at line {line} in the middle of a value.")
}

#[inline]
pub fn not_json(line: usize, column: usize, fault: &str) -> String {
    format!("The file is not JSON: line {line}, column {column}: {fault}.")
}

#[inline]
pub fn not_ours(format: &str) -> String {
    format!("This is not a file of this program: it lacks \"format\": \"{format}\".")
}

#[inline]
pub fn no_version(found: &str) -> String {
    format!("The file's version is {found}; versions are whole numbers from 1.")
}

#[inline]
pub fn newer(found: u64, read: u64) -> String {
    format!(
        "The file is of version {found}, made by a newer version of this program, which reads \
         up to {read}. It is left as it is."
    )
}

/// Kinds are named as files name them, within quotation marks.
#[inline]
pub fn other_kind(found: &str, wanted: &str) -> String {
    format!("The file holds {found}; {wanted} is wanted here.")
}

pub const SHELF_OR_BENCH: &str = "\"shelf\" or \"bench\"";

/// `fault` is one of those that follow.
#[inline]
pub fn field(field: &str, fault: &str) -> String {
    format!("The file's “{field}” {fault}.")
}

pub const MISSING: &str = "is missing";
pub const EMPTY: &str = "is empty";
pub const NO_LIST: &str = "is not a list";

#[inline]
pub fn not_read(fault: &str) -> String {
    format!("cannot be read: {fault}")
}

#[inline]
pub fn unknown_field(name: &str) -> String {
    format!("The file has a field “{name}” that this version does not know.")
}

#[inline]
pub fn too_many(found: usize, most: usize) -> String {
    format!("The file holds {found} routes; at most {most} are read.")
}

#[inline]
pub fn bad_route(fault: &str) -> String {
    format!("The saved route makes no sense: {fault}.")
}

#[inline]
pub fn too_large_to_write(bytes: usize, most: usize) -> String {
    format!("The file would have {bytes} bytes; at most {most} can be read back.")
}

#[inline]
pub fn route_not_saved(fault: &str) -> String {
    format!("This route cannot be saved: {fault}.")
}

#[inline]
pub fn long_link(length: usize) -> String {
    format!("A link to this route would have {length} characters. Export it to a file instead.")
}

#[inline]
pub fn not_written(fault: &str) -> String {
    format!("The file could not be written: {fault}.")
}
