//! The piece cut into control volumes around nodes.
//!
//! Nodes lie on the axis and on the surface itself, so the heat transfer of the medium is taken
//! at the true temperature of the surface, and both temperatures are read off without
//! extrapolation.

use super::Grind;

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
    /// Flow for each W/m of difference of the conductivity integral: area over distance.
    pub(super) conductance: f64,
}

/// Control volumes, the links between them, and the faces in contact with the medium. All per m²
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
/// Grading of a square bar, whose corners are the only places with steep gradients for long.
const SQUARE_GRADING: f64 = 0.3;
/// Intervals of a square bar from the axis to a face: against the product of two plates, within
/// 0.1 % of the range of temperature up to a Biot number of 1, 0.2 % at 10.
pub(super) const SQUARE_INTERVALS: usize = 12;
/// Intervals of an end-quench bar.
const BAR_INTERVALS: usize = 64;
/// Grading of an end-quench bar: the interval at the quenched end is a twentieth of the mean.
const BAR_GRADING: f64 = 0.95;
/// Columns of a blade lie as close together as they are near to edge and spine; this part of the
/// thickness there counts with the distance. What the ends cool reaches as far into the blade.
const COLUMN_CROWDING: f64 = 0.2;

/// Slope of a flank from which the layers lean no more: steeper ones are no blades, and the parabola would
/// take more from a face than it has.
const MOST_LEANING: f64 = 0.25;

