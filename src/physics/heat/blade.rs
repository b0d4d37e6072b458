//! A blade as elements in its true shape, from edge to spine.
//!
//! Each element is a part of the height between two columns of nodes, with a third in its middle. Along
//! the height the temperature is a parabola there, through the thickness a polynomial, even about the middle
//! plane, that follows the taper: of fourth degree, or of second where the flanks take heat so slowly that it
//! hardly differs from one. The weighted places of Lobatto's rule are the nodes, as in [`super::element`]; the
//! flanks may slope, and no heat is lost or led astray by that.

use super::element::{NARROW_BAND, slopes_at};
use super::mesh::{Link, Mesh};
use super::{Grind, Medium, Quenching};
use crate::numeric::order::larger;

/// Elements from edge to spine. Against finite elements in its true shape times to 700 °C and below lie
/// within 0.4 %, at edge and core, but for the core of a tall blade at 700 °C, 0.6 %, as
/// `benches/conduction_comparison.py` tells; with 24 of them within 0.2 %, which is what the steps in time
/// leave.
const ELEMENTS: usize = 11;
/// The same where wetting may run up the blade as a front (`Medium::wets_in_a_front`), which is as wide as the
/// thickness: in water of 60 °C times are then off by 0.4 % on average, where they are by 1.4 % with 11, and at
/// worst, a quarter of the way up a thin convex blade, by 7.5 % instead of 27 % (`benches/README.md`).
const ELEMENTS_FOR_A_FRONT: usize = 22;
/// Elements are as short as they are near to edge and spine; this part of the thickness there counts with
/// the distance. What the ends cool reaches as far into the blade.
const EDGE_CROWDING: f64 = 0.4;
const SPINE_CROWDING: f64 = 0.2;
/// Columns of an element.
const COLUMNS: usize = 3;
/// Places of its columns, from -1 to 1.
const ALONG: [f64; COLUMNS] = [-1.0, 0.0, 1.0];
/// Share of its height that belongs to each of them: Simpson's rule.
const WIDTH: [f64; COLUMNS] = [1.0 / 6.0, 2.0 / 3.0, 1.0 / 6.0];

/// The nodes of a column, from the middle plane to the flank.
#[derive(Debug)]
struct Through {
    /// Squares of their places.
    squares: &'static [f64],
    /// Share of the half thickness that belongs to each.
    shares: &'static [f64],
}

/// Lobatto's rule with five nodes. Before a quench has made a parabola of it the middle may overshoot: by
/// 0.4 K in oil and 1.2 K in brine for 4 mm from 800 °C.
const QUARTIC: Through = Through {
    squares: &[0.0, 3.0 / 7.0, 1.0],
    shares: &[16.0 / 45.0, 49.0 / 90.0, 1.0 / 10.0],
};
/// The rule with three.
const PARABOLA: Through = Through {
    squares: &[0.0, 1.0],
    shares: &[2.0 / 3.0, 1.0 / 3.0],
};
/// Largest Biot number of the half thickness of the spine, with the largest heat transfer of the baths, up to
/// which a parabola will do. Times on the middle plane are then within 1 % of those of the fourth degree, to 700 °C within 2 %; the
/// flank of the spine, whose node holds more heat, is late by up to a tenth of a second at first. Where a
/// stir crosses the limit times step by as much.
const PARABOLA_BIOT: f64 = 0.4;
/// Spines in the height of a blade from which its faces at both ends count for little through its thickness.
const SLENDER: f64 = 3.0;
/// Conductivity of austenite in the middle of a quench, W/mK (`sources::simsir_gur_2008`).
const AUSTENITE_W_MK: f64 = 20.0;

/// Furthest that a linked node is behind another in their order: within an element.
const REACH: usize = COLUMNS * QUARTIC.squares.len() - 1;
// The equations are as wide as those of plates and rounds.
const _: () = assert!(REACH <= NARROW_BAND / 2);

/// What the baths ask of the mesh of a blade.
#[derive(Debug, Clone, Copy)]
pub(super) struct Asked {
    /// Whether wetting may run up the blade as a front.
    has_front: bool,
    /// Largest heat transfer, W/m²K.
    most_w_m2k: f64,
}

impl Asked {
    /// By the baths of a quench.
    pub(super) fn by(quenching: &Quenching<'_>) -> Self {
        let first = Self::by_bath(quenching.medium, quenching.agitation);
        let later = quenching.then.iter();
        let later = later.map(|later| Self::by_bath(&later.medium, later.agitation));
        later.fold(first, |asked, bath| Self {
            has_front: asked.has_front || bath.has_front,
            most_w_m2k: larger(asked.most_w_m2k, bath.most_w_m2k),
        })
    }

    pub(super) fn by_bath(medium: &Medium, agitation: f64) -> Self {
        Self {
            has_front: medium.wets_in_a_front(),
            most_w_m2k: agitation * medium.h_w_m2k.most_w_m2k(),
        }
    }

    fn elements(self) -> usize {
        if self.has_front {
            ELEMENTS_FOR_A_FRONT
        } else {
            ELEMENTS
        }
    }

    fn through(self, spine_m: f64, height_m: f64) -> &'static Through {
        let is_gentle = self.most_w_m2k * 0.5 * spine_m <= PARABOLA_BIOT * AUSTENITE_W_MK;
        if is_gentle && height_m >= SLENDER * spine_m {
            &PARABOLA
        } else {
            &QUARTIC
        }
    }
}

/// One half of a blade, cut.
pub(super) struct Blade {
    /// By the metre of its length.
    pub(super) mesh: Mesh,
    /// Heights of the columns, m, from the edge.
    pub(super) heights_m: Vec<f64>,
    through: &'static Through,
}

