//! The three tempering stages as state advanced in time.

use crate::numeric::formula::Number;
use crate::numeric::interpolate::linear_held;
use crate::sources::jimenez_melero_2013 as austenite;
use crate::sources::tempering_stages::{
    CARBON_DELAY, CEMENTITE_DELAY, COARSENING_DELAY, HELD_HRC, LARGEST_VANADIUM_EFFECT_WT, STAGES,
    Stage, TUNGSTEN_AS_MOLYBDENUM,
};
use crate::steel::{Composition, Element};

/// Gas constant, J/(mol K).
const GAS_J_PER_MOL_K: f64 = 8.314462618;

/// Absolute zero, °C.
const ZERO_C: f64 = -273.15;

/// How one steel tempers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Law {
    pub(super) middle: [f64; 3],
    pub(super) fall_hrc: [f64; 3],
    pub(super) held_hrc: f64,
}

impl Law {
    /// The law for the whole composition of the steel, carbide included: so it was fitted.
    pub(super) fn of(steel: &Composition) -> Self {
        let (share, most_wt) = TUNGSTEN_AS_MOLYBDENUM;
        let mut counted = *steel;
        counted.mo += (share * steel.w).min(most_wt);
        counted.v = steel.v.min(LARGEST_VANADIUM_EFFECT_WT);
        let content = |element| counted.get(element);
        let held = held_hrc_of(content);
        let mut law = Self {
            middle: [0.0; 3],
            fall_hrc: [0.0; 3],
            held_hrc: held,
        };
        for (j, stage) in STAGES.iter().enumerate() {
            law.middle[j] = middle_of(j, content);
            law.fall_hrc[j] = whole_fall_hrc_of(stage, steel.c, held);
        }
        law
    }

    /// By how much martensite has fallen, HRC.
    pub(super) fn drop_hrc(&self, state: &Stages) -> f64 {
        let mut drop = 0.0;
        for (j, stage) in STAGES.iter().enumerate() {
            let x = state.reduced_s[j].log10();
            drop += fall_hrc_of(stage, self.fall_hrc[j], self.middle[j], x);
        }
        drop
    }
}

/// Reduced time of each stage, s: the integral of exp(-Q / R T) over time.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Stages {
    pub(super) reduced_s: [f64; 3],
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
            *sum += reduced_s_of(stage, temperature_c, time_s);
        }
    }
}

/// Number of half-lives of retained austenite in a hold: what is left is 0.5 to that power.
pub(super) fn austenite_half_lives(silicon_wt: f64, temperature_c: f64, time_s: f64) -> f64 {
    let anchor_k = anchor_k(silicon_wt);
    half_lives_of(anchor_k, temperature_c, time_s)
}

/// Temperature at which half of the retained austenite is left after an hour, K: by silicon.
pub(super) fn anchor_k(silicon_wt: f64) -> f64 {
    let shift_k = linear_held(&austenite::SILICON_SHIFT_K, silicon_wt).unwrap_or(0.0);
    austenite::HALF_TEMPERATURE_K + shift_k
}

/// The law of how many half-lives of retained austenite a hold is: temperature in °C, time in s.
pub fn half_lives_of<N: Number>(anchor_k: N, temperature_c: N, time_s: N) -> N {
    let n = N::constant;
    let q = austenite::ACTIVATION_J_PER_MOL;
    time_s / n(austenite::HALF_TIME_S)
        * (n(-q / GAS_J_PER_MOL_K) * (n(1.0) / (temperature_c - n(ZERO_C)) - n(1.0) / anchor_k))
            .exp()
}

/// Contents, each by its factor.
fn weighed_of<N: Number>(factors: &[(Element, f64)], content: impl Fn(Element) -> N) -> Option<N> {
    let terms = factors.iter();
    terms
        .map(|&(element, factor)| N::constant(factor) * content(element))
        .reduce(|sum, term| sum + term)
}

/// The law of the hardness that alloying holds through all stages, HRC: of the contents that count, wt %.
pub fn held_hrc_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    weighed_of(&HELD_HRC, content).unwrap_or_else(|| N::constant(0.0))
}

/// The law of the middle of a stage, counted from zero, decimal logarithm of reduced seconds: of the
/// contents that count, wt %. Silicon delays cementite; alloying and carbon delay coarsening.
pub fn middle_of<N: Number>(stage: usize, content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    let middle = n(STAGES.get(stage).map_or(0.0, |stage| stage.middle));
    let (per_carbon, carbon_wt) = CARBON_DELAY;
    let delay = match stage {
        1 => weighed_of(&CEMENTITE_DELAY, content),
        2 => weighed_of(&COARSENING_DELAY, &content)
            .map(|delay| delay + n(per_carbon) * (content(Element::C) - n(carbon_wt))),
        _ => None,
    };
    match delay {
        Some(delay) => middle + delay,
        None => middle,
    }
}

/// The law of the whole fall of a stage, HRC: by carbon, wt %, less a third of what alloying holds.
pub fn whole_fall_hrc_of<N: Number>(stage: &Stage, carbon_wt: N, held_hrc: N) -> N {
    let n = N::constant;
    (n(stage.fall_hrc) * (n(stage.carbon_exponent) * carbon_wt.ln()).exp() - held_hrc / n(3.0))
        .max(n(0.0))
}

/// The law of how far a stage has fallen, HRC: of its whole fall, its middle and the decimal logarithm
/// of the reduced time.
pub fn fall_hrc_of<N: Number>(stage: &Stage, whole_hrc: N, middle: N, log_reduced: N) -> N {
    let n = N::constant;
    whole_hrc / (n(1.0) + ((middle - log_reduced) / n(stage.width)).exp())
}

/// The law of the reduced time of a hold, s: temperature in °C, time in s.
pub fn reduced_s_of<N: Number>(stage: &Stage, temperature_c: N, time_s: N) -> N {
    let n = N::constant;
    let kelvin = temperature_c - n(ZERO_C);
    time_s * (n(-stage.activation_j_per_mol) / (n(GAS_J_PER_MOL_K) * kelvin)).exp()
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
