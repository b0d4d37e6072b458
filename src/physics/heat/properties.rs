//! Conductivity and heat capacity of the piece against temperature.

use crate::sources::{en_1993_1_2_2005, n06600_data_sheet, simsir_gur_2008};
use std::sync::OnceLock;

/// Lowest temperature of the table, °C; below it the properties stay as they are there.
const LEAST_C: f64 = -200.0;
/// Spacing of the table, K. The nodes of every published table used fall on it.
pub(super) const SPACING_K: f64 = 10.0;
/// Number of intervals, up to 1400 °C.
const INTERVALS: usize = 160;

/// Fraction of martensite per kelvin below Ms at first, 1/K, in the exponential law of Koistinen
/// and Marburger. Only the heat balance below Ms uses it; the verdict has its own.
const MARTENSITE_PER_K: f64 = 0.011;
/// Latent heat of martensite, J/m³: 80 kJ/kg near 250 °C (75 to 85, from memory).
const MARTENSITE_LATENT_J_M3: f64 = 80e3 * 7800.0;

/// Conductivity and volumetric heat capacity against temperature, linear between the nodes of a
/// table, constant outside of -200 to 1400 °C.
#[derive(Debug, Clone)]
pub struct Material {
    intervals: Vec<Interval>,
    /// Where the heat capacity has a corner, °C: the start of martensite.
    pub(super) corner_c: Option<f64>,
}

/// Coefficients from the lower end of an interval of temperature.
#[derive(Debug, Clone, Copy, Default)]
struct Interval {
    conductivity: f64,
    conductivity_slope: f64,
    capacity: f64,
    capacity_slope: f64,
    /// Integral of the conductivity up to here, W/m.
    potential: f64,
    /// Integral of the heat capacity up to here, J/m³.
    heat: f64,
}

/// Everything the solver needs at one temperature.
#[derive(Debug, Clone, Copy)]
pub(super) struct Local {
    /// W/mK.
    pub(super) conductivity: f64,
    /// J/m³K.
    pub(super) capacity: f64,
    /// Derivative of the heat capacity, J/m³K².
    pub(super) capacity_slope: f64,
    /// Integral of the conductivity over temperature, W/m.
    pub(super) potential: f64,
}

impl Material {
    /// Tabulates the pair (conductivity W/mK, volumetric heat capacity J/m³K).
    fn tabulate(at: impl Fn(f64) -> [f64; 2]) -> Self {
        let mut intervals = Vec::with_capacity(INTERVALS);
        let mut lower = at(LEAST_C);
        let mut potential = 0.0;
        let mut heat = 0.0;
        for i in 0..INTERVALS {
            let upper = at(LEAST_C + (i + 1) as f64 * SPACING_K);
            intervals.push(Interval {
                conductivity: lower[0],
                conductivity_slope: (upper[0] - lower[0]) / SPACING_K,
                capacity: lower[1],
                capacity_slope: (upper[1] - lower[1]) / SPACING_K,
                potential,
                heat,
            });
            potential += 0.5 * (lower[0] + upper[0]) * SPACING_K;
            heat += 0.5 * (lower[1] + upper[1]) * SPACING_K;
            lower = upper;
        }
        // The ends carry on unchanged, so a stage of the solver that shoots over stays sane.
        for end in [0, INTERVALS - 1] {
            if let Some(interval) = intervals.get_mut(end) {
                interval.conductivity_slope = 0.0;
                interval.capacity_slope = 0.0;
            }
        }
        Self {
            intervals,
            corner_c: None,
        }
    }

    /// The same at every temperature: conductivity, W/mK, and volumetric heat capacity, J/m³K.
    #[must_use]
    pub fn constant(conductivity_w_mk: f64, capacity_j_m3k: f64) -> Self {
        Self::tabulate(|_| [conductivity_w_mk, capacity_j_m3k])
    }

    /// Undercooled austenite at every temperature: what counts until martensite or another
    /// product forms, since tables of steel in equilibrium have the heat of the transformation in
    /// them. Şimşir and Gür 2008, 0 to 900 °C, constant beyond.
    #[must_use]
    pub fn austenite() -> Self {
        Self::of_austenite().clone()
    }

