//! What a logbook teaches, in sentences.

use super::answer::{Band, Learnt};
use super::correction::{Corrected, NOTHING};
use super::next::Measurement;
use super::unknown::UnknownKind;
use crate::advise::shop::Furnace;
use crate::route::{Route, Tempered, hottest_temper_c};
use crate::units::{LengthUnit, TemperatureScale, format_fixed, format_length, format_temperature};

/// What is taken off a band below which a measurement is not worth its trouble, HRC (expert value).
const NOT_WORTH_HRC: f64 = 0.05;

/// What is known of an unknown before and after.
pub(super) fn learnt_words(
    kind: UnknownKind,
    of: &str,
    [before, after]: [Band; 2],
    narrower_part: f64,
    scale: TemperatureScale,
) -> String {
    if narrower_part < NOTHING {
        return format!(
            "The measurements tell next to nothing of {}: {}{}, nine in ten.",
            kind.subject(of),
            if kind.is_shift() { "off by " } else { "" },
            kind.range(after, scale)
        );
    }
    format!(
        "{} ({}; before {}, nine in ten): the band is narrower by {:.0} %.",
        capital(&kind.sentence(of, after.mean, scale)),
        kind.range(after, scale),
        kind.range(before, scale),
        100.0 * narrower_part
    )
}

/// What a prediction counts with.
pub(super) fn acting_words(
    corrected: &Corrected,
    furnaces: &[Furnace],
    scale: TemperatureScale,
) -> String {
    let Corrected {
        kind,
        owner,
        value,
        left_part,
        runs,
        ..
    } = corrected;
    let of = owner.name(furnaces, scale);
    let count = if *runs == 1 { "run" } else { "runs" };
    format!(
        "{} (from {runs} {count}; the band is narrower by {:.0} %).",
        capital(&kind.sentence(&of, *value, scale)),
        100.0 * (1.0 - left_part)
    )
}

/// The tempers that something was learnt of, inside a sentence.
pub(super) fn tempers([least_c, most_c]: [f64; 2], scale: TemperatureScale) -> String {
    let [least, most] = [least_c, most_c].map(|at_c| format_temperature(at_c, scale));
    if least == most {
        format!("a temper at {least}")
    } else {
        format!("tempers of {least} to {most}")
    }
}

/// How far what was learnt of some tempers reaches that of a route, where it does only in part.
pub(super) fn reach_words(
    corrected: &Corrected,
    route: &Route,
    scale: TemperatureScale,
) -> Option<String> {
    let tempers_c = corrected.tempers_c?;
    let temper_c = hottest_temper_c(&route.tempers)?;
    let part = Tempered::part_at(tempers_c, temper_c);
    (0.0 < part && part < 1.0).then(|| {
        format!(
            "It was learnt from {} and acts only in part, {:.0} %, on this one at {}.",
            tempers(tempers_c, scale),
            100.0 * part,
            format_temperature(temper_c, scale)
        )
    })
}

/// Of which tempers it was learnt; none of anything else.
pub(super) fn tempers_words(corrected: &Corrected, scale: TemperatureScale) -> Option<String> {
    let tempers = tempers(corrected.tempers_c?, scale);
    Some(format!(
        "It was learnt from {tempers}, and acts the less the farther a temper is from there."
    ))
}

/// Why two unknowns cannot be told apart.
pub(super) fn entangled_words(a: &Learnt, b: &Learnt) -> String {
    format!(
        "The measurements so far do not tell whether it is {} or {}.",
        a.kind.subject(&a.of),
        b.kind.subject(&b.of)
    )
}

impl UnknownKind {
    /// What it is, inside a sentence.
    pub(super) fn subject(self, of: &str) -> String {
        match self {
            Self::FurnaceOffset => format!("the offset of {of}"),
            Self::QuenchSeverity => format!("the quench severity of {}", lower(of)),
            Self::Hardenability => format!("the hardenability of {of}"),
            Self::MartensiteStart => format!("the start of martensite of {of}"),
            Self::TemperOvenOffset => format!("the offset of {of}"),
            Self::QuenchedHardness => format!("the hardness as quenched of {of}"),
            Self::TemperedHardness => format!("the hardness after tempering of {of}"),
            Self::Tester => format!("the error of {of}"),
        }
    }

