//! What can go wrong or hurt.

#[inline]
pub fn furnace_hot(hottest: &str, austenite: &str) -> String {
    format!("Your furnace may reach {hottest}: expect up to {austenite} austenite left.")
}

#[inline]
pub fn furnace_cold(coldest: &str) -> String {
    format!(
        "Your furnace may be as cold as {coldest}: so cold the piece does not harden. Soak hotter."
    )
}

#[inline]
pub fn ferrite_left(share: &str) -> String {
    format!("{share} ferrite does not harden. Soak hotter or longer.")
}

#[inline]
pub fn network(acm: &str) -> String {
    format!(
        "Above {acm} all carbide is dissolved: a slow cool from here leaves a brittle network. Quench, or soak cooler."
    )
}

#[inline]
pub fn network_left(share: &str) -> String {
    format!(
        "The soak leaves {share} carbide as a network on the grain boundaries: brittle. Normalise from above Acm first, and cool in moving air."
    )
}

#[inline]
pub fn network_formed(film_um: &str) -> String {
    format!(
        "This cooling is so slow that carbide comes out as a brittle network, films of about {film_um}\u{a0}µm. Cool faster, or soak cooler."
    )
}

#[inline]
pub fn skin_through_edge(depth: &str) -> String {
    format!(
        "In open air carbon may be lost to {depth} deep from each side: the whole cutting edge may go soft. Keep the air off, or leave it thicker and grind that much off."
    )
}

#[inline]
pub fn cold_too_short(needs: &str) -> String {
    format!(
        "May be too short in the cold: the core takes about {needs}, known within a factor of two. Hold it twice that."
    )
}

#[inline]
pub fn much_austenite(share: &str) -> String {
    format!(
        "{share} austenite is left: soft, and it may turn brittle later. Soak cooler, or go colder after the quench."
    )
}

#[inline]
pub fn snap_keeps(share: &str) -> String {
    format!(
        "The snap temper may keep {share} more austenite from the cold. Leave it out unless the piece is likely to crack."
    )
}

#[inline]
pub fn plate_martensite(carbon: &str) -> String {
    format!(
        "{carbon} carbon in solution: part of the martensite grows as plates, which crack where they meet. Temper soon."
    )
}

#[inline]
pub fn coarse_grain(astm: &str) -> String {
    format!("Coarse grain, ASTM\u{a0}{astm}: brittle. Soak cooler.")
}

#[inline]
pub fn embrittling(temper: &str, from: &str, to: &str) -> String {
    format!("{temper} is inside the embrittling range. Stay below {from} or go above {to}.")
}

pub const NOT_TEMPERED: &str =
    "Untempered martensite can crack on the bench. Temper within the hour.";
pub const MAY_CRACK: &str = "A harsh quench for this much carbon in solution: it may crack.";

#[inline]
pub fn outside_handbook(from: &str, to: &str) -> String {
    format!("Handbooks harden this grade from {from} to {to}.")
}

// What a forge brings. Common practice, no source.
pub const FORGE_MONOXIDE: &str = "A fuel forge gives off carbon monoxide: outdoors or under a hood, with an alarm. Follow local codes.";
pub const FORGE_GLARE: &str =
    "Shade the eyes against the glare of the fire. No galvanised steel in it: its fumes poison.";

// What a cold bath brings.
pub const LIQUID_NITROGEN: &str = "Liquid nitrogen drives out the air you breathe, without warning: ventilate, measure oxygen in closed rooms, face shield, loose gloves. Never a closed vessel: it bursts. Follow local codes.";
pub const DRY_ICE: &str = "Dry ice fills low rooms with carbon dioxide, and solvents burn: vent, gloves, no flame, no closed box.";
