//! Words of the outcome.

use std::fmt::Display;

pub(crate) const LOOK_CLOSER: &str = "look closer";
pub(crate) const MADE_OF: &str = "What it is made of";
pub(crate) const RETAINED_AUSTENITE: &str = "retained austenite";

#[inline]
pub(crate) fn target_range(least: &str, most: &str) -> String {
    format!("target {least} to {most}")
}

pub(crate) const HARDNESS_HRC: &str = "Hardness, HRC";
pub(crate) const NO_HARDNESS: &str = "No hardness is known.";
pub(crate) const HOW_SURE_BY_PIECES: &str = "How sure, by pieces drawn";
pub(crate) const IN_USE: &str = "What it means in use";
pub(crate) const HOLDS: &str = "holds";
pub(crate) const MISSES: &str = "misses";
pub(crate) const SOAK: &str = "soak";
pub(crate) const QUENCH: &str = "quench";
pub(crate) const SNAP: &str = "snap";
pub(crate) const COLD: &str = "cold";
pub(crate) const TEMPER: &str = "temper";
pub(crate) const AUSTENITE: &str = "austenite";
pub(crate) const MARTENSITE: &str = "martensite";
pub(crate) const CARBIDE: &str = "carbide";
pub(crate) const PEARLITE: &str = "pearlite";
pub(crate) const BAINITE: &str = "bainite";
pub(crate) const FERRITE: &str = "ferrite";
pub(crate) const OUTCOME: &str = "Outcome";
pub(crate) const HARDNESS_IN_THE_END: &str = "hardness in the end";
pub(crate) const AUSTENITE_IN_THE_END: &str = "retained austenite in the end";
pub(crate) const AS_YOUR_TESTER_READS: &str = "as your tester reads it";

#[inline]
pub(crate) fn more_refused(count: usize) -> String {
    format!(" {count} more have no outcome: too cold to harden, or outside the models.")
}

#[inline]
pub(crate) fn nine_in_ten(count: usize) -> String {
    format!("Nine in ten of {count} pieces.")
}

pub(crate) const ABOUT_DRAWN: &str = "The bands elsewhere on the bench are the errors of the models, with what the furnace's band does. Here pieces are drawn with all that is open at once: furnace, thermocouple, heat of the steel, thickness, quenchant, tempers and models. The two need not agree.";
pub(crate) const SHOP_COUNTS_ONCE: &str =
    " What you own is counted once you have filled in your shop under Decide.";

#[inline]
pub(crate) fn shop_unread(reason: impl Display) -> String {
    format!(" Your shop could not be read, and is not counted: {reason}")
}

pub(crate) const DRAWN_ONCE_ALONE: &str = "Pieces are drawn once the bench is left alone.";

#[inline]
pub(crate) fn learnt_unread(fault: &str, is_aside: bool) -> String {
    let where_it_is = if is_aside {
        "It is set aside in this browser, and your shop is as it was."
    } else {
        "This browser has no room to set it aside: the next change of your shop is written over it."
    };
    format!(
        "What the logbook has taught could not be read: {fault}. {where_it_is} Read the logbook again under Decide."
    )
}

pub(crate) const LEARNT_TELLS_NOTHING: &str = "What the logbook has taught is on, and tells nothing of the furnace, the quenchant or the heat here.";
pub(crate) const COUNTED_WITH_LEARNT: &str = "Counted with what the logbook has taught:";
pub(crate) const LEARNT_WITH_OTHER_MODELS: &str = "What the logbook has taught was learnt with another version of the models: it is kept, and left out until the logbook is read again.";
pub(crate) const LEARNT: &str = "What the logbook has taught";
pub(crate) const LEAVE_IT_OUT: &str = "Leave it out";
pub(crate) const LEARN_AGAIN: &str = "Learn it again";

#[inline]
pub(crate) fn hardness_range(least: &str, most: &str) -> String {
    format!("{least} to {most}\u{a0}HRC")
}
