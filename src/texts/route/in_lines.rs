//! Words of a route line by line.

pub const STEEL: &str = "Steel";
pub const COMPOSITION: &str = "Composition, wt %";
pub const END_QUENCH: &str = "End-quench test of the heat";

#[inline]
pub fn bar_point(hrc: &str, distance: &str) -> String {
    format!("{hrc}\u{a0}HRC at {distance}")
}

pub const STOCK: &str = "Structure of the stock";
pub const STEPS_BEFORE: &str = "Steps before";
pub const SECTION: &str = "Section";
pub const FURNACE: &str = "Furnace";
pub const SOAK: &str = "Soak";
pub const IN_AIR: &str = "In air before the bath";
pub const QUENCH: &str = "Quench";
pub const LATER_BATHS: &str = "Baths after it";
pub const QUENCHED_TO: &str = "Quenched to";
pub const SNAP_TEMPER: &str = "Snap temper";
pub const COLD: &str = "Cold";

#[inline]
pub fn chilled(bath: &str, wait: &str) -> String {
    format!("{bath}, {wait} after the quench")
}

pub const TEMPERS: &str = "Tempers";
pub const TARGET: &str = "Hardness asked for";

#[inline]
pub fn target(least_hrc: &str, most_hrc: &str) -> String {
    format!("{least_hrc} to {most_hrc}\u{a0}HRC")
}

#[inline]
pub fn flat(thickness: &str) -> String {
    format!("{thickness} flat")
}

#[inline]
pub fn blade(edge: &str, spine: &str, height: &str) -> String {
    format!("{edge} to {spine} blade, {height} high")
}

#[inline]
pub fn convex(blade: &str) -> String {
    format!("{blade}, convex")
}

pub const THERMOCOUPLE_CHECKED: &str = "thermocouple checked";
pub const TYPE_K_CLASS_1: &str = "type K, class 1";
pub const TYPE_K_CLASS_2: &str = "type K, class 2";

#[inline]
pub fn furnace(band: &str, thermocouple: &str) -> String {
    format!("{band}, {thermocouple}")
}

#[inline]
pub fn furnace_off(band: &str, thermocouple: &str, off: &str) -> String {
    format!("{band}, {thermocouple}, piece hotter than it reads by {off}")
}

#[inline]
pub fn stirred(bath: &str, factor: &str) -> String {
    format!("{bath}, {factor} the still bath")
}

#[inline]
pub fn after(time: &str, bath: &str) -> String {
    format!("after {time} into {bath}")
}

#[inline]
pub fn at(temperature: &str, bath: &str) -> String {
    format!("at {temperature} into {bath}")
}
