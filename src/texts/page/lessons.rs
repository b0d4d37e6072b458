//! Words around the experiments.

use std::fmt::Display;

#[inline]
pub fn title_is_taken(title: &str) -> String {
    format!("title: “{title}” is an experiment of the project. Give yours another title.")
}

#[inline]
pub fn file_too_large(most: usize) -> String {
    format!("The file is larger than {most} kB.")
}

#[inline]
pub fn link_not_opened(why: impl Display) -> String {
    format!("The experiment of the link was not opened. {why}")
}

pub const LINK_TO_EXPERIMENT: &str = "The link to the experiment";

#[inline]
pub fn on_the_list(title: &str) -> String {
    format!("“{title}” is on the list.")
}

pub const BEGIN_WITH_IT: &str = "Begin with it";
pub const PASTE: &str = "Paste a link or the text of an experiment";
pub const LINK_OR_TEXT: &str = "Link or text of an experiment";
pub const TAKE_PASTED: &str = "Take what is pasted";

#[inline]
pub fn copy_link_of(title: &str) -> String {
    format!("Copy link: {title}")
}

#[inline]
pub fn about_minutes(minutes: u32) -> String {
    match minutes {
        1 => "About one minute".to_owned(),
        _ => format!("About {minutes} minutes"),
    }
}

pub const PLAYED_TO_END: &str = ". Played to its end.";
pub const CLASS_TOGETHER: &str = "a class together";
pub const ABOUT: &str = "Predict first, then try it on the bench, then see why. Your own route waits and comes back when you leave.";
pub const LOAD: &str = "Load an experiment";

#[inline]
pub fn called_so_already(title: &str) -> String {
    format!("There is an experiment called “{title}” already.")
}

pub const PUT_NEW: &str = "Put the new one in its place";
pub const KEEP_OLD: &str = "Keep the old one";

#[inline]
pub fn step_of(step: usize, count: usize) -> String {
    format!("Step {step} of {count}")
}

pub const AT_THE_FORGE: &str = "At the forge";
pub const ALL_EXPERIMENTS: &str = "All experiments";
pub const LEAVE: &str = "Leave";
pub const LEAVE_THE_EXPERIMENT: &str = "Leave the experiment";
pub const GO_ON: &str = "Go on";

#[inline]
pub fn or_more(least: &str) -> String {
    format!("{least} or more")
}

#[inline]
pub fn or_less(most: &str) -> String {
    format!("{most} or less")
}

pub const NOT_KNOWN: &str = "not known";
pub const SO_IT_IS: &str = "So it is. ";

#[inline]
pub fn other_way(right: &str) -> String {
    format!("The other way: {right}. ")
}

pub const WHAT_DO_YOU_EXPECT: &str = "What do you expect?";
pub const VEILED: &str = "The bench is veiled until you have chosen.";
pub const SHOW_ME: &str = "Show me";
pub const WRITE_A_NUMBER: &str = "Write a number, such as 60.5.";
pub const NOT_TOLD: &str = "The model does not tell it for the route on the bench.";
pub const RIGHT_SAYS: &str = "Right: the model says ";
pub const NOT_QUITE_SAYS: &str = "Not quite: the model says ";
pub const FOREIGN: &str =
    "From a link or a file, not of this project. With heat, oil and salt follow your local rules.";

#[inline]
pub fn start_of(title: &str) -> String {
    format!("Start: {title}")
}

pub const START: &str = "Start";
pub const EXPERIMENTS: &str = "Experiments";
pub const SHOWN: &str = "Shown";
pub const SHOW_EXPERIMENTS: &str = "experiments";
pub const EXPERIMENT: &str = "Experiment";
pub const DONE: &str = "Done.";

#[inline]
pub fn stands_wanted(number: &str, stands: &str, wanted: &str) -> String {
    format!("{number}: {stands}, wanted {wanted}")
}
