//! Carbide dissolving in austenite: size classes of spheres, with local equilibrium at their
//! surface.
//!
//! Carbon moves ten thousand times faster than chromium. While the austenite is so lean in carbon
//! that carbide can dissolve with all its alloy left behind at the surface, carbon sets the pace
//! and the first seconds bring the *fast limit*. From there on the alloy piled up at the surface
//! has to diffuse away. Its content there follows from carbon being even: a cementite surface that
//! is richer in alloy than at equilibrium is in balance with austenite poorer in carbon, as
//! `a_C · prod(M_k)^(e_k) = const`, `e_k` atoms of the metal per atom of carbon in the carbide.
//! A sphere shrinks as `dr²/dt = -2 R`, `R` the sum of both diffusivities times their
//! supersaturations, which depends only on how much carbide is left: one equation for all classes.
//!
//! What the carbide still holds goes in a straight line from its content before the soak to that
//! of the equilibrium, so that masses balance at every time and equilibrium is met at the end.

use crate::phases::SoakLimit;
use crate::sources::agren_1979::{CARBON_PER_WT, CHROMIUM_PER_WT, MANGANESE_PER_WT};
use crate::steel::{Composition, Element};

/// Metals that carbide takes up and that have to diffuse away from it.
const CARBIDE_METALS: [(Element, f64); 4] = [
    (Element::Cr, 51.996),
    (Element::Mn, 54.938),
    (Element::Mo, 95.95),
    (Element::W, 183.84),
];
const CARBON_G_MOL: f64 = 12.011;

/// Radii of the size classes over the median, each with the same part of the volume: lognormal,
/// spread 0.4 of the logarithm (expert value).
const CLASSES: [f64; 12] = [
    0.5002, 0.6312, 0.7226, 0.8030, 0.8803, 0.9590, 1.0427, 1.1359, 1.2453, 1.3839, 1.5843, 1.9991,
];
/// Cells of the shrinkage axis.
const CELLS: usize = 160;
/// Surface content is held under this part of the carbide's, where carbon takes over.
const MOST_PILED_UP: f64 = 0.95;

/// Carbide as it stands at the beginning of the soak or at any time after.
#[derive(Debug, Clone, Copy)]
pub(super) struct Carbide {
    /// Mass fraction of the piece.
    pub(super) mass: f64,
    /// What it holds, wt % of the piece.
    pub(super) content: Composition,
    /// Its volume over that of the same mass of matrix, times its mass.
    pub(super) volume: f64,
}

/// The course of dissolution at one temperature.
pub(super) struct Dissolution<'a> {
    pub(super) steel: &'a Composition,
    pub(super) limit: &'a SoakLimit,
    pub(super) first: Carbide,
    pub(super) last: Carbide,
    /// Diffusivities over the squared median radius, 1/s: of carbon and of alloy.
    pub(super) pace_per_s: (f64, f64),
}

/// How far shrinkage has come.
#[derive(Debug, Clone, Copy)]
pub(super) struct Left {
    /// Carbide left.
    pub(super) carbide: Carbide,
    /// Volume over radius of what is left, per median radius and first volume.
    pub(super) per_radius: f64,
}

