//! Hardness along the end-quenched bar.

#[inline]
pub fn distance(unit: &str) -> String {
    format!("distance from the quenched end, {unit}")
}

pub const SIMULATED: &str = "simulated bar";
pub const COOLS_LIKE_PIECE: &str = "cools like the piece";

#[inline]
pub fn hardness_at(hrc: &str, distance: &str) -> String {
    format!("{hrc}\u{a0}HRC at {distance}")
}

#[inline]
pub fn summary(along: &[String]) -> String {
    format!("Hardness along the end-quenched bar: {}.", along.join(", "))
}
