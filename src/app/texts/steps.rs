//! Words of the steps before hardening.

pub(crate) const TAKE_OUT: &str = "Take out";
pub(crate) const ADD_A_STEP: &str = "add a step";
pub(crate) const ADD_A_STEP_NAME: &str = "Add a step";
pub(crate) const HANDBOOK_STEPS: &str = "Handbook steps";

#[inline]
pub(crate) fn departs_from(what: &str) -> String {
    format!("Departs from the {what}.")
}

pub(crate) const BEFORE_HARDENING: &str = "Before hardening";
pub(crate) const NO_STEP_YET: &str = "no step yet: the piece is hardened as it was bought";

#[inline]
pub(crate) fn step_of(step: usize, n: usize) -> String {
    format!("step {step} of {n}")
}

pub(crate) const BEFORE_HARDENING_THEN: &str = "Before hardening ";
pub(crate) const STOCK_IS: &str = "The stock is ";
pub(crate) const STRUCTURE_OF_STOCK: &str = "Structure of the stock";
pub(crate) const FORGE_EFFECT: &str = "to shape, hot";
pub(crate) const NORMALISE_EFFECT: &str = "above A3 or Acm: makes carbide and grain even";
pub(crate) const REFINE_EFFECT: &str =
    "just above A3 or Acm, each cycle less hot: makes the grain fine";
pub(crate) const SLOW_ANNEAL: &str = "anneal, slow cooled";
pub(crate) const SLOW_ANNEAL_EFFECT: &str =
    "above A1, below A3 or Acm, the furnace led down: soft, to be machined";
pub(crate) const ANNEAL_BELOW_A1: &str = "anneal below A1";
pub(crate) const ANNEAL_BELOW_A1_EFFECT: &str =
    "an hour or more just below A1: soft enough to drill";
pub(crate) const STRESS_RELIEF: &str = "relieve stress";
pub(crate) const STRESS_RELIEF_EFFECT: &str = "well below A1, after grinding and straightening";
pub(crate) const DOWN_TO: &str = " down to ";
pub(crate) const FINISHING_TEMPERATURE: &str = "Finishing temperature";
pub(crate) const HAMMER_STOPS_AT: &str = "The hammer stops at";
pub(crate) const TIMES_IN_FIRE: &str = "Times in the fire";
pub(crate) const ONE_HEAT: &str = "one heat";
pub(crate) const WRITE_HEATS: &str = "Write a number of heats.";
pub(crate) const KIND_OF_STEP: &str = "Kind of step";
pub(crate) const TEMPERATURE_OF_STEP: &str = "Temperature of the step";
pub(crate) const TIME_OF_STEP: &str = "Time of the step";
pub(crate) const LED_DOWN_BY: &str = "Led down each hour by";
pub(crate) const DOWN_TO_THEN_AIR: &str = "Down to, then in air";
pub(crate) const COOLING_OF_STEP: &str = "Cooling of the step";
pub(crate) const WAY_OF_COOLING: &str = "Way of cooling";
pub(crate) const IN_A_MEDIUM: &str = "in a medium";
pub(crate) const IN_THE_FURNACE: &str = "in the furnace";
pub(crate) const BROKEN_FILMS: &str = "broken films";
pub(crate) const AS_BOUGHT: &str = "as bought";
pub(crate) const AFTER_EACH_STEP: &str = "The piece after each step";
pub(crate) const NOT_KNOWN: &str = "not known";
pub(crate) const EARLIER: &str = "Earlier";
pub(crate) const LATER: &str = "Later";
pub(crate) const NONE: &str = "none";
pub(crate) const NETWORK: &str = "network";
pub(crate) const AFTER: &str = "after";
pub(crate) const GRAIN: &str = "grain";
pub(crate) const CARBIDE: &str = "carbide";
pub(crate) const BOUNDARIES: &str = "boundaries";
pub(crate) const HARDNESS: &str = "hardness";
pub(crate) const HEATS: &str = "Heats";

#[inline]
pub(crate) fn heats(n: u8) -> String {
    format!("{n} heats")
}

pub(crate) const FROM: &str = " from ";
pub(crate) const AT: &str = " at ";
pub(crate) const OF: &str = " of ";
pub(crate) const FOR: &str = " for ";
pub(crate) const THEN: &str = ", then ";
pub(crate) const MEDIUM: &str = "Medium";
