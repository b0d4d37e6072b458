//! Words of the quenchants and their table.

pub const FAST_ENOUGH: &str = "fast enough";
pub const BORDERLINE: &str = "borderline";
pub const TOO_SLOW: &str = "too slow";
pub const MAY_CRACK: &str = ", may crack this steel";
pub const YOUR_OWN: &str = "your own, ";

#[inline]
pub fn own_described(described: &str) -> String {
    format!("{YOUR_OWN}{described}")
}

#[inline]
pub fn size_to_spare(size: &str) -> String {
    format!("{size}: to spare, s")
}

pub const BLADES_IN_TABLE: &str = "The columns are flat pieces as thick as that, not blades: a blade is judged by its spine, and thinner parts of it have more to spare. A cell that is pressed gives the blade this spine, its height stays; its quenchant is taken, not stirred, and a second bath is dropped.";
pub const PRESSED_CELL: &str = "A cell that is pressed gives the piece this size; its quenchant is taken, not stirred, and a second bath is dropped.";
pub const COUNTED_WITH_LEARNT: &str = " It counts with what the logbook has taught.";
pub const A_SQUARE_BAR: &str = "a square bar";
pub const A_FLAT_PIECE: &str = "a flat piece";
pub const WHICH_STILL_DOES: &str = "Which quench still does it";

#[inline]
pub fn about_table(a_piece: &str) -> String {
    format!(
        "The same soaked steel in every quenchant of the list and in your own, not stirred, in the order of their speed on a thin flat piece, which thicker pieces change in places: by how many times the quench could be slower for the centre of {a_piece}, and its seconds to spare at the nose."
    )
}

pub const MEDIA_AND_SIZES: &str = "Quenchants and sizes";
pub const FITTED_TO_AGREEING: &str = "Its curve is fitted here to the figures of its class, which are recalled from memory and agree with each other.";
pub const FITTED_TO_DOUBTFUL: &str =
    "Its curve is fitted here to few or doubtful figures of its class, recalled from memory.";
pub const AN_ESTIMATE: &str = "Its curve is an estimate of the level alone; nothing was measured.";
pub const CURVE_IS_YOURS: &str = "Its curve is yours.";
pub const H_OF_HANDBOOKS: &str = "H of handbooks, by hardened depth, 1/in";
pub const EFFECTIVE_H: &str = "effective H of a 1 in round, 1/in";
pub const ITS_CLASS: &str = "its class";
pub const THIS_CURVE: &str = "this curve, still";
pub const TWO_KINDS_OF_H: &str = "Two kinds of H, which do not mix. That of handbooks was found from hardened depths of round bars and given to words for agitation. The effective one is the constant heat transfer that takes a round of 1 in to half its excess temperature in the same time, with the conductivity of hot austenite: for oils two to three times the handbook's, for water four times.";

#[inline]
pub fn listed_for(bath: &str) -> String {
    format!("Listed for a bath of {bath}.")
}

#[inline]
pub fn usual_bath(least: &str, most: &str) -> String {
    format!("Usual bath: {least} to {most}.")
}

#[inline]
pub fn bath_range(least: &str, most: &str, why: &str) -> String {
    format!("It can be set from {least} to {most}: {why}.")
}

#[inline]
pub fn true_within(factor: &str) -> String {
    format!("The true heat transfer lies within ×{factor} either way.")
}

#[inline]
pub fn size_margin(size: &str) -> String {
    format!("{size}: margin")
}

#[inline]
pub fn cell(medium: &str, size: &str, verdict: &str, factor: &str, seconds: &str) -> String {
    format!("{medium}, {size}: {verdict}, {factor} {seconds} to spare")
}

pub const QUENCHANT: &str = "quenchant";
pub const A_ROUND: &str = "a round";
