//! What is wrong with a link to an experiment. What is so with any link stands with the links to routes.

pub const NOT_OURS: &str =
    "This is no link to an experiment: it does not begin with the version of the format.";

#[inline]
pub fn newer(found: u64, read: u64) -> String {
    format!("The experiment is of version {found}; up to {read} is read. A newer page may read it.")
}

#[inline]
pub fn too_large(most_bytes: usize) -> String {
    format!("The experiment in the link is larger than {most_bytes} bytes.")
}
