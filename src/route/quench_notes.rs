//! Whether a quench is faster than it needs to be, and what may crack or warp the piece in it:
//! reasons, not a percentage.

use super::baths::Baths;
use super::cautions::{COARSE_GRAIN_ASTM, CRACKING_CARBON_WT, is_harsh};
use super::outcome::{Outcome, QuenchTransformed, Verdict};
use super::plan::{Cold, Route};
use super::sentences::{NumberKey, Sentence, Tone, inside_a_sentence};
use crate::heat::{Family, Section};
use crate::units::{
    TemperatureScale, format_factor, format_fixed, format_temperature,
    format_temperature_difference, format_weight_percent,
};

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

/// Words, a number that can be opened, and words after it.
type Reason = (String, Option<(String, NumberKey)>, &'static str);

/// The sentence, with temperatures on a scale; none where nothing hardens or nothing speaks for it.
#[must_use]
pub fn quench_notes(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Option<Sentence> {
    let quenched = outcome.quench.transformed.given()?;
    if quenched.fractions.martensite < 0.5 {
        return None;
    }
    let end = &outcome.soak.end;
    let mut reasons: Vec<Reason> = Vec::new();
    let baths = Baths::of(&route.quench).ok()?;
    if is_harsh(baths.at_ms(outcome).family) {
        reasons.push(("a harsh bath".into(), None, ""));
    }
    if end.carbon_wt > CRACKING_CARBON_WT {
        let carbon = (
            format_weight_percent(end.carbon_wt),
            NumberKey::DissolvedCarbon,
        );
        reasons.push((String::new(), Some(carbon), " carbon in solution"));
    }
    if quenched.ms_c < LOW_MS_C {
        let ms = format_temperature(quenched.ms_c, scale);
        reasons.push((format!("martensite that begins as late as {ms}"), None, ""));
    }
    if let Some(apart_k) = apart_at_k(outcome, quenched.ms_c)
        && apart_k > UNEVEN_K
    {
        let apart = format_temperature_difference(apart_k, scale);
        reasons.push((format!("{apart} across the piece as it begins"), None, ""));
    }
    if let Section::Blade {
        edge_mm, spine_mm, ..
    } = route.section
        && spine_mm / edge_mm >= UNEVEN_SECTION
    {
        let ratio = format_fixed(spine_mm / edge_mm, 0);
        reasons.push((
            format!("a cutting edge {ratio} times thinner than the spine"),
            None,
            "",
        ));
    }
    if end.grain_astm < COARSE_GRAIN_ASTM {
        let grain = format!("ASTM\u{a0}{}", format_fixed(end.grain_astm, 0));
        reasons.push(("coarse grain, ".into(), Some((grain, NumberKey::Grain)), ""));
    }
    let count = reasons.len();
    let slower = faster_than_needed(&baths, quenched, scale);
    if count == 0 && slower.is_none() {
        return None;
    }
    let tone = if count >= MANY {
        Tone::Narrow
    } else {
        Tone::Holds
    };
    let mut sentence = Sentence::new(tone);
    if let Some(slower) = slower {
        let times = format_factor(quenched.margin.factor);
        sentence = sentence
            .text_part("Faster than needed: it could be ")
            .number(times, NumberKey::Margin)
            .text_part(slower);
        if count == 0 {
            return Some(sentence);
        }
        sentence = sentence.text_part(" ");
    }
    sentence = sentence.text_part("What may crack or warp it: ");
    for (i, (before, number, after)) in reasons.into_iter().enumerate() {
        let joint = match i {
            0 => "",
            _ if i + 1 == count => " and ",
            _ => ", ",
        };
        sentence = sentence.text_part(format!("{joint}{before}"));
        if let Some((number, key)) = number {
            sentence = sentence.number(number, key);
        }
        sentence = sentence.text_part(after);
    }
    let sentence = sentence.text_part(".");
    if count < MANY {
        return Some(sentence);
    }
    let snap = format_temperature(Cold::SNAP_FIRST_OFFERED.temperature_c, scale);
    Some(sentence.text_part(match &route.cold {
        Some(cold) if cold.snap.is_some() => {
            " Go on at once: the snap temper takes the worst of the stress before the cold.".to_owned()
        }
        Some(_) => format!(
            " Go on at once: where the cold bath has to wait, an hour at {snap} first takes the \
             worst of the stress, though the cold then finds less austenite to turn."
        ),
        None => format!(
            " Temper at once: where that has to wait, an hour at {snap} takes the worst of the \
             stress, and costs next to no hardness."
        ),
    }))
}

/// That a quench has much to spare, and what would still do; none where it has not, or nothing is
/// slower.
fn faster_than_needed(
    baths: &Baths,
    quenched: &QuenchTransformed,
    scale: TemperatureScale,
) -> Option<String> {
    let next = quenched.next_slower.as_ref();
    // Of the user's own nobody knows what comes next.
    let has_slower = next.is_some() || baths.first.family == Family::Own;
    if quenched.margin.factor < FASTER_THAN_NEEDED || !has_slower || !baths.later.is_empty() {
        return None;
    }
    let next = next.filter(|next| next.verdict == Verdict::Holds);
    Some(next.map_or_else(
        || " slower.".to_owned(),
        |next| {
            let title = inside_a_sentence(&next.title.words(scale));
            format!(" slower, and {title} would still do.")
        },
    ))
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
        assert_eq!(mild, Tone::Holds);
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
