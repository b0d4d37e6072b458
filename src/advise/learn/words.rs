//! What a logbook teaches, in sentences.

use super::answer::{Band, Learnt};
use super::correction::{Corrected, NOTHING};
use super::next::Measurement;
use super::unknown::UnknownKind;
use crate::advise::shop::Furnace;
use crate::route::{Route, Tempered, hottest_temper_c};
use crate::units::{
    LengthUnit, TemperatureScale, format_fixed, format_given_length, format_temperature,
};
use recalesce_texts::advise::learn::{learnt, next, unknown};
use recalesce_texts::grammar::{at_the_head, inside_a_sentence};

/// What is taken off a band below which a measurement is not worth its trouble, HRC (expert value).
const NOT_WORTH_HRC: f64 = 0.05;

/// How an unknown comes out, of what and by how much.
type Said = fn(&str, &str) -> String;

/// What is known of an unknown before and after.
pub(super) fn learnt_words(
    kind: UnknownKind,
    of: &str,
    [before, after]: [Band; 2],
    narrower_part: f64,
    scale: TemperatureScale,
) -> String {
    if narrower_part < NOTHING {
        let told = if kind.is_shift() {
            learnt::next_to_nothing_of_shift
        } else {
            learnt::next_to_nothing
        };
        return told(&kind.subject(of), &kind.range(after, scale));
    }
    learnt::narrower(
        &at_the_head(&kind.sentence(of, after.mean, scale)),
        &kind.range(after, scale),
        &kind.range(before, scale),
        100.0 * narrower_part,
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
    learnt::counted_with(
        &at_the_head(&kind.sentence(&of, *value, scale)),
        *runs,
        100.0 * (1.0 - left_part),
    )
}

/// The tempers that something was learnt of, inside a sentence.
pub(super) fn tempers([least_c, most_c]: [f64; 2], scale: TemperatureScale) -> String {
    let [least, most] = [least_c, most_c].map(|at_c| format_temperature(at_c, scale));
    if least == most {
        learnt::a_temper(&least)
    } else {
        learnt::tempers(&least, &most)
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
        learnt::acts_in_part(
            &tempers(tempers_c, scale),
            100.0 * part,
            &format_temperature(temper_c, scale),
        )
    })
}

/// Of which tempers it was learnt; none of anything else.
pub(super) fn tempers_words(corrected: &Corrected, scale: TemperatureScale) -> Option<String> {
    let tempers = tempers(corrected.tempers_c?, scale);
    Some(learnt::acts_less_farther_off(&tempers))
}

/// Why two unknowns cannot be told apart.
pub(super) fn entangled_words(a: &Learnt, b: &Learnt) -> String {
    learnt::not_told_apart(&a.kind.subject(&a.of), &b.kind.subject(&b.of))
}

impl UnknownKind {
    /// What it is, inside a sentence.
    pub(super) fn subject(self, of: &str) -> String {
        match self {
            Self::FurnaceOffset | Self::TemperOvenOffset => unknown::offset(of),
            Self::QuenchSeverity => unknown::quench_severity(&inside_a_sentence(of)),
            Self::Hardenability => unknown::hardenability(of),
            Self::MartensiteStart => unknown::martensite_start(of),
            Self::QuenchedHardness => unknown::quenched_hardness(of),
            Self::TemperedHardness => unknown::tempered_hardness(of),
            Self::Tester => unknown::error(of),
        }
    }

    /// What it is, whatever it is of, inside a sentence.
    pub(super) const fn in_short(self) -> &'static str {
        match self {
            Self::FurnaceOffset => unknown::FURNACE_OFFSET,
            Self::QuenchSeverity => unknown::QUENCH_SEVERITY,
            Self::Hardenability => unknown::HARDENABILITY,
            Self::MartensiteStart => unknown::MARTENSITE_START,
            Self::TemperOvenOffset => unknown::OVEN_OFFSET,
            Self::QuenchedHardness => unknown::QUENCHED_HARDNESS,
            Self::TemperedHardness => unknown::TEMPERED_HARDNESS,
            Self::Tester => unknown::ERROR_OF_TESTER,
        }
    }

    /// What is most probable.
    fn sentence(self, of: &str, value: f64, scale: TemperatureScale) -> String {
        let number = self.number(value, scale);
        let size = self.number(value.abs(), scale);
        let size = format!("{size}\u{a0}{}", self.told_unit(scale));
        let subject = self.subject(of);
        let by_side = |below: Said, above: Said, of: &str| {
            let said = if value < 0.0 { below } else { above };
            said(of, &size)
        };
        match self {
            Self::FurnaceOffset => {
                by_side(unknown::colder_than_read, unknown::hotter_than_read, of)
            }
            Self::TemperOvenOffset => {
                by_side(unknown::colder_than_asked, unknown::hotter_than_asked, of)
            }
            Self::QuenchSeverity => unknown::times_listed(&subject, &number),
            Self::Hardenability => unknown::transforms_after(of, &number),
            Self::MartensiteStart => by_side(
                unknown::start_lies_below,
                unknown::start_lies_above,
                &subject,
            ),
            Self::QuenchedHardness | Self::TemperedHardness => {
                by_side(unknown::hardness_below, unknown::hardness_above, &subject)
            }
            Self::Tester => by_side(unknown::shows_less, unknown::shows_more, of),
        }
    }

    /// A band.
    fn range(self, band: Band, scale: TemperatureScale) -> String {
        let unit = self.told_unit(scale);
        let space = if unit.is_empty() { "" } else { "\u{a0}" };
        let [least, most] = [band.least, band.most].map(|end| {
            let sign = if self.is_shift() && end > 0.0 {
                "+"
            } else {
                ""
            };
            format!("{sign}{}", self.number(end, scale))
        });
        learnt::band(&least, &format!("{most}{space}{unit}"))
    }

    /// Its unit as it is told; empty for a factor.
    const fn told_unit(self, scale: TemperatureScale) -> &'static str {
        if self.is_difference() {
            scale.symbol()
        } else {
            self.unit()
        }
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
            Self::Coupon { thickness_mm } => {
                next::coupon(&format_given_length(thickness_mm, length))
            }
            Self::AsQuenched => next::AS_QUENCHED.to_owned(),
            Self::AfterCold => next::AFTER_COLD.to_owned(),
            Self::AsTempered => next::AS_TEMPERED.to_owned(),
            Self::AnotherReading { .. } => next::ANOTHER_READING.to_owned(),
            Self::FurnaceSurvey => next::FURNACE_SURVEY.to_owned(),
            Self::TemperOvenSurvey => next::OVEN_SURVEY.to_owned(),
            Self::TestBlock => next::TEST_BLOCK.to_owned(),
        };
        if now_hrc - after_hrc < NOT_WORTH_HRC {
            return next::teaches_nothing(&what);
        }
        next::narrows(&what, now_hrc, after_hrc)
    }
}
