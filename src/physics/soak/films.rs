//! How films of carbide thicken on the grain boundaries of one austenite.

use super::boundary_carbide::{
    BoundaryCarbide, CEMENTITE_WT, FILM_HALF_UM, HIGHEST_C, LOWEST_C, at_once_wt, boundary_share,
    reach_um,
};
use super::diffusion;
use crate::numeric::interpolate::linear_held;
use crate::phases::EquilibriumError;
use crate::sources::zener_1949::plate_growth;
use crate::steel::Composition;

/// Radius of the carbides that a soak has left, where it is not known, µm: fine spheroids
/// (expert value).
const USUAL_RADIUS_UM: f64 = 0.25;
/// Share of the boundaries in the carbon below which they are left out (expert value).
const LEAST_SHARE: f64 = 0.1;
/// Distance of the temperatures at which the balance of one austenite is computed, K: it is straight
/// within 0.01 wt % between them. A route has several austenites.
const KNOT_K: f64 = 50.0;
/// Carbide that can form above A1, volume fraction, below which there are no films to speak of
/// (expert value).
const LEAST_CARBIDE: f64 = 0.01;
/// Part of what can form at which Zener's straight profile reaches the middle of the grain.
const FREE: f64 = 0.5;
/// Part of what can form that counts as the finish.
const FINISH: f64 = 0.99;

/// How films thicken in one austenite.
#[derive(Debug, Clone)]
pub struct BoundaryFilms {
    /// Carbon of the austenite, wt %.
    pub(super) carbon_wt: f64,
    /// Austenite on each side of a boundary, µm.
    pub(super) reach_um: f64,
    /// Part of the carbon that goes to the boundaries.
    pub(super) share: f64,
    /// Temperature below which pearlite is taken to have the boundaries, °C; minus infinity where its
    /// kinetics tell.
    pub(super) floor_c: f64,
    /// Carbon beside the film while no metal moves, wt %, by temperature, °C, rising.
    pub(super) at_once: Vec<[f64; 2]>,
    /// The same at equilibrium; nothing where times are too short for it.
    pub(super) at_last: Vec<[f64; 2]>,
}

/// Times at which films in austenite held at a temperature have come so far, s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FilmTimes {
    /// They can be seen, 0.03 µm on each side.
    pub seen_s: f64,
    /// Half of what can form has formed; none where that is too thin to see.
    pub half_s: Option<f64>,
    /// 99 % of it has formed.
    pub finish_s: f64,
}

impl BoundaryFilms {
    /// In an austenite that carbide of the given volume fraction is left in, by carbon alone: none
    /// where less than 1 % can form down to A1, °C, or carbide that is left takes nearly all.
    ///
    /// # Errors
    /// When the equilibrium is outside its model's range.
    pub fn of(
        austenite: &Composition,
        grain_um: f64,
        carbide_volume_fraction: f64,
        a1_c: f64,
    ) -> Result<Option<Self>, EquilibriumError> {
        let each_um3 = 4.0 / 3.0 * std::f64::consts::PI * USUAL_RADIUS_UM.powi(3);
        let spacing_um = (each_um3 / carbide_volume_fraction.max(0.0)).cbrt();
        let share = boundary_share(spacing_um, grain_um);
        if share < LEAST_SHARE {
            return Ok(None);
        }
        let at_a1_wt = at_once_wt(austenite, a1_c)?.unwrap_or(CEMENTITE_WT);
        if austenite.c - at_a1_wt < LEAST_CARBIDE * (CEMENTITE_WT - at_a1_wt) {
            return Ok(None);
        }
        let mut at_once = Vec::new();
        let mut knot_c = LOWEST_C;
        while knot_c < HIGHEST_C {
            if let Some(wt) = at_once_wt(austenite, knot_c)? {
                at_once.push([knot_c, wt]);
                if wt >= austenite.c {
                    break;
                }
            }
            knot_c += KNOT_K;
        }
        Ok(Some(Self {
            carbon_wt: austenite.c,
            reach_um: reach_um(grain_um),
            share,
            floor_c: f64::NEG_INFINITY,
            at_once,
            at_last: Vec::new(),
        }))
    }

