//! Why a route that was found stands where it does.

pub const CHANCE_NOT_TOLD: &str = "Its chance cannot be told.";
pub const ALL_MAY_CRACK: &str = "Every quench that would do may crack the piece.";
pub const ALL_EMBRITTLE: &str =
    "After a sound quench every temper that would do lies in the embrittling range.";

#[inline]
pub fn best_chance(target: &str, chance: &str) -> String {
    format!("The best chance of {target}: {chance}.")
}

#[inline]
pub fn target(least: &str, most: &str) -> String {
    format!("{least} to {most}\u{a0}HRC")
}

#[inline]
pub fn may_crack(chance: &str) -> String {
    format!("Its quench is so harsh that the piece may crack; its chance is {chance}.")
}

#[inline]
pub fn embrittles(chance: &str) -> String {
    format!("Its temper lies in the embrittling range; its chance is {chance}.")
}

/// The cause stands after the colon.
#[inline]
pub fn less_likely(chance: &str, best: &str, cause: &str) -> String {
    format!("A chance of {chance} against {best}: {cause}.")
}

#[inline]
pub fn spreads_wider(half_band: &str, of_best: &str) -> String {
    format!("its hardness spreads wider, by {half_band} either way against {of_best}")
}

#[inline]
pub fn off_the_middle(middle: &str) -> String {
    format!("its pieces lie about {middle}, off the middle of the target")
}

pub const MISSES_A_LIMIT: &str = "more of its pieces miss a limit";
pub const SPREAD_AND_DISTANCE: &str =
    "spread and distance from the middle of the target together cost it that";

/// What it is less fit by follows “but”.
#[inline]
pub fn about_as_likely(chance: &str, less_fit: &str) -> String {
    format!("About as likely, {chance}, but {less_fit}.")
}

#[inline]
pub fn coarser_grain(grain: &str, of_best: &str) -> String {
    format!("with coarser grain, {grain} against {of_best}")
}

#[inline]
pub fn more_austenite(part: &str, of_best: &str) -> String {
    format!("with more retained austenite, {part} against {of_best}")
}

#[inline]
pub fn longer(hours: &str, of_best: &str) -> String {
    format!("it takes {hours} h against {of_best}")
}

#[inline]
pub fn behind_in(property: &str) -> String {
    format!("behind in {property} by all that differs together")
}

pub const NEITHER_CHECKED: &str =
    "Not checked: the models tell neither the margin of its quench nor its retained austenite.";
pub const MARGIN_NOT_CHECKED: &str =
    "Not checked: the models do not tell the margin of its quench.";
pub const AUSTENITE_NOT_CHECKED: &str =
    "Not checked: the models do not tell its retained austenite.";
