//! Carbide on the grain boundaries of hypereutectoid steel as it cools from above Acm: the network.
//!
//! Films thicken on both sides of every boundary as carbon reaches them. At first, after Zener, the
//! half thickness of a plate grows as `d(S²) = Ω² D dt`, with `Ω² = (c₀ - c)² / ((c_θ - c)(c_θ - c₀))`;
//! his straight profile reaches the middle of the grain when half of what can form has formed, and
//! from then on the rest dies away with a rate of `2 D / L²`, `L` being the austenite on each side of
//! a boundary, volume over area. At once only carbon moves, and austenite beside the film is in
//! balance with cementite that keeps the steel's metals; in hours alloy moves too, and the true Acm
//! counts. Carbide that the soak has left takes its share: it lies nearer than the boundary where its
//! spacing is less than the grain.

use super::{BoundaryFilms, SoakEnd, SoakError, Stock};
use crate::phases::{self, EquilibriumError, PhaseError};
use crate::steel::Composition;

/// Carbon of cementite, wt %.
pub const CEMENTITE_WT: f64 = 6.67;
/// Half thickness from which films are told as a network, µm. Expert value: what an etch shows as
/// a line at a magnification of 500.
const NETWORK_HALF_UM: f64 = 0.10;
/// Half thickness up to which there is nothing to tell, µm. Expert value.
pub(super) const FILM_HALF_UM: f64 = 0.03;
/// Where pearlite takes over, K below A1. Expert value.
const PEARLITE_BELOW_A1_K: f64 = 30.0;
/// Distance of the temperatures at which the balance of carbon is computed, K: it is straight
/// within 0.003 wt % between them.
const KNOT_K: f64 = 25.0;
/// Lowest of them, °C: the end of single equilibria. Pearlite has begun there.
pub(super) const LOWEST_C: f64 = 600.0;
/// Highest of them, °C.
pub(super) const HIGHEST_C: f64 = 1250.0;

/// Carbide on the grain boundaries.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct BoundaryCarbide {
    /// Volume fraction of the austenite.
    pub volume_fraction: f64,
    /// Mean half thickness of the films, µm.
    pub half_thickness_um: f64,
}

/// How much a film of carbide matters, from least to most.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Network {
    /// None, or too thin to tell.
    None,
    /// Thin films, broken in places.
    Broken,
    /// A network that the next soak has to dissolve.
    Continuous,
}

impl BoundaryCarbide {
    /// What the films amount to. The model's thickness is sure within a factor of two.
    #[must_use]
    pub fn network(&self) -> Network {
        if self.half_thickness_um >= NETWORK_HALF_UM {
            Network::Continuous
        } else if self.half_thickness_um >= FILM_HALF_UM {
            Network::Broken
        } else {
            Network::None
        }
    }
}

/// Carbon that austenite of a steel can hold beside cementite, wt %, by temperature, °C, rising:
/// what carbide on grain boundaries draws on. One for all coolings of the steel.
#[derive(Debug, Clone)]
pub struct CarbideBalance {
    steel: Composition,
    /// While no metal moves but silicon, which cementite does not take.
    at_once: Vec<[f64; 2]>,
    /// At equilibrium.
    at_last: Vec<[f64; 2]>,
    a1_c: f64,
}

/// Carbon of an austenite beside cementite of its own metals, wt %. Silicon, which cementite does
/// not take, stays behind.
pub(super) fn at_once_wt(
    austenite: &Composition,
    temperature_c: f64,
) -> Result<Option<f64>, EquilibriumError> {
    let cementite = Composition {
        si: 0.0,
        ..*austenite
    };
    phases::carbon_beside_cementite_wt(austenite, &cementite, temperature_c)
}

impl Stock {
    /// The balance up to where austenite holds all carbon of the steel, whose A1 is given, °C; below
    /// A1 that of carbon alone.
    ///
    /// # Errors
    /// When the equilibrium is outside its model's range.
    pub fn carbide_balance(&self, a1_c: f64) -> Result<CarbideBalance, SoakError> {
        let (mut at_once, mut at_last) = (Vec::new(), Vec::new());
        let first_c = a1_c + 1.0;
        let below = (PEARLITE_BELOW_A1_K / KNOT_K)
            .ceil()
            .min(((first_c - LOWEST_C) / KNOT_K).floor().max(0.0));
        let mut knot_c = first_c - KNOT_K * below;
        while knot_c < HIGHEST_C {
            let frozen_wt = at_once_wt(&self.steel, knot_c).map_err(PhaseError::from)?;
            if knot_c < first_c - 0.5 * KNOT_K {
                at_once.extend(frozen_wt.map(|wt| [knot_c, wt]));
            } else {
                let balance_wt = self.limits.at(knot_c)?.carbon_saturation_wt;
                at_last.push([knot_c, balance_wt]);
                at_once.push([knot_c, frozen_wt.unwrap_or(balance_wt).max(balance_wt)]);
                if balance_wt >= self.steel.c {
                    break;
                }
            }
            knot_c += KNOT_K;
        }
        Ok(CarbideBalance {
            steel: self.steel,
            at_once,
            at_last,
            a1_c,
        })
    }
}

impl CarbideBalance {
    /// How films grow in the austenite that a soak left.
    #[must_use]
    pub fn films(&self, soaked: &SoakEnd) -> BoundaryFilms {
        BoundaryFilms {
            carbon_wt: soaked.dissolved.c,
            reach_um: reach_um(soaked.grain_um),
            share: boundary_share(soaked.carbide_spacing_um(&self.steel), soaked.grain_um),
            floor_c: self.a1_c - PEARLITE_BELOW_A1_K,
            at_once: self.at_once.clone(),
            at_last: self.at_last.clone(),
        }
    }

    /// What stands on the boundaries when the austenite that a soak left has cooled along a curve:
    /// nothing where it held no more carbon than A1 allows.
    #[must_use]
    pub fn on_boundaries(
        &self,
        soaked: &SoakEnd,
        time_s: &[f64],
        temperature_c: &[f64],
    ) -> BoundaryCarbide {
        let films = self.films(soaked);
        let mut half_um = 0.0_f64;
        for (times, temperatures) in time_s.windows(2).zip(temperature_c.windows(2)) {
            let (&[from_s, to_s], &[from_c, to_c]) = (times, temperatures) else {
                continue;
            };
            let middle_c = f64::midpoint(from_c, to_c);
            half_um = films.grown_um(half_um, middle_c, to_s - from_s);
        }
        films.carbide(half_um)
    }
}

/// Austenite on each side of the boundaries of a grain, volume over area, µm.
pub(super) fn reach_um(grain_um: f64) -> f64 {
    grain_um.max(0.1) / 4.0
}

/// Part of the carbon that goes to the boundary and not to carbide that is nearer.
pub(super) fn boundary_share(spacing_um: f64, grain_um: f64) -> f64 {
    let ratio = spacing_um / grain_um;
    if ratio.is_finite() {
        ratio * ratio / (1.0 + ratio * ratio)
    } else {
        1.0
    }
}
