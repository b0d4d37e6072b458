//! The outcome in plain sentences: one per question.

use super::caution_words::Caution;
use super::cold_words::cold_sentence;
use super::margin::Verdict;
use super::outcome::{Outcome, Step};
use super::outside::Outside;
use super::plan::{Route, Target};
use super::sentence::{NumberKey, Part, Sentence, Tone};
use super::why::Quantity;
use crate::heat::{Place, Section};
use crate::numeric::quantile::{NINE_IN_TEN, normal_below};
use crate::steel::Element;
use crate::units::{
    TemperatureScale, format_duration_s, format_fixed, format_hrb, format_hrc, format_hv,
    format_percent, format_temperature, format_weight_percent,
};
use recalesce_texts::grammar::inside_a_sentence;
use recalesce_texts::route as texts;

/// Hardness differences that a good tester can tell, HRC.
pub(super) const TELLABLE_HRC: f64 = 0.5;

/// The size of a margin: one decimal, two below a tenth, whole units above a hundred seconds.
#[must_use]
pub fn margin_words(value_s: f64) -> String {
    let size = value_s.abs();
    if size >= 100.0 {
        return format_duration_s(size);
    }
    let decimals = if size < 0.095 {
        2
    } else if size < 9.95 {
        1
    } else {
        0
    };
    format!("{}\u{a0}s", format_fixed(size, decimals))
}

