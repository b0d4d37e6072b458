//! Words of why a number is what it is: what is said in more than one of its files, and the terms beside
//! which they stand.

pub use super::super::constituents::{
    AUSTENITE, BAINITE, CARBIDE, FERRITE, MARTENSITE, PEARLITE, RETAINED_AUSTENITE,
};

pub mod balance;
pub mod hardness;
pub mod margin;
pub mod parts;
pub mod quench;
pub mod soak;
pub mod starts;
pub mod temper;

pub const HOW: &str = "how";
pub const CHECK: &str = "check";
pub const SOURCE: &str = "source";
pub const VALID_FOR: &str = "valid for";
pub const KNOWN_ERROR: &str = "known error";

pub const READ_IN_SOURCE: &str = "read in the source";
pub const FROM_MEMORY: &str = "from memory, not yet compared with the printed source";
pub const FITTED_HERE: &str = "fitted by this project";
pub const COMMON_PRACTICE: &str = "common practice, no source";

#[inline]
pub fn source(authors: &str, year: u16, title: &str, venue: &str, standing: &str) -> String {
    format!("{authors} ({year}). {title}. {venue}; {standing}.")
}

#[inline]
pub fn of_the_steel(element: &str) -> String {
    format!("{element} of the steel")
}

#[inline]
pub fn in_solution(element: &str) -> String {
    format!("{element} in solution")
}

pub const CARBON_OF_STEEL: &str = "carbon of the steel";
pub const CARBIDE_LEFT: &str = "carbide left";
pub const RATE_PARAMETER: &str = "rate parameter";
pub const AUSTENITE_BEFORE: &str = "retained austenite before";

#[inline]
pub fn nose_of(product: &str) -> String {
    format!("nose of {product}")
}

#[inline]
pub fn hardness_after_temper(temper: usize) -> String {
    format!("Hardness after temper {temper}")
}
