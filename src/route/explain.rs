//! What stands behind a number: equation with its numbers, inputs, source, validity, known error.

use super::cold_words::cold_treatment;
use super::explain_prior;
use super::known::Known;
use super::margin::Margin;
use super::outcome::{Outcome, QuenchTransformed, Step};
use super::plan::Route;
use super::sentence::NumberKey;
use super::why::why;
use crate::hardness::grade_table;
use crate::sources::{bearing_card_1999, isothermal_fit, tempering_stages};
use crate::units::{
    TemperatureScale, format_duration_s, format_factor, format_fixed, format_hrc, format_percent,
    format_temperature, format_temperature_band, format_weight_percent,
};
use recalesce_texts::route::explain::{self as texts, KNOWN, SOURCE, TAKES_IN, VALID};

/// An opened number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Explanation {
    /// What the number is.
    pub title: String,
    /// The number with its unit.
    pub figure: String,
    /// Its band, in words.
    pub band: String,
    /// Equation in words, and with the numbers in it.
    pub equation: String,
    /// Pairs of term and text: takes in, source, valid for, known error.
    pub rows: Vec<(&'static str, String)>,
}

/// Temperatures that the fit of tempering covers, °C.
const TEMPERING_RANGE_C: [f64; 2] = [100.0, 700.0];

/// What stands behind a number of the outcome.
#[must_use]
pub fn explain(
    key: NumberKey,
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Explanation {
    match key {
        NumberKey::DissolvedCarbon => dissolved_carbon(route, outcome, scale),
        NumberKey::CarbideLeft => carbide_left(route, outcome, scale),
        NumberKey::Grain => grain(route, outcome, scale),
        NumberKey::Margin => margin(route, outcome, scale),
        NumberKey::NextSlower => next_slower(outcome, scale),
        NumberKey::RetainedAustenite => retained_austenite(route, outcome, scale),
        NumberKey::ColdTreatment => cold_treatment(outcome, scale),
        NumberKey::FinalHardness => final_hardness(route, outcome, scale),
        NumberKey::HeatingUp => super::explain_soak::heating_up(route, outcome, scale),
        NumberKey::Overheated => super::explain_soak::overheated(route, scale),
        NumberKey::Skin => super::explain_soak::skin(route, outcome, scale),
        NumberKey::StepHardness(step) => explain_prior::hardness(step, route, outcome, scale),
        NumberKey::StepGrain(step) => explain_prior::grain(step, route, outcome, scale),
        NumberKey::StepCarbide(step) => explain_prior::carbide(step, route, outcome, scale),
        NumberKey::Behind(_) => behind(key, route, outcome, scale),
    }
}

pub(super) fn soak_words(route: &Route, scale: TemperatureScale) -> String {
    texts::soak(
        &format_temperature(route.soak.temperature_c, scale),
        &format_duration_s(60.0 * route.soak.time_min),
        &format_temperature_band(route.soak_band_k(), scale),
    )
}

fn dissolved_carbon(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let soak = &outcome.soak;
    let band = &outcome.furnace;
    Explanation {
        title: texts::CARBON_IN_SOLUTION.to_owned(),
        figure: format_weight_percent(soak.end.carbon_wt),
        band: match (band.carbon_at_coldest_wt, band.carbon_at_hottest_wt) {
            (Some(low), Some(high)) => {
                texts::over_furnace_band(&format_weight_percent(low), &format_weight_percent(high))
            }
            _ => texts::NOTHING_DISSOLVES_COLD.to_owned(),
        },
        equation: texts::carbon_in_solution(
            &format_weight_percent(soak.end.carbon_wt),
            &format_weight_percent(soak.limit.austenite.c),
            &format_temperature(route.soak.temperature_c, scale),
        ),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, texts::DISSOLUTION_BASIS.to_owned()),
            (VALID, texts::DISSOLUTION_VALIDITY.to_owned()),
            (KNOWN, texts::DISSOLUTION_ERROR.to_owned()),
        ],
    }
}

fn carbide_left(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let soak = &outcome.soak;
    Explanation {
        title: texts::CARBIDE_LEFT.to_owned(),
        figure: format_percent(soak.end.carbide_volume_fraction),
        band: texts::equilibrium_leaves(&format_percent(soak.limit.carbide_volume_fraction)),
        equation: texts::carbon_balance(
            &format_weight_percent(route.composition.c),
            &format_weight_percent(soak.end.carbon_wt),
        ),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, texts::CARBON_BALANCE_BASIS.to_owned()),
            (KNOWN, texts::DISSOLUTION_ERROR.to_owned()),
        ],
    }
}

