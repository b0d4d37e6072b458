//! Rows of soak, quench, test, cold bath and tempers.

use super::expected::{stage, stage_words};
use super::ramp::ramp_words;
use super::rows_before::MAGNET_LETS_GO_C;
use super::words::{bath_words, furnace_set, furnace_words, hold_words};
use super::{CardRow, StepColour, Units};
use crate::heat::{Family, Leave, MediumChoice, Place, Section};
use crate::route::outcome::{Outcome, Step};
use crate::route::plan::{Cold, Quench, Route, Temper};
use crate::route::prior::WorkedBy;
use crate::route::sentences::place_name;
use crate::route::soak_notes::rough_duration;
use crate::route::verdict::HARDENED;
use crate::units::{format_duration_s, format_length, format_temperature};
use recalesce_texts::route::card::expected::at;
use recalesce_texts::route::card::rows as texts;

/// A piece this cold can be taken in the hand, °C.
const HAND_WARM_C: f64 = 50.0;
/// From this factor on the heat transfer of a still bath the numbers are of a moved one.
const MOVED: f64 = 1.05;

/// The rows, in the order of the route.
pub(super) fn rows(route: &Route, outcome: &Outcome, units: Units) -> Vec<CardRow> {
    let mut all = vec![soak(route, outcome, units)];
    all.extend(quench(route, outcome, units));
    all.push(test(route, outcome, units));
    if let Some(cold) = &route.cold {
        all.extend(
            cold.snap
                .as_ref()
                .map(|snap| snapped(route, snap, outcome, units)),
        );
        all.push(chilled(cold, outcome, units));
    }
    let tempers = route.tempers.iter().zip(1..);
    all.extend(tempers.map(|(temper, n)| tempered(route, temper, n, outcome, units)));
    all
}

/// Hardness after a step, if it is known, with the place where places differ.
fn after(outcome: &Outcome, step: Step) -> Option<String> {
    let (hardness, _) = stage_words(stage(outcome, step)?)?;
    Some(match outcome.judged_place() {
        Some(place) => at(&hardness, place_name(place)),
        None => hardness,
    })
}

fn soak(route: &Route, outcome: &Outcome, units: Units) -> CardRow {
    let soak = &route.soak;
    let held = furnace_words(route.soak_band_k(), soak.time_min, units);
    let (set, detail) = furnace_set(route, soak.temperature_c, held, units);
    let mut look_for = texts::count_at_heat(&rough_duration(outcome.heating.core_at_temperature_s));
    look_for += &ramp_words(route, soak.temperature_c, units);
    if soak.temperature_c >= MAGNET_LETS_GO_C {
        look_for += texts::MAGNET_LETS_GO;
    }
    CardRow {
        title: texts::SOAK.to_owned(),
        set,
        detail,
        colour: Some(StepColour::Glow(soak.temperature_c)),
        look_for,
        after: None,
        cautions: Vec::new(),
    }
}

/// One row for each bath.
fn quench(route: &Route, outcome: &Outcome, units: Units) -> Vec<CardRow> {
    let quench = &route.quench;
    let last = quench.then.len();
    let delay = if quench.air_delay_s > 0.0 {
        texts::from_furnace(&format_duration_s(quench.air_delay_s))
    } else {
        texts::STRAIGHT_FROM_FURNACE.to_owned()
    };
    let first = std::iter::once((&quench.medium, quench.agitation, delay));
    let later = quench.then.iter().map(|next| {
        let when = match next.leave {
            Leave::AfterS(time_s) => texts::after(&format_duration_s(time_s)),
            Leave::AtC(temperature_c) => {
                texts::once_nowhere_hotter(&format_temperature(temperature_c, units.scale))
            }
        };
        (&next.medium, next.agitation, when)
    });
    first
        .chain(later)
        .enumerate()
        .map(|(i, (medium, agitation, when))| {
            let (set, bath) = bath_words(medium, units.scale);
            let mut look_for = entry_words(medium, agitation, &route.section);
            if i == last {
                look_for += &end_words(quench, units);
            }
            CardRow {
                title: if i == 0 {
                    texts::QUENCH
                } else {
                    texts::THEN_INTO
                }
                .to_owned(),
                set,
                detail: bath.map_or_else(|| when.clone(), |bath| format!("{bath}, {when}")),
                colour: None,
                look_for,
                after: after(outcome, Step::Quench).filter(|_| i == last),
                cautions: Vec::new(),
            }
        })
        .collect()
}

/// Whether the list has a quenchant as it is stirred.
fn is_listed_stirred(medium: &MediumChoice) -> bool {
    let resolved = medium.resolve();
    resolved.is_ok_and(|medium| medium.moves)
}

/// How the piece goes into a bath.
fn entry_words(medium: &MediumChoice, agitation: f64, section: &Section) -> String {
    let family = medium.resolve().map_or(Family::Own, |medium| medium.family);
    // One of one's own may have been measured while it was stirred.
    let is_still = agitation <= MOVED && family != Family::Own && !is_listed_stirred(medium);
    match family {
        Family::Plates => texts::CLAMP_BOTH_FACES.to_owned(),
        Family::Air => texts::HANG_IN_AIR.to_owned(),
        Family::Gas => texts::RACK_IN_GAS.to_owned(),
        _ => {
            let first = match section {
                Section::Blade { .. } => texts::EDGE_FIRST,
                Section::Plate { .. } => texts::NARROW_SIDE_FIRST,
                Section::Round { .. } | Section::Square { .. } => texts::END_FIRST,
            };
            let way = match family {
                Family::Water | Family::Brine => texts::MOVE_IN_WATER,
                Family::Salt => texts::MOVE_IN_SALT,
                _ => texts::MOVE_IN_OIL,
            };
            if is_still {
                texts::into_still_bath(first, way)
            } else {
                texts::into_bath(first, way)
            }
        }
    }
}

