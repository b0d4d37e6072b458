//! The piece in the furnace: what is carbide, ferrite and austenite when the soak begins, and at
//! every time after.

use super::dissolution::{Carbide, Dissolution, Left};
use super::sizes::Sizes;
use super::{Hold, SoakEnd, SoakMasses, SoakPoint, Structure, diffusion, grain};
use crate::phases::{self, Annealed, Eutectoid, PhaseError, SoakLimit};
use crate::sources::astm_e112::grain_number;
use crate::sources::molinder_1956;
use crate::steel::{Composition, Element};

/// Austenite that divides what it holds, mass fraction, where there is hardly any.
const LEAST_AUSTENITE: f64 = 1e-6;
/// Most ferrite that is left when the soak begins, mass fraction.
const MOST_FERRITE: f64 = 0.95;

/// Carbon of ferrite beside austenite, wt %: a straight line from the computed 0.019 at 727 °C to
/// none at 912 °C.
fn ferrite_carbon_wt(temperature_c: f64) -> f64 {
    (0.019 * (912.0 - temperature_c) / (912.0 - 727.0)).max(0.0)
}

/// A steel in the structure in which it goes into the furnace: what all soaks of it share.
#[derive(Debug, Clone)]
pub(super) struct Before {
    eutectoid: Eutectoid,
    annealed: Annealed,
    sizes: Sizes,
    /// Part of the carbide outside pearlite when all of it has formed slowly.
    outside_pearlite: f64,
    carbide: Carbide,
    /// The metals of its cementite, wt %, where it is cementite that holds the carbon, and those
    /// of the ferrite around it.
    metals: Option<(Composition, Composition)>,
}

impl Before {
    pub(super) fn new(steel: &Composition, start: &Structure) -> Result<Self, PhaseError> {
        let eutectoid = phases::eutectoid(steel)?;
        let annealed = phases::annealed(steel)?;
        Ok(Self::of(steel, start, eutectoid, annealed))
    }

    /// The same steel in another structure.
    pub(super) fn restructured(&self, steel: &Composition, start: &Structure) -> Self {
        Self::of(steel, start, self.eutectoid, self.annealed)
    }

    fn of(
        steel: &Composition,
        start: &Structure,
        eutectoid: Eutectoid,
        annealed: Annealed,
    ) -> Self {
        let eutectoid_carbon_wt = eutectoid.carbon_wt;
        let mass = annealed.carbide_mass_fraction;
        let content = enriched(steel, &annealed.carbide, start);
        let carbide = part_of_piece(
            &content,
            mass,
            volume_over_matrix(mass, annealed.carbide_volume_fraction),
        );
        let metals = annealed.cementite.map(|cementite| {
            let mut ferrite = Composition::default();
            for element in Element::ALL {
                let wt = (steel.get(element) - carbide.content.get(element)) / (1.0 - mass);
                ferrite.set(element, wt.max(0.0));
            }
            (enriched(steel, &cementite, start), ferrite)
        });
        let outside_pearlite = ((steel.c - eutectoid_carbon_wt).max(0.0)
            / (annealed.carbide.c - eutectoid_carbon_wt).max(1.0)
            * annealed.carbide.c
            / steel.c.max(0.01))
        .clamp(0.0, 1.0);
        let network = start.network_part * outside_pearlite;
        Self {
            eutectoid,
            annealed,
            sizes: Sizes::new(start, network),
            outside_pearlite,
            carbide,
            metals,
        }
    }

    pub(super) const fn eutectoid(&self) -> &Eutectoid {
        &self.eutectoid
    }

    pub(super) const fn annealed(&self) -> &Annealed {
        &self.annealed
    }

    pub(super) const fn outside_pearlite(&self) -> f64 {
        self.outside_pearlite
    }

