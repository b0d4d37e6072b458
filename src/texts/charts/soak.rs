//! The soak: the phase map, and what goes on during it.

pub const CARBON_AXIS: &str = "carbon, wt\u{a0}%";

#[inline]
pub fn carbon_of_steel(wt: &str) -> String {
    format!("carbon of the steel {wt}")
}

#[inline]
pub fn dissolved(wt: &str) -> String {
    format!("{wt} dissolved")
}

#[inline]
pub fn possible(wt: &str) -> String {
    format!("of {wt} possible")
}

#[inline]
pub fn map(soak: &str, dissolved: &str, carbon: &str, possible: &str, a1: &str) -> String {
    format!(
        "Phase map: at {soak} {dissolved} of the {carbon} % carbon is dissolved, of {possible} possible; \
         austenite begins at {a1}."
    )
}

/// Where there is no soak to tell of.
#[inline]
pub fn map_alone(soak: &str, carbon: &str, a1: &str) -> String {
    format!("Phase map of a steel of {carbon} % carbon, at {soak}; austenite begins at {a1}.")
}

pub const CARBON_DISSOLVED: &str = "carbon dissolved";
pub const GRAIN_NUMBER: &str = "grain number";

#[inline]
pub fn at(time: &str) -> String {
    format!("at {time}")
}

#[inline]
pub fn history(time: &str, soak: &str, carbon: &str, carbide: &str, grain: &str) -> String {
    format!(
        "After {time} at {soak}: {carbon} % carbon dissolved, {carbide} % carbide left, grain number {grain}."
    )
}
