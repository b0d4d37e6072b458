//! What stands behind the numbers beside the soak: heating up, overheating, the surface.

use super::explain::{
    Explanation, GRAIN_BASIS, KNOWN, SOURCE, TAKES_IN, VALID, grain_error, refused, soak_words,
};
use super::outcome::Outcome;
use super::plan::Route;
use super::prepared::overheating;
use super::soak_notes::rough_duration;
use crate::heat::{AT_TEMPERATURE_K, EMISSIVITY, FURNACE_AIR_W_M2K};
use crate::units::{
    TemperatureScale, format_factor, format_fixed, format_temperature,
    format_temperature_difference,
};

/// Time until the core is at the temperature of the furnace.
pub(super) fn heating_up(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let heating = &outcome.heating;
    let time_s = heating.core_at_temperature_s;
    Explanation {
        title: "Heating up".to_owned(),
        figure: rough_duration(time_s),
        band: format!(
            "{} to {}",
            rough_duration(time_s / heating.band_factor),
            rough_duration(time_s * heating.band_factor)
        ),
        equation: format!(
            "heat taken up = radiation of the walls, ε σ (T⁴ walls − T⁴ piece), and air, h (T walls − T piece)\nε {EMISSIVITY}, h {FURNACE_AIR_W_M2K} W/m²K, until the core is within {} of {}",
            format_temperature_difference(AT_TEMPERATURE_K, scale),
            format_temperature(route.soak.temperature_c, scale)
        ),
        rows: vec![
            (
                TAKES_IN,
                "the section, of a blade the plate of its spine, from a cold piece in a furnace that holds its temperature".to_owned(),
            ),
            (
                SOURCE,
                "conduction; heat capacity on heating by EN 1993-1-2, which holds the heat that the change to austenite takes; ε and h are expert values".to_owned(),
            ),
            (
                VALID,
                "scaled steel with room around it; bright steel takes longer, and so does a small furnace that drops when it is opened".to_owned(),
            ),
            (
                KNOWN,
                format!("not measured; taken as {} either way", format_factor(heating.band_factor)),
            ),
        ],
    }
}

/// Grain after soaks that were too hot.
pub(super) fn overheated(route: &Route, scale: TemperatureScale) -> Explanation {
    const TITLE: &str = "Grain from a furnace that is too hot";
    let grains = match overheating(route) {
        Ok(grains) => grains,
        Err(error) => return refused(TITLE, error.words(scale)),
    };
    let lines: Vec<String> = grains
        .iter()
        .map(|grain| {
            format!(
                "{}: ASTM {}, {}\u{a0}µm between boundaries",
                format_temperature(grain.temperature_c, scale),
                format_fixed(grain.grain_astm, 1),
                format_fixed(grain.grain_um, 0)
            )
        })
        .collect();
    Explanation {
        title: TITLE.to_owned(),
        figure: grains
            .map(|grain| format_fixed(grain.grain_astm, 0))
            .join(", "),
        band: "ASTM grain number".to_owned(),
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
    const TITLE: &str = "The surface in open air";
    let skin = match &outcome.skin {
        super::Known::Given(skin) => skin,
        super::Known::Refused { refused: reason } => return refused(TITLE, reason.words(scale)),
    };
    let between = |depth: &crate::soak::Depth| {
        format!(
            "{} to {}\u{a0}mm",
            format_fixed(depth.least_mm, 2),
            format_fixed(depth.most_mm, 2)
        )
    };
    Explanation {
        title: TITLE.to_owned(),
        figure: format!("{}\u{a0}mm", format_fixed(skin.stock_per_side_mm, 2)),
        band: "to leave on each side, at most".to_owned(),
        equation: format!(
            "carbon lost to 2 √(D t): {}\nscale to √(k t): {}\nto leave = depth without carbon + steel that became scale",
            between(&skin.decarburised),
            between(&skin.scale)
        ),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (
                SOURCE,
                "diffusion of carbon in austenite to a surface that loses all of it; scale on clean iron in air after Païdassi (1958), from memory".to_owned(),
            ),
            (
                VALID,
                "carbon and low-alloy steel without foil, coating or gas; chromium scales less".to_owned(),
            ),
            (KNOWN, "an upper bound; the lower ends are expert values".to_owned()),
        ],
    }
}
