//! The rates that curves are drawn with: without what a long step leaves in differences between nodes.

use super::Conduction;
use crate::numeric::order::larger;

/// From this change on that the rates at its ends get wrong a step may be drawn with rough ones, K.
const ROUGH_K: f64 = 1.0;
/// Part of a step within which differences between nodes that are drawn have to even out.
const SMOOTHED: f64 = 0.1;

impl<const W: usize> Conduction<'_, W> {
    /// After a step, s: takes the rates for those to draw with, or smooth ones where the rates at its ends do
    /// not go with what it has changed.
    pub(super) fn settle_drawn_rates(&mut self, step: f64) {
        let rates = self.drawn_k_per_s.iter().zip(&self.rate_k_per_s);
        let change = self.temperature_c.iter().zip(&self.stage_c);
        let apart_k = rates
            .zip(change)
            .map(|((from, to), (now, before))| (0.5 * (from + to) * step - (now - before)).abs());
        if apart_k.fold(0.0, larger) > ROUGH_K {
            self.smooth_rates(SMOOTHED * step);
        } else {
            self.drawn_k_per_s.copy_from_slice(&self.rate_k_per_s);
        }
    }

    /// The rates without differences between nodes that even out within a time, s: two implicit steps of it,
    /// carried on to none for what takes longer.
    fn smooth_rates(&mut self, time_s: f64) {
        self.set_matrix(time_s);
        let [once, twice, ..] = &mut self.stages;
        once.copy_from_slice(&self.rate_k_per_s);
        if self.matrix.factor().is_err() {
            self.drawn_k_per_s.copy_from_slice(&self.rate_k_per_s);
            return;
        }
        let smooth = |rates: &mut [f64]| {
            for (rate, storage) in rates.iter_mut().zip(&self.storage) {
                *rate *= storage / time_s;
            }
            self.matrix.solve(rates);
        };
        smooth(once);
        twice.copy_from_slice(once);
        smooth(twice);
        let both = once.iter().zip(twice.iter());
        for (drawn, (once, twice)) in self.drawn_k_per_s.iter_mut().zip(both) {
            *drawn = 2.0 * once - twice;
        }
    }
}
