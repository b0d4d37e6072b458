//! A quenchant of the user's own: the probe, and the heat transfer that was found.

pub const PROBE_TIME: &str = "time from entry; centre of the probe";
pub const DOTS: &str = "dots measured";
pub const LINE: &str = "line computed";

#[inline]
pub fn probe(end_s: &str, apart_k: &str) -> String {
    format!("The probe as measured and as computed over {end_s} s: {apart_k} K apart at most.")
}

pub const HEAT_TRANSFER: &str = "heat transfer, W/m²K; surface of the probe";
pub const WELL_DETERMINED: &str = "well determined";
pub const WEAKLY: &str = "weakly";
pub const NOT_SEEN: &str = "not seen by this test";

#[inline]
pub fn heat_transfer(bath: &str, most_w_m2k: &str, surface: &str) -> String {
    format!(
        "Heat transfer of the bath of {bath}: at most {most_w_m2k} W/m²K, at a surface of {surface}."
    )
}
