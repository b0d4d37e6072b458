//! The probe computed so that the curve can be laid on readings and its derivatives taken.

use super::thin::Point;
use crate::heat::conduct::Conduction;
use crate::heat::mesh::Mesh;
use crate::heat::probe::probe_piece;
use crate::heat::trace::hermite;
use crate::heat::until::{Reached, Until};
use crate::heat::{Material, Medium};

/// What is computed again and again.
#[derive(Debug, Clone)]
pub(super) struct Forward {
    mesh: Mesh,
    material: Material,
    tolerance_k: f64,
    start_c: f64,
    until_s: f64,
}

/// The steps of one computation.
#[derive(Debug, Clone, Default)]
pub(super) struct Run {
    /// Time before the first step and after each, s.
    time_s: Vec<f64>,
    /// Temperature of the centre, °C, and its rate of change, K/s, at each.
    centre: Vec<[f64; 2]>,
    /// All nodes at each, °C.
    nodes_c: Vec<Vec<f64>>,
}

/// Where a reading falls: the step, and how far along in it.
pub(super) type Spot = (usize, f64);

impl Forward {
    /// The probe from one temperature, °C, for a time, s.
    pub(super) fn new(start_c: f64, until_s: f64) -> Self {
        let piece = probe_piece();
        Self {
            mesh: Mesh::radial(piece.shape, piece.size_m, piece.intervals).0,
            material: piece.material,
            tolerance_k: piece.tolerance_k,
            start_c,
            until_s,
        }
    }

    /// Computes the curve with steps as they are needed.
    pub(super) fn run(&self, medium: &Medium) -> Run {
        let mut run = Run {
            time_s: Vec::with_capacity(200),
            centre: Vec::with_capacity(200),
            nodes_c: Vec::with_capacity(200),
        };
        let mut piece =
            Conduction::<3>::new(&self.mesh, &self.material, self.start_c, self.tolerance_k);
        let until = Until {
            // For the whole time, however cold it gets.
            reached: Reached::Cooled(f64::MIN),
            time_s: self.until_s,
        };
        piece.stay_in(medium, 1.0, until, |piece| {
            run.time_s.push(piece.time_s);
            run.centre.push(centre(piece));
            run.nodes_c.push(piece.temperature_c.clone());
        });
        run
    }

    /// The centre with the same steps in a medium that is changed where the surface is no hotter
    /// than `below_c`; nothing before the step in which it comes there.
    pub(super) fn repeat(&self, run: &Run, medium: &Medium, below_c: f64) -> Vec<Option<[f64; 2]>> {
        let surface = |nodes: &Vec<f64>| nodes.last().copied().unwrap_or_default();
        let reached = run.nodes_c.iter().position(|n| surface(n) <= below_c);
        let first = reached.unwrap_or(run.nodes_c.len()).saturating_sub(1);
        let mut centres = vec![None; (first + 1).min(run.centre.len())];
        let mut piece =
            Conduction::<3>::new(&self.mesh, &self.material, self.start_c, self.tolerance_k);
        if let Some(nodes) = run.nodes_c.get(first) {
            piece.temperature_c.clone_from(nodes);
        }
        let times = run.time_s.get(first..).unwrap_or_default();
        let steps = times.windows(2).map(|pair| match pair {
            [from, to] => to - from,
            _ => 0.0,
        });
        piece.take_steps(medium, 1.0, steps, |piece| {
            centres.push(Some(centre(piece)))
        });
        centres
    }
}

fn centre(piece: &Conduction<'_, 3>) -> [f64; 2] {
    let first = |values: &[f64]| values.first().copied().unwrap_or_default();
    [first(&piece.temperature_c), first(&piece.rate_k_per_s)]
}

impl Run {
    /// Where each reading falls when the clock of the curve is `late_s` late.
    pub(super) fn spots(&self, points: &[Point], late_s: f64) -> Vec<Spot> {
        let last = self.time_s.len().saturating_sub(2);
        let mut step = 0;
        points
            .iter()
            .map(|point| {
                let time_s = point.time_s - late_s;
                while step < last && self.time_s.get(step + 1).is_some_and(|end| *end < time_s) {
                    step += 1;
                }
                let at = |i| self.time_s.get(i).copied().unwrap_or_default();
                let width = at(step + 1) - at(step);
                let part = if width > 0.0 {
                    (time_s - at(step)) / width
                } else {
                    0.0
                };
                (step, part.clamp(0.0, 1.0))
            })
            .collect()
    }