impl Blade {
    /// Cut as its baths ask.
    pub(super) fn new(sizes_m: [f64; 3], grind: Grind, asked: Asked) -> Self {
        let [_, spine_m, height_m] = sizes_m;
        let through = asked.through(spine_m, height_m);
        Self::in_elements(sizes_m, grind, asked.elements(), through)
    }

    /// Nodes of a column.
    pub(super) const fn layers(&self) -> usize {
        self.through.squares.len()
    }

    /// Share of the half thickness that belongs to each node of a column.
    pub(super) const fn shares(&self) -> &'static [f64] {
        self.through.shares
    }

    fn in_elements(
        [edge_m, spine_m, height_m]: [f64; 3],
        grind: Grind,
        elements: usize,
        through: &'static Through,
    ) -> Self {
        let half_thickness =
            |x: f64| 0.5 * (edge_m + (spine_m - edge_m) * grind.thickening(x / height_m));
        let ends = ends_of_elements(edge_m, spine_m, height_m, elements);
        let mut heights_m = Vec::with_capacity(2 * ends.len());
        for pair in ends.windows(2) {
            heights_m.extend([pair[0], 0.5 * (pair[0] + pair[1])]);
        }
        heights_m.push(height_m);
        let layers = through.squares.len();
        let nodes = heights_m.len() * layers;
        let mut volume = vec![0.0; nodes];
        let mut areas = vec![0.0; nodes];
        // Flow from each node to those behind it, as far as they are linked.
        let mut flow = vec![[0.0; REACH + 1]; nodes];
        let slopes_along = all_slopes(&ALONG);
        let slopes_through = all_slopes(through.squares);
        for (element, pair) in ends.windows(2).enumerate() {
            let first = element * (COLUMNS - 1) * layers;
            let length = pair[1] - pair[0];
            let thickness: [f64; COLUMNS] =
                std::array::from_fn(|column| half_thickness(heights_m[2 * element + column]));
            for (column, along) in slopes_along.iter().enumerate() {
                let slope_of = |values: &[f64; COLUMNS]| -> f64 {
                    let parts = along.iter().zip(values).map(|(part, value)| part * value);
                    2.0 / length * parts.sum::<f64>()
                };
                let half = thickness[column];
                let flank_slope = slope_of(&thickness);
                let width = WIDTH[column] * length;
                areas[first + column * layers + layers - 1] += width * 1.0_f64.hypot(flank_slope);
                for (layer, across) in slopes_through.iter().enumerate() {
                    let own = width * half * through.shares[layer];
                    volume[first + column * layers + layer] += own;
                    let depth = through.squares[layer].sqrt();
                    // Slopes of the temperature there along the height and through the thickness, by node.
                    let mut slopes = [[0.0; 2]; COLUMNS * QUARTIC.squares.len()];
                    let slopes = &mut slopes[..COLUMNS * layers];
                    for (other, part) in along.iter().enumerate() {
                        slopes[other * layers + layer][0] += 2.0 / length * part;
                    }
                    for (other, part) in across.iter().enumerate() {
                        let by_depth = 2.0 * depth * part / half;
                        let slope = &mut slopes[column * layers + other];
                        slope[0] -= depth * flank_slope * by_depth;
                        slope[1] += by_depth;
                    }
                    for from in 0..slopes.len() {
                        for to in from + 1..slopes.len() {
                            let [a, b] = [slopes[from], slopes[to]];
                            flow[first + from][to - from] -= own * (a[0] * b[0] + a[1] * b[1]);
                        }
                    }
                }
            }
        }
        let last = nodes - layers;
        for (layer, share) in through.shares.iter().enumerate() {
            areas[layer] += share * 0.5 * edge_m;
            areas[last + layer] += share * 0.5 * spine_m;
        }
        let mesh = Mesh {
            volume,
            links: flow
                .iter()
                .enumerate()
                .flat_map(|(from, behind)| {
                    let linked = behind.iter().enumerate().filter(|(_, flow)| **flow != 0.0);
                    linked.map(move |(stride, conductance)| Link {
                        from,
                        to: from + stride,
                        conductance: *conductance,
                    })
                })
                .collect(),
            faces: areas
                .into_iter()
                .enumerate()
                .filter(|(_, area)| *area > 0.0)
                .collect(),
            faces_in_air: Vec::new(),
        };
        Self {
            mesh,
            heights_m,
            through,
        }
    }
}

/// At each node, the slopes of the polynomials of all.
fn all_slopes(nodes: &[f64]) -> Vec<Vec<f64>> {
    let mut slopes = vec![vec![0.0; nodes.len()]; nodes.len()];
    for (place, slopes) in slopes.iter_mut().enumerate() {
        slopes_at(nodes, place, slopes);
    }
    slopes
}

/// Heights of the ends of elements, m: their lengths in proportion to the distances from edge and spine, one
/// over the sum of their reciprocals.
fn ends_of_elements(edge_m: f64, spine_m: f64, height_m: f64, elements: usize) -> Vec<f64> {
    let from_edge = EDGE_CROWDING * edge_m;
    let from_spine = SPINE_CROWDING * spine_m + height_m;
    let whole = (from_edge + height_m) / from_edge * (from_spine / (from_spine - height_m));
    let step = whole.powf(1.0 / elements as f64);
    let mut grown = 1.0;
    let mut ends: Vec<f64> = (0..elements)
        .map(|_| {
            let end = from_edge * from_spine * (grown - 1.0) / (from_spine + from_edge * grown);
            grown *= step;
            end
        })
        .collect();
    ends.push(height_m);
    ends
}

#[cfg(test)]
#[path = "blade_tests.rs"]
mod tests;
