//! The outcome in plain sentences: one per question, each number a key that can be opened.

use super::cold_words::cold_sentence;
use super::outcome::{Outcome, Step, Verdict};
use super::plan::{Route, Target};
use super::why::Quantity;
use crate::heat::{Place, Section};
use crate::steel::Element;
use crate::units::{
    TemperatureScale, format_duration_s, format_fixed, format_hrb, format_hrc, format_hv,
    format_percent, format_temperature, format_weight_percent,
};

/// How a sentence is marked: by shape and colour, never colour alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// As it should be.
    Holds,
    /// At the edge: look closer.
    Narrow,
    /// Not as it should be.
    Misses,
}

/// A number of a sentence, as a key to what stands behind it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NumberKey {
    /// Carbon in solution after the soak.
    DissolvedCarbon,
    /// Carbide left after the soak.
    CarbideLeft,
    /// Grain after the soak.
    Grain,
    /// Seconds to spare at the nose.
    Margin,
    /// Seconds of the next slower quenchant.
    NextSlower,
    /// Austenite left after the quench.
    RetainedAustenite,
    /// Austenite left after the cold bath, and the gain in hardness.
    ColdTreatment,
    /// Hardness after the last step.
    FinalHardness,
    /// Time until the core is at the temperature of the furnace.
    HeatingUp,
    /// Grain after a soak that was too hot.
    Overheated,
    /// What air does to the surface.
    Skin,
    /// Hardness after a step before hardening, counted from zero.
    StepHardness(usize),
    /// Grain of the heat of such a step.
    StepGrain(usize),
    /// Carbide after such a step.
    StepCarbide(usize),
    /// A number behind another.
    Behind(Quantity),
}

/// A piece of a sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// Plain words.
    Text(String),
    /// The verdict's words.
    Lead(String),
    /// A number that can be opened.
    Number(String, NumberKey),
}

/// A sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sentence {
    /// How it is marked.
    pub tone: Tone,
    /// Its pieces, in order.
    pub parts: Vec<Part>,
}

impl Sentence {
    /// The sentence as plain text.
    #[must_use]
    pub fn text(&self) -> String {
        self.parts
            .iter()
            .map(|part| match part {
                Part::Text(text) | Part::Lead(text) | Part::Number(text, _) => text.as_str(),
            })
            .collect()
    }

    pub(super) const fn new(tone: Tone) -> Self {
        Self {
            tone,
            parts: Vec::new(),
        }
    }

    pub(super) fn text_part(mut self, text: impl Into<String>) -> Self {
        self.parts.push(Part::Text(text.into()));
        self
    }

    fn lead(mut self, text: impl Into<String>) -> Self {
        self.parts.push(Part::Lead(text.into()));
        self
    }

    pub(super) fn number(mut self, text: impl Into<String>, key: NumberKey) -> Self {
        self.parts.push(Part::Number(text.into(), key));
        self
    }
}

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
    let dissolved = Sentence::new(tone)
        .number(
            format_weight_percent(end.carbon_wt),
            NumberKey::DissolvedCarbon,
        )
        .text_part(" of the ")
        .number(
            format_weight_percent(route.composition.c),
            NumberKey::Behind(Quantity::Content(Element::C)),
        )
        .text_part(" carbon is in solution.");
    let grain = format!("ASTM\u{a0}{}", format_fixed(end.grain_astm, 0));
    if end.ferrite_volume_fraction > 0.01 {
        return dissolved.text_part(format!(
            " {} ferrite is left and stays soft: soak hotter.",
            format_percent(end.ferrite_volume_fraction)
        ));
    }
    if end.carbide_volume_fraction > 0.002 {
        dissolved
            .text_part(" The rest stays in ")
            .number(
                format_percent(end.carbide_volume_fraction),
                NumberKey::CarbideLeft,
            )
            .text_part(" carbide and keeps the grain at ")
            .number(grain, NumberKey::Grain)
            .text_part(".")
    } else {
        dissolved
            .text_part(" No carbide is left to hold the grain: ")
            .number(grain, NumberKey::Grain)
            .text_part(".")
    }
}

