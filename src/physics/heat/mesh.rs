//! The piece cut into volumes around nodes. Sections that are quenched are elements, with links between all
//! nodes of one ([`super::element`], [`super::blade`]); the standard probe, pieces of other materials and the
//! end-quench bar are control volumes, made here.
//!
//! Nodes lie on the axis and on the surface itself, so the heat transfer of the medium is taken
//! at the true temperature of the surface, and both temperatures are read off without
//! extrapolation.

/// Shapes that one coordinate describes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// Cooled from both faces; the size is the half thickness.
    Plate,
    /// Long cylinder; the size is the radius.
    Cylinder,
    /// Sphere; the size is the radius.
    Sphere,
}

/// Two nodes between which heat flows.
#[derive(Debug, Clone, Copy)]
pub(super) struct Link {
    /// The node with the lower number.
    pub(super) from: usize,
    /// The node with the higher number, within the band of the equations.
    pub(super) to: usize,
    /// Flow for each W/m of difference of the conductivity integral: area over distance between control
    /// volumes; in an element it may be below zero.
    pub(super) conductance: f64,
}

/// Volumes, the links between them, and the faces in contact with the medium. All per m²
/// of plate, per radian and metre of cylinder, per steradian of sphere, per metre of the length of
/// an eighth of a square bar or one half of a blade, per m² of the end of an end-quench bar.
#[derive(Debug, Clone)]
pub(super) struct Mesh {
    /// Volume around each node.
    pub(super) volume: Vec<f64>,
    /// Where heat flows.
    pub(super) links: Vec<Link>,
    /// Node and area of each face.
    pub(super) faces: Vec<(usize, f64)>,
    /// Node and area of each face that stays in still air whatever the medium of the others.
    pub(super) faces_in_air: Vec<(usize, f64)>,
}

/// Position from 0 to 1 of node `i` of `n` intervals, closer together towards 1: the intervals
/// shrink linearly, in the ratio (1 + `a`) to (1 - `a`).
fn graded(i: usize, n: usize, a: f64) -> f64 {
    let x = i as f64 / n as f64;
    x * (1.0 + a - a * x)
}

/// Grading of a plate: the interval at the surface is a third of that at the centre. With a quarter
/// the surface is no better at the Biot numbers of a quench, and what lies below it early on is off by
/// more than 0.1 % of the range of temperature.
const PLATE_GRADING: f64 = 0.5;
/// Grading of a round or a ball: the interval at the surface is a quarter of that at the centre.
const ROUND_GRADING: f64 = 0.6;
/// Intervals of an end-quench bar.
const BAR_INTERVALS: usize = 64;
/// Grading of an end-quench bar: the interval at the quenched end is a twentieth of the mean.
const BAR_GRADING: f64 = 0.95;

impl Mesh {
    /// A plate, cylinder or sphere in `intervals` intervals, from the centre to the surface.
    /// Also returns the distances of the nodes from the centre.
    pub(super) fn radial(shape: Shape, size_m: f64, intervals: usize) -> (Self, Vec<f64>) {
        let n = intervals.max(2);
        let (power, grading) = match shape {
            Shape::Plate => (0, PLATE_GRADING),
            Shape::Cylinder => (1, ROUND_GRADING),
            Shape::Sphere => (2, ROUND_GRADING),
        };
        let r: Vec<f64> = (0..=n).map(|i| size_m * graded(i, n, grading)).collect();
        let middles: Vec<f64> = r.windows(2).map(|pair| 0.5 * (pair[0] + pair[1])).collect();
        let enclosed = |r: f64| r.powi(power + 1) / f64::from(power + 1);
        let mut volume = Vec::with_capacity(n + 1);
        let mut inner = 0.0;
        for &middle in middles.iter().chain([&size_m]) {
            volume.push(enclosed(middle) - inner);
            inner = enclosed(middle);
        }
        let links = r
            .windows(2)
            .zip(&middles)
            .enumerate()
            .map(|(i, (pair, middle))| Link {
                from: i,
                to: i + 1,
                conductance: middle.powi(power) / (pair[1] - pair[0]),
            })
            .collect();
        let mesh = Self {
            volume,
            links,
            faces: vec![(n, size_m.powi(power))],
            faces_in_air: Vec::new(),
        };
        (mesh, r)
    }

    /// A round bar that one end of which is quenched, in intervals that widen from there; the
    /// other end and the side are in still air. Also returns the distances of the nodes from the
    /// quenched end.
    pub(super) fn end_quench_bar(length_m: f64, diameter_m: f64) -> (Self, Vec<f64>) {
        let n = BAR_INTERVALS;
        let x: Vec<f64> = (0..=n)
            .map(|i| length_m * (1.0 - graded(n - i, n, BAR_GRADING)))
            .collect();
        let distance: Vec<f64> = x.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let before = |i: usize| i.checked_sub(1).map_or(0.0, |i| 0.5 * distance[i]);
        let volume: Vec<f64> = (0..=n)
            .map(|i| before(i) + distance.get(i).map_or(0.0, |next| 0.5 * next))
            .collect();
        let mut faces_in_air: Vec<(usize, f64)> = volume
            .iter()
            .map(|width| 4.0 * width / diameter_m)
            .enumerate()
            .collect();
        faces_in_air.push((n, 1.0));
        let links = distance.iter().enumerate().map(|(i, distance)| Link {
            from: i,
            to: i + 1,
            conductance: 1.0 / distance,
        });
        let mesh = Self {
            links: links.collect(),
            volume,
            faces: vec![(0, 1.0)],
            faces_in_air,
        };
        (mesh, x)
    }

    /// Number of nodes.
    pub(super) fn len(&self) -> usize {
        self.volume.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn volumes_and_faces_add_up() {
        let total = |mesh: &Mesh| mesh.volume.iter().sum::<f64>();
        let faces = |mesh: &Mesh| mesh.faces.iter().map(|f| f.1).sum::<f64>();
        for (shape, volume, area) in [
            (Shape::Plate, 2.0, 1.0),
            (Shape::Cylinder, 2.0, 2.0),
            (Shape::Sphere, 8.0 / 3.0, 4.0),
        ] {
            let (mesh, _) = Mesh::radial(shape, 2.0, 9);
            approx::assert_relative_eq!(total(&mesh), volume, max_relative = 1e-12);
            approx::assert_relative_eq!(faces(&mesh), area, max_relative = 1e-12);
        }
        let (bar, distances) = Mesh::end_quench_bar(8.0, 2.0);
        approx::assert_relative_eq!(total(&bar), 8.0, max_relative = 1e-12);
        approx::assert_relative_eq!(faces(&bar), 1.0, max_relative = 1e-12);
        let in_air: f64 = bar.faces_in_air.iter().map(|face| face.1).sum();
        approx::assert_relative_eq!(in_air, 16.0 + 1.0, max_relative = 1e-12);
        assert!(distances.is_sorted() && distances[1] < 8.0 / 64.0 / 10.0);
    }
}