    /// Temperature from which films grow on the way down while no metal moves, °C: the highest of the
    /// balance where all of it is less than the carbon.
    #[must_use]
    pub fn limit_c(&self) -> f64 {
        let crossing = self.at_once.windows(2).find_map(|pair| {
            let &[[cold_c, less_wt], [hot_c, more_wt]] = pair else {
                return None;
            };
            (more_wt >= self.carbon_wt && more_wt > less_wt).then(|| {
                cold_c + (hot_c - cold_c) * (self.carbon_wt - less_wt) / (more_wt - less_wt)
            })
        });
        crossing.unwrap_or_else(|| self.at_once.last().map_or(LOWEST_C, |knot| knot[0]))
    }

    /// Half thickness after a time at a temperature, µm.
    #[must_use]
    pub fn grown_um(&self, half_um: f64, temperature_c: f64, duration_s: f64) -> f64 {
        if temperature_c < self.floor_c {
            return half_um;
        }
        let temperature_k = temperature_c + 273.15;
        let mut half_um = half_um;
        if let Some(beside_wt) = linear_held(&self.at_once, temperature_c) {
            let m2_per_s = diffusion::of_carbon_m2_s(temperature_k);
            half_um = self.towards_um(half_um, beside_wt, m2_per_s, duration_s);
        }
        if let Some(beside_wt) = linear_held(&self.at_last, temperature_c) {
            let m2_per_s = diffusion::of_alloy_m2_s(temperature_k);
            half_um = self.towards_um(half_um, beside_wt, m2_per_s, duration_s);
        }
        half_um
    }

    /// The same by what moves with one diffusivity towards one balance.
    fn towards_um(&self, half_um: f64, beside_wt: f64, m2_per_s: f64, duration_s: f64) -> f64 {
        let most_um = self.most_um(beside_wt);
        if half_um >= most_um || duration_s <= 0.0 {
            return half_um;
        }
        let um2_per_s = self.free_um2_per_s(beside_wt, m2_per_s);
        let free_um = FREE * most_um;
        let free_s = (free_um * free_um - half_um * half_um).max(0.0) / um2_per_s;
        if duration_s <= free_s {
            return (half_um * half_um + um2_per_s * duration_s).sqrt();
        }
        let left_um = most_um - half_um.max(free_um);
        most_um - left_um * (-self.dying_per_s(m2_per_s) * (duration_s - free_s)).exp()
    }

    /// Half thickness when all is at balance, µm.
    fn most_um(&self, beside_wt: f64) -> f64 {
        let all = (self.carbon_wt - beside_wt).max(0.0) / (CEMENTITE_WT - beside_wt);
        self.share * all * self.reach_um
    }

    /// Growth of the square of the half thickness before grains are felt, µm²/s.
    fn free_um2_per_s(&self, beside_wt: f64, m2_per_s: f64) -> f64 {
        1e12 * self.share * m2_per_s * plate_growth(self.carbon_wt, beside_wt, CEMENTITE_WT)
    }

    /// Rate at which what is still to form dies away then, 1/s.
    fn dying_per_s(&self, m2_per_s: f64) -> f64 {
        2e12 * m2_per_s / (self.share * self.reach_um * self.reach_um)
    }

    /// When films in austenite held at a temperature, °C, have come how far by carbon alone; none
    /// where they stay too thin to see.
    #[must_use]
    pub fn times(&self, temperature_c: f64) -> Option<FilmTimes> {
        let beside_wt = linear_held(&self.at_once, temperature_c)?;
        let m2_per_s = diffusion::of_carbon_m2_s(temperature_c + 273.15);
        let most_um = self.most_um(beside_wt);
        if most_um <= FILM_HALF_UM {
            return None;
        }
        let time_s = |part: f64| {
            let free_um = part.min(FREE) * most_um;
            let free_s = free_um * free_um / self.free_um2_per_s(beside_wt, m2_per_s);
            let left = ((1.0 - FREE) / (1.0 - part.max(FREE))).ln();
            free_s + left / self.dying_per_s(m2_per_s)
        };
        let seen = FILM_HALF_UM / most_um;
        (seen < FINISH).then(|| FilmTimes {
            seen_s: time_s(seen),
            half_s: (seen < FREE).then(|| time_s(FREE)),
            finish_s: time_s(FINISH),
        })
    }

