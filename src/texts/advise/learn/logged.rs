//! What was measured on a run, and why some of it teaches nothing.

#[inline]
pub fn no_hrc(value: f64, scale: &str) -> String {
    format!("{value} {scale} has no number on the C scale")
}

pub const NO_STEP: &str = "the route has no such step";

#[inline]
pub fn read_elsewhere(place: &str) -> String {
    if place.is_empty() {
        return "where it was read is not told, and this piece may not harden alike throughout"
            .to_owned();
    }
    format!(
        "read at “{place}”: the models tell the place that cools slowest, and this piece may not harden alike throughout"
    )
}

#[inline]
pub fn route_not_told(reason: &str) -> String {
    format!("the models do not tell what comes of this route: {reason}")
}

pub const STEP_NOT_TOLD: &str = "the models do not tell the hardness after this step";
pub const GRAIN_NOT_COMPARED: &str =
    "how far the model's grain is from a fracture grain is not known";

#[inline]
pub fn no_part_of_volume(value: f64) -> String {
    format!("{value} vol % is outside 0 to 100 vol %")
}

/// Counted from one.
#[inline]
pub fn reading(number: usize) -> String {
    format!("reading {number}")
}

pub const FRACTURE_GRAIN: &str = "grain by fracture";
pub const SOAK: &str = "the soak as planned";