    /// Whether austenite holds so much carbon from the beginning that no ferrite stands beside it.
    pub(super) fn is_far_above_ferrite(&self, steel: &Composition, temperature_c: f64) -> bool {
        /// The line A3 lies below this power of the way from the eutectoid to where it ends without
        /// carbon, at most so far up.
        const POWER: f64 = 1.3;
        const LEAST_END_C: f64 = 940.0;
        const LEAST_SPAN_K: f64 = 180.0;
        let Eutectoid {
            carbon_wt,
            temperature_c: from_c,
        } = self.eutectoid;
        let end_c = LEAST_END_C.max(from_c + LEAST_SPAN_K);
        let way = ((end_c - temperature_c) / (end_c - from_c)).clamp(0.0, 1.0);
        let most_wt = carbon_wt * way.powf(POWER);
        most_wt < 0.5 * carbon_wt.min(steel.c)
    }

    /// Austenite in balance with cementite that has left all its metals behind.
    pub(super) fn fast_limit(&self, temperature_c: f64) -> Result<Option<Composition>, PhaseError> {
        let Some((cementite, ferrite)) = &self.metals else {
            return Ok(None);
        };
        let carbon_wt = phases::carbon_beside_cementite_wt(ferrite, cementite, temperature_c)?;
        Ok(carbon_wt.map(|carbon_wt| ferrite.with_carbon(carbon_wt)))
    }
}

/// The piece in the furnace.
pub(super) struct Piece<'a> {
    stock: &'a super::Stock,
    temperature_c: f64,
    limit: &'a SoakLimit,
    fast_limit: Option<Composition>,
    /// Carbon of austenite that ferrite stands beside, wt %.
    beside_ferrite_wt: f64,
    first: Carbide,
    last: Carbide,
    /// Mass fraction of ferrite when the soak begins, and the time in which it goes, s.
    ferrite: f64,
    ferrite_s: f64,
    /// Part of the first carbide left when the soak begins.
    part_at_first: f64,
}

impl<'a> Piece<'a> {
    pub(super) fn new(hold: &'a Hold<'_>) -> Self {
        let Hold {
            stock,
            temperature_c,
            limit,
            fast_limit,
            beside_ferrite_wt,
        } = hold;
        let Before {
            eutectoid,
            carbide: before,
            ..
        } = stock.before;
        let eutectoid_carbon_wt = eutectoid.carbon_wt;
        let steel = &stock.steel;
        let last = part_of_piece(
            &limit.carbide,
            limit.carbide_mass_fraction,
            volume_over_matrix(limit.carbide_mass_fraction, limit.carbide_volume_fraction),
        );
        let first = if before.content.c > last.content.c {
            before
        } else {
            last
        };
        // Ferrite that carbon from the carbide regions cannot reach before the soak begins.
        let ferrite_carbon_wt = ferrite_carbon_wt(*temperature_c);
        let apart = ((eutectoid_carbon_wt - steel.c) / (eutectoid_carbon_wt - ferrite_carbon_wt))
            .clamp(0.0, MOST_FERRITE);
        let ferrite = apart.max(limit.ferrite_mass_fraction);
        let formed_wt = (1.0 - apart) * molinder_1956::PART_OF_EUTECTOID * eutectoid_carbon_wt;
        let in_solution_wt = fast_limit.as_ref().map_or(formed_wt, |fast_limit| {
            formed_wt.min((1.0 - ferrite) * fast_limit.c)
        });
        let half_width_m = stock.start.ferrite_half_width_um * 1e-6;
        let diffusivity = diffusion::of_carbon_m2_s(temperature_c + 273.15);
        Self {
            stock,
            temperature_c: *temperature_c,
            limit,
            fast_limit: *fast_limit,
            beside_ferrite_wt: *beside_ferrite_wt,
            first,
            last,
            ferrite,
            ferrite_s: half_width_m * half_width_m / (4.0 * diffusivity),
            part_at_first: ((steel.c - in_solution_wt) / first.content.c.max(1e-9)).min(1.0),
        }
    }

