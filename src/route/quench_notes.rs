//! Whether a quench is faster than it needs to be, and what may crack or warp the piece in it:
//! reasons, not a percentage.

use super::baths::Baths;
use super::cautions::{COARSE_GRAIN_ASTM, CRACKING_CARBON_WT};
use super::margin::{Neighbour, Verdict};
use super::outcome::{Outcome, QuenchTransformed};
use super::plan::{Cold, Route};
use super::sentence::{NumberKey, Part, Sentence, Tone};
use crate::heat::{Family, Section};
use crate::units::{
    TemperatureScale, format_factor, format_fixed, format_temperature,
    format_temperature_difference, format_weight_percent,
};
use recalesce_texts::grammar::inside_a_sentence;
use recalesce_texts::route::quench_notes as texts;

/// Martensite that begins below this forms when the steel can no longer give, °C. Notes on quench
/// cracking, from memory.
const LOW_MS_C: f64 = 250.0;
/// Difference across the piece as its martensite begins that is told, K (expert value).
const UNEVEN_K: f64 = 80.0;
/// Ratio of spine to edge from which a change of section is told (expert value).
const UNEVEN_SECTION: f64 = 5.0;
/// A margin from which a quench is called faster than needed, as a factor. Notes on quenching, from
/// memory: about 3.
const FASTER_THAN_NEEDED: f64 = 3.0;
/// So many reasons together are a warning.
const MANY: usize = 3;

/// The sentence, with temperatures on a scale; none where nothing hardens or nothing speaks for it.
#[must_use]
pub fn quench_notes(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Option<Sentence> {
    let quenched = outcome.quench.transformed.given()?;
    if quenched.fractions.martensite < 0.5 {
        return None;
    }
    let end = &outcome.soak.end;
    let mut reasons: Vec<Sentence> = Vec::new();
    let mut speaks = |text: &str, part: Option<(&str, Part)>| {
        reasons.push(Sentence::new(Tone::Plain).say(text, part.as_slice()));
    };
    let baths = Baths::of(&route.quench).ok()?;
    if baths.at_ms(outcome).is_harsh() {
        speaks(texts::HARSH_BATH, None);
    }
    if end.carbon_wt > CRACKING_CARBON_WT {
        let carbon = format_weight_percent(end.carbon_wt);
        let carbon = Part::Number(carbon, NumberKey::DissolvedCarbon);
        speaks(texts::MUCH_CARBON, Some(("carbon", carbon)));
    }
    if quenched.ms_c < LOW_MS_C {
        let ms = Part::Text(format_temperature(quenched.ms_c, scale));
        speaks(texts::LATE_MARTENSITE, Some(("ms", ms)));
    }
    if let Some(apart_k) = apart_at_k(outcome, quenched.ms_c)
        && apart_k > UNEVEN_K
    {
        let apart = Part::Text(format_temperature_difference(apart_k, scale));
        speaks(texts::UNEVEN, Some(("apart", apart)));
    }
    if let Section::Blade {
        edge_mm, spine_mm, ..
    } = route.section
        && spine_mm / edge_mm >= UNEVEN_SECTION
    {
        let ratio = Part::Text(format_fixed(spine_mm / edge_mm, 0));
        speaks(texts::THIN_EDGE, Some(("ratio", ratio)));
    }
    if end.grain_astm < COARSE_GRAIN_ASTM {
        let grain = format!("ASTM\u{a0}{}", format_fixed(end.grain_astm, 0));
        let grain = Part::Number(grain, NumberKey::Grain);
        speaks(texts::COARSE_GRAIN, Some(("grain", grain)));
    }
    let count = reasons.len();
    let is_much = count >= MANY;
    let mut sentence = Sentence::new(if is_much { Tone::Narrow } else { Tone::Plain });
    if let Some(next) = faster_than_needed(&baths, quenched) {
        let factor = format_factor(quenched.margin.factor);
        let mut parts = vec![("factor", Part::Number(factor, NumberKey::Margin))];
        let text = match next {
            None => texts::FASTER_THAN_NEEDED,
            Some(next) => {
                let title = inside_a_sentence(&next.title.words(scale));
                parts.push(("next", Part::Text(title)));
                texts::FASTER_THAN_NEEDED_NEXT_DOES
            }
        };
        sentence = sentence.say(text, &parts);
    } else if count == 0 {
        return None;
    }
    if count == 0 {
        return Some(sentence);
    }
    let mut parts = Vec::new();
    for (i, reason) in reasons.into_iter().enumerate() {
        let joint = match i {
            0 => "",
            _ if i + 1 == count => texts::AND,
            _ => texts::COMMA,
        };
        parts.push(Part::Text(joint.to_owned()));
        parts.extend(reason.parts);
    }
    let parts: Vec<_> = parts.into_iter().map(|part| ("reasons", part)).collect();
    sentence = sentence.say(texts::MAY_CRACK, &parts);
    if is_much {
        let snap = format_temperature(Cold::SNAP_FIRST_OFFERED.temperature_c, scale);
        let snap = ("snap", Part::Text(snap));
        sentence = match &route.cold {
            Some(cold) if cold.snap.is_some() => sentence.say(texts::SNAP_AT_ONCE, &[]),
            Some(_) => sentence.say(texts::SNAP_IF_COLD_WAITS, &[snap]),
            None => sentence.say(texts::TEMPER_AT_ONCE, &[snap]),
        };
    }
    Some(sentence)
}

/// What would still do where a quench has much to spare; none where it has not, or nothing is
/// slower.
fn faster_than_needed<'a>(
    baths: &Baths,
    quenched: &'a QuenchTransformed,
) -> Option<Option<&'a Neighbour>> {
    let next = quenched.next_slower.as_ref();
    // Of the user's own nobody knows what comes next.
    let has_slower = next.is_some() || baths.first.family == Family::Own;
    if quenched.margin.factor < FASTER_THAN_NEEDED || !has_slower || !baths.later.is_empty() {
        return None;
    }
    Some(next.filter(|next| next.verdict == Verdict::Holds))
}

