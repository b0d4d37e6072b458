//! Words of the temper.

pub(crate) const NO_TEMPER: &str = "no temper";

#[inline]
pub(crate) fn each_its_own(n: usize) -> String {
    format!("{n} tempers, each its own")
}

pub(crate) const HOW_MANY: &str = "How many tempers";
pub(crate) const UP_TO_SIX: &str = "Write a number up to 6.";
pub(crate) const TEMPERATURE: &str = "Temperature of the temper";
pub(crate) const TIME_OF_EACH: &str = "Time of each temper";
pub(crate) const TEMPER_TEMPERATURE: &str = "Temper temperature";
pub(crate) const TEMPER_TIME: &str = "Temper time";
pub(crate) const NUMBER_OF_TEMPERS: &str = "Number of tempers";

#[inline]
pub(crate) fn quenched_to(hardness: &str) -> String {
    format!("quenched to {hardness}")
}

pub(crate) const WHAT_MOVES_HARDNESS: &str = "What moves the final hardness";
pub(crate) const WHERE_IT_EMBRITTLES: &str = ", where it embrittles";

#[inline]
pub(crate) fn middle_comes_with(target: &str) -> String {
    format!("The middle of the target, {target}, comes with")
}

pub(crate) const ONCE: &str = "once";

#[inline]
pub(crate) fn times(n: usize) -> String {
    format!("{n} times")
}

pub(crate) const FIRST: &str = "First";
pub(crate) const SECOND: &str = "Second";
pub(crate) const THIRD: &str = "Third";
pub(crate) const FOURTH: &str = "Fourth";
pub(crate) const FIFTH: &str = "Fifth";
pub(crate) const SIXTH: &str = "Sixth";
pub(crate) const EACH: &str = " each";

#[inline]
pub(crate) fn each_at(each: &str, temperature: &str) -> String {
    format!("{each} at {temperature}")
}

pub(crate) const OR: &str = ", or ";