/// Nodes of a column of a blade, from the middle plane to the flank.
pub(super) const LAYERS: usize = 3;
/// Share of the half thickness that belongs to each layer: the weights of Lobatto's rule with
/// five nodes, which lie at 0, √(3/7) and 1 of the half thickness. Three nodes suffice because
/// the profile is taken as an even polynomial of fourth degree; a quench soon makes it a parabola.
/// Before that the middle may overshoot: by 0.4 K in oil and 1.2 K in brine for 4 mm from 800 °C.
pub(super) const SHARE: [f64; LAYERS] = [16.0 / 45.0, 49.0 / 90.0, 1.0 / 10.0];
/// Squares of their places, from the middle plane to the flank.
const DEPTH_SQUARED: [f64; LAYERS] = [0.0, 3.0 / 7.0, 1.0];
/// Pairs of layers and the conductance between them, over that of the half thickness: with them
/// the flow is that of the even polynomial through the three nodes.
const THROUGH: [(usize, usize, f64); 3] = [
    (0, 1, 392.0 / 135.0),
    (1, 2, 49.0 / 12.0),
    (0, 2, -8.0 / 15.0),
];

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

    /// An eighth of a square bar between its axis, the middle of a face and a corner: rows of
    /// nodes from the axis outwards, each from the middle of the side to the diagonal.
    /// Also returns the distances of the rows from the axis.
    pub(super) fn square(half_m: f64) -> (Self, Vec<f64>) {
        let n = SQUARE_INTERVALS;
        let x: Vec<f64> = (0..=n)
            .map(|i| half_m * graded(i, n, SQUARE_GRADING))
            .collect();
        let distance: Vec<f64> = x.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let before = |i: usize| i.checked_sub(1).map_or(0.0, |i| 0.5 * distance[i]);
        let width: Vec<f64> = (0..=n)
            .map(|i| before(i) + distance.get(i).map_or(0.0, |next| 0.5 * next))
            .collect();
        let number = |i: usize, j: usize| i * (i + 1) / 2 + j;
        let mut mesh = Self {
            volume: Vec::with_capacity(number(n, n) + 1),
            links: Vec::with_capacity(2 * number(n, n)),
            faces: Vec::with_capacity(n + 1),
            faces_in_air: Vec::new(),
        };
        for i in 0..=n {
            for j in 0..=i {
                // The diagonal halves its volumes, and mirrors the flow to one side to the other.
                let share = if i == j { 0.5 } else { 1.0 };
                mesh.volume.push(share * width[i] * width[j]);
                if let Some(distance) = distance.get(i) {
                    mesh.links.push(Link {
                        from: number(i, j),
                        to: number(i + 1, j),
                        conductance: width[j] / distance,
                    });
                }
                if j < i {
                    mesh.links.push(Link {
                        from: number(i, j),
                        to: number(i, j + 1),
                        conductance: width[i] / distance[j],
                    });
                }
                if i == n {
                    mesh.faces.push((number(i, j), width[j]));
                }
            }
        }
        (mesh, x)
    }

    /// One half of a blade: `columns` intervals from edge to spine, each
    /// with three nodes from the middle plane to the flank. Heat flows through the thickness and,
    /// between equal relative depths, along the height. Edge and spine are faces as well. Also returns
    /// the heights of the columns.
    ///
    /// Lines of equal relative depth lean by the slope of the flank, so that part of the
    /// fall of temperature along them is that towards the flank, and no flow along the height. With the
    /// parabola through the thickness it is slope times square of the depth times what goes through the
    /// flank; faces give it up below and take it above, which in all leaves their area as it is.
    pub(super) fn blade(
        edge_m: f64,
        spine_m: f64,
        height_m: f64,
        grind: Grind,
        columns: usize,
    ) -> (Self, Vec<f64>) {
        let half_thickness =
            |x: f64| 0.5 * (edge_m + (spine_m - edge_m) * grind.thickening(x / height_m));
        let heights = column_heights(edge_m, spine_m, height_m, columns.max(4));
        let mut mesh = Self {
            volume: Vec::with_capacity(heights.len() * LAYERS),
            links: Vec::with_capacity(heights.len() * 2 * LAYERS),
            faces: Vec::with_capacity(heights.len() + 2 * LAYERS),
            faces_in_air: Vec::new(),
        };
        let (mut below, mut lean_below) = (0.0, 0.0);
        for (j, &height) in heights.iter().enumerate() {
            let first = j * LAYERS;
            let next = heights.get(j + 1).copied();
            let above = next.map_or(height_m, |next| 0.5 * (height + next));
            let width = above - below;
            let half = half_thickness(0.5 * (below + above));
            let rise = half_thickness(above) - half_thickness(below);
            let flank_length = (width * width + rise * rise).sqrt();
            let lean_above = next.map_or(0.0, |next| {
                let slope = (half_thickness(next) - half_thickness(height)) / (next - height);
                slope.min(MOST_LEANING) * half_thickness(above)
            });
            let leaning = lean_above - lean_below;
            (below, lean_below) = (above, lean_above);
            let end = match (j, next) {
                (0, _) => Some(0.5 * edge_m),
                (_, None) => Some(0.5 * spine_m),
                _ => None,
            };
            for (from, to, share) in THROUGH {
                mesh.links.push(Link {
                    from: first + from,
                    to: first + to,
                    conductance: share * width / half,
                });
            }
            for (layer, (share, depth_squared)) in SHARE.iter().zip(DEPTH_SQUARED).enumerate() {
                let node = first + layer;
                mesh.volume.push(width * share * half);
                if let Some(next) = next {
                    mesh.links.push(Link {
                        from: node,
                        to: node + LAYERS,
                        conductance: share * half_thickness(above) / (next - height),
                    });
                }
                let is_flank = layer + 1 == LAYERS;
                let flank = if is_flank { flank_length } else { 0.0 };
                let area = match end {
                    Some(end) => share * (end - depth_squared * leaning) + flank,
                    // Away from the ends little is left of it: all at the flank.
                    None if is_flank => flank - leaning / 3.0,
                    None => 0.0,
                };
                if area > 0.0 {
                    mesh.faces.push((node, area));
                }
            }
        }
        (mesh, heights)
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

/// Heights of the columns of a blade, m: intervals in proportion to the distances from edge and spine,
/// one over the sum of their reciprocals.
fn column_heights(edge_m: f64, spine_m: f64, height_m: f64, columns: usize) -> Vec<f64> {
    let from_edge = COLUMN_CROWDING * edge_m;
    let from_spine = COLUMN_CROWDING * spine_m + height_m;
    let whole = (from_edge + height_m) / from_edge * (from_spine / (from_spine - height_m));
    let step = whole.powf(1.0 / columns as f64);
    let mut grown = 1.0;
    let mut heights: Vec<f64> = (0..columns)
        .map(|_| {
            let height = from_edge * from_spine * (grown - 1.0) / (from_spine + from_edge * grown);
            grown *= step;
            height
        })
        .collect();
    heights.push(height_m);
    heights
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
        // A convex flank begins twice as steep as a straight one and ends level.
        let slope: f64 = 1.75 / 30.0;
        for (grind, mean, flank, accuracy) in [
            (Grind::Straight, 2.25, 30f64.hypot(1.75), 1e-12),
            (
                Grind::Convex,
                0.5 + 3.5 * 2.0 / 3.0,
                30.0 * (1.0 + slope * slope * 2.0 / 3.0),
                1e-3,
            ),
        ] {
            let (mesh, heights) = Mesh::blade(0.5, 4.0, 30.0, grind, 24);
            assert_eq!(mesh.len(), heights.len() * LAYERS);
            approx::assert_relative_eq!(total(&mesh), 0.5 * 30.0 * mean, max_relative = accuracy);
            let around = flank + 0.25 + 2.0;
            approx::assert_relative_eq!(faces(&mesh), around, max_relative = accuracy);
        }
        // No face is given up, however steep the flank.
        for grind in [Grind::Straight, Grind::Convex] {
            let (mesh, heights) = Mesh::blade(0.1, 20.0, 5.0, grind, 38);
            assert_eq!(mesh.faces.len(), heights.len() + 2 * (LAYERS - 1));
        }
        let (bar, distances) = Mesh::end_quench_bar(8.0, 2.0);
        approx::assert_relative_eq!(total(&bar), 8.0, max_relative = 1e-12);
        approx::assert_relative_eq!(faces(&bar), 1.0, max_relative = 1e-12);
        let in_air: f64 = bar.faces_in_air.iter().map(|face| face.1).sum();
        approx::assert_relative_eq!(in_air, 16.0 + 1.0, max_relative = 1e-12);
        assert!(distances.is_sorted() && distances[1] < 8.0 / 64.0 / 10.0);
        let (mesh, _) = Mesh::square(3.0);
        approx::assert_relative_eq!(total(&mesh), 0.5 * 9.0, max_relative = 1e-12);
        approx::assert_relative_eq!(faces(&mesh), 3.0, max_relative = 1e-12);
    }
}
