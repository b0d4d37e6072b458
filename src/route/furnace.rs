//! What the furnace makes of a soak temperature that is asked for.

use super::plan::Route;
use crate::heat::{ThermocoupleClass, type_k_tolerance_k};
use serde::{Deserialize, Serialize};

/// What is known of the thermocouple that the furnace goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Thermocouple {
    /// Checked against a reference: what it is off by is in the furnace's offset.
    #[default]
    Checked,
    /// Type K of tolerance class 1, not checked.
    TypeKClass1,
    /// Type K of tolerance class 2, not checked: what a furnace comes with.
    TypeKClass2,
}

impl Thermocouple {
    /// Every kind, the best known first.
    pub const ALL: [Self; 3] = [Self::Checked, Self::TypeKClass1, Self::TypeKClass2];

    /// How far the reading may be off at a temperature of up to 1300 °C, K either way. Beyond the
    /// range of its class a thermocouple is taken as at the end of it.
    #[must_use]
    pub fn tolerance_k(self, temperature_c: f64) -> f64 {
        let class = match self {
            Self::Checked => return 0.0,
            Self::TypeKClass1 => ThermocoupleClass::One,
            Self::TypeKClass2 => ThermocoupleClass::Two,
        };
        let within_c = temperature_c.clamp(0.0, class.highest_c());
        type_k_tolerance_k(class, within_c).unwrap_or_default()
    }
}

impl Route {
    /// How far the piece may be from the soak temperature, K either way: unevenness and control of
    /// the furnace, and the tolerance of its thermocouple. The two are independent, so they add in
    /// quadrature.
    #[must_use]
    pub fn soak_band_k(&self) -> f64 {
        self.band_k_at(self.soak.temperature_c)
    }

    /// As [`Self::soak_band_k`], for another step in the same furnace.
    pub(super) fn band_k_at(&self, temperature_c: f64) -> f64 {
        self.furnace_band_k
            .hypot(self.thermocouple.tolerance_k(temperature_c))
    }

    /// What the furnace has to read for the piece to be at the soak temperature, °C.
    #[must_use]
    pub fn set_point_c(&self) -> f64 {
        self.soak.temperature_c - self.furnace_offset_k
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IEC 60584-1: class 2 is 2.5 K or 0.75 %, class 1 is 1.5 K or 0.4 %, whichever is more.
    #[test]
    fn the_thermocouple_adds_to_the_furnace() {
        let mut route = Route::example();
        route.soak.temperature_c = 800.0;
        route.furnace_band_k = 8.0;
        assert_eq!(route.soak_band_k(), 8.0);
        route.thermocouple = Thermocouple::TypeKClass2;
        approx::assert_abs_diff_eq!(route.soak_band_k(), 10.0, epsilon = 1e-12);
        route.thermocouple = Thermocouple::TypeKClass1;
        approx::assert_abs_diff_eq!(route.soak_band_k(), 8.0_f64.hypot(3.2), epsilon = 1e-12);
        route.soak.temperature_c = 1250.0;
        approx::assert_abs_diff_eq!(route.soak_band_k(), 8.0_f64.hypot(4.0), epsilon = 1e-12);
    }

    #[test]
    fn a_furnace_that_reads_low_is_set_lower() {
        let mut route = Route::example();
        route.furnace_offset_k = 6.0;
        assert_eq!(route.set_point_c(), route.soak.temperature_c - 6.0);
    }
}
