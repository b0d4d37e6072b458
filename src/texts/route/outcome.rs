//! The outcome in sentences, by the four questions. A name in braces is a place that takes a number to be
//! opened, or words: a translation may have its places in another order.

use std::fmt::Display;

pub const CARBON_DISSOLVED: &str = "{dissolved} of the {content} carbon is in solution.";
pub const CARBIDE_HOLDS_GRAIN: &str =
    "The rest stays in {carbide} carbide and keeps the grain at {grain}.";
pub const NO_CARBIDE_HOLDS_GRAIN: &str = "No carbide is left to hold the grain: {grain}.";
pub const FERRITE_LEFT: &str = "{ferrite} ferrite is left and stays soft: soak hotter.";

// Verdicts on the quench, for `{verdict}`.
pub const VERDICT_FAST: &str = "Fast enough, with room to spare.";
pub const VERDICT_FAST_BUT_CRACKS: &str = "Fast enough, but it may crack.";
pub const VERDICT_ONLY_JUST: &str = "Only just fast enough.";
pub const VERDICT_A_LITTLE_SLOW: &str = "A little too slow, within the error.";
pub const VERDICT_SLOW: &str = "Too slow.";

pub const TO_SPARE: &str = "{verdict} {place} {margin} to spare: {times} slower would do.";
/// A longer stay in vapour, say: more time on the clock, and slower all the same.
pub const TO_SPARE_NEXT_DOES: &str =
    "{verdict} {place} {margin} to spare: {times} slower would do, and {next} as well.";
pub const TO_SPARE_NEXT_HAS: &str = "{verdict} {place} {margin} to spare: {times} slower would do; {next} would still have {next_margin}.";
pub const TO_SPARE_NEXT_MISSES: &str =
    "{verdict} {place} {margin} to spare: {times} slower would do; {next} misses by {next_margin}.";
pub const MISSES: &str =
    "{verdict} {place} it misses by {margin}; {hardened} of the steel there hardens.";
pub const TO_SPARE_BEFORE_BAINITE: &str = "{verdict} {place} {margin} to spare on the way to the bath; held there at {bath}, {bainite} of it turns into bainite.";
pub const MISSES_BEFORE_BAINITE: &str = "{verdict} {place} it misses by {margin} on the way to the bath; held there at {bath}, {bainite} of it turns into bainite.";

/// Behind why no model knows how fast a steel must cool.
pub const QUENCH_BY_HANDBOOK: &str =
    "How fast this steel must cool is not known here: quench it as its maker or a handbook says.";

pub const HARDENS_UP_TO: &str = "It hardens through from the cutting edge up to {part} of the height; above that it stays softer.";
/// `{reservation}` ends the sentence.
pub const SLOWEST_THAT_DOES: &str =
    "{quenchant} is the slowest that hardens it through{reservation}";
pub const NONE_HARDENS_THROUGH: &str = "No quenchant of the list hardens this section through.";

// What has to be said with the name of a quenchant that is offered: ends of a sentence.
pub const NO_RESERVATION: &str = ".";
pub const MAY_CRACK: &str = ", and may crack it.";
pub const ONLY_JUST: &str = ", only just.";
pub const ONLY_JUST_AND_MAY_CRACK: &str = ", only just, and may crack it.";

pub const NO_HARDNESS: &str = "No hardness can be given for this steel.";
pub const UNKNOWN_AFTER_TEMPER: &str =
    "Before the temper: {hardness}. After it the hardness is not known: {reason}";

// After which step, for `{after}`.
pub const AS_QUENCHED: &str = "As quenched, not tempered";
pub const AFTER_TEMPER: &str = "After the temper";
pub const AFTER_TWO_TEMPERS: &str = "After two tempers";
pub const AFTER_THREE_TEMPERS: &str = "After three tempers";

/// How many times as long.
#[inline]
pub fn times(factor: &str) -> String {
    format!("{factor} times")
}

#[inline]
pub fn after_tempers(count: usize) -> String {
    format!("After {count} tempers")
}

#[inline]
pub fn at_place(after: &str, place: impl Display) -> String {
    format!("{after}, {place}")
}

pub const FINAL_HARDNESS: &str =
    "{after}: {hardness}, nine times in ten between {least} and {most}.";
pub const TOO_SOFT: &str = "{after}: {hardness}, too soft for the C scale.";
pub const OUT_OF_TABLE: &str =
    "That is read in a table for this grade, which counts with no quench and no cold bath.";
pub const HARDENS_LEAST: &str = "That is where it hardens least.";
pub const OUTSIDE_HARDNESS: &str =
    "{place} it has {hardness}, nine times in ten between {least} and {most}.";
pub const ON_TARGET: &str = "On target.";

#[inline]
pub fn on_target_in_part(in_ten: &str) -> String {
    format!("On target; of such pieces about {in_ten} in 10 are inside it.")
}

pub const ABOVE_TARGET: &str = "Above the target: a hotter temper brings it down.";
pub const ABOVE_TARGET_UNTEMPERED: &str = "Above the target: a temper brings it down.";
pub const BELOW_TARGET: &str = "Below the target.";

#[inline]
pub fn margin_range(least: &str, most: &str) -> String {
    format!("{least} to {most}\u{a0}s to spare, nine times in ten")
}

// What the band of a margin comes of.
pub const BY_HEAT_TRANSFER: &str = "heat transfer";
pub const BY_NOSE: &str = "time of the nose";
pub const BY_HEAT_OF_STEEL: &str = "heat of the steel";
pub const BY_FURNACE: &str = "furnace";