    /// What it is, whatever it is of, inside a sentence.
    pub(super) const fn in_short(self) -> &'static str {
        match self {
            Self::FurnaceOffset => "the offset of the furnace",
            Self::QuenchSeverity => "the quench severity",
            Self::Hardenability => "the hardenability of the heat",
            Self::MartensiteStart => "the start of martensite",
            Self::TemperOvenOffset => "the offset of the oven",
            Self::QuenchedHardness => "the hardness of the heat as quenched",
            Self::TemperedHardness => "the hardness of the heat after tempering",
            Self::Tester => "the error of the tester",
        }
    }

    /// What is most probable.
    fn sentence(self, of: &str, value: f64, scale: TemperatureScale) -> String {
        let number = self.number(value, scale);
        let size = self.number(value.abs(), scale);
        let degrees = scale.symbol();
        let side = if value < 0.0 { "below" } else { "above" };
        let subject = self.subject(of);
        match self {
            Self::FurnaceOffset => {
                let way = if value < 0.0 { "colder" } else { "hotter" };
                format!("pieces in {of} are {size}\u{a0}{degrees} {way} than it reads")
            }
            Self::TemperOvenOffset => {
                let way = if value < 0.0 { "colder" } else { "hotter" };
                format!("pieces in {of} are {size}\u{a0}{degrees} {way} than asked")
            }
            Self::QuenchSeverity => format!("{subject} is {number} times the listed one"),
            Self::Hardenability => {
                format!("{of} begins to transform after {number} times the computed time")
            }
            Self::MartensiteStart => {
                format!("{subject} lies {size}\u{a0}{degrees} {side} the computed one")
            }
            Self::QuenchedHardness | Self::TemperedHardness => {
                format!("{subject} is {size}\u{a0}HRC {side} the computed one")
            }
            Self::Tester => {
                let way = if value < 0.0 { "less" } else { "more" };
                format!("{of} shows {size}\u{a0}HRC {way} than the hardness")
            }
        }
    }

    /// A band.
    fn range(self, band: Band, scale: TemperatureScale) -> String {
        let unit = if self.is_difference() {
            scale.symbol()
        } else {
            self.unit()
        };
        let space = if unit.is_empty() { "" } else { "\u{a0}" };
        let [least, most] = [band.least, band.most].map(|end| {
            let sign = if self.is_shift() && end > 0.0 {
                "+"
            } else {
                ""
            };
            format!("{sign}{}", self.number(end, scale))
        });
        format!("{least} to {most}{space}{unit}")
    }

    /// Whether it is added to what is computed or read.
    const fn is_shift(self) -> bool {
        !matches!(self, Self::QuenchSeverity | Self::Hardenability)
    }

    /// Whether it is a difference of temperatures.
    const fn is_difference(self) -> bool {
        matches!(
            self,
            Self::FurnaceOffset | Self::MartensiteStart | Self::TemperOvenOffset
        )
    }

    fn number(self, value: f64, scale: TemperatureScale) -> String {
        let value = if self.is_difference() {
            scale.of_kelvin_difference(value)
        } else {
            value
        };
        let places = match self {
            Self::FurnaceOffset | Self::MartensiteStart | Self::TemperOvenOffset => 0,
            Self::QuenchSeverity | Self::Hardenability => 2,
            Self::QuenchedHardness | Self::TemperedHardness | Self::Tester => 1,
        };
        format_fixed(value, places)
    }
}

impl Measurement {
    /// What it would do to the band of the next piece.
    pub(super) fn words(self, now_hrc: f64, after_hrc: f64, length: LengthUnit) -> String {
        let what = match self {
            Self::Coupon { thickness_mm } => format!(
                "A coupon of {}, quenched like the piece and read at the centre of the cut",
                format_length(thickness_mm, length)
            ),
            Self::AsQuenched => "The next piece read as quenched".to_owned(),
            Self::AfterCold => "The next piece read after the cold".to_owned(),
            Self::AsTempered => "The next piece read after its last temper".to_owned(),
            Self::AnotherReading { .. } => {
                "One more reading on a piece that was measured".to_owned()
            }
            Self::FurnaceSurvey => {
                "A survey of the furnace at the soak with a second thermocouple of class 1"
                    .to_owned()
            }
            Self::TemperOvenSurvey => {
                "A survey of the temper oven with a second thermocouple of class 1".to_owned()
            }
            Self::TestBlock => "The tester on a test block".to_owned(),
        };
        if now_hrc - after_hrc < NOT_WORTH_HRC {
            return format!(
                "{what} would teach next to nothing about the hardness of the next piece."
            );
        }
        format!(
            "{what} would narrow the hardness of the next piece from ±{now_hrc:.1} to ±{after_hrc:.1} HRC."
        )
    }
}

/// A title of the list inside a sentence.
fn lower(title: &str) -> String {
    change_first(title, |c| c.to_ascii_lowercase())
}

pub(super) fn capital(sentence: &str) -> String {
    change_first(sentence, |c| c.to_ascii_uppercase())
}

fn change_first(text: &str, change: impl Fn(char) -> char) -> String {
    let mut rest = text.chars();
    rest.next().map_or_else(String::new, |first| {
        std::iter::once(change(first)).chain(rest).collect()
    })
}
