//! Words of the steps before hardening.

pub use super::super::constituents::CARBIDE;

pub const TAKE_OUT: &str = "Take out";
pub const ADD_A_STEP: &str = "add a step";
pub const ADD_A_STEP_NAME: &str = "Add a step";
pub const HANDBOOK_STEPS: &str = "Handbook steps";

#[inline]
pub fn departs_from(what: &str) -> String {
    format!("Departs from the {what}.")
}

pub const BEFORE_HARDENING: &str = "Before hardening";
pub const NO_STEP_YET: &str = "no step yet: the piece is hardened as it was bought";

#[inline]
pub fn step_of(step: usize, n: usize) -> String {
    format!("step {step} of {n}")
}

pub const BEFORE_HARDENING_THEN: &str = "Before hardening ";
pub const STOCK_IS: &str = "The stock is ";
pub const STRUCTURE_OF_STOCK: &str = "Structure of the stock";
pub const FORGE: &str = "forge";
pub const NORMALISE: &str = "normalise";
pub const REFINE: &str = "refine";
pub const FORGE_EFFECT: &str = "to shape, hot";
pub const NORMALISE_EFFECT: &str = "above A3 or Acm: makes carbide and grain even";
pub const REFINE_EFFECT: &str = "just above A3 or Acm, each cycle less hot: makes the grain fine";
pub const SLOW_ANNEAL: &str = "anneal, slow cooled";
pub const SLOW_ANNEAL_EFFECT: &str =
    "above A1, with little carbon above A3, the furnace led down: soft, to be machined";
pub const ANNEAL_BELOW_A1: &str = "anneal below A1";
pub const ANNEAL_BELOW_A1_EFFECT: &str = "an hour or more just below A1: soft enough to drill";
pub const STRESS_RELIEF: &str = "relieve stress";
pub const STRESS_RELIEF_EFFECT: &str = "well below A1, after grinding and straightening";
pub const DOWN_TO: &str = " down to ";
pub const FINISHING_TEMPERATURE: &str = "Finishing temperature";
pub const HAMMER_STOPS_AT: &str = "The hammer stops at";
pub const TIMES_IN_FIRE: &str = "Times in the fire";
pub const ONE_HEAT: &str = "one heat";
pub const WRITE_HEATS: &str = "Write a number of heats.";
pub const KIND_OF_STEP: &str = "Kind of step";
pub const TEMPERATURE_OF_STEP: &str = "Temperature of the step";
pub const TIME_OF_STEP: &str = "Time of the step";
pub const LED_DOWN_BY: &str = "Led down each hour by";
pub const DOWN_TO_THEN_AIR: &str = "Down to, then in air";
pub const COOLING_OF_STEP: &str = "Cooling of the step";
pub const WAY_OF_COOLING: &str = "Way of cooling";
pub const IN_A_MEDIUM: &str = "in a medium";
pub const IN_THE_FURNACE: &str = "in the furnace";
pub const BROKEN_FILMS: &str = "broken films";
pub const AS_BOUGHT: &str = "as bought";
pub const AFTER_EACH_STEP: &str = "The piece after each step";
pub const NOT_KNOWN: &str = "not known";
pub const EARLIER: &str = "Earlier";
pub const LATER: &str = "Later";
pub const NONE: &str = "none";
pub const NETWORK: &str = "network";
pub const AFTER: &str = "after";
pub const GRAIN: &str = "grain";
pub const BOUNDARIES: &str = "boundaries";
pub const HARDNESS: &str = "hardness";
pub const HEATS: &str = "Heats";

#[inline]
pub fn heats(n: u8) -> String {
    format!("{n} heats")
}

pub const FROM: &str = " from ";
pub const AT: &str = " at ";
pub const OF: &str = " of ";
pub const FOR: &str = " for ";
pub const THEN: &str = " then ";
pub const MEDIUM: &str = "Medium";
