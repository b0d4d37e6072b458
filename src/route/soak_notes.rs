//! What else there is to know about a soak, in sentences: heating up, overheating, the surface.

use super::card::keep_air_off;
use super::cautions::COARSE_GRAIN_ASTM;
use super::outcome::Outcome;
use super::plan::Route;
use super::sentence::{NumberKey, Part, Sentence, Tone};
use crate::soak::{GrainAt, Skin};
use crate::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_fixed, format_length,
    format_temperature_difference,
};
use recalesce_texts::route::soak_notes as texts;

/// A time as coarsely as it is known: to ten seconds, from two minutes on to a minute.
#[must_use]
pub fn rough_duration(time_s: f64) -> String {
    let step_s = if time_s < 120.0 { 10.0 } else { 60.0 };
    format_duration_s((time_s / step_s).round() * step_s)
}

/// The sentences, with temperatures on a scale and lengths in a unit; of overheating only where
/// its grain is known.
#[must_use]
pub fn soak_notes(
    route: &Route,
    outcome: &Outcome,
    overheated: Option<&[GrainAt; 3]>,
    scale: TemperatureScale,
    length: LengthUnit,
) -> Vec<Sentence> {
    let mut all = vec![heating_up(route, outcome)];
    all.extend(overheated.map(|grains| too_hot(grains, scale)));
    let air = keep_air_off(route.soak.temperature_c, route.soak.time_min);
    // What air does is a fact, until it is worth keeping off.
    let tone = if air.is_some() {
        Tone::Narrow
    } else {
        Tone::Plain
    };
    all.extend(surface(outcome, length, tone));
    all.extend(air.map(|air| Sentence::new(tone).text_part(air.words(scale))));
    all
}

fn heating_up(route: &Route, outcome: &Outcome) -> Sentence {
    let heating_s = outcome.heating.core_at_temperature_s;
    let time = |time_s| Part::Number(rough_duration(time_s), NumberKey::HeatingUp);
    let all_s = heating_s + 60.0 * route.soak.time_min;
    Sentence::new(Tone::Plain).say(
        texts::HEATING_UP,
        &[("time", time(heating_s)), ("all", time(all_s))],
    )
}

fn too_hot(grains: &[GrainAt; 3], scale: TemperatureScale) -> Sentence {
    let is_coarse = |grain: &GrainAt| grain.grain_astm < COARSE_GRAIN_ASTM;
    let tone = match grains.iter().position(is_coarse) {
        None => Tone::Holds,
        Some(0) => Tone::Misses,
        Some(_) => Tone::Narrow,
    };
    let [least, middle, most] =
        grains.map(|grain| format_temperature_difference(grain.over_k, scale));
    let without_unit = |text: String| {
        let number = text.split('\u{a0}').next().unwrap_or_default();
        number.to_owned()
    };
    let number = |grain: &GrainAt| {
        let number = format_fixed(grain.grain_astm, 0);
        Part::Number(number, NumberKey::Overheated)
    };
    let text = if tone == Tone::Holds {
        texts::TOO_HOT
    } else {
        texts::TOO_HOT_COARSE
    };
    Sentence::new(tone).say(
        text,
        &[
            ("little", Part::Text(without_unit(least))),
            ("more", Part::Text(without_unit(middle))),
            ("most", Part::Text(most)),
            ("grain_little", number(&grains[0])),
            ("grain_more", number(&grains[1])),
            ("grain_most", number(&grains[2])),
        ],
    )
}

fn surface(outcome: &Outcome, length: LengthUnit, tone: Tone) -> Option<Sentence> {
    let [decarburised, stock] = surface_words(outcome.skin.given()?, length)
        .map(|depth| Part::Number(depth, NumberKey::Skin));
    Some(Sentence::new(tone).say(
        texts::SURFACE_IN_AIR,
        &[("decarburised", decarburised), ("stock", stock)],
    ))
}

/// How deep air takes carbon, and what to leave on each side to grind.
pub(super) fn surface_words(skin: &Skin, length: LengthUnit) -> [String; 2] {
    [skin.decarburised.most_mm, skin.stock_per_side_mm]
        .map(|mm| format_length(up_to_hundredths(mm), length))
}

/// A depth that air takes, mm, as it is told everywhere: never less than it is.
pub(super) fn up_to_hundredths(depth_mm: f64) -> f64 {
    (depth_mm * 100.0).ceil() / 100.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::caution_words::{Caution, caution_text};
    use crate::route::{overheating, run};

    fn notes(change: impl FnOnce(&mut Route)) -> Vec<(Tone, String)> {
        let mut route = Route::example();
        change(&mut route);
        let outcome = run(&route).unwrap();
        let grains = overheating(&route).ok();
        let all = soak_notes(
            &route,
            &outcome,
            grains.as_ref(),
            TemperatureScale::Celsius,
            LengthUnit::Millimetre,
        );
        let plain = |sentence: &Sentence| (sentence.tone, sentence.text().replace('\u{a0}', " "));
        all.iter().map(plain).collect()
    }

    #[test]
    fn the_example_in_words() {
        let [heating, hot, surface] = notes(|_| {}).try_into().unwrap();
        assert_eq!(
            heating.1,
            "Heats up in about 6 min: take it out after 18 min."
        );
        assert!(hot.1.starts_with("Too hot by 30, 60 or 100 °C: grain ASTM"));
        assert!(surface.1.contains("leave 0."), "{}", surface.1);
    }

    #[test]
    fn coarse_grain_from_overheating_is_marked() {
        assert_eq!(notes(|_| {})[1].0, Tone::Holds);
        let hot = notes(|route| route.soak.temperature_c = 980.0);
        assert_eq!(hot[1].0, Tone::Misses);
        assert!(hot[1].1.ends_with(": coarse, and brittle."));
    }

    /// The sentence, the caution and what stands behind the number tell one depth.
    #[test]
    fn the_skin_is_as_deep_wherever_it_is_told() {
        let mut route = Route::example();
        route.section = crate::heat::Section::Blade {
            edge_mm: 0.4,
            spine_mm: 3.0,
            height_mm: 30.0,
            grind: crate::heat::Grind::Straight,
        };
        for time_min in 30..60 {
            route.soak.temperature_c = 900.0;
            route.soak.time_min = f64::from(time_min);
            let outcome = run(&route).unwrap();
            let skin = outcome.skin.given().unwrap();
            let mm = LengthUnit::Millimetre;
            let [depth, stock] = surface_words(skin, mm);
            let mut cautions = outcome.cautions.iter();
            let through = cautions.find(|c| matches!(c, Caution::SkinThroughEdge { .. }));
            let scale = TemperatureScale::Celsius;
            let through = through.unwrap();
            assert!(caution_text(through, scale, mm).contains(&format!("lost to {depth}")));
            let [depth_in, _] = surface_words(skin, LengthUnit::Inch);
            let told = caution_text(through, scale, LengthUnit::Inch);
            assert!(told.contains(&format!("lost to {depth_in} deep")) && !told.contains("mm"));
            let behind = crate::route::explain_soak::skin(&route, &outcome, scale);
            let number = depth.replace("\u{a0}mm", "");
            assert!(
                behind.equation.contains(&number),
                "{depth}: {}",
                behind.equation
            );
            assert_eq!(behind.figure, stock);
        }
    }

    #[test]
    fn times_are_as_coarse_as_they_are_known() {
        for (time_s, text) in [
            (47.0, "50\u{a0}s"),
            (113.0, "110\u{a0}s"),
            (265.0, "4\u{a0}min"),
        ] {
            assert_eq!(rough_duration(time_s), text);
        }
    }
}
