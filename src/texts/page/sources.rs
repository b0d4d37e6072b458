//! Words of the sources and the score.

use std::fmt::Display;

pub const READ_IN_SOURCE: &str = "read in the source";
pub const FROM_MEMORY: &str = "from memory, not yet compared with the printed source";
pub const FITTED_HERE: &str = "fitted by this project";
pub const COMMON_PRACTICE: &str = "common practice, no source";
pub const ABOUT: &str = "Every constant of the models, and how it was obtained. What is from memory stays marked so until it has been compared with the printed page.";
pub const HOW_NEAR: &str = "How near the models come";
pub const MEAN_ERROR: &str = "Mean error";
pub const INSIDE_TOLERANCE: &str = "Inside tolerance";
pub const NOT_REACHED: &str = "not reached";

#[inline]
pub fn case_outside(case: &str, quantity: &str, models: &str, value: &str) -> String {
    format!("{case}, {quantity}: models {models}, value {value}")
}

#[inline]
pub fn values_outside(count: usize) -> String {
    format!("Values outside their tolerance: {count}")
}

#[inline]
pub fn score_not_shown(why: impl Display) -> String {
    format!("The score is not shown: {why}.")
}

pub const ABOUT_SCORE: &str = "What this version of the models gives, against three kinds of values. Only the first tells how true the models are. The second tells how well they follow what they were made of; the third, whether their computation is right. An error told as a factor says how many times too long or too short; where unlike quantities are counted together there is no mean.";

#[inline]
pub fn equilibria_left_out(left_out: usize) -> String {
    format!(
        "Computed equilibria not counted: {left_out}. The computation they come from missed a phase there."
    )
}

pub const QUANTITY: &str = "Quantity";
pub const VALUES: &str = "Values";
pub const TOLERANCE: &str = "Tolerance";
pub const REACHED: &str = "reached";

#[inline]
pub fn aim(words: &str, reached: &str) -> String {
    format!("aim: {words}, {reached}")
}

pub const TOGETHER: &str = "together";
pub const SOURCES: &str = "Sources";
