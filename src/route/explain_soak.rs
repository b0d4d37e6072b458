//! What stands behind the numbers beside the soak: heating up, overheating, the surface.

use super::explain::{Explanation, grain_error, refused, soak_words};
use super::outcome::Outcome;
use super::plan::Route;
use super::prepared::overheating;
use super::soak_notes::{rough_duration, up_to_hundredths};
use crate::heat::{AT_TEMPERATURE_K, EMISSIVITY, FURNACE_AIR_W_M2K};
use crate::units::{
    TemperatureScale, format_factor, format_fixed, format_temperature,
    format_temperature_difference,
};
use recalesce_texts::route::explain::{GRAIN_BASIS, KNOWN, SOURCE, TAKES_IN, VALID, between};
use recalesce_texts::route::explain_soak as texts;

/// Time until the core is at the temperature of the furnace.
pub(super) fn heating_up(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let heating = &outcome.heating;
    let time_s = heating.core_at_temperature_s;
    Explanation {
        title: texts::HEATING_UP.to_owned(),
        figure: rough_duration(time_s),
        band: between(
            &rough_duration(time_s / heating.band_factor),
            &rough_duration(time_s * heating.band_factor),
        ),
        equation: texts::heating_law(
            EMISSIVITY,
            FURNACE_AIR_W_M2K,
            &format_temperature_difference(AT_TEMPERATURE_K, scale),
            &format_temperature(route.soak.temperature_c, scale),
        ),
        rows: vec![
            (TAKES_IN, texts::HEATING_TAKES_IN.to_owned()),
            (SOURCE, texts::HEATING_BASIS.to_owned()),
            (VALID, texts::HEATING_VALIDITY.to_owned()),
            (
                KNOWN,
                texts::heating_error(&format_factor(heating.band_factor)),
            ),
        ],
    }
}

/// Grain after soaks that were too hot.
pub(super) fn overheated(route: &Route, scale: TemperatureScale) -> Explanation {
    let grains = match overheating(route) {
        Ok(grains) => grains,
        Err(error) => return refused(texts::OVERHEATED, error.words(scale)),
    };
    let lines: Vec<String> = grains
        .iter()
        .map(|grain| {
            texts::grain_at(
                &format_temperature(grain.temperature_c, scale),
                &format_fixed(grain.grain_astm, 1),
                &format_fixed(grain.grain_um, 0),
            )
        })
        .collect();
    Explanation {
        title: texts::OVERHEATED.to_owned(),
        figure: grains
            .map(|grain| format_fixed(grain.grain_astm, 0))
            .join(", "),
        band: texts::GRAIN_NUMBER.to_owned(),
        equation: lines.join("\n"),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, GRAIN_BASIS.to_owned()),
            (KNOWN, grain_error()),
        ],
    }
}

/// What air does to the surface.
pub(super) fn skin(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let skin = match &outcome.skin {
        super::Known::Given(skin) => skin,
        super::Known::Refused { refused: reason } => {
            return refused(texts::SURFACE, reason.words(scale));
        }
    };
    let depth = |depth: &crate::soak::Depth| {
        texts::depth_between(
            &format_fixed(depth.least_mm, 2),
            &format_fixed(up_to_hundredths(depth.most_mm), 2),
        )
    };
    Explanation {
        title: texts::SURFACE.to_owned(),
        figure: format!(
            "{}\u{a0}mm",
            format_fixed(up_to_hundredths(skin.stock_per_side_mm), 2)
        ),
        band: texts::TO_LEAVE.to_owned(),
        equation: texts::surface_law(&depth(&skin.decarburised), &depth(&skin.scale)),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, texts::SURFACE_BASIS.to_owned()),
            (VALID, texts::SURFACE_VALIDITY.to_owned()),
            (KNOWN, texts::SURFACE_ERROR.to_owned()),
        ],
    }
}