/// The sentences of an outcome, in the order of the four questions, with temperatures on a scale.
#[must_use]
pub fn sentences(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Vec<Sentence> {
    let mut all = vec![soak_sentence(route, outcome)];
    all.push(quench_sentence(route, outcome, scale));
    all.extend(cold_sentence(outcome));
    all.push(final_sentence(route, outcome, scale));
    all
}

fn soak_sentence(route: &Route, outcome: &Outcome) -> Sentence {
    let end = &outcome.soak.end;
    let tone = if end.ferrite_volume_fraction > 0.01 {
        Tone::Misses
    } else if end.grain_astm < super::COARSE_GRAIN_ASTM {
        Tone::Narrow
    } else {
        Tone::Holds
    };
    let content = NumberKey::Behind(Quantity::Content(Element::C));
    let content = Part::Number(format_weight_percent(route.composition.c), content);
    let dissolved = format_weight_percent(end.carbon_wt);
    let dissolved = Part::Number(dissolved, NumberKey::DissolvedCarbon);
    let dissolved = Sentence::new(tone).say(
        texts::outcome::CARBON_DISSOLVED,
        &[("dissolved", dissolved), ("content", content)],
    );
    if end.ferrite_volume_fraction > 0.01 {
        let ferrite = format_percent(end.ferrite_volume_fraction);
        return dissolved.say(
            texts::outcome::FERRITE_LEFT,
            &[("ferrite", Part::Text(ferrite))],
        );
    }
    let grain = format!("ASTM\u{a0}{}", format_fixed(end.grain_astm, 0));
    let grain = ("grain", Part::Number(grain, NumberKey::Grain));
    if end.carbide_volume_fraction > 0.002 {
        let carbide = format_percent(end.carbide_volume_fraction);
        let carbide = Part::Number(carbide, NumberKey::CarbideLeft);
        dissolved.say(
            texts::outcome::CARBIDE_HOLDS_GRAIN,
            &[("carbide", carbide), grain],
        )
    } else {
        dissolved.say(texts::outcome::NO_CARBIDE_HOLDS_GRAIN, &[grain])
    }
}

fn quench_sentence(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Sentence {
    let quenched = match &outcome.quench.transformed {
        super::Known::Given(quenched) => quenched,
        super::Known::Refused { refused } => {
            let why = Sentence::new(Tone::Narrow).text_part(refused.words(scale));
            return match refused {
                super::Refusal::Model(_) => why.say(texts::outcome::QUENCH_BY_HANDBOOK, &[]),
                _ => why,
            };
        }
    };
    let margin = &quenched.margin;
    let is_in_time = margin.seconds >= 0.0;
    let cracks = outcome.cautions.contains(&Caution::MayCrack);
    let (tone, verdict) = match margin.verdict {
        // Fast enough is not yet good.
        Verdict::Holds if cracks => (Tone::Narrow, texts::outcome::VERDICT_FAST_BUT_CRACKS),
        Verdict::Holds => (Tone::Holds, texts::outcome::VERDICT_FAST),
        Verdict::Narrow if is_in_time => (Tone::Narrow, texts::outcome::VERDICT_ONLY_JUST),
        Verdict::Narrow => (Tone::Narrow, texts::outcome::VERDICT_A_LITTLE_SLOW),
        Verdict::Misses => (Tone::Misses, texts::outcome::VERDICT_SLOW),
    };
    let place = outcome
        .quench
        .deciding_curve()
        .map_or(texts::places::at::SLOWEST, |curve| place_words(curve.place));
    let mut parts = vec![
        ("verdict", Part::Lead(verdict.to_owned())),
        ("place", Part::Text(place.to_owned())),
        (
            "margin",
            Part::Number(margin_words(margin.seconds), NumberKey::Margin),
        ),
    ];
    let sentence = Sentence::new(tone);
    if let Some(bath_c) = quenched.held_c {
        let bainite = format_percent(quenched.fractions.bainite);
        parts.push(("bath", Part::Text(format_temperature(bath_c, scale))));
        parts.push(("bainite", Part::Text(bainite)));
        let text = if is_in_time {
            texts::outcome::TO_SPARE_BEFORE_BAINITE
        } else {
            texts::outcome::MISSES_BEFORE_BAINITE
        };
        return sentence.say(text, &parts);
    }
    // Others are weighed alone, which says nothing of a sequence.
    let is_alone = route.quench.then.is_empty();
    if is_in_time {
        // Near one a tenth says nothing.
        let decimals = match margin.factor {
            ..1.95 => 2,
            ..9.95 => 1,
            _ => 0,
        };
        let times = format_fixed(margin.factor, decimals);
        let times = Part::Number(texts::outcome::times(&times), NumberKey::Margin);
        parts.push(("times", times));
        let next = quenched.next_slower.as_ref();
        let text = match next.filter(|next| is_alone && next.factor < margin.factor) {
            None => texts::outcome::TO_SPARE,
            Some(next) => {
                let name = inside_a_sentence(&next.title.words(scale));
                parts.push(("next", Part::Text(name)));
                if next.seconds > margin.seconds {
                    texts::outcome::TO_SPARE_NEXT_DOES
                } else {
                    let next_margin = margin_words(next.seconds);
                    let next_margin = Part::Number(next_margin, NumberKey::NextSlower);
                    parts.push(("next_margin", next_margin));
                    if next.seconds >= 0.0 {
                        texts::outcome::TO_SPARE_NEXT_HAS
                    } else {
                        texts::outcome::TO_SPARE_NEXT_MISSES
                    }
                }
            }
        };
        return sentence.say(text, &parts);
    }
    let hardened = format_percent(quenched.hardened_fraction);
    let hardened = Part::Number(hardened, NumberKey::Behind(Quantity::Hardened));
    parts.push(("hardened", hardened));
    let mut sentence = sentence.say(texts::outcome::MISSES, &parts);
    if let (Section::Blade { height_mm, .. }, Some(depth_mm)) =
        (route.section, quenched.hardened_depth_mm)
        && (0.5..height_mm).contains(&depth_mm)
    {
        let part = Part::Text(format_percent(depth_mm / height_mm));
        sentence = sentence.say(texts::outcome::HARDENS_UP_TO, &[("part", part)]);
    }
    match &quenched.slowest_medium {
        _ if !is_alone => sentence,
        Some(slowest) => sentence.say(
            texts::outcome::SLOWEST_THAT_DOES,
            &[
                ("quenchant", Part::Text(slowest.title.words(scale))),
                ("reservation", Part::Text(slowest.reservation().to_owned())),
            ],
        ),
        None => sentence.say(texts::outcome::NONE_HARDENS_THROUGH, &[]),
    }
}

/// A place of the piece at the head of a sentence.
#[must_use]
pub const fn place_words(place: Place) -> &'static str {
    match place {
        Place::Centre => texts::places::at::CENTRE,
        Place::Edge => texts::places::at::EDGE,
        Place::Corner => texts::places::at::CORNER,
        Place::Quarter => texts::places::at::QUARTER,
        Place::Middle => texts::places::at::MIDDLE,
        Place::ThreeQuarter => texts::places::at::THREE_QUARTER,
        Place::Spine => texts::places::at::SPINE,
        Place::Surface | Place::SpineSurface => texts::places::at::SURFACE,
        Place::Within(_) => texts::places::at::WITHIN,
    }
}

/// A place of the piece on a chart.
#[must_use]
pub const fn place_name(place: Place) -> &'static str {
    match place {
        Place::Centre => texts::places::CENTRE,
        Place::Edge => texts::places::EDGE,
        Place::Corner => texts::places::CORNER,
        Place::Quarter => texts::places::QUARTER,
        Place::Middle => texts::places::MIDDLE,
        Place::ThreeQuarter => texts::places::THREE_QUARTER,
        Place::Spine => texts::places::SPINE,
        Place::Surface | Place::SpineSurface => texts::places::SURFACE,
        Place::Within(_) => texts::places::WITHIN,
    }
}