/// How far apart the places of the piece are when the first of them reaches a temperature, K.
fn apart_at_k(outcome: &Outcome, temperature_c: f64) -> Option<f64> {
    let curves = &outcome.quench.curves;
    let first_s = curves
        .iter()
        .filter_map(|curve| curve.time_to_c(temperature_c))
        .min_by(f64::total_cmp)?;
    let then = curves
        .iter()
        .filter_map(|curve| curve.temperature_at_s(first_s));
    Some(then.fold(f64::MIN, f64::max) - temperature_c)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::MediumChoice;
    use crate::route::run;

    fn told(medium: &str, section: Section) -> Option<(Tone, String)> {
        let mut route = Route::example();
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        route.section = section;
        let outcome = run(&route).unwrap();
        let sentence = quench_notes(&route, &outcome, TemperatureScale::Celsius)?;
        Some((sentence.tone, sentence.text().replace('\u{a0}', " ")))
    }

    #[test]
    fn a_harsher_bath_and_a_thicker_piece_have_more_reasons() {
        let thin = Section::Plate { thickness_mm: 2.0 };
        let thick = Section::Plate { thickness_mm: 12.0 };
        let (mild, oil) = told("oil_slow", thin).unwrap();
        assert!(
            oil.starts_with("What may crack or warp it: 0.71 % carbon in solution"),
            "{oil}"
        );
        assert_eq!(mild, Tone::Plain);
        let (harsh, water) = told("water20", thick).unwrap();
        assert_eq!(harsh, Tone::Narrow);
        assert!(
            water.contains("a harsh bath") && water.contains("across the piece"),
            "{water}"
        );
        // The example goes on to a cold bath.
        assert!(water.contains("where the cold bath has to wait, an hour at 150 °C first"));
        assert!(!oil.contains("150 °C"));
        assert_eq!(told("air_still", thick), None);
    }

    /// Notes on quenching, from memory: O1 in water has far more speed than it needs, and cracks; it
    /// hardens in slow oil. What is only just fast enough is not told to be too fast.
    #[test]
    fn much_to_spare_is_told_of_every_bath_with_what_would_do() {
        let mut route = Route::example();
        route.take_grade(crate::steel::find("O1").unwrap());
        route.section = Section::Plate { thickness_mm: 3.0 };
        let mut told = |medium: &str| {
            route.quench.medium = MediumChoice::Named(medium.to_owned());
            let outcome = run(&route).unwrap();
            quench_notes(&route, &outcome, TemperatureScale::Celsius)
                .map_or_else(String::new, |sentence| sentence.text())
        };
        for medium in ["water20", "oil_fast"] {
            let text = told(medium);
            assert!(
                text.starts_with("Faster than needed: it could be ×")
                    && text.contains(" would still do. What may crack or warp it: "),
                "{medium}: {text}"
            );
        }
        // Nothing is slower than still air, and 1095 needs what it gets.
        assert!(!told("air_still").contains("Faster than needed"));
        route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
        route.take_grade(crate::steel::find("1095").unwrap());
        let outcome = run(&route).unwrap();
        let text = quench_notes(&route, &outcome, TemperatureScale::Celsius).map(|s| s.text());
        assert!(text.is_none_or(|text| !text.contains("Faster than needed")));
    }
}
