//! A section cut into nodes, and the places in it that are looked at.

use super::curve::Place;
use super::mesh::{LAYERS, Mesh, SHARE, SQUARE_INTERVALS, Shape};
use super::trace::Watch;
use super::{Piece, Section};

/// Intervals from edge to spine of a blade. Against finite elements in its true shape times to 700 and
/// below then lie within 0.5 % for an edge up to an eighth of the spine, within 1 % up to three
/// quarters of it, as `benches/conduction_comparison.py` tells.
const COLUMNS: usize = 38;
/// Width of the band of a blade's equations: as far as the next column on both sides.
pub(super) const BLADE_BAND: usize = 2 * LAYERS + 1;
/// Width of the band of a square bar's equations: as far as the next row of nodes.
pub(super) const SQUARE_BAND: usize = 2 * SQUARE_INTERVALS + 1;
/// Largest error of a node of a plate or a round in one step, K. Times to 540 and 300 °C and near the
/// bath then lie within 0.08 % of those of very short steps, for 2 to 40 mm in brine, water, oil, salt
/// and air; with 0.2 K as near, but the heat that leaves water is 0.2 % off.
const RADIAL_TOLERANCE_K: f64 = 0.1;
/// Largest error of a node of a square bar in one step, K.
const SQUARE_TOLERANCE_K: f64 = 0.1;
/// Largest error of a node of a blade in one step, K. Times to 700 °C and below then lie within 0.1 % of
/// those of very short steps in water and oil: what cools fast is soon over.
const BLADE_TOLERANCE_K: f64 = 1.5;
/// Places across the section, from one end to the other.
const ACROSS: usize = 13;

/// Which places are looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum View {
    /// Those with names.
    Named,
    /// Evenly spaced, from the centre to the surface; in a blade on the middle plane, from edge to
    /// spine.
    Across,
}

/// Which equations go with a mesh.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Radial,
    Square,
    Blade,
}

/// A section ready to be computed.
pub(super) struct Cut {
    pub(super) kind: Kind,
    pub(super) mesh: Mesh,
    pub(super) watches: Vec<Watch>,
    /// Largest error of a node in one step, K.
    pub(super) tolerance_k: f64,
}

impl Cut {
    pub(super) fn of(section: &Section, view: View) -> Self {
        match *section {
            Section::Plate { thickness_mm } => {
                Self::radial(Shape::Plate, 0.5e-3 * thickness_mm, view)
            }
            Section::Round { diameter_mm } => {
                Self::radial(Shape::Cylinder, 0.5e-3 * diameter_mm, view)
            }
            Section::Square { side_mm } => Self::square(0.5e-3 * side_mm, view),
            Section::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                grind,
            } => {
                let [edge_m, spine_m, height_m] =
                    [edge_mm, spine_mm, height_mm].map(|mm| 1e-3 * mm);
                let (mesh, heights) = Mesh::blade(edge_m, spine_m, height_m, grind, COLUMNS);
                Self {
                    kind: Kind::Blade,
                    watches: blade_watches(&heights, spine_m, height_m, view),
                    mesh,
                    tolerance_k: BLADE_TOLERANCE_K,
                }
            }
        }
    }

    /// Shares of the nodes that turn together: through the thickness of a blade, which differs by a few
    /// kelvins there; elsewhere each node turns by itself.
    pub(super) const fn turn_together(&self) -> &'static [f64] {
        match self.kind {
            Kind::Blade => &SHARE,
            Kind::Radial | Kind::Square => &[1.0],
        }
    }

    fn radial(shape: Shape, size_m: f64, view: View) -> Self {
        let (mesh, positions) = Mesh::radial(shape, size_m, Piece::intervals(shape));
        let watches = match view {
            View::Named => vec![
                Watch::node(Place::Centre, 0),
                Watch::node(Place::Surface, mesh.len() - 1),
            ],
            View::Across => within(&positions, size_m, |i| i),
        };
        Self {
            kind: Kind::Radial,
            mesh,
            watches,
            tolerance_k: RADIAL_TOLERANCE_K,
        }
    }

    fn square(half_m: f64, view: View) -> Self {
        let (mesh, positions) = Mesh::square(half_m);
        let watches = match view {
            View::Named => vec![
                Watch::node(Place::Centre, 0),
                Watch::node(Place::Surface, mesh.len() - SQUARE_INTERVALS - 1),
                Watch::node(Place::Corner, mesh.len() - 1),
            ],
            View::Across => within(&positions, half_m, |i| i * (i + 1) / 2),
        };
        Self {
            kind: Kind::Square,
            mesh,
            watches,
            tolerance_k: SQUARE_TOLERANCE_K,
        }
    }
}

/// Parts of the way across, from 0 to 1.
fn parts() -> impl Iterator<Item = f64> {
    (0..ACROSS).map(|i| i as f64 / (ACROSS - 1) as f64)
}

fn within(positions: &[f64], size_m: f64, number: impl Fn(usize) -> usize) -> Vec<Watch> {
    parts()
        .map(|part| Watch::between(Place::Within(part), part * size_m, positions, &number))
        .collect()
}

fn blade_watches(heights: &[f64], spine_m: f64, height_m: f64, view: View) -> Vec<Watch> {
    let middle = |place, height| Watch::between(place, height, heights, |column| column * LAYERS);
    match view {
        View::Across => parts()
            .map(|part| middle(Place::Within(part), part * height_m))
            .collect(),
        View::Named => {
            let core = (height_m - 0.5 * spine_m).max(0.75 * height_m);
            vec![
                Watch::node(Place::Edge, 0),
                middle(Place::Quarter, 0.25 * height_m),
                middle(Place::Middle, 0.5 * height_m),
                middle(Place::ThreeQuarter, 0.75 * height_m),
                middle(Place::Spine, core),
                Watch::between(Place::SpineSurface, core, heights, |column| {
                    column * LAYERS + LAYERS - 1
                }),
            ]
        }
    }
}