    /// The table of [`Material::austenite`], made once.
    pub(super) fn of_austenite() -> &'static Self {
        static TABLE: OnceLock<Material> = OnceLock::new();
        TABLE.get_or_init(|| Self::tabulate(|t| steel_row(simsir_gur_2008::AUSTENITE, t)))
    }

    /// Austenite that turns into martensite below its Ms, °C, with the latent heat, by the
    /// exponential law of Koistinen and Marburger. For cooling only.
    #[must_use]
    pub fn austenite_to_martensite(martensite_start_c: f64) -> Self {
        let fraction = |t: f64| {
            let below = (martensite_start_c - t).max(0.0);
            1.0 - (-MARTENSITE_PER_K * below).exp()
        };
        let table = Self::tabulate(|t| {
            let austenite = steel_row(simsir_gur_2008::AUSTENITE, t);
            let martensite = steel_row(simsir_gur_2008::MARTENSITE, t);
            let x = fraction(t);
            // Mean over the neighbourhood of the node, so the table holds the whole latent heat.
            let gain = (fraction(t - 0.5 * SPACING_K) - fraction(t + 0.5 * SPACING_K)) / SPACING_K;
            [
                austenite[0] + x * (martensite[0] - austenite[0]),
                austenite[1] + x * (martensite[1] - austenite[1]) + gain * MARTENSITE_LATENT_J_M3,
            ]
        });
        Self {
            corner_c: Some(martensite_start_c),
            ..table
        }
    }

    /// Ferrite with pearlite or bainite. Şimşir and Gür 2008, 0 to 900 °C, constant beyond.
    #[must_use]
    pub(super) fn ferrite_and_carbide() -> &'static Self {
        static TABLE: OnceLock<Material> = OnceLock::new();
        let table = || Self::tabulate(|t| steel_row(simsir_gur_2008::FERRITE_AND_CARBIDE, t));
        TABLE.get_or_init(table)
    }

    /// Steel that turns into austenite as it is heated, with the heat that this takes near 735 °C;
    /// EN 1993-1-2, 20 to 1200 °C, constant beyond. For heating only.
    #[must_use]
    pub(super) fn heated() -> &'static Self {
        use en_1993_1_2_2005::{DENSITY_KG_M3, conductivity_w_mk, heat_capacity_j_kgk};
        /// Parts of the neighbourhood of a node, over which the capacity is averaged: its peak is
        /// narrower than the table's spacing.
        const PARTS: u8 = 20;
        static TABLE: OnceLock<Material> = OnceLock::new();
        let table = || {
            Self::tabulate(|t| {
                let held = |t: f64| t.clamp(20.0, 1200.0);
                let capacity: f64 = (0..PARTS)
                    .map(|i| (f64::from(i) + 0.5) / f64::from(PARTS) - 0.5)
                    .filter_map(|part| heat_capacity_j_kgk(held(t + part * SPACING_K)))
                    .sum();
                [
                    conductivity_w_mk(held(t)).unwrap_or_default(),
                    capacity / f64::from(PARTS) * DENSITY_KG_M3,
                ]
            })
        };
        TABLE.get_or_init(table)
    }

    /// The nickel alloy UNS N06600 of the standard probe, 20 to 900 °C, constant beyond.
    #[must_use]
    pub fn probe_alloy() -> Self {
        Self::tabulate(|t| {
            let [conductivity, capacity] = row(n06600_data_sheet::ROWS, t);
            [conductivity, capacity * n06600_data_sheet::DENSITY_KG_M3]
        })
    }

    /// Conductivity, W/mK.
    #[must_use]
    pub fn conductivity_w_mk(&self, temperature_c: f64) -> f64 {
        self.at(temperature_c).conductivity
    }

    /// Volumetric heat capacity, J/m³K.
    #[must_use]
    pub fn capacity_j_m3k(&self, temperature_c: f64) -> f64 {
        self.at(temperature_c).capacity
    }

    /// Heat held above -200 °C, J/m³.
    #[must_use]
    pub fn heat_j_m3(&self, temperature_c: f64) -> f64 {
        let (interval, d) = self.find(temperature_c);
        interval.heat + d * (interval.capacity + 0.5 * d * interval.capacity_slope)
    }

    #[inline(always)]
    pub(super) fn at(&self, temperature_c: f64) -> Local {
        let (interval, d) = self.find(temperature_c);
        Local {
            conductivity: interval.conductivity + d * interval.conductivity_slope,
            capacity: interval.capacity + d * interval.capacity_slope,
            capacity_slope: interval.capacity_slope,
            potential: interval.potential
                + d * (interval.conductivity + 0.5 * d * interval.conductivity_slope),
        }
    }

    #[inline(always)]
    fn find(&self, temperature_c: f64) -> (Interval, f64) {
        let above = temperature_c - LEAST_C;
        // The cast sends what is below the table, and what is not a number, to the first interval.
        let index = ((above * (1.0 / SPACING_K)) as usize).min(INTERVALS - 1);
        let interval = self.intervals.get(index).copied().unwrap_or_default();
        (interval, above - index as f64 * SPACING_K)
    }
}

