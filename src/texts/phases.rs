//! Words of the room phases: states of equilibrium that are not given, and how the parameters behind them
//! are listed.

pub use super::units::TEMPERATURE;

pub const EQUILIBRIUM_MODEL: &str = "The equilibrium model";
pub const START_OF_AUSTENITE: &str = "start of austenite";

#[inline]
pub fn not_at_rest(temperature_c: f64) -> String {
    format!("no equilibrium was found at {temperature_c:.1} °C: the search did not come to rest")
}

#[inline]
pub fn no_austenite(least_c: f64, most_c: f64) -> String {
    format!("no austenite forms from {least_c:.0} to {most_c:.0} °C: this steel cannot be hardened")
}

#[inline]
pub fn ferrite_again(temperature_c: f64) -> String {
    format!("at {temperature_c:.0} °C all austenite of this steel has become ferrite again")
}

#[inline]
pub fn below_a1(temperature_c: f64, a1_c: f64) -> String {
    format!("no austenite forms at {temperature_c:.0} °C: A1 of this steel is {a1_c:.0} °C")
}

#[inline]
pub fn function_up_to(name: &str, upper_k: f64) -> String {
    format!("{name} up to {upper_k} K")
}

pub const ASSESSMENT_NOT_KNOWN: &str = "not known";
