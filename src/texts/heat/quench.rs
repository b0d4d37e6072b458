//! Quenches and sections that cannot be computed.

#[inline]
pub fn number_outside(field: &str, [value, least, most]: &[String; 3], unit: &str) -> String {
    format!("{field}: {value} is outside {least} to {most} {unit}")
}

pub const AGITATION: &str = "agitation";
pub const TIMES_THE_STILL_BATH: &str = "times the still bath";
pub const QUENCH_FROM: &str = "quench from";
pub const TIME_IN_AIR: &str = "time in air before the bath";
pub const TIME_IN_BATH: &str = "time in the bath";
pub const OUT_OF_BATH_AT: &str = "out of the bath at";
pub const END_OF_QUENCH: &str = "end of quench";
pub const MARTENSITE_START: &str = "start of martensite";
pub const FURNACE: &str = "furnace";
pub const SEVERITY: &str = "severity of quench";
pub const DISTANCE_FROM_END: &str = "distance from the quenched end";
pub const TEMPERATURE_OF_BAR: &str = "temperature of the bar";

#[inline]
pub fn bath_too_hot(bath: &str, piece: &str) -> String {
    format!("the bath at {bath} does not cool a piece at {piece}")
}

pub const NOT_FINITE: &str = "the computation of the cooling gave no finite result";

#[inline]
pub fn size_outside(field: &str, value: f64, least: f64, largest: f64) -> String {
    format!("{field}: {value} mm is outside {least} to {largest} mm")
}

pub const THICKNESS: &str = "thickness";
pub const DIAMETER: &str = "diameter";
pub const SIDE: &str = "side";
pub const EDGE: &str = "thickness of the cutting edge";
pub const SPINE: &str = "thickness of the spine";
pub const HEIGHT: &str = "height";

#[inline]
pub fn edge_over_spine(edge_mm: f64, spine_mm: f64) -> String {
    format!("the cutting edge ({edge_mm} mm) is thicker than the spine ({spine_mm} mm)")
}
