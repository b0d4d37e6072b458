//! The piece cut into control volumes around nodes.
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

/// Control volumes, the links between them, and the faces in contact with the medium.
///
/// Numbered so that a node is linked only to its neighbour and, in a blade, to the node of the
/// next column, `layers` further on.
#[derive(Debug, Clone)]
pub(super) struct Mesh {
    /// Volume around each node; per m² of plate, per radian and metre of cylinder, per steradian
    /// of sphere, per metre of the length of one half of a blade.
    pub(super) volume: Vec<f64>,
    /// Area over distance of the link to the next node, of the same measure, m⁻¹ times volume
    /// per m; zero for the last.
    pub(super) near: Vec<f64>,
    /// The same for the link to the next column; empty where there is one column only.
    pub(super) far: Vec<f64>,
    /// Node and area of each face.
    pub(super) faces: Vec<(usize, f64)>,
}

/// Position from 0 to 1 of node `i` of `n` intervals, closer together towards 1: the intervals
/// shrink linearly, in the ratio (1 + `a`) to (1 - `a`).
fn graded(i: usize, n: usize, a: f64) -> f64 {
    let x = i as f64 / n as f64;
    x * (1.0 + a - a * x)
}

/// Grading of a plate or a round: the interval at the surface is a ninth of that at the centre.
const GRADING: f64 = 0.8;
/// Grading through the half thickness of a blade.
const BLADE_GRADING: f64 = 0.5;
/// Strength of the crowding of columns at edge and spine.
const COLUMN_CROWDING: f64 = 0.7;

impl Mesh {
    /// A plate, cylinder or sphere in `intervals` intervals, from the centre to the surface.
    /// Also returns the distances of the nodes from the centre.
    pub(super) fn radial(shape: Shape, size_m: f64, intervals: usize) -> (Self, Vec<f64>) {
        let n = intervals.max(2);
        let power = match shape {
            Shape::Plate => 0,
            Shape::Cylinder => 1,
            Shape::Sphere => 2,
        };
        let r: Vec<f64> = (0..=n).map(|i| size_m * graded(i, n, GRADING)).collect();
        let middles: Vec<f64> = r.windows(2).map(|pair| 0.5 * (pair[0] + pair[1])).collect();
        let enclosed = |r: f64| r.powi(power + 1) / f64::from(power + 1);
        let mut volume = Vec::with_capacity(n + 1);
        let mut inner = 0.0;
        for &middle in middles.iter().chain([&size_m]) {
            volume.push(enclosed(middle) - inner);
            inner = enclosed(middle);
        }
        let near = r
            .windows(2)
            .zip(&middles)
            .map(|(pair, middle)| middle.powi(power) / (pair[1] - pair[0]))
            .chain([0.0])
            .collect();
        let mesh = Self {
            volume,
            near,
            far: Vec::new(),
            faces: vec![(n, size_m.powi(power))],
        };
        (mesh, r)
    }

    /// One half of a blade that tapers straight: `columns` intervals from edge to spine, each
    /// with `layers` nodes from the middle plane to the flank. Heat flows through the thickness
    /// and, between equal relative depths, along the height; the slant of the flank (under 0.2)
    /// is left out. Edge and spine are faces as well. Also returns the heights of the columns.
    pub(super) fn blade(
        edge_m: f64,
        spine_m: f64,
        height_m: f64,
        columns: usize,
        layers: usize,
    ) -> (Self, Vec<f64>) {
        let columns = columns.max(4);
        let layers = layers.max(2);
        let half_thickness = |x: f64| 0.5 * (edge_m + (spine_m - edge_m) * x / height_m);
        let heights: Vec<f64> = (0..=columns)
            .map(|j| {
                let x = j as f64 / columns as f64;
                let turn = std::f64::consts::TAU;
                height_m * (x - COLUMN_CROWDING / turn * (turn * x).sin())
            })
            .collect();
        let depth: Vec<f64> = (0..layers)
            .map(|l| graded(l, layers - 1, BLADE_GRADING))
            .collect();
        let cells = |nodes: &[f64]| -> Vec<[f64; 2]> {
            let mut bounds = vec![nodes.first().copied().unwrap_or(0.0)];
            bounds.extend(nodes.windows(2).map(|pair| 0.5 * (pair[0] + pair[1])));
            bounds.extend(nodes.last());
            bounds.windows(2).map(|pair| [pair[0], pair[1]]).collect()
        };
        let strips = cells(&heights);
        let shells: Vec<f64> = cells(&depth).iter().map(|[a, b]| b - a).collect();
        let count = heights.len() * layers;
        let mut mesh = Self {
            volume: Vec::with_capacity(count),
            near: Vec::with_capacity(count),
            far: Vec::with_capacity(count),
            faces: Vec::with_capacity(heights.len() + 2 * layers),
        };
        for (j, [below, above]) in strips.iter().enumerate() {
            let width = above - below;
            let half = half_thickness(0.5 * (below + above));
            let step = heights.get(j).zip(heights.get(j + 1)).map(|(a, b)| b - a);
            let face = half_thickness(*above);
            for (l, shell) in shells.iter().enumerate() {
                mesh.volume.push(width * shell * half);
                mesh.near.push(
                    depth
                        .get(l)
                        .zip(depth.get(l + 1))
                        .map_or(0.0, |(a, b)| width / ((b - a) * half)),
                );
                mesh.far.push(step.map_or(0.0, |step| shell * face / step));
                let end = match j {
                    0 => 0.5 * edge_m,
                    _ if step.is_none() => 0.5 * spine_m,
                    _ => 0.0,
                };
                let flank = if l + 1 == layers { width } else { 0.0 };
                let area = end * shell + flank;
                if area > 0.0 {
                    mesh.faces.push((j * layers + l, area));
                }
            }
        }
        (mesh, heights)
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
        let (mesh, heights) = Mesh::blade(0.5, 4.0, 30.0, 24, 4);
        assert_eq!(mesh.len(), heights.len() * 4);
        approx::assert_relative_eq!(total(&mesh), 0.5 * 30.0 * 2.25, max_relative = 1e-12);
        approx::assert_relative_eq!(faces(&mesh), 30.0 + 0.25 + 2.0, max_relative = 1e-12);
    }
}
