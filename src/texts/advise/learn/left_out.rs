//! What was learnt and does not reach a route, with the reason.

/// What follows the colon begins without a capital.
#[inline]
pub fn for_part(words: &str) -> String {
    format!("For part of these: {words}")
}

#[inline]
pub fn either_furnace(one: &str, other: &str) -> String {
    format!(
        "Nothing of a furnace is counted with: {one} and {other} have the same band and thermocouple, and the route may be for either."
    )
}

pub const NO_FURNACE_FITS: &str = "What was learnt of furnaces is left out: this band, thermocouple and soak are those of none of them.";
pub const NOT_OF_SHOP: &str = "What was learnt of the furnace is left out: it is none of the shop. Enter it there, and read the logbook again.";

#[inline]
pub fn furnace(name: &str, why: &str) -> String {
    format!("What was learnt of {name} is left out: {why}.")
}

#[inline]
pub fn another_band(its: &str, of_route: &str) -> String {
    format!("its band is {its}, and the route has {of_route}")
}

pub const ANOTHER_THERMOCOUPLE: &str = "the route has another thermocouple";
pub const CANNOT_BE_SET: &str = "it cannot be set for this soak";

#[inline]
pub fn this_temper(at: &str) -> String {
    format!("this temper at {at}")
}

pub const THESE_TEMPERS: &str = "these tempers";

/// What was learnt stands with a capital.
#[inline]
pub fn other_tempers(learnt: &str, tempers: &str, here: &str) -> String {
    format!("{learnt} was learnt from {tempers} and does not reach {here}.")
}
