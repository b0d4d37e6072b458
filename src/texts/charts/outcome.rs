//! Small charts of the outcome: hardness after each step, what the piece is made of, what moves the
//! final hardness.

#[inline]
pub fn hardness(after: &str, hrc: &str) -> String {
    format!("{after} {hrc}\u{a0}HRC")
}

#[inline]
pub fn ladder(steps: &[String]) -> String {
    format!("{}.", steps.join(", "))
}

#[inline]
pub fn share(constituent: &str, percent: &str) -> String {
    format!("{constituent} {percent}\u{a0}%")
}

/// What is otherwise, and by how much the hardness changes with less and with more of it.
#[inline]
pub fn influence(what: &str, changes: &[String]) -> String {
    format!("{what}: {}", changes.join(" or "))
}
