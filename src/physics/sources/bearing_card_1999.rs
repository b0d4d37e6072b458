//! Grain size of 100Cr6 by austenitising temperature, from a producer's technical card to
//! EN ISO 683-17:1999, and the law fitted to it here.
//!
//! The card prints no hold; 30 min is assumed. Form: `d = A exp(-Q / RT) (t / 30 min)^0.2` in µm. Method: a
//! straight line through the logarithms of the mean intercepts of the six printed grains, the middle of a
//! range, against 1/T, rounded; within 15 %. The power of time is that of other steels (recalled): the card
//! does not tell it. Error with each temperature left out in turn: see [`LEFT_OUT`].

use super::{LeftOut, Source, Standing};

/// The card.
pub const SOURCE: Source = Source {
    key: "bearing_card_1999",
    authors: "producer's technical card",
    year: 1999,
    title: "100Cr6, material number 1.3505, to EN ISO 683-17:1999",
    venue: "technical card",
    link: None,
    used_for: "grain growth of hypereutectoid steel",
    standing: Standing::FittedHere,
};

/// As printed: temperature, °C, with least and largest ASTM number.
pub const GRAIN_ASTM: [(f64, f64, f64); 6] = [
    (830.0, 8.0, 9.0),
    (850.0, 7.0, 8.0),
    (900.0, 7.0, 7.0),
    (950.0, 6.0, 6.0),
    (1000.0, 4.0, 5.0),
    (1050.0, 4.0, 4.0),
];

/// Front factor A of the fit, µm.
pub const FRONT_UM: f64 = 1.71e5;
/// Activation energy Q of the fit, J/mol.
pub const ACTIVATION_J_MOL: f64 = 84_000.0;
/// Hold that is assumed for the card, s.
pub const HOLD_S: f64 = 1800.0;
/// Power of the time.
const TIME_POWER: f64 = 0.2;
/// Gas constant of the fit, J/(mol K).
pub const GAS_J_MOL_K: f64 = 8.314;

/// Error on what was left out.
pub const LEFT_OUT: LeftOut = LeftOut {
    fold: "temperature",
    folds: 6,
    error: 0.34,
    unit: "grain numbers",
};

/// Grain as mean intercept, grown from nothing in `time_s` at `temperature_k`, µm.
#[must_use]
pub fn grain_um(temperature_k: f64, time_s: f64) -> f64 {
    FRONT_UM
        * (-ACTIVATION_J_MOL / (GAS_J_MOL_K * temperature_k)).exp()
        * (TIME_POWER * (time_s.max(0.0) / HOLD_S).ln()).exp()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sources::astm_e112::grain_number;

    #[test]
    fn fit_stays_within_one_number_of_the_card() {
        for (temperature_c, least, most) in GRAIN_ASTM {
            let number = grain_number(grain_um(temperature_c + 273.15, 1800.0));
            assert!(
                (least - 1.0..=most + 1.0).contains(&number),
                "{temperature_c} °C: {number}"
            );
        }
    }
}
