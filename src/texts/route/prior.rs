//! Words of the steps before hardening: what they are, what they do, what is wrong with them.

pub use super::super::constituents::{BAINITE, CARBIDE, FERRITE, PEARLITE};

pub const FORGE: &str = "Forge";
pub const NORMALISE: &str = "Normalise";
pub const REFINE: &str = "Refine";
pub const SLOW_ANNEAL: &str = "Anneal, slow cooled";
pub const SUBCRITICAL_ANNEAL: &str = "Anneal below A1";
pub const STRESS_RELIEF: &str = "Stress relief";

/// A step of which follow the settings in a line.
#[inline]
pub fn step(title: &str, settings: &str) -> String {
    format!("{title} {settings}")
}

#[inline]
pub fn forging(start: &str, finish: &str, heats: u8) -> String {
    let word = if heats == 1 { "heat" } else { "heats" };
    format!("{start}\u{2013}\u{2060}{finish}, {heats}\u{a0}{word}")
}

pub const STILL_AIR: &str = "still air";

#[inline]
pub fn furnace_led_down(degrees: &str, until: &str) -> String {
    format!("furnace at {degrees}/h to {until}")
}

// What cuts a piece, in words that follow "it".
pub const DRILLS_EASILY: &str = "drills, saws and files with ease";
pub const DRILLS_SLOWLY: &str = "drills slowly, and files";
pub const FILE_ONLY: &str = "is too hard to drill; a file still bites";
pub const FILE_HARDLY: &str = "is too hard to drill, and a file hardly bites";
pub const GROUND_ONLY: &str = "can only be ground";

// What sets the lower end of a forging window, after a comma or a colon.
pub const LOWER_A3: &str = "below it ferrite forms near A3, and strained grains do not form anew";
pub const LOWER_A1: &str = "below it strained grains do not form anew, and near A1 it cracks";
pub const LOWER_ACM: &str = "below it hard carbide comes out near Acm, and it cracks";

#[inline]
pub fn forging_window(start: &str, finish: &str, band: &str, burns: &str, lower: &str) -> String {
    format!(
        "Forging window by its diagram: {start} down to {finish}, {band}. It burns from {burns}; {lower}."
    )
}

#[inline]
pub fn forging_by_handbook(most: &str, least: &str) -> String {
    format!(" The handbook has {most} down to {least}: keep to the narrower of the two.")
}

#[inline]
pub fn below_a1(a1: &str) -> String {
    format!(
        "Below A1, {a1}: no austenite forms. The hotter and longer, the rounder and coarser the carbide."
    )
}

#[inline]
pub fn skin(deep: &str, stock: &str) -> String {
    format!(
        "In open air this step takes carbon to {deep} deep: {stock} a side to grind, unless the air is kept off."
    )
}

#[inline]
pub fn ferrite_stays(ferrite: &str, grain_astm: &str, carbon: &str) -> String {
    format!(
        "{ferrite} of it stays ferrite; the austenite between, grain ASTM\u{a0}{grain_astm}, holds {carbon} carbon."
    )
}

#[inline]
pub fn carbide_stays(carbon: &str, carbide: &str, grain_astm: &str) -> String {
    format!(
        "{carbon} carbon goes into solution, {carbide} carbide stays and holds the grain at ASTM\u{a0}{grain_astm}."
    )
}

#[inline]
pub fn little_carbide_stays(carbon: &str, grain_astm: &str) -> String {
    format!(
        "{carbon} carbon goes into solution, next to all of it; little holds the grain, ASTM\u{a0}{grain_astm}."
    )
}

#[inline]
pub fn all_dissolves(carbon: &str, grain_astm: &str) -> String {
    format!(
        "All {carbon} carbon goes into solution; nothing holds the grain, ASTM\u{a0}{grain_astm}."
    )
}

pub const COLD_ROUND_CARBIDE: &str = "Cold, it is ferrite with round carbide";
pub const HARDENS_ON_WAY_DOWN: &str = "It hardens on the way down";
pub const COLD_FINE_PEARLITE: &str = "Cold, it is fine pearlite";
pub const COLD_MEDIUM_PEARLITE: &str = "Cold, it is medium pearlite";
pub const COLD_COARSE_PEARLITE: &str = "Cold, it is coarse pearlite";

/// Cold it is several things; `parts` are such as [`part`], with commas between.
#[inline]
pub fn cold_mixed(parts: &str) -> String {
    format!("Cold, it is {parts}")
}

#[inline]
pub fn part(share: &str, constituent: &str) -> String {
    format!("{share} {constituent}")
}

pub const MARTENSITE_AND_AUSTENITE: &str = "martensite and austenite";
pub const HARDENS_IN_AIR: &str = "It hardens in air and may crack when it is cold: anneal at once";

#[inline]
pub fn with_hardness(what: &str, hardness: &str, worked_by: &str) -> String {
    format!("{what}, about {hardness}: it {worked_by}.")
}

/// `least` and `most` are the ends of what it may be.
#[inline]
pub fn with_hardness_between(
    what: &str,
    hardness: &str,
    [least, most]: [&str; 2],
    worked_by: &str,
) -> String {
    format!("{what}, about {hardness}, between {least} and {most}: it {worked_by}.")
}

#[inline]
pub fn without_hardness(what: &str) -> String {
    format!("{what}; its hardness is not known.")
}

pub const NOTHING_KNOWN: &str =
    "What forms on its way down, and how hard it is, no model tells for this steel.";
/// What a network of carbide does.
pub const NETWORK: &str = "A network of carbide stands on the grain boundaries: it makes the steel brittle. Normalise from above Acm and cool faster.";
#[inline]
pub fn normalised_below_acm(acm: &str) -> String {
    format!("Below Acm, {acm}, the network of carbide stays.")
}

pub const NETWORK_BROKEN: &str = "Thin films of carbide stand on some grain boundaries; the next heat above Acm, or a faster cooling, leaves none.";

#[inline]
pub fn of_step(title: &str, caution: &str) -> String {
    format!("{title}: {caution}")
}

#[inline]
pub fn burns(from: &str) -> String {
    format!("From about {from} this steel burns: grain boundaries melt, and the piece is lost.")
}

#[inline]
pub fn begin_no_hotter(start: &str, burns: &str) -> String {
    format!("Begin no hotter than {start}: from about {burns} it burns.")
}

#[inline]
pub fn stop_hammering(finish: &str, lower: &str) -> String {
    format!("Stop hammering at {finish}: {lower}.")
}

pub const TOO_COLD: &str = "Too cold for this step: nothing turns to austenite.";
pub const TOO_HOT: &str = "Too hot for this step: it is above A1, and austenite forms.";

#[inline]
pub fn grain_grown(astm: &str) -> String {
    format!("The grain has grown to ASTM\u{a0}{astm}: go less hot, or for less time.")
}