fn grain(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let soak = &outcome.soak;
    Explanation {
        title: texts::GRAIN.to_owned(),
        figure: format!("ASTM\u{a0}{}", format_fixed(soak.end.grain_astm, 1)),
        band: texts::between_boundaries(&format_fixed(soak.grain_um, 0)),
        equation: texts::GRAIN_LAW.to_owned(),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, texts::GRAIN_BASIS.to_owned()),
            (KNOWN, grain_error()),
        ],
    }
}

/// Known error of a grain number.
pub(super) fn grain_error() -> String {
    texts::grain_error(&bearing_card_1999::LEFT_OUT.words())
}

pub(super) fn refused(title: &'static str, reason: String) -> Explanation {
    Explanation {
        title: title.to_owned(),
        figure: "–".to_owned(),
        band: String::new(),
        equation: reason,
        rows: Vec::new(),
    }
}

fn with_quench(
    title: &'static str,
    outcome: &Outcome,
    scale: TemperatureScale,
    then: impl FnOnce(&QuenchTransformed) -> Explanation,
) -> Explanation {
    match &outcome.quench.transformed {
        Known::Given(quenched) => then(quenched),
        Known::Refused { refused: reason } => refused(title, reason.words(scale)),
    }
}

fn margin(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    with_quench(texts::MARGIN, outcome, scale, |quenched| {
        let margin = &quenched.margin;
        let hardened = format_percent(quenched.hardened_fraction);
        Explanation {
            title: texts::MARGIN.to_owned(),
            figure: format!("{}\u{a0}s", format_fixed(margin.seconds, 1)),
            band: margin.range_words(),
            equation: texts::margin(
                &format_factor(margin.factor),
                &format_temperature(margin.nose_c, scale),
                &format_duration_s(margin.arrival_s),
            ),
            rows: vec![
                (
                    TAKES_IN,
                    texts::margin_takes_in(
                        &format_weight_percent(outcome.soak.end.carbon_wt),
                        &format_fixed(outcome.soak.end.grain_astm, 0),
                        &outcome.quench.medium_title.words(scale),
                        &format_factor(route.quench.agitation),
                    ),
                ),
                (
                    texts::HARDENED,
                    if quenched.held_c.is_some() {
                        texts::hardened_in_bath(&hardened)
                    } else {
                        texts::hardened(&hardened)
                    },
                ),
                (SOURCE, texts::MARGIN_BASIS.to_owned()),
                (texts::BAND_FROM, margin_band(margin)),
                (
                    KNOWN,
                    texts::noses_error(&isothermal_fit::NOSES_LEFT_OUT.words()),
                ),
            ],
        }
    })
}

/// What a margin's band comes of, the widest named.
fn margin_band(margin: &Margin) -> String {
    let between =
        |[least, most]: [f64; 2]| texts::between(&format_factor(least), &format_factor(most));
    let sources: Vec<String> = margin
        .sources
        .known()
        .map(|(name, band)| texts::margin_source(name, &between(band)))
        .collect();
    texts::margin_band(
        &sources,
        &between(margin.factor_band),
        margin.sources.widest(),
    )
}

fn next_slower(outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    with_quench(texts::NEXT_SLOWER, outcome, scale, |quenched| {
        quenched.next_slower.as_ref().map_or_else(
            || refused(texts::NEXT_SLOWER, texts::NONE_SLOWER.to_owned()),
            |next| Explanation {
                title: texts::NEXT_SLOWER.to_owned(),
                figure: format!("{}\u{a0}s", format_fixed(next.seconds, 1)),
                band: next.title.words(scale),
                equation: texts::SAME_PIECE_AND_SOAK.to_owned(),
                rows: vec![(
                    texts::SLOWEST_THAT_DOES,
                    quenched
                        .slowest_medium
                        .as_ref()
                        .map_or_else(|| texts::NONE_OF_LIST.to_owned(), |m| m.title.words(scale)),
                )],
            },
        )
    })
}

