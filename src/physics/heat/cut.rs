//! A section cut into nodes, and the places in it that are looked at.

use super::Section;
use super::blade::{Asked, Blade};
use super::curve::Place;
use super::element::{
    Element, GLANCE_NODES, PLATE_NODES, ROUND_NODES, SQUARE_NODES, number_in_square,
};
use super::mesh::Mesh;
use super::trace::Watch;

/// Largest error of a node of a plate or a round in one step, K. What leaves water whose film collapses is
/// then within 0.05 % of the heat of the piece; twice as much lets 0.15 % go missing.
const RADIAL_TOLERANCE_K: f64 = 0.05;
/// Largest error of a node of a square bar in one step, K.
const SQUARE_TOLERANCE_K: f64 = 0.1;
/// Largest error of a node of a blade in one step, K: what cools fast is soon over. What leaves water whose
/// film collapses is then within 0.1 % of the heat of the blade.
const BLADE_TOLERANCE_K: f64 = 1.0;
/// Largest error of a node in one step where a glance at the core will do, K.
const GLANCE_TOLERANCE_K: f64 = 0.4;
/// A node that turns by itself.
const ALONE: [f64; 1] = [1.0];
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
    /// The core alone, less finely than the others; of a blade as those with names.
    Glance,
}

impl View {
    /// Nodes of a coordinate that has so many in full.
    const fn nodes(self, full: usize) -> usize {
        match self {
            Self::Named | Self::Across => full,
            Self::Glance => GLANCE_NODES,
        }
    }

    /// Largest error of a node in one step, K, of a section that has one in full.
    const fn tolerance_k(self, full_k: f64) -> f64 {
        match self {
            Self::Named | Self::Across => full_k,
            Self::Glance => GLANCE_TOLERANCE_K,
        }
    }
}

/// Which equations go with a mesh.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A plate, a round or a blade.
    Narrow,
    Square,
}

/// A section ready to be computed.
pub(super) struct Cut {
    pub(super) kind: Kind,
    pub(super) mesh: Mesh,
    pub(super) watches: Vec<Watch>,
    /// Largest error of a node in one step, K.
    pub(super) tolerance_k: f64,
    /// Shares of the nodes that turn together: through the thickness of a blade, which differs by a few
    /// kelvins there; elsewhere each node turns by itself.
    pub(super) turn_together: &'static [f64],
}

impl Cut {
    /// A blade as its baths ask.
    pub(super) fn of(section: &Section, view: View, asked: Asked) -> Self {
        match *section {
            Section::Plate { thickness_mm } => {
                let element = Element::plate(0.5e-3 * thickness_mm, view.nodes(PLATE_NODES));
                let watches = radial_watches(&element, view);
                Self::radial(element.into_plate(), watches, view)
            }
            Section::Round { diameter_mm } => {
                let element = Element::round(0.5e-3 * diameter_mm, view.nodes(ROUND_NODES));
                let watches = radial_watches(&element, view);
                Self::radial(element.into_round(), watches, view)
            }
            Section::Square { side_mm } => {
                let element = Element::plate(0.5e-3 * side_mm, view.nodes(SQUARE_NODES));
                Self {
                    kind: Kind::Square,
                    mesh: element.square(),
                    watches: square_watches(&element, view),
                    tolerance_k: view.tolerance_k(SQUARE_TOLERANCE_K),
                    turn_together: &ALONE,
                }
            }
            Section::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                grind,
            } => {
                let sizes_m = [edge_mm, spine_mm, height_mm].map(|mm| 1e-3 * mm);
                let core_m = section.spine_core_mm().map_or(0.0, |mm| 1e-3 * mm);
                let blade = Blade::new(sizes_m, grind, asked);
                Self {
                    kind: Kind::Narrow,
                    watches: blade_watches(&blade, core_m, 1e-3 * height_mm, view),
                    tolerance_k: BLADE_TOLERANCE_K,
                    turn_together: blade.shares(),
                    mesh: blade.mesh,
                }
            }
        }
    }

    fn radial(mesh: Mesh, watches: Vec<Watch>, view: View) -> Self {
        Self {
            kind: Kind::Narrow,
            mesh,
            watches,
            tolerance_k: view.tolerance_k(RADIAL_TOLERANCE_K),
            turn_together: &ALONE,
        }
    }
}

/// Parts of the way across, from 0 to 1.
fn parts() -> impl Iterator<Item = f64> {
    (0..ACROSS).map(|i| i as f64 / (ACROSS - 1) as f64)
}

fn radial_watches(element: &Element, view: View) -> Vec<Watch> {
    match view {
        View::Named => vec![
            Watch::node(Place::Centre, 0),
            Watch::node(Place::Surface, element.surface()),
        ],
        View::Glance => vec![Watch::node(Place::Centre, 0)],
        View::Across => within(element, |node| node),
    }
}

/// From the axis to the middle of a face, and the corner.
fn square_watches(element: &Element, view: View) -> Vec<Watch> {
    let last = element.surface();
    match view {
        View::Named => vec![
            Watch::node(Place::Centre, 0),
            Watch::node(Place::Surface, number_in_square(last, 0)),
            Watch::node(Place::Corner, number_in_square(last, last)),
        ],
        View::Glance => vec![Watch::node(Place::Centre, 0)],
        View::Across => within(element, |node| number_in_square(node, 0)),
    }
}

fn within(element: &Element, number: impl Fn(usize) -> usize) -> Vec<Watch> {
    parts()
        .map(|part| Watch {
            place: Place::Within(part),
            nodes: element
                .weights_at(part)
                .into_iter()
                .enumerate()
                .map(|(node, weight)| (number(node), weight))
                .collect(),
        })
        .collect()
}

fn blade_watches(blade: &Blade, core_m: f64, height_m: f64, view: View) -> Vec<Watch> {
    // Nodes are nearer to the truth than the parabola of an element between them: the cubic through four
    // columns is, too.
    let layers = blade.layers();
    let in_layer = |place, height, layer| {
        Watch::between(place, height, &blade.heights_m, |column| {
            column * layers + layer
        })
    };
    let middle = |place, height| in_layer(place, height, 0);
    match view {
        View::Across => parts()
            .map(|part| middle(Place::Within(part), part * height_m))
            .collect(),
        View::Named | View::Glance => vec![
            Watch::node(Place::Edge, 0),
            middle(Place::Quarter, 0.25 * height_m),
            middle(Place::Middle, 0.5 * height_m),
            middle(Place::ThreeQuarter, 0.75 * height_m),
            middle(Place::Spine, core_m),
            in_layer(Place::SpineSurface, core_m, layers - 1),
        ],
    }
}
