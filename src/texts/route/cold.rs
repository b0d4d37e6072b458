//! The cold treatment: sentences whose places take numbers to be opened, and what stands behind these.

pub const NO_AUSTENITE: &str = "No austenite is left that a cold bath could turn.";
pub const AUSTENITE_LEFT: &str = "{before} austenite is left.";
pub const AUSTENITE_LEFT_AT: &str = "{place} {before} austenite is left.";
pub const WORTH_DOING: &str = "The cold bath brings it to {after} and adds {gain}: worth doing.";
pub const WORTH_DOING_SOON: &str = "The cold bath brings it to {after} and adds {gain}: worth doing; every further ten minutes before the bath leaves {lost} more austenite.";
pub const ADDS_LITTLE: &str = "The cold bath brings it to {after} and adds only {gain}.";
pub const WOULD_ADD: &str = "A cold bath would bring it to {after} and add {gain}.";
pub const NOT_WORTH_IT: &str = "Not worth a cold bath: it would add {gain}.";
pub const TEMPERED_AWAY: &str = "The cold bath brings it to {after} and adds {gain}, of which the tempers leave next to nothing.";
pub const TEMPER_DOES_IT: &str =
    "Not worth a cold bath: of what it does these tempers would leave next to nothing.";
pub const WITHOUT_SNAP: &str = "Without the snap temper {left} would be left: it is worth that where the piece may crack on its way into the cold.";

pub const TITLE: &str = "Cold treatment";
pub const PLANNED: &str = "planned";
pub const NOT_PLANNED: &str = "not planned";

#[inline]
pub fn law(bath: &str, before: &str, after: &str) -> String {
    format!(
        "the same law down to {bath}, less what waiting has stabilised\n{before} → {after} austenite"
    )
}

pub const WAITING_LONGER: &str = "waiting longer";

#[inline]
pub fn each_ten_minutes(austenite: &str, hardness: &str) -> String {
    format!("each further ten minutes keeps {austenite} of austenite and costs {hardness}")
}

pub const SNAP_TEMPER: &str = "snap temper";

/// What a snap temper does, and how far that is known.
#[inline]
pub fn snap(
    time: &str,
    temperature: &str,
    takes: &str,
    [least, most]: [&str; 2],
    without: &str,
) -> String {
    format!(
        "{time} at {temperature} stabilises as a long wait does, and takes {takes} before the cold; after the cold {least} to {most} austenite instead of {without}: common practice, no source; how much is stabilised is carried on from waits, and may be twice that (expert value)"
    )
}

pub const BASIS: &str =
    "trend of Harris & Cohen (1949); the numbers of the stabilisation are from memory";
pub const ERROR: &str = "a trend; its numbers are not measured";