impl Dissolution<'_> {
    /// The course over the whole shrinkage, to be followed in time.
    pub(super) fn course(&self) -> Course<'_> {
        let end = self.end();
        let pace_per_s = shrinkage_axis()
            .map(remaining)
            .take_while(|&part| part > end)
            .map(|part| self.pace(part))
            .collect();
        Course {
            dissolution: self,
            pace_per_s,
            end,
            end_shrinkage: shrinkage_to(end),
        }
    }

    /// Part of the first carbide that stays, by its carbon.
    fn end(&self) -> f64 {
        let (from, to) = (self.first.content.c, self.last.content.c);
        if from > to { to / from } else { 1.0 }
    }

    /// Carbide when a part of the first is left.
    fn carbide(&self, part: f64) -> Carbide {
        let end = self.end();
        let way = if end < 1.0 {
            ((1.0 - part) / (1.0 - end)).clamp(0.0, 1.0)
        } else {
            1.0
        };
        let mix = |from: f64, to: f64| from + (to - from) * way;
        let mut content = Composition::default();
        for element in Element::ALL {
            let (from, to) = (
                self.first.content.get(element),
                self.last.content.get(element),
            );
            content.set(element, mix(from, to));
        }
        Carbide {
            mass: mix(self.first.mass, self.last.mass),
            content,
            volume: mix(self.first.volume, self.last.volume),
        }
    }

    /// Rate of shrinkage, median radius squared per second, when a part of the carbide is left.
    fn pace(&self, part: f64) -> f64 {
        let now = self.carbide(part);
        let limit = self.limit;
        let austenite = 1.0 - limit.ferrite_mass_fraction - now.mass;
        let carbon_wt =
            ((self.steel.c - limit.ferrite_mass_fraction * limit.ferrite.c - now.content.c)
                / austenite.max(0.01))
            .max(1e-3);
        let matrix = 1.0 - now.mass;
        let mut dissolved = Composition::default().with_carbon(carbon_wt);
        let (mut here_wt, mut balance_wt, mut carbide_wt, mut atoms) = (0.0, 0.0, 0.0, 0.0);
        let first_mass = self.first.mass;
        for (element, g_mol) in CARBIDE_METALS {
            let wt = (self.steel.get(element) - now.content.get(element)) / matrix;
            dissolved.set(element, wt);
            let in_carbide_wt = self.first.content.get(element) / first_mass;
            here_wt += wt;
            balance_wt += limit.austenite.get(element);
            carbide_wt += in_carbide_wt;
            atoms += in_carbide_wt / g_mol;
        }
        let carbide_carbon_wt = self.first.content.c / first_mass;
        let atoms_per_carbon = atoms / (carbide_carbon_wt / CARBON_G_MOL);
        // Alloy of the carbide as if its iron and alloy were alone, to compare with austenite.
        let carbide_wt = carbide_wt / (1.0 - carbide_carbon_wt / 100.0);
        let saturated = limit.austenite.with_carbon(limit.carbon_saturation_wt);
        let short = ln_activity(&saturated) - ln_activity(&dissolved);
        let (of_carbon, of_alloy) = self.pace_per_s;

        let enrichment = carbide_wt / balance_wt.max(1e-6);
        let held_back = if enrichment > 1.0 {
            atoms_per_carbon * enrichment.ln()
        } else {
            0.0
        };
        let carbon_short_wt =
            carbon_wt * (((short - held_back) / (1.0 + CARBON_PER_WT * carbon_wt)).exp_m1());
        let by_carbon = carbon_short_wt.max(0.0) / (carbide_carbon_wt - carbon_wt);
        let by_alloy = if held_back > 0.0 {
            let piled_up_wt = (balance_wt * (short / atoms_per_carbon).min(20.0).exp())
                .min(MOST_PILED_UP * carbide_wt);
            (piled_up_wt - here_wt.min(balance_wt)) / (carbide_wt - piled_up_wt)
        } else {
            short.max(0.0) * carbon_wt / (carbide_carbon_wt - carbon_wt)
        };
        2.0 * (of_carbon * by_carbon + of_alloy * by_alloy.max(0.0))
    }
}

/// Logarithm of the activity of carbon in austenite, up to a constant.
fn ln_activity(austenite: &Composition) -> f64 {
    austenite.c.max(1e-3).ln()
        + CARBON_PER_WT * austenite.c
        + CHROMIUM_PER_WT * austenite.cr
        + MANGANESE_PER_WT * (austenite.mn + austenite.mo)
}

/// Rates of shrinkage along the axis, until the carbide of the limit is left.
pub(super) struct Course<'a> {
    dissolution: &'a Dissolution<'a>,
    pace_per_s: Vec<f64>,
    /// Part of the first carbide that stays, and the shrinkage that leaves it.
    end: f64,
    end_shrinkage: f64,
}

impl Course<'_> {
    /// Starts at the beginning of the soak.
    pub(super) const fn follow(&self) -> Follower<'_> {
        Follower {
            course: self,
            walk: Walk {
                pace: self.pace_per_s.as_slice(),
                cell: 0,
                shrinkage: 0.0,
                now_s: 0.0,
            },
        }
    }
}

/// Goes along a course; times must ascend.
pub(super) struct Follower<'a> {
    course: &'a Course<'a>,
    walk: Walk<'a>,
}

