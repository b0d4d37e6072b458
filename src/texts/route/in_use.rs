//! Words of what a route means for the use of the piece, against another route.

pub use super::super::constituents::{CARBIDE, RETAINED_AUSTENITE as AUSTENITE};

pub const WEAR: &str = "Wear";
pub const EDGE: &str = "Edge stability";
pub const TOUGHNESS: &str = "Toughness";

#[inline]
pub fn differs(what: &str, here: &str, there: &str) -> String {
    format!("{what} {here}, there {there}")
}

pub const HARDNESS: &str = "hardness";
pub const SOFT: &str = "ferrite, pearlite and bainite";
pub const GRAIN: &str = "grain number";

#[inline]
pub fn carbide_sizes(here_um: &str, there_um: &str) -> String {
    format!("carbide of {here_um}\u{a0}µm, there {there_um}\u{a0}µm")
}

#[inline]
pub fn carbide_kinds(here: &str, there: &str) -> String {
    format!("most of the carbide is {here}, there {there}")
}

#[inline]
pub fn carbide_kind(name: &str, [least_hv, most_hv]: [u16; 2]) -> String {
    format!("{name} of {least_hv} to {most_hv}\u{a0}HV")
}

#[inline]
pub fn plates(here: &str, there: &str, least: &str) -> String {
    format!(
        "carbon in solution {here}, there {there}: above {least} part of the martensite is plates"
    )
}

pub const EMBRITTLING_TEMPER: &str = "a temper in the embrittling range";
pub const TEMPERED: &str = "tempered";

#[inline]
pub fn only_here(what: &str) -> String {
    format!("{what} only here")
}

#[inline]
pub fn only_there(what: &str) -> String {
    format!("{what} only there")
}
