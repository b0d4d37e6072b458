//! Conduction in the piece, integrated in time.
//!
//! The volumes around nodes give one ordinary differential equation per node. A stiffly accurate
//! Rosenbrock method of third order (`sources::sandu_1997`) with exact Jacobian steps through
//! them: four linear solves with one factorisation per step, no iteration that could fail to
//! converge, and the error of each step measured against its second-order companion. Flux
//! between nodes is taken with the integral of the conductivity, so that it stays exact where the
//! conductivity changes from node to node.

mod drawn_rates;
mod flows;

use super::mesh::Mesh;
use super::properties::{Local, Material, SPACING_K};
use super::turning::Turned;
use super::until::Until;
use super::{Medium, media};
use crate::numeric::banded::Banded;
use crate::numeric::order::larger;
use crate::sources::sandu_1997::{A, C, GAMMA, M};

/// Most steps in one medium; a quench takes about a hundred.
const MOST_STEPS: usize = 20_000;
/// Shortest step, s: shorter ones are taken as they come, whatever their error.
const SHORTEST_STEP_S: f64 = 1e-9;
/// Change of the fastest node in the first step, K.
const FIRST_STEP_K: f64 = 2.0;
/// Change of any node that the steps are chosen for, K: an error estimate from four looks at the
/// surface could miss a corner of the boiling curve in a longer step.
const MOST_CHANGE_K: f64 = 25.0;
/// Largest part of the heat of a step that the corner of the heat capacity at the start of martensite
/// may hide, as a change of the mean temperature of the piece, K.
const MOST_MISSED_K: f64 = 0.03;
/// How near to the temperature asked for a stage has to end, K.
const LANDING_K: f64 = 0.02;
/// Most attempts to end there.
const LANDINGS: usize = 8;

/// The state of the piece, and what is needed to move it on.
pub(super) struct Conduction<'a, const W: usize> {
    mesh: &'a Mesh,
    material: &'a Material,
    /// Time since the start, s.
    pub(super) time_s: f64,
    /// Temperature of each node, °C.
    pub(super) temperature_c: Vec<f64>,
    /// Rate of change of each node, K/s, in the medium the piece is in.
    pub(super) rate_k_per_s: Vec<f64>,
    /// The same as curves are drawn with: after a long step without what it leaves in differences between
    /// nodes that even out within a small part of it. A ten-thousandth of a kelvin of that is as much as the
    /// rate itself.
    pub(super) drawn_k_per_s: Vec<f64>,
    /// Largest error of a node in a step, K.
    tolerance_k: f64,
    step_s: f64,
    matrix: Banded<W>,
    jacobian: Vec<[f64; W]>,
    storage: Vec<f64>,
    stages: [Vec<f64>; 4],
    stage_c: Vec<f64>,
    stage_rate: Vec<f64>,
    locals: Vec<Local>,
    /// Still air, where some faces stay in it.
    air: Option<&'static Medium>,
    /// How far it has turned, if it does.
    pub(super) turned: Option<Turned<'a>>,
}

impl<'a, const W: usize> Conduction<'a, W> {
    /// A piece at one temperature, °C.
    pub(super) fn new(
        mesh: &'a Mesh,
        material: &'a Material,
        start_c: f64,
        tolerance_k: f64,
    ) -> Self {
        let n = mesh.len();
        let zeros = || vec![0.0; n];
        Self {
            mesh,
            material,
            time_s: 0.0,
            temperature_c: vec![start_c; n],
            rate_k_per_s: zeros(),
            drawn_k_per_s: zeros(),
            tolerance_k,
            step_s: 0.0,
            matrix: Banded::linked(n, mesh.links.iter().map(|link| (link.from, link.to))),
            jacobian: vec![[0.0; W]; n],
            storage: zeros(),
            stages: [zeros(), zeros(), zeros(), zeros()],
            stage_c: zeros(),
            stage_rate: zeros(),
            locals: vec![material.at(start_c); n],
            air: media::medium("air_still").filter(|_| !mesh.faces_in_air.is_empty()),
            turned: None,
        }
    }

    /// The same piece, which turns into ferrite, pearlite or bainite as it cools.
    pub(super) fn turning(mut self, turned: Turned<'a>) -> Self {
        self.turned = Some(turned);
        self
    }

    /// Temperature of the hottest node, °C.
    pub(super) fn hottest_c(&self) -> f64 {
        self.temperature_c.iter().copied().fold(f64::MIN, f64::max)
    }

