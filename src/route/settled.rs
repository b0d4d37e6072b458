//! How far a cooling curve has to be followed: until what martensite can form is settled.

use super::baths::Baths;
use crate::heat::Medium;
use crate::transform::Kinetics;

/// The same as [`settled_in_c`] for the baths of a route: several are followed to the end.
pub(super) fn settled_c(kinetics: &Kinetics, baths: &Baths, end_c: f64) -> f64 {
    if baths.later.is_empty() {
        settled_in_c(kinetics, &baths.first, end_c)
    } else {
        end_c
    }
}

/// Temperature below which a cooling curve no longer changes what martensite can form, °C: Ms, or
/// where the quench ends if the piece leaves a hot bath above it.
pub(super) fn settled_in_c(kinetics: &Kinetics, medium: &Medium, end_c: f64) -> f64 {
    /// The piece leaves a bath within this distance of it, K, with room to spare.
    const BATH_K: f64 = 10.0;
    let settled_c = kinetics.lowest_ms_c();
    if medium.bath_c + BATH_K < settled_c {
        settled_c.max(end_c)
    } else {
        end_c
    }
}
