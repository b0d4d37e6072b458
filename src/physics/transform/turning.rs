//! What the nodes of a cooling piece turn into, for the heat that comes of it.

use super::along::State;
use super::kinetics::Kinetics;
use crate::heat::Turning;
use crate::numeric::order::smaller;

/// Austenite of one kind at every node of a piece, beside ferrite that the soak has left.
pub struct TurningPiece<'a> {
    kinetics: &'a Kinetics,
    ferrite_left: f64,
    kept: Vec<State>,
    next: Vec<State>,
}

impl<'a> TurningPiece<'a> {
    /// A piece of an austenite with a volume fraction of ferrite beside it.
    #[must_use]
    pub const fn new(kinetics: &'a Kinetics, ferrite_left: f64) -> Self {
        Self {
            kinetics,
            ferrite_left,
            kept: Vec::new(),
            next: Vec::new(),
        }
    }
}

impl Turning for TurningPiece<'_> {
    fn begin(&mut self, nodes: usize) -> f64 {
        self.kept = vec![self.kinetics.unchanged(); nodes];
        self.next.clone_from(&self.kept);
        self.ferrite_left
    }

    fn after(&mut self, node: usize, from_c: f64, to_c: f64, duration_s: f64) -> f64 {
        let (Some(kept), Some(next)) = (self.kept.get(node), self.next.get_mut(node)) else {
            return self.ferrite_left;
        };
        *next = *kept;
        if smaller(from_c, to_c) < self.kinetics.upper_limit_c() {
            self.kinetics.step(next, from_c, to_c, duration_s);
        }
        let carbide = self
            .kinetics
            .austenite()
            .undissolved_carbide_volume_fraction;
        let austenite = (1.0 - self.ferrite_left) * (1.0 - carbide);
        self.ferrite_left + austenite * (1.0 - next.left)
    }

    fn keep(&mut self) {
        self.kept.clone_from(&self.next);
    }

    fn martensite_start_c(&self) -> f64 {
        self.kinetics.ms_c()
    }
}
