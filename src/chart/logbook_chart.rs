//! Measured against predicted hardness of logged runs: the line on which they agree, the band
//! about it, and a dot for each run.

use super::axis::Axis;
use super::face::Weight;
use super::frame;
use super::ink::Ink;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Mark, Pen, Rank, Scene, data};
use crate::numeric::order::sort_by;
use recalesce_texts::charts::logbook as texts;

/// One run on the chart, HRC.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoggedHardness {
    /// As predicted.
    pub predicted_hrc: f64,
    /// Between which it is nine times in ten.
    pub range_hrc: [f64; 2],
    /// As measured.
    pub measured_hrc: f64,
}

impl LoggedHardness {
    /// Whether the band of its prediction reaches what was measured.
    fn is_inside(&self) -> bool {
        let [least, most] = self.range_hrc;
        (least..=most).contains(&self.measured_hrc)
    }
}

/// Most runs of which each shows its own band: with more the bars hide one another.
const MOST_BARS: usize = 20;
/// The least width of both axes, HRC.
const LEAST_SPAN_HRC: f64 = 8.0;

/// The chart at a size in css px; none without a run.
pub fn logbook_chart(runs: &[LoggedHardness], size_px: [f64; 2]) -> Option<Scene> {
    let ends = runs.iter().flat_map(|run| {
        let [least, most] = run.range_hrc;
        [least, most, run.measured_hrc]
    });
    let (least, most) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), hrc| {
        (least.min(hrc), most.max(hrc))
    });
    let band_hrc = usual_band_hrc(runs)?;
    let (low, high) = round_span(least, most);
    let [width, height] = size_px;
    let plane = Plane::new(
        Axis::linear(low, high),
        Axis::linear(low, high),
        Rect::new(34.0, 20.0, width - 12.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::number_axes(&mut scene, [texts::PREDICTED, texts::MEASURED]);
    scene.area(
        vec![
            [low, low - band_hrc],
            [high, high - band_hrc],
            [high, high + band_hrc],
            [low, low + band_hrc],
        ],
        Fill::thin(Ink::Ink, 0.08),
    );
    scene.curve(vec![[low, low], [high, high]], Pen::new(Ink::Ink2, 1.25));
    if runs.len() <= MOST_BARS {
        for run in runs {
            scene.guide(
                run.range_hrc.map(|x| [x, run.measured_hrc]).to_vec(),
                Pen::new(Ink::Ink3, 1.0),
            );
        }
    }
    for run in runs {
        let (paint, rim) = if run.is_inside() {
            (Ink::Ink, Ink::Sheet)
        } else {
            (Ink::Sheet, Ink::Misses)
        };
        scene.add(Mark::Dot {
            at: data(run.predicted_hrc, run.measured_hrc),
            radius_px: 4.0,
            paint: paint.into(),
            rim: Some((rim.into(), 1.75)),
        });
    }
    let along = |part: f64| low + part * (high - low);
    let places = [0.88, 0.12, 0.7, 0.3].map(|part| data(along(part), along(part)));
    scene.label(
        Label::new(places[0], Anchor::Middle, texts::AS_PREDICTED)
            .styled(Ink::Ink2, 11.5, Weight::Text)
            .halo(Ink::Sheet)
            .around(&places, 10.0, Rank::Main),
    );
    scene.summary = summary(runs);
    Some(scene)
}

/// Median of the half widths of the bands, HRC: the band about the line.
fn usual_band_hrc(runs: &[LoggedHardness]) -> Option<f64> {
    let half = |run: &LoggedHardness| {
        let [least, most] = run.range_hrc;
        0.5 * (most - least)
    };
    let mut bands: Vec<f64> = runs.iter().map(half).collect();
    sort_by(&mut bands, f64::total_cmp);
    bands.get(bands.len() / 2).copied()
}

/// Whole HRC a little outside the values, and never a sliver.
fn round_span(least: f64, most: f64) -> (f64, f64) {
    let short = (LEAST_SPAN_HRC - (most - least)).max(0.0);
    let (low, high) = (least - 0.5 * short, most + 0.5 * short);
    ((low - 0.5).floor(), (high + 0.5).ceil())
}

fn summary(runs: &[LoggedHardness]) -> String {
    let inside = runs.iter().filter(|run| run.is_inside()).count();
    let differences = runs.iter().map(|run| run.measured_hrc - run.predicted_hrc);
    let mean = differences.sum::<f64>() / runs.len() as f64;
    let way = if mean < 0.0 {
        texts::SOFTER
    } else {
        texts::HARDER
    };
    texts::summary(runs.len(), inside, &fixed(mean.abs(), 1), way)
}