fn retained_austenite(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    with_quench(texts::RETAINED_AUSTENITE, outcome, scale, |quenched| {
        Explanation {
            title: texts::RETAINED_AUSTENITE.to_owned(),
            figure: format_percent(quenched.fractions.austenite),
            band: texts::RETAINED_AUSTENITE_BAND.to_owned(),
            equation: texts::retained_austenite(
                &format_temperature(quenched.ms_c, scale),
                &format_temperature(route.quench.end_c, scale),
            ),
            rows: vec![
                (
                    TAKES_IN,
                    texts::carbon_dissolved(&format_weight_percent(outcome.soak.end.carbon_wt)),
                ),
                (SOURCE, texts::RETAINED_AUSTENITE_BASIS.to_owned()),
                (KNOWN, texts::RETAINED_AUSTENITE_ERROR.to_owned()),
            ],
        }
    })
}

/// Least fall by auto-tempering that is told, HRC.
const TELLABLE_FALL_HRC: f64 = 0.1;

fn final_hardness(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let last = outcome
        .stages
        .iter()
        .rev()
        .find_map(|stage| Some((stage, stage.hardness?.hrc()?)));
    let Some((stage, hrc)) = last else {
        return refused(
            texts::HARDNESS,
            outcome.temper.refusal().map_or_else(
                || texts::BELOW_C_SCALE.to_owned(),
                |refusal| refusal.words(scale),
            ),
        );
    };
    let table = grade_table(&route.composition);
    let snap = route.cold.and_then(|cold| cold.snap);
    let steps: Vec<String> = snap
        .iter()
        .chain(&route.tempers)
        .map(|t| {
            texts::temper(
                &format_temperature(t.temperature_c, scale),
                &format_duration_s(60.0 * t.time_min),
            )
        })
        .collect();
    let untempered = outcome.stages.iter().rev();
    let mut untempered = untempered.filter(|stage| !matches!(stage.step, Step::Temper(_)));
    let start = untempered.find_map(|stage| stage.hardness);
    Explanation {
        title: texts::FINAL_HARDNESS.to_owned(),
        figure: format_hrc(hrc),
        band: texts::give_or_take(&format_hrc(stage.band_hrc)),
        equation: match (outcome.temper.given(), start) {
            (Some(_), Some(start)) => texts::less_tempering(&format_hrc(start.hrc_carried())),
            (Some(_), None) => texts::READ_IN_TABLE.to_owned(),
            (None, _) => texts::MIXTURE_LAW.to_owned(),
        },
        rows: [
            (
                TAKES_IN,
                if steps.is_empty() {
                    texts::NO_TEMPER.to_owned()
                } else {
                    texts::tempers(&steps)
                },
            ),
            (
                SOURCE,
                if table.is_some() {
                    texts::TEMPERING_TABLE_BASIS
                } else {
                    texts::TEMPERING_BASIS
                }
                .to_owned(),
            ),
            (
                VALID,
                texts::tempering_validity(
                    &format_temperature(TEMPERING_RANGE_C[0], scale),
                    &format_temperature(TEMPERING_RANGE_C[1], scale),
                ),
            ),
            (
                KNOWN,
                match table {
                    Some(table) => table.error_words().to_owned(),
                    None if tempering_stages::COVERED.check(&route.composition).is_err() => {
                        texts::TEMPERING_BEYOND_DATA.to_owned()
                    }
                    None => texts::tempering_error(&tempering_stages::LEFT_OUT.words()),
                },
            ),
        ]
        .into_iter()
        .chain(on_the_way_down(outcome))
        .collect(),
    }
}

/// A number behind another: all that is told of it is how it comes about.
fn behind(
    key: NumberKey,
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Explanation {
    let Some(derivation) = why(key, route, outcome) else {
        return refused(texts::NOT_KNOWN, texts::NO_SUCH_NUMBER.to_owned());
    };
    Explanation {
        figure: derivation.figure(scale),
        band: String::new(),
        equation: String::new(),
        rows: derivation.rows(),
        title: derivation.title,
    }
}

/// Auto-tempering, where it is enough to be told.
fn on_the_way_down(outcome: &Outcome) -> Option<(&'static str, String)> {
    let fall_hrc = outcome.quench.transformed.given()?.auto_tempered_hrc?;
    (fall_hrc >= TELLABLE_FALL_HRC).then(|| {
        (
            texts::ON_WAY_DOWN,
            texts::tempers_itself(&format_hrc(fall_hrc)),
        )
    })
}
