//! What could be measured next, and what that would teach.

#[inline]
pub fn coupon(thickness: &str) -> String {
    format!("A coupon of {thickness}, quenched like the piece and read at the centre of the cut")
}

pub const AS_QUENCHED: &str = "The next piece read as quenched";
pub const AFTER_COLD: &str = "The next piece read after the cold";
pub const AS_TEMPERED: &str = "The next piece read after its last temper";
pub const ANOTHER_READING: &str = "One more reading on a piece that was measured";
pub const FURNACE_SURVEY: &str =
    "A survey of the furnace at the soak with a second thermocouple of class 1";
pub const OVEN_SURVEY: &str = "A survey of the temper oven with a second thermocouple of class 1";
pub const TEST_BLOCK: &str = "The tester on a test block";

#[inline]
pub fn teaches_nothing(measurement: &str) -> String {
    format!("{measurement} would teach next to nothing about the hardness of the next piece.")
}

#[inline]
pub fn narrows(measurement: &str, from_hrc: f64, to_hrc: f64) -> String {
    format!(
        "{measurement} would narrow the hardness of the next piece from ±{from_hrc:.1} to ±{to_hrc:.1}\u{a0}HRC."
    )
}
