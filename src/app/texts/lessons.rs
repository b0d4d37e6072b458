//! Words around the experiments.

use std::fmt::Display;

#[inline]
pub(crate) fn title_is_taken(title: &str) -> String {
    format!("title: “{title}” is an experiment of the project. Give yours another title.")
}

#[inline]
pub(crate) fn file_too_large(most: usize) -> String {
    format!("The file is larger than {most} kB.")
}

#[inline]
pub(crate) fn link_not_opened(why: impl Display) -> String {
    format!("The experiment of the link was not opened. {why}")
}

pub(crate) const LINK_TO_EXPERIMENT: &str = "The link to the experiment";

#[inline]
pub(crate) fn on_the_list(title: &str) -> String {
    format!("“{title}” is on the list.")
}

pub(crate) const BEGIN_WITH_IT: &str = "Begin with it";
pub(crate) const PASTE: &str = "Paste a link or the text of an experiment";
pub(crate) const LINK_OR_TEXT: &str = "Link or text of an experiment";
pub(crate) const TAKE_PASTED: &str = "Take what is pasted";

#[inline]
pub(crate) fn copy_link_of(title: &str) -> String {
    format!("Copy link: {title}")
}

#[inline]
pub(crate) fn about_minutes(minutes: u32) -> String {
    format!("About {minutes} minutes")
}

pub(crate) const PLAYED_TO_END: &str = ". Played to its end.";
pub(crate) const CLASS_TOGETHER: &str = "a class together";
pub(crate) const ABOUT: &str = "Predict first, then try it on the bench, then see why. Your own route waits and comes back when you leave.";
pub(crate) const LOAD: &str = "Load an experiment";

#[inline]
pub(crate) fn called_so_already(title: &str) -> String {
    format!("There is an experiment called “{title}” already.")
}

pub(crate) const PUT_NEW: &str = "Put the new one in its place";
pub(crate) const KEEP_OLD: &str = "Keep the old one";

#[inline]
pub(crate) fn step_of(step: usize, count: usize) -> String {
    format!("Step {step} of {count}")
}

pub(crate) const AT_THE_FORGE: &str = "At the forge";
pub(crate) const ALL_EXPERIMENTS: &str = "All experiments";
pub(crate) const LEAVE: &str = "Leave the experiment";
pub(crate) const GO_ON: &str = "Go on";

#[inline]
pub(crate) fn or_more(least: &str) -> String {
    format!("{least} or more")
}

#[inline]
pub(crate) fn or_less(most: &str) -> String {
    format!("{most} or less")
}

pub(crate) const NOT_KNOWN: &str = "not known";
pub(crate) const SO_IT_IS: &str = "So it is. ";

#[inline]
pub(crate) fn other_way(right: &str) -> String {
    format!("The other way: {right}. ")
}

pub(crate) const WHAT_DO_YOU_EXPECT: &str = "What do you expect?";
pub(crate) const SHOW_ME: &str = "Show me";
pub(crate) const WRITE_A_NUMBER: &str = "Write a number, such as 60.5.";
pub(crate) const NOT_TOLD: &str = "The model does not tell it for the route on the bench.";
pub(crate) const RIGHT_SAYS: &str = "Right: the model says ";
pub(crate) const NOT_QUITE_SAYS: &str = "Not quite: the model says ";
pub(crate) const FOREIGN: &str =
    "From a link or a file, not of this project. With heat, oil and salt follow your local rules.";

#[inline]
pub(crate) fn start_of(title: &str) -> String {
    format!("Start: {title}")
}

pub(crate) const START: &str = "Start";
pub(crate) const EXPERIMENTS: &str = "Experiments";
pub(crate) const SHOWN: &str = "Shown";
pub(crate) const SHOW_EXPERIMENTS: &str = "experiments";
pub(crate) const EXPERIMENT: &str = "Experiment";
pub(crate) const DONE: &str = "Done.";

#[inline]
pub(crate) fn stands_wanted(number: &str, stands: &str, wanted: &str) -> String {
    format!("{number}: {stands}, wanted {wanted}")
}
