//! Words of the outcome.

use std::fmt::Display;

pub use super::super::constituents::{
    AUSTENITE, BAINITE, CARBIDE, FERRITE, MARTENSITE, PEARLITE, RETAINED_AUSTENITE,
};

pub const LOOK_CLOSER: &str = "look closer";
pub const MADE_OF: &str = "What it is made of";

#[inline]
pub fn made_of_at(place: &str) -> String {
    format!("What it is made of, {place}")
}

#[inline]
pub fn target_range(least: &str, most: &str) -> String {
    format!("target {least} to {most}")
}

pub const HARDNESS_HRC: &str = "Hardness, HRC";

#[inline]
pub fn hardness_at(place: &str) -> String {
    format!("Hardness, {place}, HRC")
}

pub const NO_HARDNESS: &str = "No hardness is known.";
pub const OFF_THE_SCALE: &str = "Too soft for the C scale.";
pub const HOW_SURE_BY_PIECES: &str = "How sure, by pieces drawn";
pub const IN_USE: &str = "What it means in use";
pub const HOLDS: &str = "holds";
pub const MISSES: &str = "misses";
pub const SOAK: &str = "soak";
pub const QUENCH: &str = "quench";
pub const COLD: &str = "cold";
pub const TEMPER: &str = "temper";
pub const OUTCOME: &str = "Outcome";
pub const HARDNESS_IN_THE_END: &str = "hardness after the last step";
pub const AUSTENITE_IN_THE_END: &str = "retained austenite after the last step";
pub const AS_YOUR_TESTER_READS: &str = "as your tester reads it";

#[inline]
pub fn more_refused(count: usize) -> String {
    format!(" No outcome for {count} more: too cold to harden, or outside the models.")
}

#[inline]
pub fn nine_in_ten(count: usize) -> String {
    format!("Nine in ten of {count} pieces.")
}

pub const ABOUT_DRAWN: &str = "The bands elsewhere on the bench are the errors of the models, with what the furnace's band does and, where a piece may harden only in part, what is open about its quench. Here pieces are drawn with all that is open at once: furnace, thermocouple, heat of the steel, thickness, quenchant, tempers and models. The two need not agree.";
pub const SHOP_COUNTS_ONCE: &str =
    " What you own is counted once you have filled in your shop under Decide.";

#[inline]
pub fn shop_unread(reason: impl Display) -> String {
    format!(" Your shop could not be read, and is not counted: {reason}")
}

pub const DRAWN_ONCE_ALONE: &str = "Pieces are drawn once the bench is left alone.";

#[inline]
pub fn learnt_unread(fault: &str, is_aside: bool) -> String {
    let where_it_is = if is_aside {
        "It is set aside in this browser, and your shop is as it was."
    } else {
        "This browser has no room to set it aside: it stays as it is, and no change of your shop is kept until you have saved it as a file."
    };
    format!(
        "What the logbook has taught could not be read: {fault}. {where_it_is} Read the logbook again under Decide."
    )
}

pub const LEARNT_TELLS_NOTHING: &str = "What the logbook has taught is on, and tells nothing of the furnace, the quenchant or the heat here.";
pub const COUNTED_WITH_LEARNT: &str = "Counted with what the logbook has taught:";
pub const LEARNT_WITH_OTHER_MODELS: &str = "What the logbook has taught was learnt with another version of the models: it is kept, and left out until the logbook is read again.";
pub const LEARNT: &str = "What the logbook has taught";
pub const LEAVE_IT_OUT: &str = "Leave it out";
pub const LEARN_AGAIN: &str = "Learn it again";

#[inline]
pub fn set_to(temperature: &str) -> String {
    format!("Set {temperature}")
}

#[inline]
pub fn hardness_range(least: &str, most: &str) -> String {
    format!("{least} to {most}\u{a0}HRC")
}