fn end_words(quench: &Quench, units: Units) -> String {
    if quench.end_c <= HAND_WARM_C {
        texts::OUT_HAND_WARM.to_owned()
    } else {
        texts::out_at(&format_temperature(quench.end_c, units.scale))
    }
}

fn test(route: &Route, outcome: &Outcome, units: Units) -> CardRow {
    let hardness = stage(outcome, Step::Quench).and_then(|stage| stage.hardness);
    let words = match hardness.map(WorkedBy::of) {
        None => texts::NO_NUMBER.to_owned(),
        Some(WorkedBy::Grinder) => skating_words(route, outcome, units),
        Some(WorkedBy::FileHardly) => texts::SLIDES.to_owned(),
        Some(_) => texts::BITES.to_owned(),
    };
    let look_for = match softest_inside(outcome) {
        Some(place) => texts::harder_outside(place_name(place)),
        None => words,
    };
    CardRow {
        title: texts::TEST.to_owned(),
        set: texts::FILE.to_owned(),
        detail: texts::AND_TESTER.to_owned(),
        colour: None,
        look_for,
        after: None,
        cautions: Vec::new(),
    }
}

/// The deciding place, where that stays soft and another, which a file meets, hardens.
fn softest_inside(outcome: &Outcome) -> Option<Place> {
    let quenched = outcome.quench.transformed.given()?;
    let mut places = quenched.places.iter();
    let hardens_elsewhere = places.any(|place| place.hardened_fraction >= HARDENED);
    let deciding = outcome.quench.deciding_curve()?.place;
    (quenched.hardened_fraction < HARDENED && hardens_elsewhere).then_some(deciding)
}

/// How far a file skates: as far as it is hard.
fn skating_words(route: &Route, outcome: &Outcome, units: Units) -> String {
    let depth_mm = outcome
        .quench
        .transformed
        .given()
        .and_then(|quenched| quenched.hardened_depth_mm);
    match (route.section, depth_mm) {
        (Section::Blade { height_mm, .. }, Some(depth_mm)) if depth_mm < height_mm => {
            texts::skates_up_to(&format_length(depth_mm, units.length))
        }
        _ => texts::SKATES_ALL_OVER.to_owned(),
    }
}

fn snapped(route: &Route, snap: &Temper, outcome: &Outcome, units: Units) -> CardRow {
    let temperature_c = snap.temperature_c;
    CardRow {
        title: texts::SNAP_TEMPER.to_owned(),
        set: format_temperature(temperature_c, units.scale),
        detail: furnace_words(route.band_k_at(temperature_c), snap.time_min, units),
        colour: Some(StepColour::Oxide(temperature_c)),
        look_for: texts::SNAP_AT_ONCE.to_owned(),
        after: after(outcome, Step::Snap),
        cautions: Vec::new(),
    }
}

fn chilled(cold: &Cold, outcome: &Outcome, units: Units) -> CardRow {
    let wait = format_duration_s(60.0 * cold.delay_min);
    let start = match (cold.delay_min > 0.0, cold.snap.is_some()) {
        (true, true) => texts::wait_in_all(&wait),
        (true, false) => texts::start_within(&wait),
        (false, true) => texts::START_AT_ROOM.to_owned(),
        (false, false) => texts::START_STRAIGHT.to_owned(),
    };
    let core = outcome.cold.given().map_or_else(String::new, |known| {
        texts::core_takes(&rough_duration(60.0 * known.core_cold_min))
    });
    CardRow {
        title: texts::COLD.to_owned(),
        set: format_temperature(cold.temperature_c, units.scale),
        detail: hold_words(cold.time_min),
        colour: None,
        look_for: texts::chilled(&start, &core),
        after: after(outcome, Step::Cold),
        cautions: Vec::new(),
    }
}

fn tempered(route: &Route, temper: &Temper, n: usize, outcome: &Outcome, units: Units) -> CardRow {
    let count = route.tempers.len();
    let temperature_c = temper.temperature_c;
    let band_k = route.band_k_at(temperature_c);
    let first = if n == 1 && route.cold.is_some() {
        texts::TEMPER_BACK_AT_ROOM
    } else if n == 1 {
        texts::TEMPER_AT_ONCE
    } else {
        texts::COUNT_AGAIN
    };
    let end = if n < count {
        texts::COOL_BEFORE_NEXT
    } else {
        texts::COOL_AND_TEST
    };
    CardRow {
        title: if count > 1 {
            texts::temper(n)
        } else {
            texts::TEMPER.to_owned()
        },
        set: format_temperature(temperature_c, units.scale),
        detail: furnace_words(band_k, temper.time_min, units),
        colour: Some(StepColour::Oxide(temperature_c)),
        look_for: format!("{first} {end}"),
        after: after(outcome, Step::Temper(n)),
        cautions: Vec::new(),
    }
}
