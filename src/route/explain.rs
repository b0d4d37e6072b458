//! What stands behind a number: equation with its numbers, inputs, source, validity, known error.

use super::cold_words::cold_treatment;
use super::explain_prior;
use super::known::Known;
use super::outcome::{Margin, Outcome, QuenchTransformed};
use super::plan::Route;
use super::sentences::NumberKey;
use super::why::why;
use crate::hardness::grade_table;
use crate::sources::{bearing_card_1999, isothermal_fit, tempering_stages};
use crate::units::{
    TemperatureScale, format_duration_s, format_factor, format_fixed, format_hrc, format_percent,
    format_temperature, format_temperature_band, format_weight_percent,
};

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

const DISSOLUTION_BASIS: &str = "equilibrium of this steel, and shrinking carbides in two stages: carbon first, then the alloy that the carbide holds";
const DISSOLUTION_VALIDITY: &str = "up to 2.5 % C, 18 % Cr, 3 % Mn or Si, 4 % Ni, 2 % Mo, 1.2 % V, 4 % W; checked on plain and 1.5 % Cr steel";
const DISSOLUTION_ERROR: &str =
    "equilibrium ±0.02 to 0.04 % C; published soaks of 1 C–1.5 Cr steel differ by 0.1 %";
pub(super) const GRAIN_BASIS: &str = "growth of low-alloy steel after Lee & Lee (2008), of 1 C–1.5 Cr steel by a producer's table; pinning after Zener; ASTM E112 for the number";
const TEMPERING_BASIS: &str = "three stages fitted by this project to published tempering data (Hollomon & Jaffe 1945, Grange & Baughman 1956, Penha 2010; data set CC BY 4.0)";
/// Temperatures that the fit of tempering covers, °C.
const TEMPERING_RANGE_C: [f64; 2] = [100.0, 700.0];
const TABLE_BASIS: &str = "table of supplier sheets for this grade, shifted to other times along the Hollomon-Jaffe parameter";

pub(super) const TAKES_IN: &str = "takes in";
pub(super) const SOURCE: &str = "source";
pub(super) const VALID: &str = "valid for";
pub(super) const KNOWN: &str = "known error";

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
    format!(
        "{} for {}, within {}",
        format_temperature(route.soak.temperature_c, scale),
        format_duration_s(60.0 * route.soak.time_min),
        format_temperature_band(route.soak_band_k(), scale)
    )
}

fn dissolved_carbon(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let soak = &outcome.soak;
    let band = &outcome.furnace;
    Explanation {
        title: "Carbon in solution".to_owned(),
        figure: format_weight_percent(soak.end.carbon_wt),
        band: match (band.carbon_at_coldest_wt, band.carbon_at_hottest_wt) {
            (Some(low), Some(high)) => format!(
                "{} to {} over the furnace's band",
                format_weight_percent(low),
                format_weight_percent(high)
            ),
            _ => "nothing dissolves at the furnace's cold end".to_owned(),
        },
        equation: format!(
            "in solution = what equilibrium allows, as far as the soak gets\n{} of {} possible at {}",
            format_weight_percent(soak.end.carbon_wt),
            format_weight_percent(soak.limit.austenite.c),
            format_temperature(route.soak.temperature_c, scale)
        ),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, DISSOLUTION_BASIS.to_owned()),
            (VALID, DISSOLUTION_VALIDITY.to_owned()),
            (KNOWN, DISSOLUTION_ERROR.to_owned()),
        ],
    }
}

fn carbide_left(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let soak = &outcome.soak;
    Explanation {
        title: "Carbide left undissolved".to_owned(),
        figure: format_percent(soak.end.carbide_volume_fraction),
        band: format!(
            "equilibrium would leave {}",
            format_percent(soak.limit.carbide_volume_fraction)
        ),
        equation: format!(
            "carbon of the steel = carbon in austenite + carbon in carbide\n{} in all, {} of the austenite in solution",
            format_weight_percent(route.composition.c),
            format_weight_percent(soak.end.carbon_wt)
        ),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, "mass balance of carbon".to_owned()),
            (KNOWN, DISSOLUTION_ERROR.to_owned()),
        ],
    }
}

fn grain(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    let soak = &outcome.soak;
    Explanation {
        title: "Austenite grain".to_owned(),
        figure: format!("ASTM\u{a0}{}", format_fixed(soak.end.grain_astm, 1)),
        band: format!("{}\u{a0}µm between boundaries", format_fixed(soak.grain_um, 0)),
        equation: "G = −3.288 − 6.644 log₁₀(mean intercept in mm)\ngrowth stops where carbides pin the boundaries".to_owned(),
        rows: vec![
            (TAKES_IN, soak_words(route, scale)),
            (SOURCE, GRAIN_BASIS.to_owned()),
            (KNOWN, grain_error()),
        ],
    }
}

