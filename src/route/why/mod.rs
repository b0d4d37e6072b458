//! Why a number is what it is: the formula by which it was computed, what went in, and where each of
//! those came from in turn, from the final hardness back to the composition.
//!
//! The formulas are the laws of the models themselves, traced ([`crate::numeric::formula`]): nothing is
//! written a second time. Where a number comes of a search or of steps in time, the balance is shown
//! that holds between the numbers found, with what found them.

mod balance;
mod derivation;
mod hardness;
mod margin;
mod parts;
mod quantity;
mod quench;
mod soak;
mod stages;
mod starts;
mod temper;
#[cfg(test)]
mod tests;
mod workings;

pub use balance::Balance;
pub use derivation::{Derivation, Input, Typeset};
pub use quantity::Quantity;

use super::outcome::Outcome;
use super::plan::Route;
use super::sentence::NumberKey;
use derivation::{Letters, contents, given, number};
use workings::Workings;

/// How a number of an outcome comes about; none where it is told in words alone, or where the route
/// has no such number.
#[must_use]
pub fn why(key: NumberKey, route: &Route, outcome: &Outcome) -> Option<Derivation> {
    let quantity = Quantity::of(key, outcome)?;
    let workings = Workings::of(route, outcome);
    soak::derive(quantity, &workings)
        .or_else(|| starts::derive(quantity, &workings))
        .or_else(|| quench::derive(quantity, &workings))
        .or_else(|| parts::derive(quantity, &workings))
        .or_else(|| margin::derive(quantity, &workings))
        .or_else(|| hardness::derive(quantity, &workings))
        .or_else(|| stages::derive(quantity, &workings))
        .or_else(|| temper::derive(quantity, &workings))
}

/// Numbers that belong beside one, though they do not go into it.
#[must_use]
pub fn beside(key: NumberKey) -> &'static [Quantity] {
    match key {
        NumberKey::DissolvedCarbon => {
            &[Quantity::AllowedCarbon, Quantity::A1, Quantity::SecondPhase]
        }
        NumberKey::Margin | NumberKey::Behind(Quantity::Factor) => &[
            Quantity::FactorEnd { is_least: true },
            Quantity::FactorEnd { is_least: false },
            Quantity::Hardened,
            Quantity::Bs,
        ],
        NumberKey::RetainedAustenite => &[Quantity::Martensite],
        NumberKey::FinalHardness => &[Quantity::FinalBand],
        _ => &[],
    }
}
