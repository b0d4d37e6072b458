//! Sentences beside the charts.

use crate::errand;
use crate::state::{Bench, Stage};
use leptos::prelude::*;
use recalesce::heat::Section;
use recalesce::route;
use recalesce::units::{format_length, format_temperature};
use recalesce_texts::page as texts;

/// What else would still harden this piece, in words.
pub(crate) fn still_does(bench: Bench) -> Option<String> {
    let outcome = bench.outcome()?;
    let transformed = outcome.quench.transformed.given()?;
    let medium = transformed.slowest_medium.as_ref().map_or_else(
        || {
            let none = if transformed.margin.factor >= 1.0 {
                texts::charts::NO_SLOWER_HARDENS
            } else {
                texts::charts::NONE_HARDENS_THROUGH
            };
            none.to_owned()
        },
        |slowest| {
            texts::charts::slowest_still(
                &route::inside_a_sentence(&slowest.title.words(bench.scale.get())),
                slowest.reservation(),
            )
        },
    );
    let thickest = transformed.thickest_mm.map_or_else(String::new, |mm| {
        let shape = match bench.shown().section {
            Section::Round { .. } => texts::charts::ROUND,
            Section::Square { .. } => texts::charts::SQUARE_BAR,
            Section::Plate { .. } | Section::Blade { .. } => texts::charts::FLAT_SECTION,
        };
        texts::charts::thickest(shape, &format_length(mm, bench.length.get()))
    });
    Some(medium + &thickest)
}

/// Why there is no temper chart.
pub(crate) fn no_temper(bench: Bench) -> String {
    if bench.route.with(|r| r.tempers.is_empty()) {
        return texts::charts::NO_TEMPER_PLANNED.to_owned();
    }
    bench
        .outcome()
        .and_then(|outcome| Some(outcome.temper.refusal()?.words(bench.scale.get())))
        .unwrap_or_else(|| texts::charts::OUTSIDE_TEMPER_MODEL.to_owned())
}

/// Why there is no phase map.
pub(crate) fn no_map(bench: Bench) -> String {
    let place = errand::place_of(bench.scale.get());
    bench
        .mapped
        .with(|mapped| mapped.refusal.as_ref().map(|words| words[place].clone()))
        .unwrap_or_default()
}

/// The answer of a stage for its tab on the phone.
pub(crate) fn answer(bench: Bench, stage: Stage) -> String {
    let scale = bench.scale.get();
    match stage {
        Stage::Prior(_) => bench.route.with(|r| match r.prior.len() {
            0 => texts::charts::NO_STEPS.to_owned(),
            1 => texts::charts::ONE_STEP.to_owned(),
            n => texts::charts::steps(n),
        }),
        Stage::Soak => bench
            .route
            .with(|r| format_temperature(r.soak.temperature_c, scale)),
        Stage::Quench => bench
            .outcome()
            .filter(|_| !bench.is_of_before())
            .and_then(|o| {
                let seconds = o.quench.transformed.given()?.margin.seconds;
                Some(if seconds >= 0.0 {
                    texts::charts::to_spare(&route::margin_words(seconds))
                } else {
                    texts::charts::misses_by(&route::margin_words(seconds))
                })
            })
            .unwrap_or_else(|| texts::charts::NO_NUMBER.to_owned()),
        Stage::Temper => bench.route.with(|r| {
            r.tempers.first().map_or_else(
                || texts::charts::NONE.to_owned(),
                |t| format_temperature(t.temperature_c, scale),
            )
        }),
    }
}
