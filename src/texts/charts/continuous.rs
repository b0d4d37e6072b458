//! What forms as it cools: the fan of coolings.

#[inline]
pub fn time_from(clock: &str) -> String {
    format!("time from {clock}")
}

pub const PLANNED_QUENCH: &str = "planned quench";

/// In place of a hardness.
pub const NOT_KNOWN: &str = "not known";

#[inline]
pub fn cooling(k_per_s: &str, hardness: &str) -> String {
    format!("{k_per_s} K/s: {hardness}")
}

#[inline]
pub fn summary(coolings: &[String]) -> String {
    format!(
        "What forms as it cools, by the rate at 700 °C, with the hardness at the end, HRC: {}.",
        coolings.join("; ")
    )
}
