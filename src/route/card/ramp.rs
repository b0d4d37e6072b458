//! How a step is brought up to heat, and what keeps the air off. Common practice, no source.

use super::Units;
use crate::heat::{Hazard, Said};
use crate::route::plan::Route;
use crate::units::format_temperature;
use recalesce_texts::route::card as texts;

/// Chromium from which steel conducts so badly and holds so much carbide that it is brought up in
/// stages, wt %.
const IN_STAGES_CR_WT: f64 = 3.0;
/// Thickness from which plain and low-alloy steel is brought up slowly, mm.
const SLOWLY_MM: f64 = 25.0;
/// Where a stage is held, °C: below A1, and for soaks above [`HOT_C`] once more on the far side of it.
const FIRST_STAGE_C: f64 = 650.0;
const SECOND_STAGE_C: f64 = 815.0;
/// From here the air is kept off even for a short soak, °C.
const HOT_C: f64 = 1000.0;
/// From here for a soak of [`SHORT_MIN`], °C.
const WARM_C: f64 = 900.0;
const SHORT_MIN: f64 = 15.0;
/// From here for a soak of [`LONG_MIN`], °C.
const SCALES_C: f64 = 750.0;
const LONG_MIN: f64 = 20.0;

/// How a piece is brought up to a temperature, °C, beginning with a space; nothing where it goes
/// straight into the furnace.
pub(super) fn ramp_words(route: &Route, temperature_c: f64, units: Units) -> String {
    let degrees = |c: f64| format_temperature(c, units.scale);
    let first = degrees(FIRST_STAGE_C);
    if temperature_c <= SCALES_C {
        String::new()
    } else if route.composition.cr >= IN_STAGES_CR_WT && temperature_c >= HOT_C {
        texts::up_in_stages(&first, &degrees(SECOND_STAGE_C))
    } else if route.composition.cr >= IN_STAGES_CR_WT || route.section.thickness_mm() >= SLOWLY_MM {
        texts::up_slowly(&first)
    } else {
        String::new()
    }
}

/// What keeps the air off a soak, and how it can hurt.
const FOIL: Hazard = Hazard(&[Said::Words(texts::KEEP_AIR_OFF)]);

/// The same where a soak at a temperature, °C, for a time, min, asks for it.
pub(crate) fn keep_air_off(temperature_c: f64, time_min: f64) -> Option<Hazard> {
    let held = |least_c: f64, least_min: f64| temperature_c >= least_c && time_min >= least_min;
    (held(HOT_C, 0.0) || held(WARM_C, SHORT_MIN) || held(SCALES_C, LONG_MIN)).then_some(FOIL)
}
