//! Words that several parts of the card share.

use super::Units;
use crate::hardness::Hardness;
use crate::heat::{Family, MediumChoice, Section};
use crate::route::Route;
use crate::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_fixed, format_given_length, format_hrb,
    format_hrc, format_hv, format_temperature, format_temperature_band,
};
use recalesce_texts::grammar::inside_a_sentence;
use recalesce_texts::route as texts;

/// The section at the head of a sentence.
pub(super) fn section_words(section: &Section, unit: LengthUnit) -> String {
    let length = |mm: f64| format_given_length(mm, unit);
    match *section {
        Section::Plate { thickness_mm } => texts::card::flat(&length(thickness_mm)),
        Section::Round { diameter_mm } => texts::plan::round(&length(diameter_mm)),
        Section::Square { side_mm } => texts::plan::square(&length(side_mm)),
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            ..
        } => texts::card::blade(&length(spine_mm), &length(edge_mm), &length(height_mm)),
    }
}

/// A medium inside a sentence, with the temperature of its bath where that is set by the shop. A
/// name that the user gave stays as it is.
pub(super) fn medium_words(choice: &MediumChoice, scale: TemperatureScale) -> String {
    match bath_words(choice, scale) {
        (medium, Some(bath)) => texts::plan::medium_at(&medium, &bath),
        (medium, None) => medium,
    }
}

/// A medium inside a sentence, and the temperature of its bath unless its title tells it or it has
/// none.
pub(super) fn bath_words(
    choice: &MediumChoice,
    scale: TemperatureScale,
) -> (String, Option<String>) {
    let medium = match choice.resolve() {
        Ok(medium) => medium,
        Err(error) => return (error.words(scale), None),
    };
    let title = medium.title.words(scale);
    let title = match choice {
        MediumChoice::Own(own) if own.title.is_some() => title,
        _ => inside_a_sentence(&title),
    };
    let is_told = medium.title.names_bath() || matches!(medium.family, Family::Air | Family::Gas);
    (
        title,
        (!is_told).then(|| format_temperature(medium.bath_c, scale)),
    )
}

/// A time at temperature.
pub(super) fn hold_words(time_min: f64) -> String {
    if time_min > 0.0 {
        format_duration_s(60.0 * time_min)
    } else {
        texts::card::NO_HOLD.to_owned()
    }
}

/// A time at the temperature of a furnace that is true to a band, K.
pub(super) fn furnace_words(band_k: f64, time_min: f64, units: Units) -> String {
    let hold = hold_words(time_min);
    if band_k > 0.0 {
        format!("{}, {hold}", format_temperature_band(band_k, units.scale))
    } else {
        hold
    }
}

/// What the furnace of the soak has to read for the piece to be at a temperature, °C, with the
/// detail of its step: the temperature itself stands there where the furnace reads off.
pub(super) fn furnace_set(
    route: &Route,
    temperature_c: f64,
    detail: String,
    units: Units,
) -> (String, String) {
    let degrees = |c: f64| format_temperature(c, units.scale);
    let offset_k = route.furnace_offset_k;
    let detail = if offset_k == 0.0 {
        detail
    } else {
        texts::card::in_the_piece(&degrees(temperature_c), &detail)
    };
    (degrees(temperature_c - offset_k), detail)
}

/// A hardness on the scale that a shop can measure it on.
pub(super) fn hardness_words(hardness: Hardness) -> String {
    match (hardness.hrc(), hardness.hrb()) {
        (Some(hrc), _) => format_hrc(hrc),
        (None, Some(hrb)) => format_hrb(hrb),
        (None, None) => format_hv(hardness.hv),
    }
}

/// Between two hardnesses, on the scale of [`hardness_words`] where it reaches over both, else in
/// HV.
pub(super) fn between_words(hardness: Hardness, band_hv: f64) -> String {
    let ends = [hardness.hv - band_hv, hardness.hv + band_hv].map(|hv| Hardness { hv });
    let on = |scale: fn(Hardness) -> Option<f64>, decimals: usize| -> Option<String> {
        scale(hardness)?;
        let [least, most] = ends.map(scale);
        Some(texts::card::between(
            &format_fixed(least?, decimals),
            &format_fixed(most?, decimals),
        ))
    };
    on(Hardness::hrc, 1)
        .or_else(|| on(Hardness::hrb, 0))
        .unwrap_or_else(|| {
            let [least, most] = ends.map(|end| format_fixed(end.hv.max(0.0), 0));
            texts::card::between_hv(&least, &most)
        })
}
