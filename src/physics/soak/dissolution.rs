//! Carbide dissolving in austenite: size classes of spheres, with local equilibrium at their
//! surface.
//!
//! Carbon moves ten thousand times faster than chromium. While the austenite is so lean in carbon
//! that carbide can dissolve with all its alloy left behind at the surface, carbon sets the pace
//! and the first seconds bring the *fast limit*: for cementite the para-equilibrium with its metals
//! frozen, for other carbides from dilute solution. From there on the alloy piled up at the surface
//! has to diffuse away. Its content there follows from carbon being even and both phases being in
//! balance at the surface: a cementite surface that is richer in alloy than at equilibrium is in
//! balance with austenite poorer in carbon, as `a_C · prod(M_k)^(e_k) = const`, `e_k` atoms of the
//! metal per atom of carbon in the carbide.
//! A sphere shrinks as `dr²/dt = -2 R`, `R` the sum of both diffusivities times their
//! supersaturations, which depends only on how much carbide is left: one equation for all classes.
//!
//! What the carbide still holds goes in a straight line from its content before the soak to that
//! of the equilibrium, so that masses balance at every time and equilibrium is met at the end.

use super::sizes::{CELLS, Sizes};
use super::walk::Walk;
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

/// Surface content is held under this part of the carbide's, where carbon takes over.
const MOST_PILED_UP: f64 = 0.95;

/// Carbide as it stands before the piece is heated, at equilibrium, or at any time between.
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
    pub(super) sizes: &'a Sizes,
    /// Carbide of the piece before it is heated.
    pub(super) first: Carbide,
    /// Carbide at equilibrium.
    pub(super) last: Carbide,
    /// Part of the first carbide that is left when austenite has formed and the soak begins.
    pub(super) part_at_first: f64,
    /// Austenite in balance with carbide that has left all its alloy behind, where that is known.
    pub(super) fast_limit: Option<Composition>,
    /// Diffusivities over the squared median radius, 1/s: of carbon and of alloy.
    pub(super) pace_per_s: (f64, f64),
}

/// How far shrinkage has come.
#[derive(Debug, Clone, Copy)]
pub(super) struct Left {
    /// Carbide left.
    pub(super) carbide: Carbide,
    /// Volume over radius of what is left, per µm and first volume.
    pub(super) per_radius_um: f64,
    /// What the squared radii have lost, in squared median radii.
    pub(super) shrinkage: f64,
    /// How far the carbide has come from its first content to that of the equilibrium, 0 to 1.
    pub(super) way: f64,
}

/// Alloy at the surface of the carbide.
struct Surface {
    /// In the carbide, wt % of its metals.
    carbide_wt: f64,
    /// In the carbide, atoms per atom of carbon.
    per_carbon: f64,
    /// In austenite at equilibrium, wt %.
    balance_wt: f64,
    /// By how much alloy that is left behind lowers the activity of carbon, as a logarithm; zero
    /// where carbon alone sets the pace.
    held_back: f64,
    /// Carbon of the carbide, wt %.
    carbon_wt: f64,
}

/// Austenite away from the carbide.
struct Balance {
    carbon_wt: f64,
    /// Metals of the carbide, wt %.
    alloy_wt: f64,
    /// By how much its activity of carbon is below that of saturation, as a logarithm.
    short: f64,
}

