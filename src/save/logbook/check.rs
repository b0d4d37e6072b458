//! Which runs make sense: every number in a range that a shop could read off, every text of a
//! length that can be shown. The ranges are of what instruments show, not of what steel does.

use super::{Reading, Run, UseTest};
use crate::advise::is_outside;
use crate::hardness::Scale;
use crate::route::{LONGEST_TEXT, validate};
use recalesce_texts::save::run as texts;

/// Most hardness readings of a run.
pub const MOST_READINGS: usize = 100;
/// Most tests in use of a run.
pub const MOST_USE_TESTS: usize = 30;
/// Most photos of a run.
pub const MOST_PHOTOS: usize = 12;
/// Longest note, characters.
pub const LONGEST_NOTES: usize = 4000;

/// The first thing in a run that makes no sense.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{field}: {message}")]
pub struct RunFieldError {
    /// The field concerned, as the file names it: `readings[2].value`.
    pub field: String,
    /// What is wrong with it and what is allowed, in words.
    pub message: String,
}

/// The result of checking one value: a sentence where it makes no sense.
pub(super) type Checked = Result<(), String>;

/// What is told of a value with its unit, the least that is allowed, and the most with its unit.
type Outside = fn(&str, &str, &str) -> String;

fn within(told: Outside, value: f64, [least, most]: [f64; 2], unit: &str) -> Checked {
    if (least..=most).contains(&value) {
        return Ok(());
    }
    Err(told(
        &format!("{value}{unit}"),
        &least.to_string(),
        &format!("{most}{unit}"),
    ))
}

/// Numbers that a tester may show on a scale.
const fn shown_range(scale: Scale) -> [f64; 2] {
    match scale {
        Scale::Hrc => [0.0, 72.0],
        Scale::Hrb => [0.0, 120.0],
        Scale::Hv => [50.0, 1500.0],
        Scale::Hbw => [50.0, 750.0],
    }
}

pub(super) fn hardness(value: f64, scale: Scale) -> Checked {
    let unit = format!("\u{a0}{}", scale.symbol());
    within(texts::reading_outside, value, shown_range(scale), &unit)
}

pub(super) fn grain(astm: f64) -> Checked {
    within(texts::grain_outside, astm, [1.0, 14.0], "")
}

pub(super) fn austenite(vol_percent: f64) -> Checked {
    within(
        texts::austenite_outside,
        vol_percent,
        [0.0, 100.0],
        "\u{a0}vol\u{a0}%",
    )
}

pub(super) fn in_use(value: f64) -> Checked {
    within(texts::result_outside, value, [-1e9, 1e9], "")
}

pub(super) fn short(text: &str) -> Checked {
    length(text, LONGEST_TEXT)
}

pub(super) fn long(text: &str) -> Checked {
    length(text, LONGEST_NOTES)
}

fn length(text: &str, most: usize) -> Checked {
    let found = text.chars().count();
    if found <= most {
        return Ok(());
    }
    Err(texts::too_long(found, most))
}

fn count(found: usize, most: usize) -> Checked {
    if found <= most {
        return Ok(());
    }
    Err(texts::too_many(found, most))
}

fn in_field(field: impl Into<String>, checked: Checked) -> Result<(), RunFieldError> {
    checked.map_err(|message| RunFieldError {
        field: field.into(),
        message,
    })
}

fn check_reading(at: usize, reading: &Reading) -> Result<(), RunFieldError> {
    let field = |name| format!("readings[{at}].{name}");
    in_field(field("value"), hardness(reading.value, reading.scale))?;
    in_field(field("place"), short(&reading.place))
}

fn check_use_test(at: usize, test: &UseTest) -> Result<(), RunFieldError> {
    let field = |name| format!("use_tests[{at}].{name}");
    in_field(field("name"), short(&test.name))?;
    in_field(field("value"), in_use(test.value))?;
    in_field(field("unit"), short(&test.unit))
}

/// Checks every field of a run.
///
/// # Errors
/// The first field that makes no sense.
pub fn check_run(run: &Run) -> Result<(), RunFieldError> {
    validate(&run.route).map_err(|fault| RunFieldError {
        field: format!("route.{}", fault.field),
        message: fault.message,
    })?;
    if let Some(predicted) = &run.predicted {
        let on_scale = |told: Outside, hrc| within(told, hrc, [0.0, 72.0], "\u{a0}HRC");
        for (at, field) in [
            (Some(predicted.first()), "predicted"),
            (predicted.outside, "predicted.outside"),
        ] {
            let Some(at) = at else { continue };
            for (told, name, hrc) in [
                (texts::prediction_outside as Outside, "hrc", at.hrc),
                (texts::band_outside, "band_hrc", at.band_hrc),
            ] {
                in_field(format!("{field}.{name}"), on_scale(told, hrc))?;
            }
            let off = within(
                texts::band_outside,
                at.band_off_hrc,
                [-at.band_hrc, at.band_hrc],
                "\u{a0}HRC",
            );
            in_field(format!("{field}.band_off_hrc"), off)?;
        }
        if let Some(outside) = &predicted.outside {
            let are_two = predicted.place.is_some_and(|place| !is_outside(place))
                && outside.place.is_some_and(is_outside);
            let told = are_two
                .then_some(())
                .ok_or(texts::NOT_TWO_PLACES.to_owned());
            in_field("predicted.outside.place", told)?;
        }
        in_field("predicted.model", short(&predicted.model))?;
    }
    let done = &run.done;
    for (name, text) in [
        ("done.before", &done.before),
        ("done.soak", &done.soak),
        ("done.quench", &done.quench),
        ("done.cold", &done.cold),
        ("done.temper", &done.temper),
        ("coupon", &run.coupon),
        ("notes", &run.notes),
    ] {
        in_field(name, long(text))?;
    }
    in_field("readings", count(run.readings.len(), MOST_READINGS))?;
    for (at, reading) in run.readings.iter().enumerate() {
        check_reading(at, reading)?;
    }
    let grain = run.fracture_grain_astm.map_or(Ok(()), grain);
    in_field("fracture_grain_astm", grain)?;
    let austenite = run.austenite_vol_percent.map_or(Ok(()), austenite);
    in_field("austenite_vol_percent", austenite)?;
    in_field("use_tests", count(run.use_tests.len(), MOST_USE_TESTS))?;
    for (at, test) in run.use_tests.iter().enumerate() {
        check_use_test(at, test)?;
    }
    in_field("photos", count(run.photos.len(), MOST_PHOTOS))
}
