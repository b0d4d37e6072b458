//! Why a question about a whole shop or a whole spread has no answer.

/// The unit may be none.
#[inline]
pub fn outside([value, least, most]: &[String; 3], unit: &str) -> String {
    let space = if unit.is_empty() { "" } else { " " };
    format!("{value} is outside {least} to {most}{space}{unit}")
}

#[inline]
pub fn no_step_for(input: &str) -> String {
    format!("the route has no step for `{input}`")
}

pub const NO_RUN: &str = "there is no run to learn from";
pub const NOT_SOLVED: &str = "what was measured cannot be brought together with the models";

#[inline]
pub fn no_case(cases: usize, first: &str) -> String {
    format!("none of {cases} cases has an outcome; the first was refused: {first}")
}
