//! Words of decide.

pub(crate) const NOTHING_COMPARED: &str = "Nothing in the logbook can be compared with the models.";