    pub(super) fn dissolution(&self) -> Dissolution<'_> {
        let sizes = &self.stock.before.sizes;
        let radius_m = sizes.median_um() * 1e-6;
        let temperature_k = self.temperature_c + 273.15;
        Dissolution {
            steel: &self.stock.steel,
            limit: self.limit,
            sizes,
            first: self.first,
            last: self.last,
            part_at_first: self.part_at_first,
            fast_limit: self.fast_limit,
            pace_per_s: (
                diffusion::of_carbon_m2_s(temperature_k) / (radius_m * radius_m),
                diffusion::of_alloy_m2_s(temperature_k) / (radius_m * radius_m),
            ),
        }
    }

    /// The piece at a time, s, with what is left of its carbide.
    pub(super) fn state(&self, time_s: f64, left: &Left) -> SoakEnd {
        let Left {
            carbide,
            per_radius_um,
            shrinkage,
            way,
        } = *left;
        let limit = self.limit;
        let steel = &self.stock.steel;
        let settled = limit.ferrite_mass_fraction;
        let matrix = 1.0 - carbide.mass;
        let ferrite_carbon_wt = if settled > 0.0 {
            limit.ferrite.c
        } else {
            ferrite_carbon_wt(self.temperature_c)
        };
        // Ferrite goes as fast as carbon crosses it. Austenite is at least so much that it can hold
        // what carbon is in neither ferrite nor carbide, and at most so much that ferrite does not
        // form in it again: while carbide holds carbon back, ferrite stays.
        let ferrite = settled + (self.ferrite - settled) * (-time_s / self.ferrite_s).exp();
        let carbon_over_wt = steel.c - carbide.content.c - matrix * ferrite_carbon_wt;
        let most_over_wt = (limit.carbon_saturation_wt - ferrite_carbon_wt).max(1e-3);
        let least_austenite = (carbon_over_wt / most_over_wt)
            .max(LEAST_AUSTENITE)
            .min(matrix);
        let ferrite_over_wt = self.beside_ferrite_wt - ferrite_carbon_wt;
        let most_austenite = if ferrite_over_wt > 0.0 {
            carbon_over_wt / ferrite_over_wt
        } else {
            matrix
        };
        let austenite = (matrix - ferrite).min(most_austenite).max(least_austenite);
        let ferrite = matrix - austenite;
        let mut dissolved = Composition::default();
        for element in Element::ALL {
            let matrix_wt =
                (steel.get(element) - carbide.content.get(element)) / (1.0 - carbide.mass);
            // Alloy between austenite and ferrite as at equilibrium.
            let settled_wt =
                (steel.get(element) - self.last.content.get(element)) / (1.0 - self.last.mass);
            let over = if settled_wt > 0.0 {
                limit.austenite.get(element) / settled_wt
            } else {
                1.0
            };
            dissolved.set(element, (matrix_wt * over).max(0.0));
        }
        dissolved.c =
            ((steel.c - ferrite * ferrite_carbon_wt - carbide.content.c) / austenite).max(0.0);
        let carbide_volume_fraction = carbide.volume / (carbide.volume + matrix);
        let ferrite_volume_fraction = (1.0 - carbide_volume_fraction) * ferrite / matrix;
        let first_volume_fraction = self.first.volume / (self.first.volume + 1.0 - self.first.mass);
        let held_um = grain::held_by_carbide_um(first_volume_fraction * per_radius_um);
        let sizes = &self.stock.before.sizes;
        let part = sizes.remaining(shrinkage);
        let first_enrichment = self.stock.start.carbide_enrichment;
        let grain_um = grain::grain_um(
            steel,
            self.stock.start.first_grain_um,
            self.temperature_c,
            time_s,
            held_um,
        );
        SoakEnd {
            point: SoakPoint {
                time_s,
                carbon_wt: dissolved.c,
                carbide_volume_fraction,
                ferrite_volume_fraction,
                grain_astm: grain_number(grain_um),
            },
            dissolved,
            carbon_in_solution_wt: steel.c - carbide.content.c,
            masses: SoakMasses {
                austenite,
                ferrite,
                ferrite_carbon_wt,
                carbide: carbide.mass,
                carbide_volume: carbide.volume,
                carbide_content: carbide.content,
            },
            grain_um,
            carbide_radius_um: sizes.radius_left_um(shrinkage),
            network_part: if part > 0.0 {
                (sizes.network_left(shrinkage) / part).min(1.0)
            } else {
                0.0
            },
            carbide_enrichment: first_enrichment + (1.0 - first_enrichment) * way,
        }
    }
}

