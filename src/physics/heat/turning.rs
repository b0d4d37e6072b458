//! The heat of transformation: what austenite gives up when it turns into ferrite, pearlite or
//! bainite on the way down, and the properties that it has afterwards.
//!
//! A step in time is taken with the heat source expected in it; then every node turns along the
//! path that it took, and its temperature is set so that its heat is what it was, less what has
//! flowed out. Heat is kept exactly, but for that of the first
//! ten-thousandth of a node, and the steps are chosen so that this correction stays
//! small. Martensite is not counted here: its heat is part of the heat capacity
//! below its start, so a place that warms up again through that takes the heat back, which real
//! martensite does not.

use super::Material;
use super::mesh::Link;
use super::properties::Local;
use crate::numeric::order::larger;
use crate::sources::hagel_1956::EUTECTOID_KJ_KG;

/// Temperature of the latent heat, °C; at others it follows from the heat capacities. Ferrite and
/// bainite are taken to give as much as pearlite does (estimate).
const EUTECTOID_C: f64 = 727.0;
/// Density of austenite there, kg/m³: 8000 less 0.5 for each °C (practical line, from memory).
const AUSTENITE_KG_M3: f64 = 8000.0 - 0.5 * EUTECTOID_C;
/// So little of a node that has turned does not count yet: its heat is a hundredth of a kelvin.
const UNNOTICED: f64 = 1e-4;
/// Largest correction of a node in a step, K.
const CORRECTION_K: f64 = 0.5;
/// A node's temperature after its correction is found to this, K.
const FOUND_K: f64 = 1e-6;
/// Most steps to find it.
const MOST_TRIES: usize = 12;

/// What the austenite of a piece turns into as it cools, node by node.
pub trait Turning {
    /// Sets up a number of nodes of austenite, or of groups that turn together; returns the volume fraction
    /// of ferrite that they bring along.
    fn begin(&mut self, nodes: usize) -> f64;

    /// The volume fraction of ferrite, pearlite and bainite of a node after a straight path of
    /// temperature, from the state last kept.
    fn after(&mut self, node: usize, from_c: f64, to_c: f64, duration_s: f64) -> f64;

    /// Keeps what [`Turning::after`] told last of every node.
    fn keep(&mut self);

    /// Start of martensite, °C.
    fn martensite_start_c(&self) -> f64;
}

/// How far each node of a piece has turned, and the heat that comes of it.
pub(super) struct Turned<'a> {
    turning: &'a mut dyn Turning,
    austenite: &'a Material,
    product: &'static Material,
    /// What a cubic metre of austenite holds more than its product, less what the two tables of
    /// heat show, J/m³.
    latent_j_m3: f64,
    fraction: Vec<f64>,
    next: Vec<f64>,
    /// Shares of the nodes that turn together, which follow one another; they sum to one.
    shares: &'static [f64],
    /// Heat source of each node now, W/m³, as expected from the last steps.
    pub(super) source: Vec<f64>,
    /// Mean of each node over the last step, W/m³.
    mean: Vec<f64>,
    last_step_s: f64,
    /// Largest correction of a node in a step, K.
    allowed_k: f64,
    /// Properties of the product at the temperatures last asked for.
    pub(super) locals: Vec<Local>,
    /// Whether any node has turned as far as to be noticed.
    pub(super) is_mixed: bool,
}

impl<'a> Turned<'a> {
    pub(super) fn new(
        turning: &'a mut dyn Turning,
        austenite: &'a Material,
        nodes: usize,
        shares: &'static [f64],
        start_c: f64,
    ) -> Self {
        let product = Material::ferrite_and_carbide();
        let brought = turning.begin(nodes.div_ceil(shares.len().max(1)));
        let shown = austenite.heat_j_m3(EUTECTOID_C) - product.heat_j_m3(EUTECTOID_C);
        Self {
            latent_j_m3: EUTECTOID_KJ_KG * 1e3 * AUSTENITE_KG_M3 - shown,
            fraction: vec![brought; nodes],
            next: vec![brought; nodes],
            shares,
            source: vec![0.0; nodes],
            mean: vec![0.0; nodes],
            last_step_s: 0.0,
            allowed_k: CORRECTION_K,
            locals: vec![product.at(start_c); nodes],
            is_mixed: brought > UNNOTICED,
            turning,
            austenite,
            product,
        }
    }

