//! How far a furnace reading may be from the truth.

use crate::sources::ams_2750f_2020::UNIFORMITY_K;
use crate::sources::iec_60584_2013::{CLASS_1, CLASS_2};

/// Tolerance class of a thermocouple.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThermocoupleClass {
    /// The closer one.
    One,
    /// The usual one.
    Two,
}

impl ThermocoupleClass {
    /// (least K, fraction of the temperature in °C, highest °C) of type K.
    const fn limits(self) -> (f64, f64, f64) {
        match self {
            Self::One => CLASS_1,
            Self::Two => CLASS_2,
        }
    }

    /// Temperature up to which type K has a tolerance, °C.
    #[must_use]
    pub const fn highest_c(self) -> f64 {
        self.limits().2
    }
}

/// Tolerance of a thermocouple of type K, K either way, from 0 °C to 1000 °C (class 1) or
/// 1200 °C (class 2); nothing outside.
#[must_use]
pub fn type_k_tolerance_k(class: ThermocoupleClass, temperature_c: f64) -> Option<f64> {
    let (least, fraction, most_c) = class.limits();
    (0.0..=most_c)
        .contains(&temperature_c)
        .then(|| least.max(fraction * temperature_c))
}

/// Temperature uniformity of a furnace of class 1 to 6 of AMS 2750, K either way; nothing for
/// another class.
#[must_use]
pub fn furnace_uniformity_k(class: u8) -> Option<f64> {
    UNIFORMITY_K
        .get(usize::from(class).checked_sub(1)?)
        .copied()
}
