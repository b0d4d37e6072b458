//! Words of how it comes about when and where the austenite begins to turn.

pub const START_VALIDITY: &str =
    "0.15 to 1.15 % C, up to 2.1 % Mn, 2 % Cr, 3.5 % Ni, 0.6 % Mo in solution";
pub const MS_VALIDITY: &str =
    "0.1 to 1.3 % C, up to 2.5 % Mn or Cr, 2.3 % Si, 3.5 % Ni, 0.8 % Mo in solution";
pub const MS_ERROR: &str = "18 K (rms) up to 0.7 % C in solution, 33 K above";
pub const GRAIN_NUMBER: &str = "grain number";
pub const MS: &str = "Start of martensite";
pub const MS_HOW: &str =
    "Of what is dissolved, not of the steel; coarser grain begins at a higher temperature.";

#[inline]
pub fn counted(element: &str) -> String {
    format!("{element} that counts, at least what scrap leaves")
}

pub const BS: &str = "Start of bainite";
pub const BS_ERROR: &str = "19 K (rms) on 76 measured starts; this formula is recalled from memory";
pub const FERRITE_LIMIT: &str = "Upper limit of ferrite";
pub const FERRITE_LIMIT_HOW: &str = "A closed form in place of the computed A3.";
pub const FERRITE_LIMIT_VALIDITY: &str = "carbon under 0.6 %, low alloy";
pub const FERRITE_LIMIT_ERROR: &str = "16 K";
pub const PEARLITE_LIMIT: &str = "Upper limit of pearlite";
pub const PEARLITE_LIMIT_HOW: &str =
    "A1 by a closed form, printed in °F; the clock of the quench starts here.";
pub const PEARLITE_LIMIT_VALIDITY: &str = "low alloy";
pub const BAINITE_LIMIT: &str = "Upper limit of bainite";
pub const LATER_BY_END_QUENCH: &str = "later by the end-quench test of the heat, as a logarithm";

#[inline]
pub fn start_term(product: &str) -> String {
    format!("What steel and grain make of the start of {product}")
}

pub const START_TERM_HOW: &str =
    "A logarithm of seconds; every element that is in solution slows it by its own factor.";

#[inline]
pub fn nose_time(product: &str) -> String {
    format!("Nose of {product}")
}

pub const STEEL_AND_GRAIN: &str = "what steel and grain make of it";
pub const TEMPERATURE_OF_NOSE: &str = "temperature of the nose";
pub const UPPER_LIMIT: &str = "upper limit";
pub const NOSE_TIME_HOW: &str =
    "The time to the first per cent at constant temperature, where it is shortest.";
