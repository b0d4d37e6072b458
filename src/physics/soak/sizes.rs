//! Sizes of the carbides of a structure, and what is left of them as they shrink.
//!
//! Shrinkage is what the squared radius of every carbide has lost, in squared median radii: one
//! number for all sizes.

use super::Structure;
use crate::numeric::order::larger;

/// Radii of the size classes over the median, each with the same part of the volume: lognormal,
/// spread 0.4 of the logarithm (expert value).
const CLASSES: [f64; 12] = [
    0.5002, 0.6312, 0.7226, 0.8030, 0.8803, 0.9590, 1.0427, 1.1359, 1.2453, 1.3839, 1.5843, 1.9991,
];
/// Cells of the shrinkage axis.
pub(super) const CELLS: usize = 160;

/// Size classes: radius over the median, and part of the carbide's volume. The network is the
/// last, where there is one.
#[derive(Debug, Clone)]
pub(super) struct Sizes {
    classes: Vec<(f64, f64)>,
    has_network: bool,
    largest: f64,
    median_um: f64,
}

impl Sizes {
    /// The sizes of a structure, with a part of the carbide in a network on the grain boundaries.
    pub(super) fn new(structure: &Structure, network: f64) -> Self {
        let median_um = structure.carbide_radius_um;
        let spread = |part: f64, times: f64| {
            let each = part / CLASSES.len() as f64;
            CLASSES.iter().map(move |r| (times * r, each))
        };
        let left_over = structure.left_over_part * (1.0 - network);
        let mut classes: Vec<(f64, f64)> = spread(1.0 - network - left_over, 1.0).collect();
        if left_over > 0.0 {
            classes.extend(spread(left_over, structure.left_over_radius_um / median_um));
        }
        let has_network = network > 0.0;
        if has_network {
            classes.push((structure.network_radius_um / median_um, network));
        }
        let largest = classes.iter().fold(0.0, |most: f64, (r, _)| most.max(*r));
        Self {
            classes,
            has_network,
            largest,
            median_um,
        }
    }

    /// The radius that halves the volume of the evenly spread carbide, µm.
    pub(super) const fn median_um(&self) -> f64 {
        self.median_um
    }

    /// A node of the shrinkage axis: dense at the beginning; at the last the largest class is gone.
    /// The same at every temperature, which keeps the solutions in order.
    pub(super) fn node(&self, i: usize) -> f64 {
        let x = self.largest * i as f64 / CELLS as f64;
        x * x
    }

    /// The cell of the axis that holds a shrinkage.
    pub(super) fn cell(&self, shrinkage: f64) -> usize {
        let way = larger(0.0, shrinkage).sqrt() / self.largest;
        ((way * CELLS as f64) as usize).min(CELLS)
    }

    /// Part of the carbide volume left after a shrinkage.
    pub(super) fn remaining(&self, shrinkage: f64) -> f64 {
        self.classes
            .iter()
            .map(|(r, part)| {
                let x = larger(0.0, 1.0 - shrinkage / (r * r));
                part * x * x.sqrt()
            })
            .sum()
    }

    /// What each class still has of its radius, and of the whole volume, after a shrinkage.
    fn left(&self, shrinkage: f64) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.classes.iter().map(move |(r, part)| {
            let x = larger(0.0, 1.0 - shrinkage / (r * r));
            (r * x.sqrt(), part * x * x.sqrt())
        })
    }

    /// Mean radius by volume of the carbide that a shrinkage leaves, the network aside, µm; the
    /// median where nothing is left.
    pub(super) fn radius_left_um(&self, shrinkage: f64) -> f64 {
        let spread = self.classes.len() - usize::from(self.has_network);
        let (moment, volume) = self
            .left(shrinkage)
            .take(spread)
            .fold((0.0, 0.0), |(m, v), (r, part)| (m + r * part, v + part));
        if volume > 0.0 {
            self.median_um * moment / volume
        } else {
            self.median_um
        }
    }

    /// Volume of the network that a shrinkage leaves, as part of all carbide at first.
    pub(super) fn network_left(&self, shrinkage: f64) -> f64 {
        let last = self.left(shrinkage).last();
        last.filter(|_| self.has_network)
            .map_or(0.0, |(_, part)| part)
    }

    /// The shrinkage after which a part is left.
    pub(super) fn shrinkage_to(&self, part: f64) -> f64 {
        if part >= 1.0 {
            return 0.0;
        }
        let (mut low, mut high) = (0.0, self.node(CELLS));
        for _ in 0..48 {
            let middle = f64::midpoint(low, high);
            if self.remaining(middle) > part {
                low = middle;
            } else {
                high = middle;
            }
        }
        high
    }

    /// Volume over radius summed over what is left, per µm and first volume.
    pub(super) fn per_radius_um(&self, shrinkage: f64) -> f64 {
        let sum: f64 = self
            .classes
            .iter()
            .map(|(r, part)| part * larger(0.0, 1.0 - shrinkage / (r * r)) / r)
            .sum();
        sum / self.median_um
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::soak::StartingStructure;

    #[test]
    fn classes_are_the_quantiles_of_a_lognormal() {
        let quantiles = [
            -1.7317, -1.1503, -0.8122, -0.5485, -0.3186, -0.1046, 0.1046, 0.3186, 0.5485, 0.8122,
            1.1503, 1.7317_f64,
        ];
        for (r, z) in CLASSES.iter().zip(quantiles) {
            assert!((r - (0.4 * z).exp()).abs() < 1e-3, "{r} {z}");
        }
    }

    #[test]
    fn all_is_left_at_first_and_nothing_at_last() {
        for network in [0.0, 0.3] {
            let sizes = Sizes::new(&StartingStructure::AsForged.structure(), network);
            assert!((sizes.remaining(0.0) - 1.0).abs() < 1e-12);
            assert!(sizes.remaining(sizes.node(CELLS)) < 1e-12);
            assert!(sizes.per_radius_um(sizes.node(CELLS)) < 1e-12);
            for part in [0.9, 0.4, 0.05] {
                let shrinkage = sizes.shrinkage_to(part);
                assert!((sizes.remaining(shrinkage) - part).abs() < 1e-9);
                let cell = sizes.cell(shrinkage);
                assert!(sizes.node(cell) <= shrinkage && shrinkage <= sizes.node(cell + 1));
            }
        }
    }
}
