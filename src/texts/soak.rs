//! Words of the room soak: structures that a piece may begin with, and soaks without an outcome.

pub use super::units::{TEMPERATURE, TIME};

pub const SPHEROIDISED: &str = "spheroidised";
pub const COARSE_SPHEROIDISED: &str = "coarse spheroidised";
pub const SUBCRITICAL_ANNEALED: &str = "annealed below A1";
pub const COARSE_PEARLITE: &str = "coarse pearlite";
pub const MEDIUM_PEARLITE: &str = "medium pearlite";
pub const FINE_PEARLITE: &str = "fine pearlite";
pub const QUENCHED_AND_REFINED: &str = "quenched and refined";
pub const AS_FORGED: &str = "as forged";

pub const THE_SOAK: &str = "The model of the soak";
pub const RIPENING: &str = "The model of carbide ripening";
pub const SURFACE_IN_AIR: &str = "The model of the surface in air";

#[inline]
pub fn below_a1(temperature_c: f64, a1_c: f64) -> String {
    format!(
        "below A1 nothing hardens: the soak is at {temperature_c:.0} °C, A1 of this steel is {a1_c:.0} °C"
    )
}
