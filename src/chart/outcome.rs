//! Small charts of the outcome: hardness after each step, what the piece is made of, the phase key.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Constituent, Ink};
use super::numbers::{NBSP, fixed};
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Mark, Pen, Scene, px};
use super::section_view::structure;
use recalesce_texts::charts::outcome as texts;

/// Hardness after a step.
#[derive(Debug, Clone, PartialEq)]
pub struct LadderRow {
    /// After what, such as `after quench`.
    pub label: String,
    /// Hardness, HRC.
    pub hrc: f64,
    /// Between which it is nine times in ten, HRC.
    pub range_hrc: [f64; 2],
    /// The same in short, such as `±3.0`.
    pub band: String,
}

/// Height of a row, px.
const ROW_PX: f64 = 18.0;
/// Room for row names and for values, px.
const SIDES_PX: [f64; 2] = [78.0, 84.0];

/// Height of the ladder of so many steps, px.
pub fn ladder_height_px(rows: usize) -> f64 {
    20.0 + ROW_PX * rows as f64
}

/// Hardness after each step, in order, at a width in css px.
pub fn hardness_ladder(rows: &[LadderRow], target_hrc: Option<[f64; 2]>, width_px: f64) -> Scene {
    let size_px = [width_px, ladder_height_px(rows.len())];
    let bottom = size_px[1] - 20.0;
    let rect = Rect::new(
        SIDES_PX[0],
        2.0,
        (width_px - SIDES_PX[1]).max(SIDES_PX[0] + 20.0),
        bottom,
    );
    let plane = Plane::new(ladder_axis(rows, target_hrc), Axis::linear(0.0, 1.0), rect);
    let mut scene = Scene::new(size_px, plane);
    for tick in plane.x.ticks(5, Shown::SAME) {
        let column = plane.x_px(tick.value);
        scene.stroke(
            px(column, rect.top),
            px(column, bottom),
            Pen::new(Ink::Grid, 0.75),
        );
        scene.label(frame::tick_label(
            px(column, bottom + 11.0),
            Anchor::Middle,
            tick.label,
        ));
    }
    if let Some(range) = target_hrc {
        scene.area(frame::block(range, [0.0, 1.0]), Fill::thin(Ink::Mark, 0.11));
    }
    let row_px = |i: usize| 10.0 + ROW_PX * i as f64;
    let places: Vec<[f64; 2]> = rows
        .iter()
        .enumerate()
        .map(|(i, row)| [plane.x_px(plane.x.hold(row.hrc)), row_px(i)])
        .collect();
    for pair in places.windows(2) {
        let ([x0, y0], [x1, y1]) = (pair[0], pair[1]);
        let pen = Pen::new(Ink::Ink3, 1.0);
        scene.stroke(px(x0, y0), px(x0, y1), pen);
        scene.stroke(px(x0, y1), px(x1, y1), pen);
    }
    for (i, (row, [x, y])) in rows.iter().zip(&places).enumerate() {
        let band = row.range_hrc.map(|v| plane.x_px(plane.x.hold(v)));
        let bar = Rect::new(band[0], y - 3.5, band[1], y + 3.5).corners();
        scene.shape(
            bar.map(|[x, y]| px(x, y)).to_vec(),
            Fill::thin(Ink::Ink, 0.13),
        );
        scene.add(Mark::Dot {
            at: px(*x, *y),
            radius_px: 4.0,
            paint: Ink::Ink.into(),
            rim: None,
        });
        scene.label(Label::new(px(0.0, *y), Anchor::Start, row.label.clone()));
        let text = format!("{}{NBSP}{}", fixed(row.hrc, 1), row.band);
        let weight = if i + 1 == rows.len() {
            Weight::Name
        } else {
            Weight::Text
        };
        scene.label(Label::new(px(width_px, *y), Anchor::End, text).styled(Ink::Ink, 12.0, weight));
    }
    let steps = rows
        .iter()
        .map(|row| texts::hardness(&row.label, &fixed(row.hrc, 1)));
    scene.summary = texts::ladder(&steps.collect::<Vec<_>>());
    scene
}

fn ladder_axis(rows: &[LadderRow], target: Option<[f64; 2]>) -> Axis {
    let (low, high) = rows
        .iter()
        .flat_map(|row| row.range_hrc)
        .chain(target.into_iter().flatten())
        .filter(|v| v.is_finite())
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| {
            (l.min(v), h.max(v))
        });
    if low > high {
        return Axis::linear(20.0, 68.0);
    }
    let spare = (8.0 - (high - low)).max(0.0);
    Axis::linear(
        (low - 0.5 * spare - 0.5).floor(),
        (high + 0.5 * spare + 0.5).ceil(),
    )
}

/// What a piece is made of, as a bar: each constituent with its volume fraction, from left to right.
pub fn phase_bar(parts: &[(Constituent, f64)], size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let rect = Rect::new(0.0, 0.0, width, height);
    let plane = Plane::new(Axis::linear(0.0, 1.0), Axis::linear(0.0, 1.0), rect);
    let mut scene = Scene::new(size_px, plane);
    let usable = |fraction: f64| {
        if fraction.is_finite() {
            fraction.max(0.0)
        } else {
            0.0
        }
    };
    let total: f64 = parts.iter().map(|(_, f)| usable(*f)).sum::<f64>().max(1e-9);
    let mut from = 0.0;
    for (constituent, fraction) in parts {
        let to = from + usable(*fraction) / total;
        if to - from > 1e-6 {
            scene.add(structure(
                frame::block([from, to], [0.0, 1.0]),
                *constituent,
            ));
            if from > 0.0 {
                let column = width * from;
                scene.stroke(
                    px(column, 0.0),
                    px(column, height),
                    Pen::new(Ink::Sheet, 1.0),
                );
            }
        }
        from = to;
    }
    framed(&mut scene, Ink::Ink);
    scene.summary = parts
        .iter()
        .filter(|(_, f)| *f >= 0.005)
        .map(|(c, f)| texts::share(c.name(), &fixed(100.0 * f, 0)))
        .collect::<Vec<_>>()
        .join(", ");
    scene
}

/// A square of the phase key, side in css px.
pub fn swatch(constituent: Constituent, side_px: f64) -> Scene {
    let rect = Rect::new(0.0, 0.0, side_px, side_px);
    let plane = Plane::new(Axis::linear(0.0, 1.0), Axis::linear(0.0, 1.0), rect);
    let mut scene = Scene::new([side_px, side_px], plane);
    scene.add(structure(frame::block([0.0, 1.0], [0.0, 1.0]), constituent));
    framed(&mut scene, Ink::Ink2);
    scene.summary = constituent.name().to_owned();
    scene
}

fn framed(scene: &mut Scene, ink: Ink) {
    let [width, height] = scene.size_px;
    let [a, b, c, d] = Rect::new(0.5, 0.5, width - 0.5, height - 0.5)
        .corners()
        .map(|[x, y]| px(x, y));
    for (from, to) in [(a, b), (b, c), (c, d), (d, a)] {
        scene.stroke(from, to, Pen::new(ink, 1.0));
    }
}
