//! What is wrong with a logbook, its file, or a photo.

#[inline]
pub fn full(most: usize) -> String {
    format!("The logbook holds {most} runs and no more. Export and delete some.")
}

#[inline]
pub fn run_not_kept(fault: &str) -> String {
    format!("This run cannot be kept. {fault}")
}

#[inline]
pub fn of_run(place: usize, fault: &str) -> String {
    format!("run {place}: {fault}")
}

#[inline]
pub fn of_photo(place: usize, fault: &str) -> String {
    format!("photo {place}: {fault}")
}

#[inline]
pub fn id_twice(id: &str) -> String {
    format!("the id “{id}” occurs twice")
}

#[inline]
pub fn no_id(most: usize) -> String {
    format!("an id has 1 to {most} of a to z, 0 to 9 and hyphens")
}

pub const NO_JPEG: &str = "the photo is not a JPEG";
pub const NO_JPEG_IN_BASE64: &str = "the photo is not a JPEG in base64";

#[inline]
pub fn large_photo(found: usize, most: usize) -> String {
    format!("the photo has {found} characters; {most} are allowed")
}