fn final_sentence(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Sentence {
    let Some((stage, hardness)) = outcome
        .stages
        .iter()
        .rev()
        .find_map(|stage| stage.hardness.map(|hardness| (stage, hardness)))
    else {
        return Sentence::new(Tone::Narrow).text_part(outcome.temper.refusal().map_or_else(
            || texts::outcome::NO_HARDNESS.to_owned(),
            |refusal| refusal.words(scale),
        ));
    };
    let shown = |hardness: String| ("hardness", Part::Number(hardness, NumberKey::FinalHardness));
    if let (Some(refusal), false) = (outcome.temper.refusal(), route.tempers.is_empty()) {
        let quenched = hardness
            .hrc()
            .map_or_else(|| format_hv(hardness.hv), format_hrc);
        return Sentence::new(Tone::Narrow).say(
            texts::outcome::UNKNOWN_AFTER_TEMPER,
            &[
                shown(quenched),
                ("reason", Part::Text(refusal.words(scale))),
            ],
        );
    }
    let after = match (stage.step, route.tempers.len()) {
        (Step::Temper(_), 1) => texts::outcome::AFTER_TEMPER.to_owned(),
        (Step::Temper(_), 2) => texts::outcome::AFTER_TWO_TEMPERS.to_owned(),
        (Step::Temper(_), 3) => texts::outcome::AFTER_THREE_TEMPERS.to_owned(),
        (Step::Temper(n), _) => texts::outcome::after_tempers(n),
        _ => texts::outcome::AS_QUENCHED.to_owned(),
    };
    let after = match outcome.quench.named_place() {
        Some(place) => texts::outcome::at_place(&after, inside_a_sentence(place_words(place))),
        None => after,
    };
    let after = ("after", Part::Text(after));
    let end_of_band = |name, hrc: f64| {
        let key = NumberKey::Behind(Quantity::FinalBand);
        (name, Part::Number(format_fixed(hrc, 1), key))
    };
    let told = |sentence: Sentence| match (hardness.hrc(), stage.hrc_range()) {
        (Some(hrc), Some([least, most])) => {
            let [least, most] = [end_of_band("least", least), end_of_band("most", most)];
            let parts = [after, shown(format_hrc(hrc)), least, most];
            sentence.say(texts::outcome::FINAL_HARDNESS, &parts)
        }
        _ => {
            let soft = hardness
                .hrb()
                .map_or_else(|| format_hv(hardness.hv), format_hrb);
            sentence.say(texts::outcome::TOO_SOFT, &[after, shown(soft)])
        }
    };
    let edge = outcome.judged_edge();
    let judged = edge.and_then(Outside::last).unwrap_or(stage);
    let outside = outcome.outside.as_ref();
    let (tone, verdict) = match judged.hrc() {
        Some(hrc) if hrc > route.target.most_hrc && route.tempers.is_empty() => {
            let untempered = texts::outcome::ABOVE_TARGET_UNTEMPERED.to_owned();
            (Tone::Narrow, Some(untempered))
        }
        Some(hrc) => {
            let (tone, verdict) = against(&route.target, hrc, judged.sides_hrc());
            (tone, Some(verdict))
        }
        None => (Tone::Misses, None),
    };
    // What is not judged is told behind the verdict.
    let verdict = |sentence: Sentence| match &verdict {
        Some(verdict) => sentence.say(verdict, &[]),
        None => sentence,
    };
    let mut sentence = told(Sentence::new(tone));
    // The piece as quenched is not known: its tempered hardness is that of a table.
    let mut stages = outcome.stages.iter();
    if !stages.any(|stage| stage.step == Step::Quench) {
        sentence = sentence.say(texts::outcome::OUT_OF_TABLE, &[]);
    }
    match outside {
        Some(edge) if edge.is_edge() => {
            let sentence = sentence.say(texts::outcome::HARDENS_LEAST, &[]);
            verdict(with_outside(sentence, edge))
        }
        Some(surface) => with_outside(verdict(sentence), surface),
        None => verdict(sentence),
    }
}

/// Adds the hardness of what is reached from outside, where the C scale has it.
fn with_outside(sentence: Sentence, outside: &Outside) -> Sentence {
    let last = outside.last();
    let Some((hrc, [least, most])) = last.and_then(|last| last.hrc().zip(last.hrc_range())) else {
        return sentence;
    };
    let place = place_words(outside.place).to_owned();
    sentence.say(
        texts::outcome::OUTSIDE_HARDNESS,
        &[
            ("place", Part::Text(place)),
            ("hardness", Part::Text(format_hrc(hrc))),
            ("least", Part::Text(format_fixed(least, 1))),
            ("most", Part::Text(format_fixed(most, 1))),
        ],
    )
}

/// How a hardness with its band stands to a target.
fn against(target: &Target, hrc: f64, [below_hrc, above_hrc]: [f64; 2]) -> (Tone, String) {
    if hrc > target.most_hrc {
        (Tone::Narrow, texts::outcome::ABOVE_TARGET.to_owned())
    } else if hrc < target.least_hrc {
        (Tone::Misses, texts::outcome::BELOW_TARGET.to_owned())
    } else if hrc - below_hrc >= target.least_hrc && hrc + above_hrc <= target.most_hrc {
        (Tone::Holds, texts::outcome::ON_TARGET.to_owned())
    } else {
        // Half of the pieces lie on either side.
        let below = |limit_hrc: f64, side_hrc: f64| {
            normal_below(NINE_IN_TEN * (limit_hrc - hrc) / side_hrc)
        };
        let part = below(target.most_hrc, above_hrc) - below(target.least_hrc, below_hrc);
        let in_ten = format_fixed((10.0 * part).clamp(1.0, 9.0), 0);
        (Tone::Holds, texts::outcome::on_target_in_part(&in_ten))
    }
}

#[cfg(test)]
#[path = "sentences_tests.rs"]
mod tests;
