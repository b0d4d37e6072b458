//! What moves the final hardness: one bar for each thing that may be otherwise.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::Ink;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Pen, Scene, px};
use recalesce_texts::charts::outcome as texts;

/// One bar.
#[derive(Debug, Clone, PartialEq)]
pub struct InfluenceRow {
    /// What is otherwise, such as `temper ±10 °C`.
    pub label: String,
    /// Change of the final hardness with less of it, HRC.
    pub less_hrc: Option<f64>,
    /// Change with more of it, HRC.
    pub more_hrc: Option<f64>,
}

/// Height of a row, px.
const ROW_PX: f64 = 20.0;
/// Room for names at the left, px.
const NAMES_PX: f64 = 118.0;
/// The least half span of the axis, HRC, so that small things look small.
const LEAST_SPAN_HRC: f64 = 1.0;

/// The bars at a size in css px.
pub fn influence_chart(rows: &[InfluenceRow], size_px: [f64; 2]) -> Scene {
    let [width, _] = size_px;
    let bottom = ROW_PX * rows.len() as f64 + 4.0;
    let span = rows
        .iter()
        .flat_map(|row| [row.less_hrc, row.more_hrc])
        .flatten()
        .filter(|hrc| hrc.is_finite())
        .fold(LEAST_SPAN_HRC, |widest, hrc| widest.max(hrc.abs()));
    let right = (width - 14.0).max(NAMES_PX + 40.0);
    let plane = Plane::new(
        Axis::linear(-span, span),
        Axis::linear(0.0, 1.0),
        Rect::new(NAMES_PX, 2.0, right, bottom),
    );
    let mut scene = Scene::new(size_px, plane);
    let about = if plane.rect.width() < 130.0 { 2 } else { 3 };
    for tick in plane.x.ticks(about, Shown::SAME) {
        let column = plane.x_px(tick.value);
        let ink = if tick.value == 0.0 {
            Ink::Axis
        } else {
            Ink::Grid
        };
        scene.stroke(px(column, 2.0), px(column, bottom), Pen::new(ink, 1.0));
        let label = if tick.value > 0.0 {
            format!("+{}", tick.label)
        } else {
            tick.label
        };
        scene.label(frame::tick_label(
            px(column, bottom + 12.0),
            Anchor::Middle,
            label,
        ));
    }
    // The unit stands in the row of the numbers, where those never reach.
    let unit = px(NAMES_PX - 18.0, bottom + 12.0);
    scene.label(frame::tick_label(unit, Anchor::End, "HRC".to_owned()));
    for (i, row) in rows.iter().enumerate() {
        let middle = 4.0 + ROW_PX * (i as f64 + 0.5);
        scene.label(
            Label::new(px(NAMES_PX - 8.0, middle), Anchor::End, row.label.clone()).styled(
                Ink::Ink2,
                11.5,
                Weight::Text,
            ),
        );
        let ends = [row.less_hrc, row.more_hrc].map(|hrc| hrc.unwrap_or(0.0));
        let is_single = row.less_hrc.is_none() || row.more_hrc.is_none();
        let (low, high) = (ends[0].min(ends[1]).min(0.0), ends[0].max(ends[1]).max(0.0));
        // A change too small to see still gets a stroke's width.
        let (from, to) = (plane.x_px(low), plane.x_px(high).max(plane.x_px(low) + 1.5));
        scene.shape(
            vec![
                px(from, middle - 4.5),
                px(to, middle - 4.5),
                px(to, middle + 4.5),
                px(from, middle + 4.5),
            ],
            Fill::thin(Ink::Ink2, if is_single { 1.0 } else { 0.55 }),
        );
    }
    scene.summary = rows
        .iter()
        .map(|row| {
            let change = |hrc: Option<f64>| hrc.map(|h| fixed(h, 1));
            let changes = [change(row.less_hrc), change(row.more_hrc)];
            let changes: Vec<String> = changes.into_iter().flatten().collect();
            texts::influence(&row.label, &changes)
        })
        .collect::<Vec<_>>()
        .join("; ");
    scene
}