impl Follower<'_> {
    /// What is left at a time, s.
    pub(super) fn to(&mut self, time_s: f64) -> Left {
        let shrinkage = self.walk.to(time_s);
        let part = remaining(shrinkage).max(self.course.end);
        Left {
            carbide: self.course.dissolution.carbide(part),
            per_radius: per_radius(shrinkage.min(self.course.end_shrinkage)),
        }
    }
}

/// A node of shrinkage, in squared median radii: dense at the beginning; at the last the largest
/// class is gone. The same at every temperature, which keeps the solutions in order.
fn node(i: usize) -> f64 {
    let largest = CLASSES[CLASSES.len() - 1];
    let x = largest * i as f64 / CELLS as f64;
    x * x
}

fn shrinkage_axis() -> impl Iterator<Item = f64> {
    (0..=CELLS).map(node)
}

/// Part of the carbide volume left after a shrinkage.
fn remaining(shrinkage: f64) -> f64 {
    let left: f64 = CLASSES
        .iter()
        .map(|r| {
            let x = (1.0 - shrinkage / (r * r)).max(0.0);
            x * x.sqrt()
        })
        .sum();
    left / CLASSES.len() as f64
}

/// The shrinkage after which a part is left.
fn shrinkage_to(part: f64) -> f64 {
    let (mut low, mut high) = (0.0, node(CELLS));
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if remaining(middle) > part {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// Volume over radius summed over what is left, per median radius and first volume.
fn per_radius(shrinkage: f64) -> f64 {
    let sum: f64 = CLASSES
        .iter()
        .map(|r| (1.0 - shrinkage / (r * r)).max(0.0) / r)
        .sum();
    sum / CLASSES.len() as f64
}

/// Follows `ds/dt = pace(s)`, pace linear within each cell of the axis, which has an exact
/// solution. Beyond the last pace it is zero.
struct Walk<'a> {
    pace: &'a [f64],
    cell: usize,
    shrinkage: f64,
    now_s: f64,
}

impl Walk<'_> {
    fn to(&mut self, time_s: f64) -> f64 {
        while self.now_s < time_s {
            let Some(&slow) = self.pace.get(self.cell) else {
                break;
            };
            let fast = self.pace.get(self.cell + 1).copied().unwrap_or(0.0);
            let (from, to) = (node(self.cell), node(self.cell + 1));
            let slope = (fast - slow) / (to - from);
            let here = slow + slope * (self.shrinkage - from);
            if here <= 0.0 || self.cell >= CELLS {
                break;
            }
            let cell_s = if fast <= 0.0 {
                f64::INFINITY
            } else if (fast / here - 1.0).abs() < 1e-9 {
                (to - self.shrinkage) / here
            } else {
                (fast / here).ln() / slope
            };
            let step_s = time_s - self.now_s;
            if cell_s <= step_s {
                self.shrinkage = to;
                self.now_s += cell_s;
                self.cell += 1;
            } else {
                let way = if (slope * step_s).abs() < 1e-12 {
                    here * step_s
                } else {
                    here * (slope * step_s).exp_m1() / slope
                };
                self.shrinkage = (self.shrinkage + way).min(to);
                self.now_s = time_s;
            }
        }
        self.now_s = self.now_s.max(time_s);
        self.shrinkage
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
    fn walk_solves_decay_exactly() {
        // ds/dt = s_1 - s in the first cell, from 0: s = s_1 (1 - exp(-t)).
        let width = node(1);
        let pace = [width, 0.0];
        let mut walk = Walk {
            pace: &pace,
            cell: 0,
            shrinkage: 0.0,
            now_s: 0.0,
        };
        for time_s in [0.1, 0.7, 1.5, 8.0_f64] {
            let exact = width * (1.0 - (-time_s).exp());
            assert!((walk.to(time_s) - exact).abs() < 1e-12 * width);
        }
    }

    #[test]
    fn all_is_left_at_first_and_nothing_at_last() {
        assert_eq!(remaining(0.0), 1.0);
        assert!(remaining(node(CELLS)) < 1e-12);
        assert!(per_radius(node(CELLS)) < 1e-12);
    }
}
