//! Hardness: against tempering temperature, after each step, and what moves it in the end.

use super::labels;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::chart::{
    InfluenceRow, LadderRow, Scene, TemperData, TemperPoint, hardness_ladder, influence_chart,
    temper_chart,
};
use recalesce::route::{InfluenceKind, Step};
use recalesce::units::{format_duration_s, format_length, format_temperature_band};
use recalesce_texts::page as texts;

/// The temper chart reaches to at least this temperature, °C, and so far above the temper, K.
const LEAST_TEMPER_END_C: f64 = 400.0;
const ROOM_ABOVE_TEMPER_K: f64 = 110.0;

/// Hardness against tempering temperature.
pub(crate) fn temper_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let temper = outcome.temper.given()?;
    let (target, first_c) = bench
        .route
        .with(|r| (r.target, r.tempers.first().map(|t| t.temperature_c)));
    let temper_c = first_c?;
    let hrc = temper.hrc_at(temper_c)?;
    let shown_to_c = (temper_c + ROOM_ABOVE_TEMPER_K).max(LEAST_TEMPER_END_C);
    Some(temper_chart(
        &TemperData {
            curve: temper
                .curve
                .iter()
                .filter(|p| p.temperature_c <= shown_to_c)
                .map(|p| TemperPoint {
                    temperature_c: p.temperature_c,
                    hrc: p.hrc,
                    range_hrc: p.hrc_range(),
                })
                .collect(),
            target_hrc: Some([target.least_hrc, target.most_hrc]),
            embrittling_c: Some(temper.embrittling_c),
            temper_c,
            hrc,
        },
        &labels(bench),
        [width, height],
    ))
}

/// What moves the final hardness.
pub(crate) fn influences_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let (scale, unit) = (bench.scale.get(), bench.length.get());
    let rows: Vec<InfluenceRow> = outcome
        .influences
        .iter()
        .map(|influence| InfluenceRow {
            label: match influence.kind {
                InfluenceKind::TemperTemperature { step_k } => {
                    texts::charts::temper_by(&format_temperature_band(step_k, scale))
                }
                InfluenceKind::NoCold => texts::charts::COLD_LEFT_OUT.to_owned(),
                InfluenceKind::Thickness { step_mm } => {
                    texts::charts::section_by(&format_length(step_mm, unit))
                }
                InfluenceKind::Furnace { step_k } => {
                    texts::charts::furnace_by(&format_temperature_band(step_k, scale))
                }
                InfluenceKind::SoakTime { step_min } => {
                    texts::charts::soak_by(&format_duration_s(60.0 * step_min))
                }
            },
            less_hrc: influence.less_hrc,
            more_hrc: influence.more_hrc,
        })
        .collect();
    (!rows.is_empty()).then(|| influence_chart(&rows, [width, height]))
}

/// Hardness after each step.
pub(crate) fn ladder_scene(bench: Bench, width: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let target = bench.shown().target;
    let rows: Vec<LadderRow> = outcome
        .judged_stages()
        .iter()
        .filter_map(|stage| {
            Some(LadderRow {
                label: match stage.step {
                    Step::Soak => return None,
                    Step::Quench => texts::charts::AFTER_QUENCH.to_owned(),
                    Step::Snap => texts::charts::AFTER_SNAP.to_owned(),
                    Step::Cold => texts::charts::AFTER_COLD.to_owned(),
                    Step::Temper(n) => texts::charts::after_temper(n),
                },
                hrc: stage.hardness?.hrc()?,
                range_hrc: stage.hrc_range()?,
                band: stage.band_words(),
            })
        })
        .collect();
    (!rows.is_empty())
        .then(|| hardness_ladder(&rows, Some([target.least_hrc, target.most_hrc]), width))
}
