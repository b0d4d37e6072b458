//! The temper: hardness against tempering temperature.

pub const EMBRITTLING: &str = "embrittling";

#[inline]
pub fn target(least_hrc: &str, most_hrc: &str) -> String {
    format!("target {least_hrc}–{most_hrc}")
}

#[inline]
pub fn summary(temper: &str, hrc: &str) -> String {
    format!("Temper: {temper} gives {hrc}\u{a0}HRC.")
}

#[inline]
pub fn summary_with_target(temper: &str, hrc: &str, [least, most]: [&str; 2]) -> String {
    format!("Temper: {temper} gives {hrc}\u{a0}HRC; the target is {least} to {most}.")
}
