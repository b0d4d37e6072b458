//! Hardness along the end-quenched bar: computed with its band, simulated, by the standard, and as
//! measured.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::Ink;
use super::labels::Labels;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Mark, Pen, Rank, Scene, data, px};
use recalesce_texts::charts::end_quench as texts;

/// What the chart shows. Curves are distance from the quenched end, mm, against hardness, HRC.
#[derive(Debug, Clone, PartialEq)]
pub struct EndQuenchData {
    /// What the curve told is called.
    pub told_by: &'static str,
    /// The curve told.
    pub told: Vec<[f64; 2]>,
    /// Half width of its band at each point, HRC.
    pub band_hrc: Vec<f64>,
    /// By heat flow and transformation in the bar.
    pub simulated: Vec<[f64; 2]>,
    /// By the polynomials of the standard; empty outside its range.
    pub standard: Vec<[f64; 2]>,
    /// As measured by the user.
    pub measured: Vec<[f64; 2]>,
    /// Where the bar cools as the deciding place of the piece does, mm.
    pub piece_mm: Option<f64>,
}

/// Hardness shown, HRC.
const RANGE_HRC: [f64; 2] = [20.0, 70.0];
/// Length of the bar shown, mm: two inches.
const LENGTH_MM: f64 = 50.8;

/// The chart at a size in css px.
pub fn end_quench_chart(shown: &EndQuenchData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let plane = Plane::new(
        Axis::linear(0.0, LENGTH_MM),
        Axis::linear(RANGE_HRC[0], RANGE_HRC[1]),
        Rect::new(34.0, 20.0, width - 12.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    for tick in plane.y.ticks(5, Shown::SAME) {
        frame::level_line(&mut scene, tick.value);
        let at = px(plane.rect.left - 5.0, plane.y_px(tick.value));
        scene.label(frame::tick_label(at, Anchor::End, tick.label));
    }
    let unit = px(plane.rect.left - 5.0, 6.0);
    scene.label(frame::tick_label(unit, Anchor::End, "HRC".to_owned()));
    frame::bottom_axis(&mut scene, plane.x.ticks(5, labels.shown_length()), true);
    frame::base_line(&mut scene);
    frame::axis_title(&mut scene, &texts::distance(labels.length_unit));
    let edge = |side: f64| {
        let bands = shown.told.iter().zip(&shown.band_hrc);
        bands.map(move |([x, y], band)| [*x, y + side * band])
    };
    scene.area(
        edge(1.0).chain(edge(-1.0).rev()).collect(),
        Fill::thin(Ink::Ink, 0.08),
    );
    let pens = [
        (
            &shown.standard,
            "ASTM A255",
            Pen::new(Ink::Ink2, 1.25).dashed(&[2.0, 3.0]),
        ),
        (
            &shown.simulated,
            texts::SIMULATED,
            Pen::new(Ink::Ink2, 1.5).dashed(&[7.0, 3.0]),
        ),
        (&shown.told, shown.told_by, Pen::new(Ink::Ink, 2.5)),
    ];
    for (curve, name, pen) in pens {
        scene.curve(curve.clone(), pen);
        let places: Vec<_> = [0.55, 0.35, 0.75, 0.9, 0.2]
            .into_iter()
            .filter_map(|part| {
                let at = (part * curve.len() as f64) as usize;
                curve.get(at).map(|[x, y]| data(*x, *y))
            })
            .collect();
        if let Some(&place) = places.first() {
            scene.label(
                Label::new(place, Anchor::Start, name)
                    .styled(Ink::Ink, 12.0, Weight::Text)
                    .halo(Ink::Sheet)
                    .around(&places, 8.0, Rank::Main),
            );
        }
    }
    if let Some(piece_mm) = shown.piece_mm.filter(|mm| (0.0..LENGTH_MM).contains(mm)) {
        let whole = vec![[piece_mm, RANGE_HRC[0]], [piece_mm, RANGE_HRC[1]]];
        scene.curve(whole, Pen::new(Ink::Ink2, 1.0).dashed(&[1.0, 3.0]));
        let at = px(plane.x_px(piece_mm) + 5.0, plane.rect.bottom - 10.0);
        scene.label(
            Label::new(at, Anchor::Start, texts::COOLS_LIKE_PIECE)
                .styled(Ink::Ink2, 11.5, Weight::Text)
                .halo(Ink::Sheet),
        );
    }
    for &[x, y] in &shown.measured {
        scene.add(Mark::Dot {
            at: data(x, y),
            radius_px: 3.5,
            paint: Ink::Sheet.into(),
            rim: Some((Ink::Ink.into(), 1.75)),
        });
    }
    scene.summary = summary(shown, labels);
    scene
}

fn summary(shown: &EndQuenchData, labels: &Labels) -> String {
    let told: Vec<String> = shown
        .told
        .iter()
        .step_by(4)
        .map(|[x, y]| texts::hardness_at(&fixed(*y, 0), &labels.length(*x)))
        .collect();
    texts::summary(&told)
}
