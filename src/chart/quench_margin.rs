//! The margin of a quench, drawn as a dimension at the nose.

use super::face::{Weight, width_px};
use super::frame;
use super::ink::Ink;
use super::labels::Labels;
use super::numbers::duration;
use super::plane::Plane;
use super::scene::{Anchor, Label, Pen, Rank, Scene, Spot, px};
use crate::numeric::order::{larger, smaller};
use recalesce_texts::charts::quench as texts;

/// How a quench turned out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Fast enough.
    Holds,
    /// The band reaches zero.
    Narrow,
    /// Too slow.
    Misses,
}

impl Verdict {
    /// Its colour.
    pub fn ink(self) -> Ink {
        match self {
            Self::Holds => Ink::Holds,
            Self::Narrow => Ink::Narrow,
            Self::Misses => Ink::Misses,
        }
    }
}

/// The gap between a cooling curve and a nose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Margin {
    /// Temperature of the nose, °C.
    pub nose_c: f64,
    /// When the product starts there, s.
    pub nose_s: f64,
    /// When the steel arrives there, s.
    pub arrival_s: f64,
    /// How it turned out.
    pub verdict: Verdict,
}

/// Distance of the rows in which the number may stand where it finds no room beside its line, px.
const ROW_PX: f64 = 17.0;
/// Of the height of the plot, how far down it goes.
const DOWN_TO: f64 = 0.8;

/// Where the number may stand: beside its line, else at either end of the rows below, so that it
/// finds a place on a chart as narrow and as crowded as they come.
fn spots([left, right]: [f64; 2], line: f64, reach: f64, plane: &Plane) -> Vec<Spot> {
    let rect = &plane.rect;
    let last = rect.top + DOWN_TO * (rect.bottom - rect.top);
    let rows = (0..).map(|row| line + ROW_PX * f64::from(row));
    rows.take_while(|row| *row <= last.max(line))
        .flat_map(|row| {
            [
                (right + reach, Anchor::Start),
                (left - reach, Anchor::End),
                (rect.right - 2.0, Anchor::End),
                (rect.left + 4.0, Anchor::Start),
            ]
            .map(|(x, anchor)| Spot {
                at: px(x, row),
                offset_px: [0.0, -2.0],
                anchor,
            })
        })
        .collect()
}

pub(super) fn dimension(scene: &mut Scene, margin: &Margin, labels: &Labels, plane: &Plane) {
    let arrival = plane.x_px(plane.x.hold(margin.arrival_s));
    let nose = plane.x_px(plane.x.hold(margin.nose_s));
    let (left, right) = (arrival.min(nose), arrival.max(nose));
    let row = plane.y_px(margin.nose_c);
    let top = plane.rect.top;
    let misses = margin.arrival_s >= margin.nose_s;
    let gap_s = (margin.nose_s - margin.arrival_s).abs();
    let nose = labels.temperature(margin.nose_c);
    let [text, below] = if misses {
        [
            texts::misses_by(&duration(gap_s)),
            texts::short_at_nose(&nose),
        ]
    } else {
        [
            texts::margin(&duration(gap_s)),
            texts::to_spare_at_nose(&nose),
        ]
    };
    let width = larger(
        width_px(&text, 14.0, Weight::Name),
        width_px(&below, 11.5, Weight::Text),
    );
    let outside = right - left < 30.0;
    let reach = if outside { 21.0 } else { 6.0 };
    // Left of it the piece is still hot: its curve runs close below.
    let is_above = plane.rect.right - right < width + reach;
    let line = top + if is_above { 40.0 } else { 20.0 };
    let verdict = if misses {
        Verdict::Misses
    } else {
        margin.verdict
    };
    let tip_ink = if misses { Ink::Misses } else { Ink::Ink };
    for column in [left, right] {
        scene.stroke(
            px(column, row - 3.0),
            px(column, line - 5.0),
            Pen::new(Ink::Ink2, 0.9),
        );
    }
    let bar = Pen::new(verdict.ink(), 8.0);
    scene.stroke(px(left, row), px(right, row), bar);
    let pen = Pen::new(tip_ink, 1.0);
    if outside {
        scene.stroke(px(left - 16.0, line), px(left, line), pen);
        scene.stroke(px(right, line), px(right + 16.0, line), pen);
        frame::arrow_head(scene, [left, line], [1.0, 0.0], tip_ink);
        frame::arrow_head(scene, [right, line], [-1.0, 0.0], tip_ink);
    } else {
        scene.stroke(px(left, line), px(right, line), pen);
        frame::arrow_head(scene, [left, line], [-1.0, 0.0], tip_ink);
        frame::arrow_head(scene, [right, line], [1.0, 0.0], tip_ink);
    }
    let mut spots = spots([left, right], line, reach, plane);
    if is_above {
        let [first, last] = [plane.rect.left + 4.0, plane.rect.right - 4.0 - width];
        let start = smaller(larger(0.5 * (left + right - width), first), last);
        let above = Spot {
            at: px(start, top + 11.0),
            offset_px: [0.0, 0.0],
            anchor: Anchor::Start,
        };
        spots.insert(0, above);
    }
    let mut label = Label::new(px(0.0, 0.0), Anchor::Start, text)
        .styled(tip_ink, 14.0, Weight::Name)
        .then(below, Ink::Ink2, 11.5, Weight::Text)
        .halo(Ink::Sheet)
        .at_spots(spots, Rank::Margin);
    label.leading_px = 14.0;
    scene.label(label);
}
