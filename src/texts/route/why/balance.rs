//! Words of what a number solves that was found by steps.

#[inline]
pub fn put_in(equation: &str, left: &str, within: &str) -> String {
    format!("{equation} Put in, the number leaves {left}; its accuracy allows {within}.")
}
