//! What forms as it cools: the fan of coolings.

#[inline]
pub fn time_from(clock: &str) -> String {
    format!("time from {clock}")
}

pub const PLANNED_QUENCH: &str = "planned quench";

/// In place of a hardness.
pub const NOT_KNOWN: &str = "not known";

#[inline]
pub fn cooling(rate: &str, hardness: &str) -> String {
    format!("{rate}: {hardness}")
}

#[inline]
pub fn summary(at: &str, coolings: &[String]) -> String {
    format!(
        "What forms as it cools, by the rate at {at}, with the hardness at the end, HRC: {}.",
        coolings.join("; ")
    )
}
