//! Quenchants: what they are called and described by, which baths they may have, and choices that are none.

/// The title of each quenchant of the list, by its name there, which is no text; `{bath}` stands for the
/// temperature of its bath.
pub const TITLES: &str = include_str!("media_titles.csv");
/// What is told beside each: Grossmann's severity of quench, 1/in, as handbooks have it; what else to know of
/// its curve. Apart from the titles, which a page shows from the start.
pub const NOTES: &str = include_str!("media_notes.csv");

pub const OWN: &str = "Your own quenchant";
pub const FURNACE: &str = "Furnace";

#[inline]
pub fn title_with_bath(title: &str, bath: &str) -> String {
    format!("{title}, {bath}")
}

#[inline]
pub fn with_nickel_ball(bath: &str, from_s: f64, to_s: f64) -> String {
    format!("{bath}, nickel ball {from_s:.0} to {to_s:.0} s")
}

#[inline]
pub fn with_highest_rate(bath: &str, from: &str, to: &str, unit: &str) -> String {
    format!("{bath}, probe at most {from} to {to} {unit}")
}

// Why a bath may be no colder and no hotter.
pub const WARM_WATER: &str = "hotter, its film of vapour hardly breaks";
pub const BATH_UNKNOWN_BEYOND: &str = "beyond, nothing is known of it";
pub const WARM_POLYMER: &str =
    "beyond, nothing is known of it, and hot polymer comes out of the water";
pub const BATH_OF_OIL: &str =
    "colder it is thick, hotter it comes near the flash point of thin oil";
pub const BATH_OF_HOT_OIL: &str =
    "colder it is thick, hotter it ages fast and comes near its flash point";
pub const BATH_OF_SALT: &str = "colder it freezes, hotter is not usual";
pub const WARM_PLATES: &str = "hotter, they hardly cool a piece";
pub const GAS_AS_ITS_COOLER: &str = "gas is as warm as its cooler";
pub const AIR_AS_THE_SHOP: &str = "air is as warm as the shop";

#[inline]
pub fn unknown(name: &str) -> String {
    format!(
        "no quenchant of the list is called “{name}”; it has names such as water20, oil_fast, air_still"
    )
}

#[inline]
pub fn points_allowed(count: usize, most: usize) -> String {
    format!("points of the heat-transfer curve: {count}; 2 to {most} are allowed")
}

#[inline]
pub fn heat_transfer_outside(point: usize, h_w_m2k: f64, [least, most]: [f64; 2]) -> String {
    format!("point {point}: {h_w_m2k}\u{a0}W/m²K is outside {least} to {most}\u{a0}W/m²K")
}

#[inline]
pub fn surface_outside(point: usize, [given, least, most]: &[String; 3], unit: &str) -> String {
    format!(
        "point {point}: a surface of {given}\u{a0}{unit} is outside {least} to {most}\u{a0}{unit}"
    )
}

#[inline]
pub fn does_not_rise(point: usize, temperature: &str) -> String {
    format!("point {point}: {temperature} does not rise above the point before it")
}

#[inline]
pub fn bath_outside([given, least, most]: &[String; 3], unit: &str) -> String {
    format!("a bath of {given}\u{a0}{unit} is outside {least} to {most}\u{a0}{unit}")
}

#[inline]
pub fn bath_of_outside(title: &str, outside: &str, reason: &str) -> String {
    format!("{title}: {outside}: {reason}")
}

pub const OWN_HAS_ITS_BATH: &str =
    "a quenchant of your own has its bath with its curve; it cannot have another";

#[inline]
pub fn long_name(length: usize, most: usize) -> String {
    format!("the name of the quenchant has {length} characters; {most} are allowed")
}

#[inline]
pub fn band_outside(factor: f64, [least, most]: [f64; 2]) -> String {
    format!("a band of {factor} is outside {least} to {most}")
}

// What stands in a file where a quenchant should.
pub const NAME_OR_CURVE: &str = "the name of a quenchant or a curve";
pub const LISTED_WITH_MORE: &str =
    "a quenchant of the list has nothing beside `listed` and `bath_c`";
pub const NO_CURVE: &str = "missing field `h_w_m2k`";
