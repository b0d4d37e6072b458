//! Words of the card's rows of the steps before hardening.

pub const STRAIGHTEN_RED: &str = " Straighten while it is red, not after hardening.";
pub const NETWORK_FOR_NOW: &str =
    " Carbide stands on its grain boundaries until a later step breaks it up.";
pub const NETWORK_COOL_FASTER: &str =
    " Carbide stands on its grain boundaries: cool it faster, from above Acm.";
pub const NETWORK_NORMALISE: &str =
    " Carbide stands on its grain boundaries: normalise from above Acm before hardening.";

#[inline]
pub fn forged(band: &str, finish: &str, heats: u8, hold: &str) -> String {
    let word = if heats == 1 { "heat" } else { "heats" };
    format!("{band}, down to {finish}, {heats} {word} of {hold}")
}

#[inline]
pub fn cold_it(worked_by: &str) -> String {
    format!(" Cold, it {worked_by}.")
}

// What to look for while the piece is hot. Common practice, no source.
pub const BACK_INTO_FIRE: &str = "Back into the fire before it is colder than that.";
pub const UP_EVENLY: &str = "Bring it up evenly; count from when the steel is at heat.";
pub const EVEN_COLOUR: &str = "An even colour all over, no longer.";
pub const COUNT_PAST_MAGNET: &str = "Count from when the steel is at heat; a magnet has let go.";
pub const COUNT_AT_HEAT: &str = "Count from when the steel is at heat.";
pub const TRUST_THERMOCOUPLE: &str = "Trust the thermocouple: a magnet does not tell A1.";
pub const ABOVE_A1: &str = "Above A1: this is no hold below it.";

#[inline]
pub fn lead_furnace_down(degrees: &str, until: &str) -> String {
    format!("Lead the furnace down by {degrees} an hour to {until}, then still air.")
}

#[inline]
pub fn cool_in_bath(medium: &str, bath: &str) -> String {
    format!("Cool in {medium} at {bath}.")
}

#[inline]
pub fn cool_until_hand_warm(medium: &str) -> String {
    format!("Cool in {medium} until hand warm.")
}

#[inline]
pub fn cool_until_black(medium: &str) -> String {
    format!("Cool in {medium} until black.")
}

#[inline]
pub fn cool_in(medium: &str) -> String {
    format!("Cool in {medium}.")
}
