//! What makes no sense in a route or in a trial of it, and the names of its fields.

/// A quantity outside of what is allowed; the unit may be empty.
#[inline]
pub fn outside(what: &str, value: &str, least: &str, most: &str, unit: &str) -> String {
    let space = if unit.is_empty() { "" } else { " " };
    format!("{what} {value}{space}{unit} is outside {least} to {most}{space}{unit}")
}

#[inline]
pub fn too_long(what: &str, length: usize, most: usize) -> String {
    format!("{what} has {length} characters; {most} are allowed")
}

#[inline]
pub fn of_step(step: &str, fault: &str) -> String {
    format!("{step}: {fault}")
}

pub const PIECE: &str = "the description of the piece";
pub const GRADE: &str = "the grade";
pub const FURNACE_BAND: &str = "furnace band";
pub const FURNACE_OFFSET: &str = "offset of the furnace";
pub const SOAK_TEMPERATURE: &str = "soak temperature";
pub const SOAK_TIME: &str = "soak time";
pub const QUENCHANT: &str = "the name of the quenchant";
pub const AGITATION: &str = "agitation";
pub const AIR_DELAY: &str = "time in air";
pub const QUENCH_END: &str = "end of the quench";

#[inline]
pub fn too_many_baths(count: usize, most: usize) -> String {
    format!("the quench has {count} later baths; {most} are allowed")
}

pub const BATH_TIME: &str = "time in the bath";
pub const OUT_OF_BATH: &str = "out of the bath at";

#[inline]
pub fn not_above_both_baths([out, warmer]: [f64; 2], unit: &str) -> String {
    format!(
        "out of the bath at {out} {unit} is not above both baths, the warmer of which is at {warmer} {unit}"
    )
}

pub const COLD_BATH: &str = "cold bath";
pub const COLD_TIME: &str = "time in the cold bath";
pub const COLD_DELAY: &str = "wait before the cold bath";
pub const SNAP_TEMPER: &str = "snap temper";
pub const SNAP_TIME: &str = "time of the snap temper";

#[inline]
pub fn too_many_tempers(count: usize, most: usize) -> String {
    format!("the route has {count} tempers; {most} are allowed")
}

pub const TEMPER_TEMPERATURE: &str = "temper temperature";
pub const TEMPER_TIME: &str = "temper time";
pub const LEAST_HARDNESS: &str = "least hardness";
pub const MOST_HARDNESS: &str = "greatest hardness";

#[inline]
pub fn target_upside_down(least_hrc: f64, most_hrc: f64) -> String {
    format!(
        "the target runs from {least_hrc} to {most_hrc}\u{a0}HRC; the first must not be above the second"
    )
}

#[inline]
pub fn too_many_prior_steps(count: usize, most: usize) -> String {
    format!("the route has {count} steps before hardening; {most} are allowed")
}

#[inline]
pub fn prior_step(n: usize, title: &str) -> String {
    format!("step {n} ({title})")
}

pub const TEMPERATURE: &str = "temperature";
pub const TIME: &str = "time";
pub const FINISHING_TEMPERATURE: &str = "finishing temperature";
pub const HEATS: &str = "number of heats";
pub const MEDIUM: &str = "the name of the medium";

#[inline]
pub fn bath_does_not_cool([bath, leaves]: [f64; 2], unit: &str) -> String {
    format!("the bath at {bath} {unit} does not cool a piece at {leaves} {unit}")
}

pub const FURNACE_COOLING: &str = "cooling in the furnace";
pub const FURNACE_COOLING_END: &str = "end of the furnace cooling";

pub const SOAK_OFF: &str = "the soak off by";
pub const TEMPERS_OFF: &str = "tempers off by";
pub const THICKNESS_OFF: &str = "thickness off by";
pub const HEAT_TRANSFER_FACTOR: &str = "factor on the heat transfer";
pub const NOSE_TIME_FACTOR: &str = "factor on the time of the nose";
pub const MARTENSITE_START_OFF: &str = "start of martensite off by";
pub const QUENCHED_HARDNESS_OFF: &str = "hardness as quenched off by";
pub const TEMPERED_HARDNESS_OFF: &str = "hardness after a temper off by";