/// Interpolates a published table, constant beyond its ends.
fn row(rows: &[[f64; 3]], temperature_c: f64) -> [f64; 2] {
    let upper = rows.partition_point(|row| row[0] < temperature_c);
    match (
        upper.checked_sub(1).and_then(|i| rows.get(i)),
        rows.get(upper),
    ) {
        (Some(low), Some(high)) => {
            let x = (temperature_c - low[0]) / (high[0] - low[0]);
            [
                low[1] + x * (high[1] - low[1]),
                low[2] + x * (high[2] - low[2]),
            ]
        }
        (Some(end), None) | (None, Some(end)) => [end[1], end[2]],
        (None, None) => [0.0; 2],
    }
}

/// As [`row`], with the heat capacity in J/m³K.
fn steel_row(rows: simsir_gur_2008::Rows, temperature_c: f64) -> [f64; 2] {
    let [conductivity, capacity_mj_m3k] = row(rows, temperature_c);
    [conductivity, capacity_mj_m3k * 1e6]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nodes_are_met_and_ends_carry_on() {
        let austenite = Material::austenite();
        approx::assert_relative_eq!(
            austenite.conductivity_w_mk(600.0),
            21.7,
            max_relative = 1e-12
        );
        approx::assert_relative_eq!(
            austenite.capacity_j_m3k(450.0),
            4.535e6,
            max_relative = 1e-12
        );
        approx::assert_relative_eq!(austenite.conductivity_w_mk(5000.0), 25.1);
        approx::assert_relative_eq!(austenite.conductivity_w_mk(-5000.0), 15.0);
        assert!(austenite.heat_j_m3(f64::NAN).is_nan());
    }

    #[test]
    fn heat_is_the_integral_of_capacity() {
        for material in [
            Material::austenite(),
            Material::austenite_to_martensite(215.0),
        ] {
            let sum: f64 = (0..8000)
                .map(|i| 0.1 * material.capacity_j_m3k(20.05 + 0.1 * f64::from(i)))
                .sum();
            approx::assert_relative_eq!(
                material.heat_j_m3(820.0) - material.heat_j_m3(20.0),
                sum,
                max_relative = 1e-6
            );
        }
    }

    /// EN 1993-1-2 in closed form: 20 to 600 °C, then the two branches of the peak.
    #[test]
    fn heating_takes_the_heat_of_the_tables() {
        let heat_kj_kg = |from_c: f64, to_c: f64| {
            let heated = Material::heated();
            (heated.heat_j_m3(to_c) - heated.heat_j_m3(from_c)) / 7850.0 / 1e3
        };
        let to_600 = |t: f64| {
            425.0 * t + 7.73e-1 / 2.0 * t * t - 1.69e-3 / 3.0 * t.powi(3)
                + 2.22e-6 / 4.0 * t.powi(4)
        };
        let cold = (to_600(600.0) - to_600(30.0)) / 1e3;
        let peak = (666.0 * 135.0
            + 13002.0 * (138.0_f64 / 3.0).ln()
            + 545.0 * 165.0
            + 17820.0 * (169.0_f64 / 4.0).ln())
            / 1e3;
        approx::assert_relative_eq!(heat_kj_kg(30.0, 600.0), cold, max_relative = 2e-3);
        approx::assert_relative_eq!(heat_kj_kg(600.0, 900.0), peak, max_relative = 1e-2);
    }

    #[test]
    fn martensite_gives_up_its_latent_heat() {
        let cold = -150.0;
        let heat = |m: &Material| m.heat_j_m3(300.0) - m.heat_j_m3(cold);
        let gained = heat(&Material::austenite_to_martensite(215.0)) - heat(&Material::austenite());
        let fraction = |t: f64| 1.0 - (-MARTENSITE_PER_K * (215.0 - t).max(0.0)).exp();
        // The heat capacities differ as well.
        let other: f64 = (0..4500)
            .map(|i| {
                let t = cold + 0.05 + 0.1 * f64::from(i);
                let capacity = |rows| steel_row(rows, t)[1];
                let more =
                    capacity(simsir_gur_2008::MARTENSITE) - capacity(simsir_gur_2008::AUSTENITE);
                0.1 * fraction(t) * more
            })
            .sum();
        let latent = fraction(cold) * MARTENSITE_LATENT_J_M3;
        approx::assert_relative_eq!(gained, latent + other, max_relative = 1e-3);
    }
}
