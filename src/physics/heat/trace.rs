//! From the steps of the solver to cooling curves.

use super::conduct::Conduction;
use super::curve::{CoolingCurve, Place};

/// How far a curve may run beside the straight line between its points, K.
const STRAIGHTNESS_K: f64 = 0.15;
/// Most points that one step of the solver is drawn with.
const MOST_PARTS: f64 = 16.0;

/// Largest rate at an end of a step that it is drawn with, over its mean rate: a cubic with more turns round
/// within it, where a quenchant that takes hold at the end of a step has just let the rate jump.
const MOST_STEEP: f64 = 3.0;
/// Beyond that, what the piece may turn round by within a step as it glows back, K.
const MOST_TURN_K: f64 = 2.0;

/// A place as a weighted mean of nodes.
pub(super) struct Watch {
    pub(super) place: Place,
    pub(super) nodes: Vec<(usize, f64)>,
}

impl Watch {
    /// A single node.
    pub(super) fn node(place: Place, node: usize) -> Self {
        Self {
            place,
            nodes: vec![(node, 1.0)],
        }
    }

    /// A place between nodes at rising `positions`, by the cubic through the four nearest; node
    /// `i` of the positions is node `number(i)` of the mesh.
    pub(super) fn between(
        place: Place,
        at: f64,
        positions: &[f64],
        number: impl Fn(usize) -> usize,
    ) -> Self {
        let upper = positions.partition_point(|x| *x < at);
        let first = upper
            .saturating_sub(2)
            .min(positions.len().saturating_sub(4));
        let near: Vec<(usize, f64)> = positions
            .iter()
            .copied()
            .enumerate()
            .skip(first)
            .take(4)
            .collect();
        let nodes = near
            .iter()
            .map(|&(i, x)| {
                let weight = near
                    .iter()
                    .filter(|(j, _)| *j != i)
                    .map(|(_, other)| (at - other) / (x - other))
                    .product();
                (number(i), weight)
            })
            .collect();
        Self { place, nodes }
    }

    fn read(&self, values: &[f64]) -> f64 {
        self.nodes
            .iter()
            .map(|&(node, weight)| weight * values.get(node).copied().unwrap_or_default())
            .sum()
    }
}

/// Temperature and its rate of change at every place after every step.
pub(super) struct Trace {
    watches: Vec<Watch>,
    time_s: Vec<f64>,
    /// Temperature °C and rate K/s, for all places at one time, then the next time.
    states: Vec<[f64; 2]>,
}

impl Trace {
    pub(super) fn new(watches: Vec<Watch>) -> Self {
        Self {
            watches,
            time_s: Vec::with_capacity(160),
            states: Vec::with_capacity(320),
        }
    }

    /// Takes down the present state.
    pub(super) fn record<const W: usize>(&mut self, piece: &Conduction<'_, W>) {
        self.time_s.push(piece.time_s);
        for watch in &self.watches {
            self.states.push([
                watch.read(&piece.temperature_c),
                watch.read(&piece.drawn_k_per_s),
            ]);
        }
    }