    /// Stays in a medium, with its heat transfer times `agitation`, until the first condition is
    /// met; `record` sees the state on entry and after every step. Returns whether the
    /// temperature was reached.
    pub(super) fn stay_in(
        &mut self,
        medium: &Medium,
        agitation: f64,
        until: Until,
        mut record: impl FnMut(&Self),
    ) -> bool {
        self.linearise(medium, agitation);
        self.drawn_k_per_s.copy_from_slice(&self.rate_k_per_s);
        record(self);
        let fastest = self
            .rate_k_per_s
            .iter()
            .fold(0.0_f64, |a, r| a.max(r.abs()));
        self.step_s = FIRST_STEP_K / fastest.max(1e-6);
        for _ in 0..MOST_STEPS {
            let left_s = until.time_s - self.time_s;
            let left_k = until.reached.left_k(&self.temperature_c);
            if left_k <= LANDING_K {
                return true;
            }
            if left_s <= SHORTEST_STEP_S {
                return false;
            }
            // Two equal steps to the end, rather than a long one and a sliver.
            let step = match left_s / self.step_s {
                ratio if ratio <= 1.0 => left_s,
                ratio if ratio < 2.0 => 0.5 * left_s,
                _ => self.step_s,
            };
            let (mut step, mut error) = self.attempt(medium, agitation, step);
            // Shortens the last step until it ends at the temperature asked for.
            for _ in 0..LANDINGS {
                let after_k = until.reached.left_k(&self.stage_c);
                if error > 1.0 || after_k >= -LANDING_K {
                    break;
                }
                let part = left_k / (left_k - after_k);
                (step, error) = self.attempt(medium, agitation, step * part);
            }
            let factor = if error > 0.0 {
                0.85 / error.cbrt()
            } else {
                4.0
            };
            let change = self
                .temperature_c
                .iter()
                .zip(&self.stage_c)
                .fold(0.0, |most, (before, after)| {
                    larger(most, (before - after).abs())
                });
            let mut factor = factor.min(MOST_CHANGE_K / change.max(1e-9));
            let is_shortest = step <= SHORTEST_STEP_S;
            let mut is_taken = error <= 1.0 || (is_shortest && error < f64::MAX);
            if is_taken && let Some(corner_c) = self.material.corner_c {
                let missed = self.missed_at_corner_k(corner_c) / MOST_MISSED_K;
                factor = factor.min(0.85 / missed.max(1e-9).sqrt());
                is_taken = missed <= 1.0 || is_shortest;
            }
            if is_taken && let Some(turned) = &mut self.turned {
                let correction = turned.correct(&self.temperature_c, &mut self.stage_c, step);
                factor = factor.min(0.85 / correction.max(1e-9).sqrt());
                is_taken = correction <= 1.0 || is_shortest;
            }
            if is_taken {
                self.time_s += step;
                if let Some(turned) = &mut self.turned {
                    turned.keep(&self.stage_c, step);
                }
                std::mem::swap(&mut self.temperature_c, &mut self.stage_c);
                self.linearise(medium, agitation);
                self.settle_drawn_rates(step);
                record(self);
            }
            self.step_s = (step * factor.clamp(0.2, 4.0)).max(SHORTEST_STEP_S);
        }
        false
    }

    /// What the straight line through the heat capacities at both ends of a step gets wrong of the heat
    /// of the nodes that pass a corner of it, as a change of the mean temperature of the piece, K, of both
    /// halves of the way by themselves: over the whole way they may make up for each other. The error of
    /// the step does not see a corner that all pass together.
    fn missed_at_corner_k(&self, corner_c: f64) -> f64 {
        let (mut missed, mut held) = ([0.0; 2], 0.0);
        let nodes = self.temperature_c.iter().zip(&self.stage_c);
        for ((&from_c, &to_c), storage) in nodes.zip(&self.storage) {
            held += storage;
            if from_c > corner_c - SPACING_K && to_c < corner_c + SPACING_K {
                let half_k = 0.5 * (from_c - to_c);
                let heat = [from_c, from_c - half_k, to_c].map(|c| self.material.heat_j_m3(c));
                let [first, last] = [from_c, to_c].map(|c| self.material.capacity_j_m3k(c));
                let middle = 0.5 * (first + last);
                let straight = [first + middle, middle + last].map(|both| 0.5 * both * half_k);
                for (half, missed) in missed.iter_mut().enumerate() {
                    *missed += storage * (heat[half] - heat[half + 1] - straight[half]) / first;
                }
            }
        }
        (missed[0].abs() + missed[1].abs()) / held
    }

    /// Takes the steps given, s, whatever their error; `record` sees the state after each. With
    /// the steps of an earlier stay the result changes smoothly with the medium.
    pub(super) fn take_steps(
        &mut self,
        medium: &Medium,
        agitation: f64,
        steps_s: impl Iterator<Item = f64>,
        mut record: impl FnMut(&Self),
    ) {
        self.linearise(medium, agitation);
        for step in steps_s {
            self.attempt(medium, agitation, step);
            self.time_s += step;
            std::mem::swap(&mut self.temperature_c, &mut self.stage_c);
            self.linearise(medium, agitation);
            self.settle_drawn_rates(step);
            record(self);
        }
    }

