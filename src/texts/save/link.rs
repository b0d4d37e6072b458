//! What is wrong with a link to a route.

#[inline]
pub fn too_long(length: usize, most: usize) -> String {
    format!("The link has {length} characters; at most {most} are read.")
}

pub const NOT_OURS: &str =
    "This is no link to a route: it does not begin with the version of the format.";

#[inline]
pub fn newer(found: u64, read: u64) -> String {
    format!(
        "The link is of version {found}, made by a newer version of this program, which reads up \
         to {read}."
    )
}

pub const DAMAGED: &str = "The link is damaged or cut short. Copy it again as a whole.";

#[inline]
pub fn too_large(most_bytes: usize) -> String {
    format!("The route in the link is larger than {most_bytes} bytes.")
}