    /// Draws the curves, all at the same times: with the cubic that has the temperatures and
    /// rates of the solver at both ends of a step, divided until it is straight enough.
    pub(super) fn into_curves(self) -> Vec<CoolingCurve> {
        let places = self.watches.len().max(1);
        let mut curves: Vec<CoolingCurve> = self
            .watches
            .iter()
            .map(|watch| CoolingCurve {
                place: watch.place,
                time_s: Vec::with_capacity(256),
                temperature_c: Vec::with_capacity(256),
                rate_k_per_s: Vec::with_capacity(256),
            })
            .collect();
        let states: Vec<&[[f64; 2]]> = self.states.chunks_exact(places).collect();
        let mut push = |time: f64, state: &mut dyn Iterator<Item = [f64; 2]>| {
            for (curve, [temperature, rate]) in curves.iter_mut().zip(state) {
                curve.time_s.push(time);
                curve.temperature_c.push(temperature);
                curve.rate_k_per_s.push(-rate);
            }
        };
        for (times, states) in self.time_s.windows(2).zip(states.windows(2)) {
            let (&[start, end], &[from, to]) = (times, states) else {
                continue;
            };
            let step = end - start;
            // A change of medium is recorded twice: no time passes, the rate jumps.
            if step <= 0.0 {
                continue;
            }
            let ends = || from.iter().zip(to).map(|(a, b)| held([*a, *b], step));
            let bend = ends().fold(0.0_f64, |worst, [a, b]| {
                let mean = (b[0] - a[0]) / step;
                let arch = 0.125 * (b[1] - a[1]).abs();
                let swing = 0.4 * (0.5 * (a[1] + b[1]) - mean).abs();
                worst.max(step * (arch + swing))
            });
            let parts = (bend / STRAIGHTNESS_K).sqrt().ceil().clamp(1.0, MOST_PARTS);
            for part in 0..parts as usize {
                let x = part as f64 / parts;
                push(
                    start + x * step,
                    &mut ends().map(|[a, b]| hermite(a, b, step, x)),
                );
            }
        }
        if let (Some(&time), Some(state)) = (self.time_s.last(), states.last()) {
            push(time, &mut state.iter().copied());
        }
        curves
    }
}

/// Both ends of a step, with rates that its cubic can take without turning round.
fn held([a, b]: [[f64; 2]; 2], step: f64) -> [[f64; 2]; 2] {
    let most = (MOST_STEEP * (b[0] - a[0]).abs() + MOST_TURN_K) / step;
    [a, b].map(|[value, rate]| [value, rate.clamp(-most, most)])
}

/// Value and rate at a fraction `x` of the step, of the cubic with value and rate at both ends.
pub(super) fn hermite(a: [f64; 2], b: [f64; 2], step: f64, x: f64) -> [f64; 2] {
    let rise = b[0] - a[0];
    let (first, last) = (step * a[1] - rise, step * b[1] - rise);
    // Departure from the chord: x (1 - x) (first (1 - x) - last x).
    let y = 1.0 - x;
    let value = a[0] + x * rise + x * y * (first * y - last * x);
    let slope = rise + first * y * (1.0 - 3.0 * x) + last * x * (3.0 * x - 2.0);
    [value, slope / step]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cubic_is_kept_exactly() {
        let f = |t: f64| 3.0 - 2.0 * t + 0.7 * t * t - 0.2 * t * t * t;
        let d = |t: f64| -2.0 + 1.4 * t - 0.6 * t * t;
        for x in [0.0, 0.3, 0.9, 1.0] {
            let t = 1.0 + 2.5 * x;
            let got = hermite([f(1.0), d(1.0)], [f(3.5), d(3.5)], 2.5, x);
            approx::assert_abs_diff_eq!(got[0], f(t), epsilon = 1e-12);
            approx::assert_abs_diff_eq!(got[1], d(t), epsilon = 1e-12);
        }
    }

    /// A rate that jumps as the step ends does not carry the curve beyond its ends.
    #[test]
    fn a_jump_of_the_rate_stays_at_its_end() {
        let [a, b] = held([[680.0, -5.0], [676.0, -9000.0]], 0.8);
        for part in 0..=16 {
            let value = hermite(a, b, 0.8, f64::from(part) / 16.0)[0];
            assert!((675.5..680.5).contains(&value), "{value}");
        }
        let smooth = [[700.0, -10.0], [680.0, -30.0]];
        assert_eq!(held(smooth, 1.0), smooth);
    }

    #[test]
    fn a_place_between_nodes_is_read_by_a_cubic() {
        let positions = [0.0, 0.1, 0.35, 0.7, 1.0];
        let f = |x: f64| 1.0 + x - 2.0 * x * x + x * x * x;
        let values: Vec<f64> = positions.iter().map(|x| f(*x)).collect();
        for at in [0.0, 0.05, 0.5, 0.75, 1.0] {
            let watch = Watch::between(Place::Within(at), at, &positions, |i| i);
            approx::assert_abs_diff_eq!(watch.read(&values), f(at), epsilon = 1e-12);
        }
    }
}
