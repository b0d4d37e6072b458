//! Words of what the card expects: after which step, and how far the piece hardens.

pub const QUENCH: &str = "quench";
pub const SNAP_TEMPER: &str = "snap temper";

#[inline]
pub fn at(step: &str, place: &str) -> String {
    format!("{step}, {place}")
}

pub const COLD: &str = "cold";
pub const HARDENED_HEIGHT: &str = "Hardened height";
pub const HARDENED_DEPTH: &str = "Hardened depth";

#[inline]
pub fn margin(place: &str, size: &str, range: &str) -> String {
    format!("Margin at the {place}: {size} ({range}).")
}

#[inline]
pub fn misses(place: &str, size: &str, range: &str) -> String {
    format!("The quench misses at the {place} by {size} ({range}).")
}

#[inline]
pub fn held_in_bath(bath: &str, bainite: &str) -> String {
    format!(" Held at {bath}, {bainite} of it turns into bainite.")
}

#[inline]
pub fn part_hardens(share: &str) -> String {
    format!(" {share} hardens there.")
}

#[inline]
pub fn thicker_takes_faster(thickest: &str) -> String {
    format!(" Thicker than {thickest} it takes a faster quench.")
}

#[inline]
pub fn would_harden_up_to(thickest: &str) -> String {
    format!(" Up to {thickest} it would harden through.")
}

#[inline]
pub fn would_harden(medium: &str) -> String {
    format!(" {medium} would harden it.")
}

#[inline]
pub fn would_harden_or_crack(medium: &str) -> String {
    format!(" {medium} would harden it, and may crack it.")
}
