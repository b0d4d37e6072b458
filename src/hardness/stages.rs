//! The three tempering stages as state advanced in time.

use crate::numeric::interpolate::linear_held;
use crate::sources::jimenez_melero_2013 as austenite;
use crate::sources::tempering_stages::{
    CARBON_DELAY, CEMENTITE_DELAY, COARSENING_DELAY, HELD_HRC, LARGEST_VANADIUM_EFFECT_WT, STAGES,
    TUNGSTEN_AS_MOLYBDENUM,
};
use crate::steel::{Composition, Element};

/// Gas constant, J/(mol K).
const GAS_J_PER_MOL_K: f64 = 8.314462618;

/// Absolute zero, °C.
const ZERO_C: f64 = -273.15;

/// How one steel tempers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Law {
    middle: [f64; 3],
    fall_hrc: [f64; 3],
}

impl Law {
    /// The law for the whole composition of the steel, carbide included: so it was fitted.
    pub(super) fn of(steel: &Composition) -> Self {
        let (share, most_wt) = TUNGSTEN_AS_MOLYBDENUM;
        let mut counted = *steel;
        counted.mo += (share * steel.w).min(most_wt);
        counted.v = steel.v.min(LARGEST_VANADIUM_EFFECT_WT);
        let weigh = |factors: &[(Element, f64)]| -> f64 {
            factors
                .iter()
                .map(|&(element, factor)| factor * counted.get(element))
                .sum()
        };
        let (per_carbon, carbon_wt) = CARBON_DELAY;
        let coarsening = weigh(&COARSENING_DELAY) + per_carbon * (steel.c - carbon_wt);
        let delay = [0.0, weigh(&CEMENTITE_DELAY), coarsening];
        let held = weigh(&HELD_HRC);
        let mut law = Self {
            middle: [0.0; 3],
            fall_hrc: [0.0; 3],
        };
        for (j, stage) in STAGES.iter().enumerate() {
            law.middle[j] = stage.middle + delay[j];
            law.fall_hrc[j] = (stage.fall_hrc * f64::exp(stage.carbon_exponent * steel.c.ln())
                - held / 3.0)
                .max(0.0);
        }
        law
    }

    /// By how much martensite has fallen, HRC.
    pub(super) fn drop_hrc(&self, state: &Stages) -> f64 {
        let mut drop = 0.0;
        for (j, stage) in STAGES.iter().enumerate() {
            let x = state.reduced_s[j].log10();
            drop += self.fall_hrc[j] / (1.0 + f64::exp((self.middle[j] - x) / stage.width));
        }
        drop
    }
}

/// Reduced time of each stage, s: the integral of exp(-Q / R T) over time.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Stages {
    reduced_s: [f64; 3],
}

impl Stages {
    /// Adds a part of another history.
    pub(super) fn add(&mut self, other: &Self, part: f64) {
        for (sum, more) in self.reduced_s.iter_mut().zip(other.reduced_s) {
            *sum += part * more;
        }
    }

    pub(super) fn hold(&mut self, temperature_c: f64, time_s: f64) {
        for (sum, stage) in self.reduced_s.iter_mut().zip(&STAGES) {
            *sum += time_s * arrhenius(stage.activation_j_per_mol, temperature_c - ZERO_C);
        }
    }
}

/// Number of half-lives of retained austenite in a hold: what is left is 0.5 to that power.
pub(super) fn austenite_half_lives(silicon_wt: f64, temperature_c: f64, time_s: f64) -> f64 {
    let shift_k = linear_held(&austenite::SILICON_SHIFT_K, silicon_wt).unwrap_or(0.0);
    let anchor_k = austenite::HALF_TEMPERATURE_K + shift_k;
    let q = austenite::ACTIVATION_J_PER_MOL;
    time_s / austenite::HALF_TIME_S
        * f64::exp(-q / GAS_J_PER_MOL_K * (1.0 / (temperature_c - ZERO_C) - 1.0 / anchor_k))
}

fn arrhenius(activation_j_per_mol: f64, temperature_k: f64) -> f64 {
    f64::exp(-activation_j_per_mol / (GAS_J_PER_MOL_K * temperature_k))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Notes of the fit: 94 % left after 1 h at 200 °C, 61 % at 230 °C, 3 % at 260 °C.
    #[test]
    fn austenite_left_after_one_hour() {
        for (temperature_c, left) in [(200.0, 0.944), (230.0, 0.606), (260.0, 0.033)] {
            let half_lives = austenite_half_lives(0.25, temperature_c, 3600.0);
            assert!(
                (f64::exp2(-half_lives) - left).abs() < 0.01,
                "{temperature_c}"
            );
        }
        assert!(austenite_half_lives(1.8, 300.0, 3600.0) < 2.0);
    }

    #[test]
    fn untempered_has_not_fallen() {
        let law = Law::of(&Composition::default().with_carbon(0.8));
        assert_eq!(law.drop_hrc(&Stages::default()), 0.0);
    }
}