    /// Temperature of the centre, °C, and its rate of change, K/s.
    pub(super) fn at(&self, spot: Spot) -> [f64; 2] {
        let (Some(from), Some(to)) = (self.centre.get(spot.0), self.centre.get(spot.0 + 1)) else {
            return [f64::NAN; 2];
        };
        hermite(*from, *to, self.width_s(spot.0), spot.1)
    }

    /// Change of the temperature of the centre from this run to a repeated one, K.
    pub(super) fn change_k(&self, repeated: &[Option<[f64; 2]>], spot: Spot) -> f64 {
        let difference = |i: usize| match (repeated.get(i), self.centre.get(i)) {
            (Some(Some(there)), Some(here)) => [there[0] - here[0], there[1] - here[1]],
            _ => [0.0; 2],
        };
        let (from, to) = (difference(spot.0), difference(spot.0 + 1));
        hermite(from, to, self.width_s(spot.0), spot.1)[0]
    }

    fn width_s(&self, step: usize) -> f64 {
        match (self.time_s.get(step), self.time_s.get(step + 1)) {
            (Some(from), Some(to)) if to > from => to - from,
            _ => f64::MIN_POSITIVE,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::OwnMedium;

    /// A boiling curve whose middle knot is moved by a logarithm.
    fn bath(moved: f64) -> Medium {
        let own = OwnMedium {
            h_w_m2k: vec![
                [100.0, 400.0],
                [300.0, 700.0],
                [500.0, 3000.0 * f64::exp(moved)],
                [700.0, 1200.0],
                [900.0, 1300.0],
            ],
            bath_c: 50.0,
            ..OwnMedium::default()
        };
        own.resolve().unwrap()
    }

    #[test]
    fn a_repeated_run_changes_as_one_with_steps_of_its_own() {
        let forward = Forward::new(850.0, 20.0);
        let run = forward.run(&bath(0.0));
        let points: Vec<Point> = (1..40)
            .map(|i| Point {
                time_s: 0.5 * f64::from(i),
                temperature_c: 0.0,
                readings: 1.0,
            })
            .collect();
        let spots = run.spots(&points, 0.0);
        let same = forward.repeat(&run, &bath(0.0), 700.0);
        let repeated = forward.repeat(&run, &bath(0.1), 700.0);
        let anew = forward.run(&bath(0.1));
        for (spot, spot_anew) in spots.into_iter().zip(anew.spots(&points, 0.0)) {
            approx::assert_abs_diff_eq!(run.change_k(&same, spot), 0.0, epsilon = 1e-9);
            let change = anew.at(spot_anew)[0] - run.at(spot)[0];
            // Steps chosen anew differ by their errors, which add up to a tenth of a kelvin each run.
            approx::assert_abs_diff_eq!(run.change_k(&repeated, spot), change, epsilon = 0.2);
        }
        // Nothing before the surface comes to the knot above.
        assert!(repeated.iter().take_while(|c| c.is_none()).count() > 5);
    }

    #[test]
    fn a_late_clock_reads_the_curve_earlier() {
        let forward = Forward::new(850.0, 20.0);
        let run = forward.run(&bath(0.0));
        let at = |time_s: f64, late_s: f64| {
            let point = Point {
                time_s,
                temperature_c: 0.0,
                readings: 1.0,
            };
            let spots = run.spots(&[point], late_s);
            run.at(spots[0])[0]
        };
        approx::assert_abs_diff_eq!(at(5.3, 0.3), at(5.0, 0.0), epsilon = 1e-9);
        // Before the start and after the end the curve stays.
        approx::assert_abs_diff_eq!(at(0.1, 0.4), 850.0, epsilon = 1e-9);
        approx::assert_abs_diff_eq!(at(99.0, 0.0), at(20.0, 0.0), epsilon = 1e-9);
    }
}
