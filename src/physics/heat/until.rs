//! When a piece leaves a medium.

use crate::numeric::order::larger;

/// When to leave a medium.
#[derive(Debug, Clone, Copy)]
pub(super) struct Until {
    /// As soon as the whole piece has passed this.
    pub(super) reached: Reached,
    /// At this time at the latest, s.
    pub(super) time_s: f64,
}

/// What the whole piece is to pass.
#[derive(Debug, Clone, Copy)]
pub(super) enum Reached {
    /// No node is hotter than this, °C.
    Cooled(f64),
    /// No node is colder than this, °C.
    Heated(f64),
}

impl Reached {
    /// How far the last node is from it, K; negative beyond.
    pub(super) fn left_k(self, temperature_c: &[f64]) -> f64 {
        let nodes = temperature_c.iter().copied();
        match self {
            Self::Cooled(to_c) => nodes.fold(f64::MIN, larger) - to_c,
            Self::Heated(to_c) => to_c + nodes.fold(f64::MIN, |most, t| larger(most, -t)),
        }
    }
}