impl Dissolution<'_> {
    /// The course from the beginning of the soak, to be followed in time.
    pub(super) fn course(&self) -> Course<'_> {
        let end = self.end();
        let surface = self.surface();
        let from = self.sizes.shrinkage_to(self.part_at_first.max(end));
        let mut paces = Vec::with_capacity(CELLS + 2);
        for i in self.sizes.cell(from)..=CELLS {
            let shrinkage = self.sizes.node(i);
            let part = self.sizes.remaining(shrinkage);
            if part <= end {
                paces.push((shrinkage, 0.0));
                break;
            }
            paces.push((shrinkage, self.pace(&surface, part)));
        }
        self.put_handover(&surface, &mut paces);
        Course {
            dissolution: self,
            paces,
            from,
            end,
            end_shrinkage: self.sizes.shrinkage_to(end),
        }
    }

    /// Puts in where dissolving goes over from the pace of carbon to that of alloy: the pace, which
    /// falls thousandfold to there, is straight on either side only.
    fn put_handover(&self, surface: &Surface, paces: &mut Vec<(f64, f64)>) {
        let is_by_carbon = |shrinkage: f64| {
            self.balance(self.sizes.remaining(shrinkage)).short > surface.held_back
        };
        let is_after = |(shrinkage, pace): &(f64, f64)| *pace == 0.0 || !is_by_carbon(*shrinkage);
        let Some(place) = paces.iter().position(is_after).filter(|place| *place > 0) else {
            return;
        };
        let (mut low, mut high) = (paces[place - 1].0, paces[place].0);
        for _ in 0..48 {
            let middle = f64::midpoint(low, high);
            if is_by_carbon(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        let part = self.sizes.remaining(high);
        if low < high && high < paces[place].0 && part > self.end() {
            paces.insert(place, (high, self.pace(surface, part)));
        }
    }

    /// Part of the first carbide that stays, by its carbon.
    fn end(&self) -> f64 {
        let (from, to) = (self.first.content.c, self.last.content.c);
        if from > to { to / from } else { 1.0 }
    }

    fn surface(&self) -> Surface {
        let limit = self.limit;
        let (mut balance_wt, mut carbide_wt, mut atoms) = (0.0, 0.0, 0.0);
        let first_mass = self.first.mass.max(1e-9);
        for (element, g_mol) in CARBIDE_METALS {
            let in_carbide_wt = self.first.content.get(element) / first_mass;
            balance_wt += limit.austenite.get(element);
            carbide_wt += in_carbide_wt;
            atoms += in_carbide_wt / g_mol;
        }
        let carbon_wt = self.first.content.c / first_mass;
        // Alloy of the carbide as if its iron and alloy were alone, to compare with austenite.
        let carbide_wt = carbide_wt / (1.0 - carbon_wt / 100.0);
        let enrichment = carbide_wt / balance_wt.max(1e-6);
        let per_carbon = atoms / (carbon_wt / CARBON_G_MOL);
        let held_back = if enrichment <= 1.0 {
            0.0
        } else if let Some(fast_limit) = &self.fast_limit {
            let saturated = limit.austenite.with_carbon(limit.carbon_saturation_wt);
            ln_activity(&saturated) - ln_activity(fast_limit)
        } else {
            per_carbon * enrichment.ln()
        };
        Surface {
            carbide_wt,
            per_carbon,
            balance_wt,
            held_back: held_back.max(0.0),
            carbon_wt,
        }
    }

    /// How far the carbide is from its first content to that of the equilibrium.
    fn way(&self, part: f64) -> f64 {
        let end = self.end();
        if end < 1.0 {
            ((1.0 - part) / (1.0 - end)).clamp(0.0, 1.0)
        } else {
            1.0
        }
    }

    /// Carbide when a part of the first is left.
    fn carbide(&self, part: f64) -> Carbide {
        let way = self.way(part);
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

    /// What austenite holds when a part of the carbide is left.
    fn balance(&self, part: f64) -> Balance {
        let now = self.carbide(part);
        let limit = self.limit;
        let austenite = 1.0 - limit.ferrite_mass_fraction - now.mass;
        let carbon_wt =
            ((self.steel.c - limit.ferrite_mass_fraction * limit.ferrite.c - now.content.c)
                / austenite.max(0.01))
            .max(1e-3);
        let matrix = 1.0 - now.mass;
        let mut dissolved = Composition::default().with_carbon(carbon_wt);
        let mut alloy_wt = 0.0;
        for (element, _) in CARBIDE_METALS {
            let wt = (self.steel.get(element) - now.content.get(element)) / matrix;
            dissolved.set(element, wt);
            alloy_wt += wt;
        }
        let saturated = limit.austenite.with_carbon(limit.carbon_saturation_wt);
        Balance {
            carbon_wt,
            alloy_wt,
            short: ln_activity(&saturated) - ln_activity(&dissolved),
        }
    }

    /// Rate of shrinkage, median radius squared per second, when a part of the carbide is left.
    fn pace(&self, surface: &Surface, part: f64) -> f64 {
        let Balance {
            carbon_wt,
            alloy_wt: here_wt,
            short,
        } = self.balance(part);
        let (of_carbon, of_alloy) = self.pace_per_s;
        let Surface {
            carbide_wt,
            per_carbon,
            balance_wt,
            held_back,
            carbon_wt: carbide_carbon_wt,
        } = *surface;

        let carbon_short_wt =
            carbon_wt * (((short - held_back) / (1.0 + CARBON_PER_WT * carbon_wt)).exp_m1());
        let by_carbon = carbon_short_wt.max(0.0) / (carbide_carbon_wt - carbon_wt);
        let by_alloy = if carbide_wt > balance_wt {
            let piled_up_wt =
                (balance_wt * (short / per_carbon).min(20.0).exp()).min(MOST_PILED_UP * carbide_wt);
            drawn_out((piled_up_wt - here_wt.min(balance_wt)) / (carbide_wt - piled_up_wt))
        } else {
            short.max(0.0) * carbon_wt / (carbide_carbon_wt - carbon_wt)
        };
        2.0 * (of_carbon * by_carbon + of_alloy * by_alloy)
    }
}

/// Supersaturation that counts for the pace: as the surface draws back, it leaves the alloy that
/// has to diffuse away further behind.
///
/// For a plane the exact pace is `λ` of `√π λ exp(λ²) (1 + erf λ) = Ω` in place of `Ω/√π` of a
/// surface at rest. The ratio of the two is taken for spheres as well; this form of it is within
/// 3 %.
fn drawn_out(supersaturation: f64) -> f64 {
    let omega = supersaturation.max(0.0);
    // The power of three quarters by two roots: a general power costs as much as the rest of the pace.
    let root = (1.0 + 0.85 * omega).sqrt();
    omega / (root * root.sqrt())
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
    /// Shrinkages with their paces, per s; the pace is straight between them. The first two hold
    /// between them where the soak begins.
    paces: Vec<(f64, f64)>,
    /// Shrinkage when the soak begins.
    from: f64,
    /// Part of the first carbide that stays, and the shrinkage that leaves it.
    end: f64,
    end_shrinkage: f64,
}

impl Course<'_> {
    /// Starts at the beginning of the soak.
    pub(super) fn follow(&self) -> Follower<'_> {
        Follower {
            course: self,
            walk: Walk::new(&self.paces, self.from),
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
        let Course {
            dissolution,
            end,
            end_shrinkage,
            ..
        } = self.course;
        let part = dissolution.sizes.remaining(shrinkage).max(*end);
        let shrinkage = shrinkage.min(*end_shrinkage);
        Left {
            carbide: dissolution.carbide(part),
            per_radius_um: dissolution.sizes.per_radius_um(shrinkage),
            shrinkage,
            way: dissolution.way(part),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn drawing_out_is_that_of_a_plane() {
        for lambda in [0.01, 0.1, 0.3, 0.6, 0.9, 1.1_f64] {
            let exact = std::f64::consts::PI.sqrt() * lambda;
            let omega = exact * (lambda * lambda).exp() * (1.0 + libm::erf(lambda));
            assert!((drawn_out(omega) / exact - 1.0).abs() < 0.03, "{lambda}");
        }
    }
}
