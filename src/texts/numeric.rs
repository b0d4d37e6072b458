//! Words of the room numeric: equations without a solution, and formulas told in a line.

#[inline]
pub fn singular(row: usize) -> String {
    format!("the matrix is singular at row {row}")
}

#[inline]
pub fn singular_or_indefinite(row: usize) -> String {
    format!("the matrix is singular or not positive definite at row {row}")
}

#[inline]
pub fn least_of(left: &str, right: &str) -> String {
    format!("smallest of {left} and {right}")
}

#[inline]
pub fn most_of(left: &str, right: &str) -> String {
    format!("greatest of {left} and {right}")
}

#[inline]
pub fn root_of(inside: &str) -> String {
    format!("root of ({inside})")
}
