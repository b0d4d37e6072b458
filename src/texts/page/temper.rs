//! Words of the temper.

pub const NO_TEMPER: &str = "no temper";

#[inline]
pub fn each_its_own(n: usize) -> String {
    format!("{n} tempers, each its own")
}

pub const HOW_MANY: &str = "How many tempers";
pub const UP_TO_SIX: &str = "Write a number up to 6.";
pub const TEMPERATURE: &str = "Temperature of the temper";
pub const TIME_OF_EACH: &str = "Time of each temper";
pub const TEMPER_TEMPERATURE: &str = "Temper temperature";
pub const TEMPER_TIME: &str = "Temper time";
pub const NUMBER_OF_TEMPERS: &str = "Number of tempers";

#[inline]
pub fn quenched_to(hardness: &str) -> String {
    format!("quenched to {hardness}")
}

#[inline]
pub fn chilled_to(hardness: &str) -> String {
    format!("quenched and chilled to {hardness}")
}

#[inline]
pub fn what_moves_hardness_at(place: &str) -> String {
    format!("What moves the final hardness, {place}")
}

pub const WHAT_MOVES_HARDNESS: &str = "What moves the final hardness";
pub const WHERE_IT_EMBRITTLES: &str = ", where it embrittles";

#[inline]
pub fn middle_comes_with(target: &str) -> String {
    format!("The middle of the target, {target}, comes with")
}

pub const ONCE: &str = "once";

#[inline]
pub fn times(n: usize) -> String {
    format!("{n} times")
}

pub const FIRST: &str = "First";
pub const SECOND: &str = "Second";
pub const THIRD: &str = "Third";
pub const FOURTH: &str = "Fourth";
pub const FIFTH: &str = "Fifth";
pub const SIXTH: &str = "Sixth";
pub const FOR: &str = "for";
pub const EACH: &str = " each";

#[inline]
pub fn each_at(each: &str, temperature: &str) -> String {
    format!("{each} at {temperature}")
}

pub const OR: &str = ", or ";