/// Known error of a grain number.
pub(super) fn grain_error() -> String {
    let fit = bearing_card_1999::LEFT_OUT.words();
    format!("about one grain number; the table's law: {fit}")
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
    with_quench("Margin of the quench", outcome, scale, |quenched| {
        let margin = &quenched.margin;
        Explanation {
            title: "Margin of the quench".to_owned(),
            figure: format!("{}\u{a0}s", format_fixed(margin.seconds, 1)),
            band: margin.range_words(),
            equation: format!(
                "margin = (slowest quench that still hardens − this quench) at the nose\nThe quench may be {} as slow; it passes {} after {}.",
                format_factor(margin.factor),
                format_temperature(margin.nose_c, scale),
                format_duration_s(margin.arrival_s)
            ),
            rows: vec![
                (
                    TAKES_IN,
                    format!(
                        "{} C dissolved, grain ASTM {}, {}, heat transfer {}",
                        format_weight_percent(outcome.soak.end.carbon_wt),
                        format_fixed(outcome.soak.end.grain_astm, 0),
                        outcome.quench.medium_title.words(scale),
                        format_factor(route.quench.agitation)
                    ),
                ),
                (
                    "hardened",
                    format!(
                        "95 % of the austenite has to reach martensite{}; here {}",
                        if quenched.held_c.is_some() {
                            " or the bainite of the bath"
                        } else {
                            ""
                        },
                        format_percent(quenched.hardened_fraction)
                    ),
                ),
                (
                    SOURCE,
                    "isothermal curves fitted by this project, added up along the cooling curve (Scheil's rule); conduction with this quenchant's curve".to_owned(),
                ),
                ("band from", margin_band(margin)),
                (KNOWN, format!("noses: {}", isothermal_fit::NOSES_LEFT_OUT.words())),
            ],
        }
    })
}

/// What a margin's band comes of, the widest named.
fn margin_band(margin: &Margin) -> String {
    let between =
        |[least, most]: [f64; 2]| format!("{} to {}", format_factor(least), format_factor(most));
    let sources: Vec<String> = margin
        .sources
        .known()
        .map(|(name, band)| format!("{name} {}", between(band)))
        .collect();
    format!(
        "{}; together {}, most by {}",
        sources.join(", "),
        between(margin.factor_band),
        margin.sources.widest()
    )
}

fn next_slower(outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    with_quench("The next slower quenchant", outcome, scale, |quenched| {
        quenched.next_slower.as_ref().map_or_else(
            || {
                refused(
                    "The next slower quenchant",
                    "The list has no slower quenchant.".to_owned(),
                )
            },
            |next| Explanation {
                title: "The next slower quenchant".to_owned(),
                figure: format!("{}\u{a0}s", format_fixed(next.seconds, 1)),
                band: next.title.words(scale),
                equation: "the same piece and soak in that quenchant, still".to_owned(),
                rows: vec![(
                    "slowest that does",
                    quenched
                        .slowest_medium
                        .as_ref()
                        .map_or_else(|| "none of the list".to_owned(), |m| m.title.words(scale)),
                )],
            },
        )
    })
}

fn retained_austenite(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Explanation {
    with_quench("Retained austenite", outcome, scale, |quenched| {
        Explanation {
        title: "Retained austenite".to_owned(),
        figure: format_percent(quenched.fractions.austenite),
        band: "give or take 4 %".to_owned(),
        equation: format!(
            "left = austenite × exp(−α (Ms − T))\nMs {}, cooled to {}",
            format_temperature(quenched.ms_c, scale),
            format_temperature(route.quench.end_c, scale)
        ),
        rows: vec![
            (
                TAKES_IN,
                format!(
                    "{} C dissolved",
                    format_weight_percent(outcome.soak.end.carbon_wt)
                ),
            ),
            (
                SOURCE,
                "mean of Koistinen & Marburger (1959) and van Bohemen (2012); Ms by van Bohemen (2012)".to_owned(),
            ),
            (KNOWN, "1.5 vol % on plain steels, up to 4 vol % otherwise".to_owned()),
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
            "Hardness",
            outcome.temper.refusal().map_or_else(
                || "Below the C scale.".to_owned(),
                |refusal| refusal.words(scale),
            ),
        );
    };
    let table = grade_table(&route.composition);
    let snap = route.cold.and_then(|cold| cold.snap);
    let steps = snap
        .iter()
        .chain(&route.tempers)
        .map(|t| {
            format!(
                "{} for {}",
                format_temperature(t.temperature_c, scale),
                format_duration_s(60.0 * t.time_min)
            )
        })
        .collect::<Vec<_>>()
        .join(", then ");
    Explanation {
        title: "Hardness at the end".to_owned(),
        figure: format_hrc(hrc),
        band: format!(
            "give or take {}, nine times in ten",
            format_hrc(stage.band_hrc)
        ),
        equation: outcome.temper.given().map_or_else(
            || "martensite and what is soft beside it, by the harmonic mean".to_owned(),
            |temper| {
                format!(
                    "as quenched {} − what tempering takes",
                    format_hrc(temper.start_hrc)
                )
            },
        ),
        rows: [
            (
                TAKES_IN,
                if steps.is_empty() {
                    "no temper".to_owned()
                } else {
                    steps
                },
            ),
            (
                SOURCE,
                if table.is_some() {
                    TABLE_BASIS
                } else {
                    TEMPERING_BASIS
                }
                .to_owned(),
            ),
            (
                VALID,
                format!(
                    "0.20 to 1.50 % C, low alloy, {} to {}, 10 s to 32 h; A2, D2, S7 and stainless grades by table",
                    format_temperature(TEMPERING_RANGE_C[0], scale),
                    format_temperature(TEMPERING_RANGE_C[1], scale)
                ),
            ),
            (
                KNOWN,
                match table {
                    Some(table) => table.error_words().to_owned(),
                    None if tempering_stages::COVERED.check(&route.composition).is_err() => {
                        "beyond the data: the band is wider by an estimate".to_owned()
                    }
                    None => format!("{}, 30 min to 4 h", tempering_stages::LEFT_OUT.words()),
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
        return refused("Not known", "This route has no such number now.".to_owned());
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
            "on the way down",
            format!(
                "the martensite formed first tempers itself: {} in the quench",
                format_hrc(fall_hrc)
            ),
        )
    })
}