    pub(super) fn fraction(&self, node: usize) -> f64 {
        self.fraction.get(node).copied().unwrap_or_default()
    }

    /// The fraction that counts for what flows along a link.
    #[inline(always)]
    pub(super) fn fraction_along(&self, link: &Link) -> f64 {
        0.5 * (self.fraction[link.from] + self.fraction[link.to])
    }

    /// Looks up the product at temperatures, and mixes the heat capacities of what is in a node.
    pub(super) fn mix(&mut self, temperature_c: &[f64], locals: &mut [Local]) {
        for (((own, local), &t), &x) in self
            .locals
            .iter_mut()
            .zip(locals)
            .zip(temperature_c)
            .zip(&self.fraction)
        {
            *own = self.product.at(t);
            local.capacity += x * (own.capacity - local.capacity);
            local.capacity_slope += x * (own.capacity_slope - local.capacity_slope);
        }
    }

    /// Heat of a node that has turned so far, J/m³.
    fn heat_j_m3(&self, fraction: f64, temperature_c: f64) -> f64 {
        let austenite = self.austenite.heat_j_m3(temperature_c);
        let product = self.product.heat_j_m3(temperature_c) - self.latent_j_m3;
        austenite + fraction * (product - austenite)
    }

    fn capacity_j_m3k(&self, fraction: f64, temperature_c: f64) -> f64 {
        let austenite = self.austenite.capacity_j_m3k(temperature_c);
        austenite + fraction * (self.product.capacity_j_m3k(temperature_c) - austenite)
    }

    /// Turns every node along a step, those that turn together along the path of their mean.
    fn turn(&mut self, from_c: &[f64], to_c: &[f64], step_s: f64) {
        let together = self.shares.len().max(1);
        let mean =
            |t: &[f64]| -> f64 { t.iter().zip(self.shares).map(|(t, share)| share * t).sum() };
        let paths = from_c.chunks(together).zip(to_c.chunks(together));
        let fractions = self
            .fraction
            .chunks(together)
            .zip(self.next.chunks_mut(together));
        for (group, ((from, to), (fraction, next))) in paths.zip(fractions).enumerate() {
            let before = fraction.first().copied().unwrap_or_default();
            let after = self.turning.after(group, mean(from), mean(to), step_s);
            next.fill(larger(before, after));
        }
    }

    /// Turns every node along a step, and corrects its temperature at the end. Returns the
    /// largest correction over what is allowed; nothing is kept yet.
    pub(super) fn correct(&mut self, from_c: &[f64], to_c: &mut [f64], step_s: f64) -> f64 {
        self.turn(from_c, to_c, step_s);
        let mut worst = 0.0_f64;
        for (node, to) in to_c.iter_mut().enumerate() {
            let before = self.fraction(node);
            let after = self.next.get(node).copied().unwrap_or(before);
            let expected = self.source.get(node).copied().unwrap_or_default();
            if (after <= before || after <= UNNOTICED) && expected == 0.0 {
                continue;
            }
            let heat = self.heat_j_m3(before, *to) - expected * step_s;
            let mut corrected = *to;
            for _ in 0..MOST_TRIES {
                let error = heat - self.heat_j_m3(after, corrected);
                let change = error / self.capacity_j_m3k(after, corrected);
                corrected += change;
                if change.abs() < FOUND_K {
                    break;
                }
            }
            worst = larger(worst, (corrected - *to).abs());
            *to = corrected;
        }
        worst / self.allowed_k
    }

