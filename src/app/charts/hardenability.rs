//! What forms as it cools, and hardness along the end-quenched bar.

use super::{constituent, labels};
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::chart::{
    ContinuousData, EndQuenchData, FanCurve, ProductField, Scene, continuous_chart,
    end_quench_chart,
};
use recalesce::hardness::Hardness;
use recalesce::route::{ContinuousDiagram, EndQuenchTest};
use recalesce::transform::{ContinuousCooling, EndQuenchMethod, Forming, Passage};
use recalesce::units::{format_fixed, format_hrb, format_hv};
use recalesce_texts::page as texts;

/// Every how many coolings of the fan one is drawn: two for each factor of ten.
const DRAWN: usize = 3;

/// Hardness in HRC without its unit, or in HRB or HV with it where that scale ends.
pub(crate) fn short_hardness(hardness: Hardness) -> String {
    if let Some(hrc) = hardness.hrc() {
        return format_fixed(hrc, 0);
    }
    hardness
        .hrb()
        .map_or_else(|| format_hv(hardness.hv), format_hrb)
}

/// The continuous-cooling diagram with the planned quench.
pub(crate) fn continuous_scene(
    bench: Bench,
    found: &ContinuousDiagram,
    width: f64,
    height: f64,
) -> Scene {
    let coolings = &found.diagram.coolings;
    let fan = coolings
        .iter()
        .zip(&found.hardness)
        .step_by(DRAWN)
        .map(|(cooling, hardness)| FanCurve {
            rate_k_per_s: cooling.rate_k_per_s,
            points: cooling.curve.clone(),
            hardness: hardness.map(short_hardness),
        });
    let field = |product: Forming| {
        let passages: Vec<&Passage> = coolings
            .iter()
            .flat_map(|cooling| &cooling.passages)
            .filter(|passage| passage.product == product)
            .collect();
        (!passages.is_empty()).then(|| ProductField {
            product: constituent(product),
            start: passages.iter().map(|passage| passage.start).collect(),
            end: passages.iter().map(|passage| passage.end).collect(),
        })
    };
    let ms = |cooling: &ContinuousCooling| {
        let ms_c = cooling.ms_c?;
        let at = cooling.curve.iter().find(|point| point[1] <= ms_c)?;
        Some([at[0], ms_c])
    };
    let clock_c = found.diagram.clock_c;
    let planned = bench.outcome().and_then(|outcome| {
        let curve = outcome.quench.deciding_curve()?;
        let clock_s = curve.time_to_c(clock_c)?;
        let points = curve.time_s.iter().zip(&curve.temperature_c);
        Some(points.map(|(s, c)| [s - clock_s, *c]).collect())
    });
    let data = ContinuousData {
        fan: fan.collect(),
        fields: Forming::ALL.into_iter().filter_map(field).collect(),
        ms: coolings.iter().filter_map(ms).collect(),
        planned: planned.unwrap_or_default(),
        clock_c,
    };
    continuous_chart(&data, &labels(bench), [width, height])
}

/// Hardness along the bar.
pub(crate) fn end_quench_scene(
    bench: Bench,
    found: &EndQuenchTest,
    width: f64,
    height: f64,
) -> Scene {
    let along = |hrc: &[f64]| -> Vec<[f64; 2]> {
        let distances = found.curve.distance_mm.iter();
        distances.zip(hrc).map(|(mm, hrc)| [*mm, *hrc]).collect()
    };
    let bar = found.bar.iter();
    let data = EndQuenchData {
        told_by: match found.curve.method {
            EndQuenchMethod::Measured => texts::charts::YOUR_TEST,
            EndQuenchMethod::AstmA255 | EndQuenchMethod::Kinetics => texts::charts::COMPUTED,
        },
        told: along(&found.curve.hrc),
        band_hrc: found.band_hrc(),
        simulated: bar
            .map(|place| [place.distance_mm, place.hardness.hrc_carried()])
            .collect(),
        standard: along(found.curve.standard_hrc.as_deref().unwrap_or_default()),
        measured: bench.route.with(|route| {
            let points = route.end_quench.iter();
            points.map(|point| [point.distance_mm, point.hrc]).collect()
        }),
        piece_mm: found.piece_mm,
    };
    end_quench_chart(&data, &labels(bench), [width, height])
}
