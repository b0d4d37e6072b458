//! Words of the room transform: what austenite becomes, models that are asked too much, and end-quench
//! tests that tell nothing.

pub use super::constituents::{BAINITE, FERRITE, PEARLITE};
pub use super::units::{FRACTION, TEMPERATURE, TIME, VOLUME_FRACTION};

pub const START_OF_MARTENSITE: &str = "The start of martensite";
pub const GRAIN: &str = "grain";
pub const UNDISSOLVED_CARBIDE: &str = "undissolved carbide";
pub const SHIFT: &str = "shift";
pub const FRACTION_OF_MARTENSITE: &str = "fraction of martensite";
pub const END_OF_QUENCH: &str = "end of the quench";
pub const COLD_TREATMENT: &str = "cold treatment";
pub const WAIT_BEFORE_COLD: &str = "wait before the cold treatment";
pub const COLDEST_BEFORE_COLD: &str = "coldest before the cold treatment";
pub const TEMPER_BEFORE_COLD: &str = "temper before the cold treatment";

pub const ALONG_A_COOLING: &str = "Additivity along a cooling curve";
pub const POINTS_OF_CURVE: &str = "points of the curve";
pub const TEMPERATURES_OF_CURVE: &str = "temperatures of the curve";

pub const CONTINUOUS_COOLING: &str = "Continuous cooling";
pub const RATE_AT_700C: &str = "cooling rate at 700 °C";

pub const CRITICAL_COOLING: &str = "The critical cooling";
pub const MARTENSITE_WANTED: &str = "martensite wanted";

pub const ROUNDS_AND_BAR: &str = "The equivalence of rounds and places on the end-quench bar";
pub const DISTANCE_FROM_END: &str = "distance from the quenched end";
pub const IDEAL_DIAMETER: &str = "ideal diameter";

pub const TEST_OF_A_HEAT: &str = "The end-quench test of a heat";
pub const DISTANCE: &str = "distance";
pub const HARDNESS: &str = "hardness";

#[inline]
pub fn points_needed(fewest: usize, most: usize, here: usize) -> String {
    format!("an end-quench test needs {fewest} to {most} points; {here} given")
}

#[inline]
pub fn point_outside(quantity: &str, value: f64, [least, most]: [f64; 2], unit: &str) -> String {
    format!("{quantity} {value} {unit} is outside {least} to {most} {unit}")
}

#[inline]
pub fn no_fall(least_mm: f64, most_mm: f64) -> String {
    format!(
        "the points do not show where the hardness falls off; the curve through them would have an ideal diameter outside {least_mm} to {most_mm} mm"
    )
}

#[inline]
pub fn no_curve(off_hrc: f64) -> String {
    format!(
        "the points lie {off_hrc:.1}\u{a0}HRC from any end-quench curve of a steel with this carbon"
    )
}

#[inline]
pub fn in_line(line: usize, reason: &str) -> String {
    format!("line {line}: {reason}")
}

#[inline]
pub fn another_scale(scale: &str) -> String {
    format!("the hardness is in {scale}; write it in HRC")
}

pub const WRITE_A_POINT: &str = "write a distance and a hardness, such as 9 mm 54";

#[inline]
pub fn not_a_number(text: &str) -> String {
    format!("“{text}” is not a number")
}