fn quench_sentence(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Sentence {
    let quenched = match &outcome.quench.transformed {
        super::Known::Given(quenched) => quenched,
        super::Known::Refused { refused } => {
            return Sentence::new(Tone::Narrow).text_part(refused.words(scale));
        }
    };
    let place = outcome
        .quench
        .deciding_curve()
        .map_or("At the slowest place", |curve| place_words(curve.place));
    let margin = &quenched.margin;
    let sentence = match margin.verdict {
        Verdict::Holds => Sentence::new(Tone::Holds).lead("Fast enough, with room to spare."),
        Verdict::Narrow if margin.seconds >= 0.0 => {
            Sentence::new(Tone::Narrow).lead("Only just fast enough.")
        }
        Verdict::Narrow => Sentence::new(Tone::Narrow).lead("A little too slow, within the error."),
        Verdict::Misses => Sentence::new(Tone::Misses).lead("Too slow."),
    };
    let sentence = if margin.seconds >= 0.0 {
        sentence
            .text_part(format!(" {place} "))
            .number(margin_words(margin.seconds), NumberKey::Margin)
            .text_part(" to spare")
    } else {
        sentence
            .text_part(format!(" {place} it misses by "))
            .number(margin_words(margin.seconds), NumberKey::Margin)
    };
    let sentence = if margin.seconds >= 0.0 || quenched.held_c.is_some() {
        sentence
    } else {
        sentence
            .text_part("; ")
            .number(
                format_percent(quenched.hardened_fraction),
                NumberKey::Behind(Quantity::Hardened),
            )
            .text_part(" of the steel there hardens")
    };
    if let Some(bath_c) = quenched.held_c {
        return sentence.text_part(format!(
            " on the way to the bath; held there at {}, {} of it turns into bainite.",
            format_temperature(bath_c, scale),
            format_percent(quenched.fractions.bainite)
        ));
    }
    let sentence = match (route.section, quenched.hardened_depth_mm) {
        (Section::Blade { height_mm, .. }, Some(depth_mm))
            if margin.seconds < 0.0 && (0.5..height_mm).contains(&depth_mm) =>
        {
            sentence.text_part(format!(
                ". It hardens through from the cutting edge up to {} of the height; above that it stays softer",
                format_percent(depth_mm / height_mm)
            ))
        }
        _ => sentence,
    };
    // Others are weighed alone, which says nothing of a sequence.
    if !route.quench.then.is_empty() {
        return sentence.text_part(".");
    }
    match (&quenched.next_slower, &quenched.slowest_medium) {
        (Some(next), _) if margin.seconds >= 0.0 && next.factor < margin.factor => {
            let name = inside_a_sentence(&next.title.words(scale));
            if next.seconds > margin.seconds {
                // A longer stay in vapour, say: more time on the clock, and slower all the same.
                sentence.text_part(format!("; {name} would still do."))
            } else if next.seconds >= 0.0 {
                sentence
                    .text_part(format!("; {name} would still have "))
                    .number(margin_words(next.seconds), NumberKey::NextSlower)
                    .text_part(".")
            } else {
                sentence
                    .text_part(format!("; {name} misses by "))
                    .number(margin_words(next.seconds), NumberKey::NextSlower)
                    .text_part(".")
            }
        }
        (_, Some(slowest)) if margin.seconds < 0.0 => sentence.text_part(format!(
            ". {} is the slowest that hardens it through{}",
            slowest.title.words(scale),
            slowest.reservation()
        )),
        (_, None) if margin.seconds < 0.0 => {
            sentence.text_part(". No quenchant of the list hardens this section through.")
        }
        _ => sentence.text_part("."),
    }
}

/// A place of the piece at the head of a sentence.
const fn place_words(place: Place) -> &'static str {
    match place {
        Place::Centre => "At the centre",
        Place::Edge => "At the cutting edge",
        Place::Corner => "At the corner",
        Place::Quarter => "A quarter up from the cutting edge",
        Place::Middle => "Half way up",
        Place::ThreeQuarter => "Three quarters up",
        Place::Spine => "At the core of the spine",
        Place::Surface | Place::SpineSurface => "At the surface",
        Place::Within(_) => "Inside",
    }
}

