//! Carbide on the grain boundaries of hypereutectoid steel as it cools from above Acm: the network.
//!
//! Films thicken on both sides of every boundary as carbon reaches them: after Zener, the half
//! thickness of a plate grows as `d(S²) = Ω² D dt`, with `Ω² = (c₀ - c)² / ((c_θ - c)(c_θ - c₀))`.
//! At once only carbon moves, and austenite beside the film is in balance with cementite that
//! keeps the steel's metals; in hours alloy moves too, and the true Acm counts. Carbide that the
//! soak has left takes its share: it lies nearer than the boundary where its spacing is less than
//! the grain.

use super::{SoakEnd, SoakError, Stock, diffusion};
use crate::numeric::interpolate::linear_held;
use crate::phases::{self, PhaseError};
use crate::sources::zener_1949::plate_growth;
use crate::steel::Composition;

/// Carbon of cementite, wt %.
const CEMENTITE_WT: f64 = 6.67;
/// Half thickness from which films are told as a network, µm. Expert value: what an etch shows as
/// a line at a magnification of 500.
const NETWORK_HALF_UM: f64 = 0.10;
/// Half thickness up to which there is nothing to tell, µm. Expert value.
const FILM_HALF_UM: f64 = 0.03;
/// Where pearlite takes over, K below A1. Expert value.
const PEARLITE_BELOW_A1_K: f64 = 30.0;
/// Distance of the temperatures at which the balance of carbon is computed, K: it is straight
/// within 0.003 wt % between them.
const KNOT_K: f64 = 25.0;
/// Highest of them, °C.
const HIGHEST_C: f64 = 1250.0;

/// Carbide on the grain boundaries.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct BoundaryCarbide {
    /// Volume fraction of the austenite.
    pub volume_fraction: f64,
    /// Mean half thickness of the films, µm.
    pub half_thickness_um: f64,
}

/// How much a film of carbide matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
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

impl Stock {
    /// The balance from `a1_c`, °C, up to where austenite holds all carbon of the steel.
    ///
    /// # Errors
    /// When the equilibrium is outside its model's range.
    pub fn carbide_balance(&self, a1_c: f64) -> Result<CarbideBalance, SoakError> {
        let cementite = Composition {
            si: 0.0,
            ..self.steel
        };
        let (mut at_once, mut at_last) = (Vec::new(), Vec::new());
        let mut knot_c = a1_c + 1.0;
        while knot_c < HIGHEST_C {
            let balance_wt = self.limits.at(knot_c)?.carbon_saturation_wt;
            let frozen_wt = phases::carbon_beside_cementite_wt(&self.steel, &cementite, knot_c)
                .map_err(PhaseError::from)?;
            at_last.push([knot_c, balance_wt]);
            at_once.push([knot_c, frozen_wt.unwrap_or(balance_wt).max(balance_wt)]);
            if balance_wt >= self.steel.c {
                break;
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
    /// What stands on the boundaries when the austenite that a soak left has cooled along a curve:
    /// nothing where it held no more carbon than A1 allows.
    #[must_use]
    pub fn on_boundaries(
        &self,
        soaked: &SoakEnd,
        time_s: &[f64],
        temperature_c: &[f64],
    ) -> BoundaryCarbide {
        let carbon_wt = soaked.dissolved.c;
        let area_per_um = 2.0 / soaked.grain_um.max(0.1);
        let share = self.boundary_share(soaked);
        let mut half_um = 0.0_f64;
        for (times, temperatures) in time_s.windows(2).zip(temperature_c.windows(2)) {
            let (&[from_s, to_s], &[from_c, to_c]) = (times, temperatures) else {
                continue;
            };
            let middle_c = f64::midpoint(from_c, to_c);
            if middle_c < self.a1_c - PEARLITE_BELOW_A1_K {
                break;
            }
            let films = 2.0 * area_per_um * half_um;
            let left_wt = carbon_wt - films * (CEMENTITE_WT - carbon_wt);
            let balance = |knots: &[[f64; 2]]| linear_held(knots, middle_c).unwrap_or(carbon_wt);
            let (at_once_wt, at_last_wt) = (balance(&self.at_once), balance(&self.at_last));
            let middle_k = middle_c + 273.15;
            let um2_per_s = 1e12
                * share
                * (plate_growth(left_wt, at_once_wt, CEMENTITE_WT)
                    * diffusion::of_carbon_m2_s(middle_k)
                    + plate_growth(left_wt, at_last_wt, CEMENTITE_WT)
                        * diffusion::of_alloy_m2_s(middle_k));
            let grown_um = (half_um * half_um + um2_per_s * (to_s - from_s).max(0.0)).sqrt();
            let all = (carbon_wt - at_last_wt).max(0.0) / (CEMENTITE_WT - at_last_wt);
            half_um = half_um.max(grown_um.min(share * all / (2.0 * area_per_um)));
        }
        BoundaryCarbide {
            volume_fraction: (2.0 * area_per_um * half_um).min(1.0),
            half_thickness_um: half_um,
        }
    }

    /// Part of the carbon that goes to the boundary and not to carbide that is nearer.
    fn boundary_share(&self, soaked: &SoakEnd) -> f64 {
        let ratio = soaked.carbide_spacing_um(&self.steel) / soaked.grain_um;
        if ratio.is_finite() {
            ratio * ratio / (1.0 + ratio * ratio)
        } else {
            1.0
        }
    }
}
