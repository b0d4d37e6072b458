//! Words of the sources and the score.

use std::fmt::Display;

pub(crate) const READ_IN_SOURCE: &str = "read in the source";
pub(crate) const FROM_MEMORY: &str = "from memory, not yet compared with the printed source";
pub(crate) const FITTED_HERE: &str = "fitted by this project";
pub(crate) const COMMON_PRACTICE: &str = "common practice, no source";
pub(crate) const ABOUT: &str = "Every constant of the models, and how it was obtained. What is from memory stays marked so until it has been compared with the printed page.";
pub(crate) const HOW_NEAR: &str = "How near the models come";
pub(crate) const MEAN_ERROR: &str = "Mean error";
pub(crate) const INSIDE_TOLERANCE: &str = "Inside tolerance";
pub(crate) const NOT_REACHED: &str = "not reached";

#[inline]
pub(crate) fn case_outside(case: &str, quantity: &str, models: &str, value: &str) -> String {
    format!("{case}, {quantity}: models {models}, value {value}")
}

#[inline]
pub(crate) fn values_outside(count: usize) -> String {
    format!("The {count} values outside their tolerance")
}

#[inline]
pub(crate) fn score_not_shown(why: impl Display) -> String {
    format!("The score is not shown: {why}.")
}

pub(crate) const ABOUT_SCORE: &str = "What this version of the models gives, against three kinds of values. Only the first tells how true the models are. The second tells how well they follow what they were made of; the third, whether their computation is right. An error told as a factor says how many times too long or too short; where unlike quantities are counted together there is no mean.";

#[inline]
pub(crate) fn equilibria_left_out(left_out: usize) -> String {
    format!(
        "{left_out} more computed equilibria are not counted: the computation they come from missed a phase there."
    )
}

pub(crate) const QUANTITY: &str = "Quantity";
pub(crate) const VALUES: &str = "Values";
pub(crate) const TOLERANCE: &str = "Tolerance";
pub(crate) const REACHED: &str = "reached";

#[inline]
pub(crate) fn aim(words: &str, reached: &str) -> String {
    format!("aim: {words}, {reached}")
}

pub(crate) const TOGETHER: &str = "together";
pub(crate) const SOURCES: &str = "Sources";