    /// Sets up the matrix of an implicit step, s.
    fn set_matrix(&mut self, time_s: f64) {
        let rows = self.matrix.rows_mut().iter_mut();
        for ((row, jacobian), storage) in rows.zip(&self.jacobian).zip(&self.storage) {
            for (entry, j) in row.iter_mut().zip(jacobian) {
                *entry = -j;
            }
            row[W / 2] += storage / time_s;
        }
    }

    /// Tries a step; leaves the new state in `stage_c` and returns the step with its error over
    /// the tolerance. A step whose matrix is singular or whose result is not finite has an error
    /// beyond all bounds.
    fn attempt(&mut self, medium: &Medium, agitation: f64, step: f64) -> (f64, f64) {
        #[cfg(any(test, feature = "watched-solver"))]
        crate::numeric::effort::count(|effort| effort.node_steps += self.mesh.len() as u32);
        self.set_matrix(GAMMA * step);
        if self.matrix.factor().is_err() {
            return (step, f64::MAX);
        }
        for stage in 0..4 {
            // The second stage evaluates the rates where the first does: at the present state.
            let fresh = stage >= 2;
            if fresh {
                self.stage_c.copy_from_slice(&self.temperature_c);
                for (weight, earlier) in A[stage].iter().zip(&self.stages) {
                    add(&mut self.stage_c, *weight, earlier);
                }
                self.rates(medium, agitation);
            }
            let (earlier, later) = self.stages.split_at_mut(stage);
            let current = &mut later[0];
            current.copy_from_slice(if fresh {
                &self.stage_rate
            } else {
                &self.rate_k_per_s
            });
            for (weight, earlier) in C[stage].iter().zip(earlier) {
                add(current, *weight / step, earlier);
            }
            for (value, storage) in current.iter_mut().zip(&self.storage) {
                *value *= storage;
            }
            self.matrix.solve(current);
        }
        self.stage_c.copy_from_slice(&self.temperature_c);
        for (weight, stage) in M.iter().zip(&self.stages) {
            add(&mut self.stage_c, *weight, stage);
        }
        // The last stage is the difference from the method of second order. In this order of
        // numbers, what is not a number counts as the worst.
        let worst = self.stages[3]
            .iter()
            .map(|difference| difference.abs())
            .max_by(f64::total_cmp);
        match worst {
            Some(worst) if worst.is_finite() => (step, worst / self.tolerance_k),
            _ => (step, f64::MAX),
        }
    }
}

/// Adds `factor` times the values to the sums.
#[inline(always)]
fn add(sums: &mut [f64], factor: f64, values: &[f64]) {
    if factor != 0.0 {
        for (sum, value) in sums.iter_mut().zip(values) {
            *sum += factor * value;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::OwnMedium;
    use crate::heat::mesh::Shape;
    use crate::heat::until::Reached;

    /// Temperature of the surface after two seconds, the last part in equal steps, with a
    /// nonlinear surface but without the corners of tables, which cost order.
    fn in_equal_steps(steps: u32) -> f64 {
        let air = OwnMedium {
            h_w_m2k: vec![[-100.0, 300.0], [1400.0, 3000.0]],
            bath_c: 50.0,
            radiation: true,
            ..OwnMedium::default()
        };
        let air = air.resolve().unwrap();
        let (mesh, _) = Mesh::radial(Shape::Cylinder, 4e-3, 10);
        let material = Material::constant(22.0, 4.7e6);
        let mut piece = Conduction::<3>::new(&mesh, &material, 850.0, 1.0);
        // Smooths the start, whose corner has no order.
        let until = Until {
            reached: Reached::Cooled(0.0),
            time_s: 0.5,
        };
        piece.tolerance_k = 1e-6;
        piece.stay_in(&air, 1.0, until, |_| {});
        let equal = (0..steps).map(|_| 1.5 / f64::from(steps));
        piece.take_steps(&air, 1.0, equal, |_| {});
        piece.temperature_c.last().copied().unwrap()
    }

    #[test]
    fn the_error_falls_faster_than_the_square_of_the_step() {
        let [coarse, middle, fine] = [16, 32, 64].map(in_equal_steps);
        let order = ((coarse - middle) / (middle - fine)).log2();
        // Third order where the step is short for every node; stiffness takes part of it.
        assert!((2.0..=3.3).contains(&order), "order {order}");
        assert!((coarse - fine).abs() < 0.1, "{coarse} {fine}");
    }
}