    /// What films of a half thickness, µm, amount to.
    #[must_use]
    pub fn carbide(&self, half_um: f64) -> BoundaryCarbide {
        BoundaryCarbide {
            volume_fraction: (half_um / self.reach_um).min(1.0),
            half_thickness_um: half_um,
        }
    }

    /// Volume fraction of the austenite from which films can be seen.
    #[must_use]
    pub fn seen_fraction(&self) -> f64 {
        self.carbide(FILM_HALF_UM).volume_fraction
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sources::astm_e112::intercept_um;

    fn plain(c: f64) -> Composition {
        Composition {
            c,
            mn: 0.30,
            si: 0.20,
            ..Composition::default()
        }
    }

    fn films(c: f64, grain_astm: f64, carbide: f64) -> Option<BoundaryFilms> {
        BoundaryFilms::of(&plain(c), intercept_um(grain_astm), carbide, 723.0).unwrap()
    }

    /// By the lever rule iron with 1.13 % carbon rejects 6.2 % cementite down to A1 (Callister,
    /// Materials Science and Engineering, from memory: 0.76 % and 6.70 % at the ends).
    #[test]
    fn a_long_hold_at_a1_gives_the_lever_rule() {
        let iron = Composition {
            c: 1.13,
            ..Composition::default()
        };
        let films = BoundaryFilms::of(&iron, 30.0, 0.0, 727.0).unwrap().unwrap();
        let whole = films
            .carbide(films.grown_um(0.0, 727.0, 1e7))
            .volume_fraction;
        assert!((whole - 0.062).abs() < 0.003, "{whole}");
        // Acm of iron and carbon: 1.10 % at 850 °C (handbook, from memory).
        assert!(
            (films.limit_c() - 857.0).abs() < 15.0,
            "{}",
            films.limit_c()
        );
    }

    /// Uptake of a slab whose faces are held at a content: half at `D t / L²` of 0.197, 99 % at 1.78
    /// (Crank, The Mathematics of Diffusion, 1975; from memory). A film that takes up little grows so.
    #[test]
    fn near_the_exact_uptake_of_a_slab() {
        let films = films(1.13, 7.0, 0.0).unwrap();
        let times = films.times(760.0).unwrap();
        let m2_per_s = diffusion::of_carbon_m2_s(760.0 + 273.15);
        let number = |s: f64| 1e12 * m2_per_s * s / (films.reach_um * films.reach_um);
        assert!((number(times.half_s.unwrap()) / 0.197 - 1.0).abs() < 0.35);
        assert!((number(times.finish_s) / 1.78 - 1.0).abs() < 0.35);
    }

    /// The times are those of the growth law.
    #[test]
    fn times_are_when_the_films_are_there() {
        let films = films(1.13, 7.0, 0.0).unwrap();
        for temperature_c in [650.0, 720.0, 780.0] {
            let times = films.times(temperature_c).unwrap();
            let at = |s: f64| films.grown_um(0.0, temperature_c, s);
            assert!((at(times.seen_s) / FILM_HALF_UM - 1.0).abs() < 1e-9);
            let (half_um, all_um) = (at(times.half_s.unwrap()), at(1e9));
            assert!((half_um / all_um - 0.5).abs() < 1e-9);
            assert!((at(times.finish_s) / all_um - 0.99).abs() < 1e-9);
            // In steps as at once.
            let steps = (0..100).fold(0.0, |half_um, _| {
                films.grown_um(half_um, temperature_c, times.finish_s / 100.0)
            });
            assert!((steps / at(times.finish_s) - 1.0).abs() < 1e-9);
        }
    }

    /// Carbide that the soak has left takes the carbon; steel of eutectoid carbon has none to spare.
    #[test]
    fn none_beside_spheroids_or_of_eutectoid_steel() {
        assert!(films(1.0, 9.0, 0.04).is_none());
        assert!(films(0.72, 7.0, 0.0).is_none());
        assert!(films(1.0, 7.0, 0.0).is_some());
    }
}
