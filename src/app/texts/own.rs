//! Words of the user's own quenchant.

pub(crate) const READINGS: &str = "Time and temperature, one reading per line";
pub(crate) const CURVE_EXAMPLE: &str = "time s; temperature °C\n0.00; 850\n0.05; 849.6";
pub(crate) const OPEN_FILE: &str = "Open a file";
pub(crate) const PROBE_CURVE: &str = "Probe curve";
pub(crate) const OR_DROP: &str = "or drop it here";
pub(crate) const CURVE_TOO_LONG_TO_KEEP: &str = "So long a curve is not kept for the next visit.";
pub(crate) const CURVE_TEMPERATURES: &str = "Temperatures of the curve";
pub(crate) const LAST_NOT_ASIDE: &str = "What was typed of your own quenchant at the last visit could not be read, and this browser has no room to set it aside: the next change is written over it.";
pub(crate) const AS_IT_SAYS: &str = "as it says";

#[inline]
pub(crate) fn fit_so_far(steps: usize, rms_k: f64) -> String {
    format!("step {steps}, {rms_k:.1} K off")
}

pub(crate) const FIND: &str = "Find the heat transfer";
pub(crate) const ITS_FIGURES: &str = "its figures";
pub(crate) const A_PROBE_CURVE: &str = "a probe curve";
pub(crate) const A_TEST_COUPON: &str = "a test coupon";
pub(crate) const THOSE_YOU_HAVE: &str = "Those that you have, of its still bath.";
pub(crate) const OF_THE_PROBE: &str =
    "Of the centre of the 12.5 mm probe of ISO 9950 and ASTM D6200.";
pub(crate) const OF_A_COUPON: &str = "Of known steel, quenched, cut and measured as quenched.";
pub(crate) const BATH_IN_TEST: &str = "bath in the test";

#[inline]
pub(crate) fn nose_within(factor: f64) -> String {
    format!("What decides the nose is known within ×{factor:.2} either way.")
}

#[inline]
pub(crate) fn left_open(by: &str) -> String {
    format!("What the figures leave open is as in {by}.")
}

#[inline]
pub(crate) fn misses_readings(rms: f64, scatter: f64) -> String {
    format!(
        "The computed probe misses the readings by {rms:.1} K; their scatter makes {scatter:.1} K."
    )
}

#[inline]
pub(crate) fn nickel_ball(s: f64) -> String {
    format!("A nickel ball would take {s:.0} s in it.")
}

pub(crate) const CURVE_TOO_LARGE: &str = "The file is larger than 20 MB: average the curve first.";

#[inline]
pub(crate) fn or_more(least: &str) -> String {
    format!("{least} or more")
}

#[inline]
pub(crate) fn or_less(most: &str) -> String {
    format!("{most} or less")
}

#[inline]
pub(crate) fn hardness_at(place: &str) -> String {
    format!("hardness at the {place}")
}

#[inline]
pub(crate) fn from_to(first: &str, last: &str) -> String {
    format!("from {first} to {last}")
}

#[inline]
pub(crate) fn readings_say(little: &str, below: &str) -> String {
    format!("The readings say {little}nothing below {below}.")
}

pub(crate) const ITS_NAME: &str = "Its name";
pub(crate) const USE_IT: &str = "Use this quenchant";
pub(crate) const IN_THE_ROUTE: &str = "It is in the route.";
pub(crate) const THE_PROBE: &str = "The probe";
pub(crate) const ITS_HEAT_TRANSFER: &str = "Its heat transfer";
pub(crate) const THAT_ON_BENCH: &str = "that on the bench";
pub(crate) const ITS_STEEL: &str = "its steel";
pub(crate) const NEAREST_IN_KIND: &str = "quenchant nearest in kind";
pub(crate) const WRITE_A_HARDNESS: &str = "Write 52 or 52.5.";
pub(crate) const TIME_AT_TEMPERATURE: &str = "time at temperature";
pub(crate) const TIME_IN_AIR: &str = "time in air";
pub(crate) const CENTRE_HRC: &str = "centre, HRC";
pub(crate) const SURFACE_HRC: &str = "surface, HRC";
pub(crate) const TESTER_ERROR_HRC: &str = "error of the tester, HRC";
pub(crate) const SHAPE_OF_COUPON: &str = "Shape of the coupon";
pub(crate) const ITS_THICKNESS: &str = "its thickness";
pub(crate) const WRITE_A_RATE: &str = "Write 72 K/s.";
pub(crate) const WRITE_A_TIME: &str = "Write 12.5 s.";
pub(crate) const TEMPERATURES: &str = "Temperatures";
pub(crate) const FIT: &str = "Fit";
pub(crate) const STOPPED: &str = "Stopped.";
pub(crate) const FOUND: &str = "Found.";
pub(crate) const CANCEL: &str = "Cancel";
pub(crate) const FROM: &str = "From";
pub(crate) const FLAT: &str = "flat";
pub(crate) const ROUND: &str = "round";
pub(crate) const AGREES: &str = "agrees";
pub(crate) const APART: &str = "apart";
pub(crate) const ANY: &str = "any";
pub(crate) const GIVEN: &str = "given";
pub(crate) const COMPUTED: &str = "computed";

#[inline]
pub(crate) fn at(first: &str) -> String {
    format!("at {first}")
}

#[inline]
pub(crate) fn little(at: &str) -> String {
    format!("little {at}, ")
}

pub(crate) const AND: &str = " and ";
