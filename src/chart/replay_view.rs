//! The quench in slow motion: how the section glows, its temperature and its structure from one
//! side to the other, at one time.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::numbers::NBSP;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Mark, Pen, Ramp, Scene, px};
use super::section_view::structure;
use recalesce_texts::charts::replay as texts;

/// A place of the section at the time shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Across {
    /// From the left end of the axis, mm.
    pub at_mm: f64,
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Volume fractions, from the bottom of the stack to its top.
    pub parts: Vec<(Constituent, f64)>,
}

/// What the view shows.
#[derive(Debug, Clone, PartialEq)]
pub struct ReplayData {
    /// Places from left to right.
    pub across: Vec<Across>,
    /// Words for the two ends.
    pub ends: [&'static str; 2],
    /// Temperature at the start, °C: the top of the axis.
    pub start_c: f64,
    /// The time in words.
    pub time: String,
}

const LEFT_PX: f64 = 46.0;
const RIGHT_PX: f64 = 14.0;
/// Room for the time above the glow, px.
const TIME_PX: f64 = 18.0;
const GLOW_PX: f64 = 26.0;
const STRUCTURE_PX: f64 = 38.0;
const GAP_PX: f64 = 8.0;
/// Room for the names of the ends above the stack, px.
const NAMES_PX: f64 = 18.0;
const BOTTOM_PX: f64 = 22.0;

/// The view at a size in css px.
pub fn replay_view(replay: &ReplayData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let right = (width - RIGHT_PX).max(LEFT_PX + 40.0);
    let low = replay.across.first().map_or(0.0, |a| a.at_mm);
    let high = replay.across.last().map_or(1.0, |a| a.at_mm);
    let x = Axis::linear(low, high.max(low + 1e-6));
    let bottom = height - BOTTOM_PX;
    let stack = Rect::new(LEFT_PX, bottom - STRUCTURE_PX, right, bottom);
    let glow = Rect::new(LEFT_PX, TIME_PX, right, TIME_PX + GLOW_PX);
    let plot = Rect::new(LEFT_PX, glow.bottom + GAP_PX, right, stack.top - NAMES_PX);
    let top_c = replay.start_c.max(100.0) + 20.0;
    let coldest = replay.across.iter().map(|a| a.temperature_c);
    let low_c = coldest.fold(0.0, f64::min);
    let plane = Plane::new(x, Axis::linear(low_c, top_c), plot);
    let mut scene = Scene::new(size_px, plane);
    frame::temperature_axis(&mut scene, labels, 4);
    frame::base_line(&mut scene);
    let profile = replay.across.iter().map(|a| [a.at_mm, a.temperature_c]);
    scene.curve(profile.collect(), Pen::new(Ink::Ink, 2.0));
    scene.add(Mark::Ramp(Ramp {
        area: glow.corners().to_vec(),
        downwards: false,
        stops: replay
            .across
            .iter()
            .map(|a| {
                let paint = frame::glow_paint(a.temperature_c);
                (plane.x_px(a.at_mm), Fill::new(paint))
            })
            .collect(),
    }));
    scene.label(
        Label::new(px(right, 0.5 * TIME_PX), Anchor::End, replay.time.clone()).styled(
            Ink::Ink,
            13.0,
            Weight::Name,
        ),
    );
    scene.open(Plane::new(x, Axis::linear(0.0, 1.0), stack));
    for mark in stacked(&replay.across) {
        scene.add(mark);
    }
    let mut ticks = x.ticks(5, Shown::by(labels.length));
    if let Some(tick) = ticks.last_mut() {
        tick.label = format!("{}{NBSP}{}", tick.label, labels.length_unit);
    }
    frame::bottom_axis(&mut scene, ticks, false);
    for (end, column, anchor) in [
        (replay.ends[0], LEFT_PX, Anchor::Start),
        (replay.ends[1], right, Anchor::End),
    ] {
        let label = Label::new(px(column, stack.top - 8.0), anchor, end);
        scene.label(label.styled(Ink::Ink2, 11.0, Weight::Text));
    }
    scene.summary = summary(replay, labels);
    scene
}

/// The stack of constituents across the section.
fn stacked(across: &[Across]) -> Vec<Mark> {
    let kinds = across.first().map_or(0, |a| a.parts.len());
    let mut floor = vec![0.0; across.len()];
    let mut found = Vec::with_capacity(kinds);
    for kind in 0..kinds {
        let ceiling: Vec<f64> = across
            .iter()
            .zip(&floor)
            .map(|(a, floor)| floor + a.parts.get(kind).map_or(0.0, |part| part.1))
            .collect();
        let bottom = across.iter().zip(&floor).map(|(a, y)| [a.at_mm, *y]);
        let top = across
            .iter()
            .zip(&ceiling)
            .rev()
            .map(|(a, y)| [a.at_mm, *y]);
        let thickest = ceiling
            .iter()
            .zip(&floor)
            .map(|(c, f)| c - f)
            .fold(0.0, f64::max);
        let constituent = across.first().and_then(|a| a.parts.get(kind)).map(|p| p.0);
        if let Some(constituent) = constituent
            && thickest > 1e-3
        {
            found.push(structure(bottom.chain(top).collect(), constituent));
        }
        floor = ceiling;
    }
    found
}

fn summary(replay: &ReplayData, labels: &Labels) -> String {
    let temperatures: Vec<f64> = replay.across.iter().map(|a| a.temperature_c).collect();
    let hottest = temperatures.iter().copied().fold(f64::MIN, f64::max);
    let coldest = temperatures.iter().copied().fold(f64::MAX, f64::min);
    texts::summary(
        &replay.time,
        &labels.temperature(coldest),
        &labels.temperature(hottest),
    )
}
