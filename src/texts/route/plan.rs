//! Words of what is planned, wherever it is named.

pub const OWN_STEEL: &str = "own steel";
/// The piece of the example that the page opens with.
pub const EXAMPLE: &str = "marking knife";

#[inline]
pub fn piece_of_steel(piece: &str, steel: &str) -> String {
    format!("{piece}, {steel}")
}

#[inline]
pub fn round(diameter: &str) -> String {
    format!("{diameter} round")
}

#[inline]
pub fn square(side: &str) -> String {
    format!("{side} square")
}

#[inline]
pub fn medium_at(medium: &str, bath: &str) -> String {
    format!("{medium} at {bath}")
}

/// One of several.
#[inline]
pub fn temper(n: usize) -> String {
    format!("temper {n}")
}
