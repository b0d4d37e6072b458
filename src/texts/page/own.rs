//! Words of the user's own quenchant.

pub use super::super::advise::coupon::known_within as nose_within;

pub const READINGS: &str = "Time and temperature, one reading per line";
pub const CURVE_EXAMPLE: &str = "time s; temperature °C\n0.00; 850\n0.05; 849.6";
pub const OPEN_FILE: &str = "Open a file";
pub const PROBE_CURVE: &str = "Probe curve";
pub const OR_DROP: &str = "or drop it here";
pub const CURVE_TOO_LONG_TO_KEEP: &str = "So long a curve is not kept for the next visit.";
pub const CURVE_TEMPERATURES: &str = "Temperatures of the curve";
pub const LAST_NOT_ASIDE: &str = "What was typed of your own quenchant at the last visit could not be read, and this browser has no room to set it aside: it stays as it is, and nothing else is kept in its place until you have saved it as a file.";
pub const AS_IT_SAYS: &str = "as it says";

#[inline]
pub fn fit_so_far(steps: usize, rms_k: f64) -> String {
    format!("step {steps}, {rms_k:.1} K off")
}

pub const FIND: &str = "Find the heat transfer";
pub const ITS_FIGURES: &str = "its figures";
pub const A_PROBE_CURVE: &str = "a probe curve";
pub const A_TEST_COUPON: &str = "a test coupon";
pub const THOSE_YOU_HAVE: &str = "Those that you have, of its still bath.";
pub const OF_THE_PROBE: &str = "Of the centre of the 12.5 mm probe of ISO 9950 and ASTM D6200.";
pub const OF_A_COUPON: &str = "Of known steel, quenched, cut and measured as quenched.";
pub const BATH_IN_TEST: &str = "bath in the test";

#[inline]
pub fn left_open(by: &str) -> String {
    format!("What the figures leave open is as in {by}.")
}

#[inline]
pub fn misses_readings(rms: &str, scatter: &str) -> String {
    format!("The computed probe misses the readings by {rms}; their scatter makes {scatter}.")
}

#[inline]
pub fn nickel_ball(s: f64) -> String {
    format!("A nickel ball would take {s:.0} s in it.")
}

pub const CURVE_TOO_LARGE: &str = "The file is larger than 20 MB: average the curve first.";

#[inline]
pub fn or_more(least: &str) -> String {
    format!("{least} or more")
}

#[inline]
pub fn or_less(most: &str) -> String {
    format!("{most} or less")
}

#[inline]
pub fn hardness_at(place: &str) -> String {
    format!("hardness at the {place}")
}

#[inline]
pub fn from_to(first: &str, last: &str) -> String {
    format!("from {first} to {last}")
}

#[inline]
pub fn readings_say_nothing(below: &str) -> String {
    format!("The readings say nothing below {below}.")
}

#[inline]
pub fn readings_say_little(places: &[String], below: &str) -> String {
    let places = places.join(" and ");
    format!("The readings say little {places}, nothing below {below}.")
}

pub const ITS_NAME: &str = "Its name";
pub const USE_IT: &str = "Use this quenchant";
pub const IN_THE_ROUTE: &str = "It is in the route.";
pub const THE_PROBE: &str = "The probe";
pub const ITS_HEAT_TRANSFER: &str = "Its heat transfer";
pub const THAT_ON_BENCH: &str = "that on the bench";
pub const ITS_STEEL: &str = "its steel";
pub const NEAREST_IN_KIND: &str = "quenchant nearest in kind";
pub const WRITE_A_HARDNESS: &str = "Write 52 or 52.5.";
pub const SOAK: &str = "soak";
pub const TIME_AT_TEMPERATURE: &str = "time at temperature";
pub const TIME_IN_AIR: &str = "time in air";
pub const CENTRE_HRC: &str = "centre, HRC";
pub const SURFACE_HRC: &str = "surface, HRC";
pub const TESTER_ERROR_HRC: &str = "error of the tester, HRC";
pub const SHAPE_OF_COUPON: &str = "Shape of the coupon";
pub const ITS_THICKNESS: &str = "its thickness";
pub const WRITE_A_TIME: &str = "Write 12.5 s.";
pub const TEMPERATURES: &str = "Temperatures";
pub const FIT: &str = "Fit";
pub const STOPPED: &str = "Stopped.";
pub const FOUND: &str = "Found.";
pub const CANCEL: &str = "Cancel";
pub const FROM: &str = "From";
pub const FLAT: &str = "flat";
pub const ROUND: &str = "round";
pub const AGREES: &str = "agrees";
pub const APART: &str = "apart";
pub const ANY: &str = "any";
pub const GIVEN: &str = "given";
pub const COMPUTED: &str = "computed";

#[inline]
pub fn at(first: &str) -> String {
    format!("at {first}")
}
