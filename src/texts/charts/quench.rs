//! The quench: cooling curves over transformation curves, and the margin at the nose.

pub const TIME: &str = "time from leaving the furnace";

#[inline]
pub fn cold_bath(degrees: &str) -> String {
    format!("cold bath {degrees}")
}

#[inline]
pub fn margin(gap: &str) -> String {
    format!("margin {gap}")
}

#[inline]
pub fn misses_by(gap: &str) -> String {
    format!("misses by {gap}")
}

/// Beside the margin and beside what is missing.
#[inline]
pub fn to_spare_at_nose(nose: &str) -> String {
    format!("to spare at the nose, {nose}")
}

#[inline]
pub fn short_at_nose(nose: &str) -> String {
    format!("short at the nose, {nose}")
}

/// Sentences on the margin, on later baths and on martensite, in this order.
#[inline]
pub fn summary(sentences: &[String]) -> String {
    format!("Quench: {}", sentences.join(" "))
}

pub const NOT_KNOWN: &str = "What forms along it is not known for this steel.";

#[inline]
pub fn passes_nose(nose: &str, gap: &str) -> String {
    format!("The cooling curve passes the nose at {nose} with {gap} to spare.")
}

#[inline]
pub fn misses_nose(nose: &str, gap: &str) -> String {
    format!("The cooling curve misses the nose at {nose} by {gap}.")
}

/// `into` says where: "into the salt of 200 °C".
#[inline]
pub fn goes_into(time: &str, at: &str, into: &str) -> String {
    format!("After {time}, at {at}, it goes {into}.")
}

#[inline]
pub fn martensite_starts(at: &str) -> String {
    format!("Martensite starts at {at}.")
}
