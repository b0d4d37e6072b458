//! Words of the card: its head, and what several of its parts share.

pub mod before;
pub mod expected;
pub mod rows;

pub const NAMELESS_PIECE: &str = "Piece";

#[inline]
pub fn sentence(
    section: &str,
    furnace: &str,
    medium: &str,
    least_hrc: &str,
    most_hrc: &str,
) -> String {
    format!("{section}. Furnace {furnace}, {medium}. Aim: {least_hrc} to {most_hrc}\u{a0}HRC.")
}

/// What every route brings. Common practice, no source.
pub const BEFORE_START: [&str; 3] = [
    "Tongs, bath and the way to it cleared before the furnace is opened; black steel still burns.",
    "Face shield, dry leather gloves, cotton or wool clothes.",
    "Scale and grinding dust: eyes covered, a respirator, sparks away from oil and solvents.",
];

#[inline]
pub fn flat(thickness: &str) -> String {
    format!("{thickness} thick, flat")
}

#[inline]
pub fn blade(spine: &str, edge: &str, height: &str) -> String {
    format!("{spine} at the spine, {edge} at the cutting edge, {height} high")
}

pub const NO_HOLD: &str = "no hold";

#[inline]
pub fn in_the_piece(temperature: &str, detail: &str) -> String {
    format!("for {temperature} in the piece; {detail}")
}

#[inline]
pub fn between(least: &str, most: &str) -> String {
    format!("{least} to {most}")
}

#[inline]
pub fn between_hv(least: &str, most: &str) -> String {
    format!("{least} to {most}\u{a0}HV")
}

#[inline]
pub fn up_in_stages(first: &str, second: &str) -> String {
    format!(" Up in stages: even at {first}, then at {second}, then on.")
}

#[inline]
pub fn up_slowly(first: &str) -> String {
    format!(" Up slowly: even at {first} first, then on.")
}

/// What keeps the air off a soak, and how it can hurt.
pub const KEEP_AIR_OFF: &str = "Keep the air off so hot or long a soak: stainless foil that is made for this heat, folded tight, protective gas or an anti-scale coat. Foil stays on between plates or in air, and slows the quench: choose the plates with foil. Before any liquid it comes off, which is time in air. Foil edges cut: gloves, and open it away from you. Gas takes the place of air: ventilate.";
