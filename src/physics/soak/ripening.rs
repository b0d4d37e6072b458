//! Carbide below A1: lamellae break up, spheroids ripen, alloy goes over into them.
//!
//! Large carbides grow at the cost of small ones: `r³ = r₀³ + K t`, the law of ripening by
//! diffusion. Lamellae and the carbides of tempered martensite count by the sphere that dissolves
//! as fast, so one law takes them all towards the same spheroids.

use crate::steel::{Composition, OutOfRange};
use recalesce_texts::soak as texts;

/// Rate of ripening at 700 °C in plain carbon steel, µm³/s. Expert value: it takes fine pearlite
/// in two hours to the carbides that an hour or two just below A1 is known to leave.
const AT_700_C_UM3_PER_S: f64 = 1.5e-6;
/// Activation energy, J/mol: that of iron and its neighbours diffusing in ferrite (from memory).
const ACTIVATION_J_MOL: f64 = 250_000.0;
const GAS_J_MOL_K: f64 = 8.314_463;
const CALIBRATED_AT_K: f64 = 973.15;
/// Each per cent of chromium, or what else makes carbide, slows ripening by this part of the plain
/// rate. Expert value: with it sixteen hours at 690 °C take 1 % C-1.5 % Cr steel to its mill
/// spheroids.
const SLOWED_PER_WT: f64 = 0.28;
/// Time in which alloy goes the first 63 % of its way into carbide at 700 °C, s. Expert value: an
/// hour or two make most of it.
const ENRICHED_AT_700_C_S: f64 = 4500.0;
/// Above the eutectoid of any steel of the list there is no ferrite to ripen in, °C.
const RANGE_C: (f64, f64) = (0.0, 900.0);

/// What time below A1 does to carbide. Times add up: it may be asked in parts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ripening {
    /// What the cube of every radius gains, µm³.
    gain_um3: f64,
    /// What is left of the way of alloy into carbide, as a part of what it was.
    way_left: f64,
}

impl Ripening {
    /// A hold of `time_s` seconds at `temperature_c`.
    ///
    /// Uncertainty: the radius within a factor of 1.5.
    ///
    /// # Errors
    /// A temperature outside 0 to 900 °C, or a time below zero or not finite.
    pub fn held(steel: &Composition, temperature_c: f64, time_s: f64) -> Result<Self, OutOfRange> {
        const MODEL: &str = texts::RIPENING;
        OutOfRange::check(MODEL, texts::TEMPERATURE, "°C", temperature_c, RANGE_C)?;
        OutOfRange::check(MODEL, texts::TIME, "s", time_s, (0.0, 1e9))?;
        let temperature_k = temperature_c + 273.15;
        let pace =
            (ACTIVATION_J_MOL / GAS_J_MOL_K * (1.0 / CALIBRATED_AT_K - 1.0 / temperature_k)).exp();
        let makers_wt = steel.cr + steel.mo + steel.v + steel.w;
        let slowed = 1.0 + SLOWED_PER_WT * makers_wt.max(0.0);
        Ok(Self {
            gain_um3: AT_700_C_UM3_PER_S * pace * time_s / slowed,
            way_left: (-pace * time_s / ENRICHED_AT_700_C_S).exp(),
        })
    }

    /// No time at all.
    #[must_use]
    pub const fn none() -> Self {
        Self {
            gain_um3: 0.0,
            way_left: 1.0,
        }
    }

    /// This and another after it.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            gain_um3: self.gain_um3 + other.gain_um3,
            way_left: self.way_left * other.way_left,
        }
    }

    /// The radius that carbide of a radius has come to, µm.
    #[must_use]
    pub fn radius_um(self, before_um: f64) -> f64 {
        (before_um.powi(3) + self.gain_um3).cbrt()
    }

    /// How far alloy has gone into the carbide.
    #[must_use]
    pub fn enrichment(self, before: f64) -> f64 {
        1.0 - (1.0 - before) * self.way_left
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::soak::StartingStructure;

    fn bearing_steel() -> Composition {
        Composition {
            c: 1.0,
            mn: 0.35,
            si: 0.25,
            cr: 1.45,
            ..Composition::default()
        }
    }

    /// The named structures are where the anneals of the handbooks lead: 690 °C for 16 h, ASM
    /// Heat Treater's Guide, for 1 % C-1.5 % Cr; an hour or two at 700 °C, common practice, no
    /// source.
    #[test]
    fn handbook_anneals_lead_to_the_named_structures() {
        let fine_um = StartingStructure::FinePearlite
            .structure()
            .carbide_radius_um;
        let mill = Ripening::held(&bearing_steel(), 690.0, 57_600.0).unwrap();
        let mill_um = StartingStructure::Spheroidised
            .structure()
            .carbide_radius_um;
        assert!((mill.radius_um(fine_um) / mill_um - 1.0).abs() < 0.15);
        assert!(mill.enrichment(0.2) > 0.99);
        let plain = Composition::default().with_carbon(0.9);
        let short = Ripening::held(&plain, 700.0, 7200.0).unwrap();
        let short = (short.radius_um(fine_um), short.enrichment(0.2));
        let named = StartingStructure::SubcriticalAnnealed.structure();
        assert!(
            (short.0 / named.carbide_radius_um - 1.0).abs() < 0.15,
            "{short:?}"
        );
        assert!(
            (short.1 - named.carbide_enrichment).abs() < 0.1,
            "{short:?}"
        );
    }

    #[test]
    fn parts_add_up_and_heat_hurries() {
        let steel = bearing_steel();
        let held = |t, s| Ripening::held(&steel, t, s).unwrap();
        let parts = held(680.0, 1000.0).and(held(680.0, 2600.0));
        let whole = held(680.0, 3600.0);
        assert!((parts.radius_um(0.1) - whole.radius_um(0.1)).abs() < 1e-12);
        assert!(held(700.0, 3600.0).radius_um(0.1) > held(650.0, 3600.0).radius_um(0.1));
        assert!(held(20.0, 1e8).radius_um(0.1) < 0.1 + 1e-9);
        assert!(Ripening::held(&steel, 950.0, 1.0).is_err());
        assert!(Ripening::held(&steel, 700.0, f64::NAN).is_err());
    }
}