/// A place of the piece on a chart.
#[must_use]
pub const fn place_name(place: Place) -> &'static str {
    match place {
        Place::Centre => "centre",
        Place::Edge => "cutting edge",
        Place::Corner => "corner",
        Place::Quarter => "quarter height",
        Place::Middle => "mid height",
        Place::ThreeQuarter => "three-quarter height",
        Place::Spine => "spine core",
        Place::Surface | Place::SpineSurface => "surface",
        Place::Within(_) => "inside",
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
            || "No hardness can be given for this steel.".to_owned(),
            |refusal| refusal.words(scale),
        ));
    };
    if let (Some(refusal), false) = (outcome.temper.refusal(), route.tempers.is_empty()) {
        let quenched = hardness
            .hrc()
            .map_or_else(|| format_hv(hardness.hv), format_hrc);
        return Sentence::new(Tone::Narrow)
            .text_part("Before the temper: ")
            .number(quenched, NumberKey::FinalHardness)
            .text_part(format!(". After it is not known: {}", refusal.words(scale)));
    }
    let after = match (stage.step, route.tempers.len()) {
        (Step::Temper(_), 1) => "After the temper: ".to_owned(),
        (Step::Temper(_), 2) => "After two tempers: ".to_owned(),
        (Step::Temper(_), 3) => "After three tempers: ".to_owned(),
        (Step::Temper(n), _) => format!("After {n} tempers: "),
        _ => "As quenched, not tempered: ".to_owned(),
    };
    let Some(hrc) = hardness.hrc() else {
        return Sentence::new(Tone::Misses)
            .text_part(after)
            .number(
                hardness
                    .hrb()
                    .map_or_else(|| format_hv(hardness.hv), format_hrb),
                NumberKey::FinalHardness,
            )
            .text_part(", too soft for the C scale.");
    };
    let (low, high) = (hrc - stage.band_hrc, hrc + stage.band_hrc);
    let target = &route.target;
    let edge = outcome.cutting_edge.last().and_then(|edge| {
        let is_last = edge.step == stage.step;
        Some((edge.hardness.filter(|_| is_last)?.hrc()?, edge.band_hrc))
    });
    let sentence = |tone| {
        Sentence::new(tone)
            .text_part(after)
            .number(format_hrc(hrc), NumberKey::FinalHardness)
            .text_part(", nine times in ten between ")
            .number(format_fixed(low, 1), NumberKey::Behind(Quantity::FinalBand))
            .text_part(" and ")
            .number(
                format_fixed(high, 1),
                NumberKey::Behind(Quantity::FinalBand),
            )
            .text_part(".")
    };
    // What is sharpened is what the target is meant for.
    if let Some((edge_hrc, band_hrc)) = edge {
        let (tone, verdict) = against(target, edge_hrc, band_hrc);
        let [least, most] = [edge_hrc - band_hrc, edge_hrc + band_hrc];
        return sentence(tone).text_part(format!(
            " That is where it hardens least. The cutting edge has {}, nine times in ten between {} and {}.{verdict}",
            format_hrc(edge_hrc),
            format_fixed(least, 1),
            format_fixed(most, 1)
        ));
    }
    let (tone, verdict) = against(target, hrc, stage.band_hrc);
    sentence(tone).text_part(verdict)
}

/// How a hardness with its band stands to a target.
fn against(target: &Target, hrc: f64, band_hrc: f64) -> (Tone, &'static str) {
    if hrc - band_hrc >= target.least_hrc && hrc + band_hrc <= target.most_hrc {
        (Tone::Holds, " On target.")
    } else if hrc > target.most_hrc {
        (Tone::Narrow, " Above the target: temper hotter.")
    } else if hrc < target.least_hrc {
        (Tone::Misses, " Below the target.")
    } else {
        (
            Tone::Holds,
            " On target; the band is wider than the target.",
        )
    }
}

/// A title inside a sentence: its first letter small, unless it is a symbol such as N₂.
#[must_use]
pub fn inside_a_sentence(title: &str) -> String {
    let mut letters = title.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if second.is_ascii_lowercase() => {
            std::iter::once(first.to_ascii_lowercase())
                .chain(letters)
                .collect()
        }
        _ => title.to_owned(),
    }
}
