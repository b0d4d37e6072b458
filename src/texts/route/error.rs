//! Why a route, or a step of it, has no outcome.

use std::fmt::Display;

#[inline]
pub fn quenchant(why: impl Display) -> String {
    format!("Quenchant: {why}.")
}

#[inline]
pub fn quench(why: impl Display) -> String {
    format!("Quench: {why}.")
}

#[inline]
pub fn soak_below_a1(soak: &str, a1: &str) -> String {
    format!("Below A1 nothing hardens: the soak is at {soak}, A1 of this steel is {a1}.")
}

#[inline]
pub fn no_equilibrium(temperature: &str) -> String {
    format!("No equilibrium was found at {temperature}: the search did not come to rest.")
}

#[inline]
pub fn no_austenite(least: &str, most: &str) -> String {
    format!("No austenite forms from {least} to {most}: this steel cannot be hardened.")
}

#[inline]
pub fn ferrite_again(temperature: &str) -> String {
    format!("At {temperature} all austenite of this steel has become ferrite again.")
}

#[inline]
pub fn below_a1(temperature: &str, a1: &str) -> String {
    format!("No austenite forms at {temperature}: A1 of this steel is {a1}.")
}

pub const NO_COOLING_CURVE: &str = "The cooling has no curve.";
pub const AUSTENITE_UNKNOWN: &str = "Retained austenite is not known for this steel.";
pub const TEMPERS_TO_COME: &str = "The tempers are not computed yet.";
