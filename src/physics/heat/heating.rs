//! Heating up in the furnace: time at temperature begins when the core is there.

use super::conduct::Conduction;
use super::element::{Element, NARROW_BAND, PLATE_NODES, ROUND_NODES};
use super::until::{Reached, Until};
use super::{HeatError, Material, Medium, Section};
use crate::units::NumberOutside;
use recalesce_texts::heat::quench as texts;
use serde::Serialize;

/// The piece counts as at temperature when its core is so near to it, K: about what an eye sees
/// between the colours of the piece and of the furnace (expert value).
pub const AT_TEMPERATURE_K: f64 = 5.0;
/// Heat transfer by the air of a small furnace, W/m²K (expert value, 5 to 20); radiation, which
/// carries most of the heat, comes on top.
pub const FURNACE_AIR_W_M2K: f64 = 10.0;
/// Temperature of the piece as it goes in, °C.
const ROOM_C: f64 = 20.0;
/// Temperatures of a furnace that are computed, °C.
const FURNACE_C: (f64, f64) = (100.0, 1300.0);
/// Largest error of a node in one step, K.
const TOLERANCE_K: f64 = 0.2;
/// Longest time, s: a bar of 300 mm takes six hours.
const LONGEST_S: f64 = 86_400.0;

/// How a piece heats up.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Heating {
    /// When the core is within 5 K of the furnace, s from going in.
    pub core_at_temperature_s: f64,
    /// The true time lies between that over this factor and that times it: bright steel takes up
    /// heat more slowly than scaled steel, and a small furnace drops when its door is opened
    /// (expert value).
    pub band_factor: f64,
    /// Temperature of the core, `[time s, temperature °C]`, from going in.
    pub core: Vec<[f64; 2]>,
}

impl Heating {
    /// How long the core is above a temperature, °C, before it is at that of the furnace, s.
    #[must_use]
    pub fn above_s(&self, temperature_c: f64) -> f64 {
        let below = self.core.iter().rfind(|point| point[1] < temperature_c);
        self.core_at_temperature_s - below.map_or(0.0, |point| point[0])
    }
}

/// Heats a piece from room temperature in a furnace that holds `furnace_c`, °C, 100 to 1300.
///
/// Walls all around radiate on scaled steel (emissivity 0.8). A blade is heated as the plate of
/// its spine, which the tapering sides would warm a little sooner; a square bar as the round that
/// fits in it, which has as much volume for its surface.
///
/// # Errors
/// [`HeatError`] for a section or a temperature out of range.
pub fn heat_up(section: Section, furnace_c: f64) -> Result<Heating, HeatError> {
    section.validate()?;
    NumberOutside::check(texts::FURNACE, furnace_c, FURNACE_C, "°C")?;
    let plate = |mm: f64| Element::plate(0.5e-3 * mm, PLATE_NODES).into_plate();
    let round = |mm: f64| Element::round(0.5e-3 * mm, ROUND_NODES).into_round();
    let mesh = match section {
        Section::Plate { thickness_mm } => plate(thickness_mm),
        Section::Blade { spine_mm, .. } => plate(spine_mm),
        Section::Round { diameter_mm } => round(diameter_mm),
        // As much volume for its surface as the round that fits in it.
        Section::Square { side_mm } => round(side_mm),
    };
    let furnace = Medium::furnace(furnace_c, FURNACE_AIR_W_M2K);
    let material = Material::heated();
    let mut piece = Conduction::<NARROW_BAND>::new(&mesh, material, ROOM_C, TOLERANCE_K);
    let until = Until {
        reached: Reached::Heated(furnace_c - AT_TEMPERATURE_K),
        time_s: LONGEST_S,
    };
    let mut core = Vec::with_capacity(64);
    piece.stay_in(&furnace, 1.0, until, |piece| {
        let core_c = piece.temperature_c.first().copied().unwrap_or(ROOM_C);
        core.push([piece.time_s, core_c]);
    });
    if core.iter().flatten().any(|value| !value.is_finite()) {
        return Err(HeatError::NotFinite);
    }
    Ok(Heating {
        core_at_temperature_s: piece.time_s,
        band_factor: furnace.h_band_factor,
        core,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn time_s(section: Section, furnace_c: f64) -> f64 {
        heat_up(section, furnace_c).unwrap().core_at_temperature_s
    }

    /// Shop notes of the project, an estimate: about a minute for each millimetre in a furnace at
    /// temperature.
    #[test]
    fn about_a_minute_for_each_millimetre() {
        for thickness_mm in [3.0, 4.0, 6.0, 12.0] {
            let minutes = time_s(Section::Plate { thickness_mm }, 830.0) / 60.0;
            let each = minutes / thickness_mm;
            assert!(
                (0.6..1.5).contains(&each),
                "{thickness_mm} mm: {minutes} min"
            );
        }
    }

    /// A thin plate has one temperature: its time is the integral of heat over flux.
    #[test]
    fn a_thin_plate_is_lumped() {
        let furnace_c = 830.0;
        let furnace = Medium::furnace(furnace_c, FURNACE_AIR_W_M2K);
        let material = Material::heated();
        let step = 0.01;
        let steps = ((furnace_c - AT_TEMPERATURE_K - ROOM_C) / step) as u32;
        let lumped_s: f64 = (0..steps)
            .map(|i| ROOM_C + (f64::from(i) + 0.5) * step)
            .map(|t| -0.25e-3 * material.capacity_j_m3k(t) * step / furnace.flux(t, 1.0).0)
            .sum();
        let computed_s = time_s(Section::Plate { thickness_mm: 0.5 }, furnace_c);
        approx::assert_relative_eq!(computed_s, lumped_s, max_relative = 5e-3);
    }

    #[test]
    fn thicker_takes_longer_and_the_core_only_warms() {
        let mut before_s = 0.0;
        for diameter_mm in [2.0, 5.0, 12.0, 40.0, 120.0, 300.0] {
            let heating = heat_up(Section::Round { diameter_mm }, 850.0).unwrap();
            assert!(heating.core_at_temperature_s > before_s);
            before_s = heating.core_at_temperature_s;
            for pair in heating.core.windows(2) {
                assert!(pair[1][0] > pair[0][0] && pair[1][1] > pair[0][1] - 0.05);
            }
        }
        let blade = Section::Blade {
            edge_mm: 0.4,
            spine_mm: 4.0,
            height_mm: 26.0,
            grind: crate::heat::Grind::Straight,
        };
        let plate = Section::Plate { thickness_mm: 4.0 };
        assert_eq!(time_s(blade, 830.0), time_s(plate, 830.0));
        assert!(heat_up(plate, f64::NAN).is_err());
        assert!(heat_up(Section::Plate { thickness_mm: -1.0 }, 830.0).is_err());
    }
}