/// A carbide into which alloy has gone as far as a starting structure has it, wt % of itself.
fn enriched(steel: &Composition, settled: &Composition, start: &Structure) -> Composition {
    let mut carbide = *settled;
    for element in Element::ALL {
        let (plain, settled) = (steel.get(element), settled.get(element));
        let value = match element {
            Element::C | Element::P | Element::S => settled,
            _ => plain + (settled - plain) * start.carbide_enrichment,
        };
        carbide.set(element, value);
    }
    carbide
}

fn part_of_piece(carbide: &Composition, mass: f64, volume_over_matrix: f64) -> Carbide {
    let mut content = Composition::default();
    for element in Element::ALL {
        content.set(element, carbide.get(element) * mass);
    }
    Carbide {
        mass,
        content,
        volume: mass * volume_over_matrix,
    }
}

/// Volume of carbide over that of the same mass of the rest.
fn volume_over_matrix(mass: f64, volume: f64) -> f64 {
    if mass > 0.0 && mass < 1.0 && volume < 1.0 {
        volume / (1.0 - volume) * (1.0 - mass) / mass
    } else {
        1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::soak::{StartingStructure, Stock};

    /// Carbon in carbide, ferrite and austenite is the steel's at every time; so is every metal
    /// once all else is austenite; and the parts make up the whole.
    #[test]
    fn masses_balance_at_every_time() {
        let steels = [
            (0.4, 0.8, 0.25, 1.0),
            (0.75, 0.7, 0.25, 0.0),
            (1.0, 0.35, 0.25, 1.45),
        ];
        for (c, mn, si, cr) in steels {
            let steel = Composition {
                c,
                mn,
                si,
                cr,
                ..Composition::default()
            };
            for start in StartingStructure::ALL {
                let stock = Stock::new(&steel, start).unwrap();
                for temperature_c in [760.0, 800.0, 860.0] {
                    let hold = stock.at(temperature_c).unwrap();
                    let piece = Piece::new(&hold);
                    let dissolution = piece.dissolution();
                    let course = dissolution.course();
                    let mut along = course.follow();
                    for time_s in [0.0, 0.3, 5.0, 60.0, 900.0, 30_000.0] {
                        let left = along.to(time_s);
                        let state = piece.state(time_s, &left);
                        let carbide = left.carbide;
                        let in_solution_wt = state.carbon_in_solution_wt;
                        assert!((in_solution_wt + carbide.content.c - c).abs() < 1e-12);
                        let point = state.point;
                        let austenite_volume =
                            1.0 - point.carbide_volume_fraction - point.ferrite_volume_fraction;
                        assert!((0.0..=1.0).contains(&austenite_volume));
                        if point.ferrite_volume_fraction > 1e-12 {
                            continue;
                        }
                        for element in Element::ALL {
                            let sum_wt = carbide.content.get(element)
                                + (1.0 - carbide.mass) * state.dissolved.get(element);
                            let off_wt = sum_wt - steel.get(element);
                            assert!(off_wt.abs() < 1e-9, "{start:?} {element:?} {off_wt}");
                        }
                    }
                }
            }
        }
    }
}