    /// Keeps the step just corrected.
    pub(super) fn keep(&mut self, to_c: &[f64], step_s: f64) {
        self.turning.keep();
        let before_s = self.last_step_s;
        for (node, &t) in to_c.iter().enumerate() {
            let (Some(fraction), Some(&next), Some(source), Some(mean)) = (
                self.fraction.get_mut(node),
                self.next.get(node),
                self.source.get_mut(node),
                self.mean.get_mut(node),
            ) else {
                continue;
            };
            let gain = next - *fraction;
            *fraction = next;
            let latent = self.latent_j_m3 + self.austenite.heat_j_m3(t) - self.product.heat_j_m3(t);
            let now = gain * latent / step_s;
            // The means belong to the middles of the steps; the end of the last one is half a
            // step on.
            let trend = if before_s > 0.0 {
                (now - *mean) * step_s / (step_s + before_s)
            } else {
                0.0
            };
            *source = if gain > 0.0 && next > UNNOTICED {
                larger(0.0, now + trend)
            } else {
                0.0
            };
            *mean = now;
            self.is_mixed |= next > UNNOTICED;
        }
        self.last_step_s = step_s;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::conduct::Conduction;
    use crate::heat::medium;
    use crate::heat::mesh::{Mesh, Shape};
    use crate::heat::until::{Reached, Until};

    /// Turns at a rate that is largest near 600 °C.
    struct Made {
        kept: Vec<f64>,
        next: Vec<f64>,
    }

    impl Turning for Made {
        fn begin(&mut self, nodes: usize) -> f64 {
            self.kept = vec![0.0; nodes];
            self.next = vec![0.0; nodes];
            0.0
        }

        fn after(&mut self, node: usize, from_c: f64, to_c: f64, duration_s: f64) -> f64 {
            let middle_c = 0.5 * (from_c + to_c);
            let rate = 0.15 * (-((middle_c - 600.0) / 40.0).powi(2)).exp();
            self.next[node] = 1.0 - (1.0 - self.kept[node]) * (-rate * duration_s).exp();
            self.next[node]
        }

        fn keep(&mut self) {
            self.kept.clone_from(&self.next);
        }

        fn martensite_start_c(&self) -> f64 {
            200.0
        }
    }

    /// Cools a plate of 6 mm in still air: heat lost by a square metre of half the plate, J, heat
    /// flown through its surface, J, and its temperature at 60 s, °C.
    fn cooled(allowed_k: f64) -> [f64; 3] {
        let air = medium("air_still").unwrap();
        let austenite = Material::austenite_to_martensite(200.0);
        let (mesh, _) = Mesh::radial(Shape::Plate, 3e-3, 12);
        let mut made = Made {
            kept: Vec::new(),
            next: Vec::new(),
        };
        let mut turned = Turned::new(&mut made, &austenite, mesh.len(), &[1.0], 850.0);
        turned.allowed_k = allowed_k;
        let start = turned.heat_j_m3(0.0, 850.0) * 3e-3;
        let mut piece = Conduction::<3>::new(&mesh, &austenite, 850.0, 0.005).turning(turned);
        let mut surface: Vec<[f64; 2]> = Vec::new();
        for time_s in [60.0, 100.0] {
            let until = Until {
                reached: Reached::Cooled(30.0),
                time_s,
            };
            piece.stay_in(air, 1.0, until, |piece| {
                surface.push([piece.time_s, *piece.temperature_c.last().unwrap()]);
            });
        }
        let through: f64 = surface
            .windows(2)
            .map(|pair| {
                let flux = |t: f64| air.flux(t, 1.0).0;
                let [a, b] = [pair[0][1], pair[1][1]];
                (pair[1][0] - pair[0][0]) / 6.0 * (flux(a) + 4.0 * flux(0.5 * (a + b)) + flux(b))
            })
            .sum();
        let turned = piece.turned.as_ref().unwrap();
        let end: f64 = mesh
            .volume
            .iter()
            .enumerate()
            .map(|(node, volume)| {
                volume * turned.heat_j_m3(turned.fraction(node), piece.temperature_c[node])
            })
            .sum();
        let at_60 = surface.iter().rfind(|point| point[0] <= 60.0).unwrap()[1];
        [start - end, through, at_60]
    }

    #[test]
    fn heat_is_kept_and_the_arrest_does_not_depend_on_the_step() {
        let [lost, through, usual_c] = cooled(CORRECTION_K);
        approx::assert_relative_eq!(lost, through, max_relative = 1e-3);
        let [_, _, coarse_c] = cooled(4.0 * CORRECTION_K);
        let [_, _, fine_c] = cooled(0.05 * CORRECTION_K);
        let errors = [coarse_c - fine_c, usual_c - fine_c];
        assert!(
            errors.iter().all(|k| k.abs() < 0.1),
            "{errors:?} K of {fine_c} °C"
        );
    }
}
