//! The temper: hardness against tempering temperature, oxide colours along the axis.

use super::axis::{Axis, Shown};
use super::face::{self, Weight};
use super::frame;
use super::ink::{Ink, Paint};
use super::labels::Labels;
use super::numbers::{NBSP, fixed};
use super::oxide;
use super::plane::{Plane, Rect};
use super::scene::{
    Anchor, Fill, Handle, Label, Mark, Moves, Pattern, Pen, Ramp, Rank, Scene, Spot, data, px,
};
use recalesce_texts::charts::{oxide as names, temper as texts};

/// A point of the temper curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperPoint {
    /// Tempering temperature, °C.
    pub temperature_c: f64,
    /// Hardness after all tempers, HRC.
    pub hrc: f64,
    /// Between which it is nine times in ten, HRC.
    pub range_hrc: [f64; 2],
}

/// What the chart shows.
#[derive(Debug, Clone, PartialEq)]
pub struct TemperData {
    /// Temperature rising.
    pub curve: Vec<TemperPoint>,
    /// Hardness wanted, from and to, HRC.
    pub target_hrc: Option<[f64; 2]>,
    /// Range to keep out of, °C.
    pub embrittling_c: Option<[f64; 2]>,
    /// The chosen temperature, °C.
    pub temper_c: f64,
    /// Hardness there, HRC.
    pub hrc: f64,
}

/// The chart at a size in css px.
pub fn temper_chart(temper: &TemperData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let ends = |pick: fn(f64, f64) -> f64, start: f64| {
        temper
            .curve
            .iter()
            .map(|p| p.temperature_c)
            .fold(start, pick)
    };
    let x = Axis::linear(ends(f64::min, 100.0), ends(f64::max, 400.0).min(1000.0));
    let rect = Rect::new(36.0, 8.0, width - 12.0, height - 46.0);
    let plane = Plane::new(x, hardness_axis(temper), rect);
    let mut scene = Scene::new(size_px, plane);
    ranges(&mut scene, temper, labels, &plane);
    axes(&mut scene, labels, &plane);
    curve(&mut scene, temper);
    oxide_bar(&mut scene, temper, &plane);
    pointer(&mut scene, temper, &plane);
    let (temper_c, hrc) = (labels.temperature(temper.temper_c), fixed(temper.hrc, 1));
    scene.summary = match temper.target_hrc {
        Some([low, high]) => {
            texts::summary_with_target(&temper_c, &hrc, [&fixed(low, 0), &fixed(high, 0)])
        }
        None => texts::summary(&temper_c, &hrc),
    };
    scene
}

fn hardness_axis(temper: &TemperData) -> Axis {
    let (low, high) = temper
        .curve
        .iter()
        .filter(|p| p.range_hrc.iter().all(|hrc| hrc.is_finite()))
        .map(|p| p.range_hrc.into())
        .chain(temper.target_hrc.map(|[low, high]| (low - 1.0, high + 1.0)))
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), (a, b)| {
            (l.min(a), h.max(b))
        });
    let (low, high) = if low < high {
        (low, high)
    } else {
        (50.0, 66.0)
    };
    Axis::linear((low - 0.3).floor(), (high + 0.7).ceil().max(low + 8.0))
}

/// Width of a digit of a tick's label with room around it, px.
const DIGIT_PX: f64 = 6.5;
/// How far a label at the end of the axis reaches beyond it, px.
const OUTWARDS_PX: f64 = 8.0;

fn axes(scene: &mut Scene, labels: &Labels, plane: &Plane) {
    let rect = plane.rect;
    let about = (rect.height() / 34.0).clamp(4.0, 12.0) as usize;
    for tick in plane.y.ticks(about, Shown::SAME) {
        frame::level_line(scene, tick.value);
        let row = plane.y_px(tick.value);
        if row > rect.top + 13.0 {
            scene.label(frame::tick_label(
                px(rect.left - 8.0, row),
                Anchor::End,
                tick.label,
            ));
        }
    }
    scene.label(
        Label::new(px(rect.left - 8.0, rect.top), Anchor::End, "HRC").styled(
            Ink::Ink3,
            11.0,
            Weight::Text,
        ),
    );
    frame::base_line(scene);
    let mut ticks = plane.x.ticks(6, labels.shown());
    let Some(last) = ticks.pop() else { return };
    let near_end = plane.x_px(last.value) > rect.right - 12.0;
    let anchor = if near_end {
        Anchor::End
    } else {
        Anchor::Middle
    };
    let text = format!("{}{NBSP}{}", last.label, labels.temperature_unit);
    let long_px = DIGIT_PX * text.chars().count() as f64;
    let reach_px = if near_end {
        long_px - OUTWARDS_PX
    } else {
        0.5 * long_px
    };
    let free_to_px = plane.x_px(last.value) - reach_px;
    for tick in ticks {
        let ends_px = plane.x_px(tick.value) + 0.5 * DIGIT_PX * tick.label.chars().count() as f64;
        // On a narrow chart the one before the last would run into its unit.
        let label = (ends_px < free_to_px).then_some(tick.label);
        bottom_tick(scene, plane, tick.value, Anchor::Middle, label);
    }
    bottom_tick(scene, plane, last.value, anchor, Some(text));
}

fn bottom_tick(scene: &mut Scene, plane: &Plane, value: f64, anchor: Anchor, text: Option<String>) {
    let (column, bottom) = (plane.x_px(value), plane.rect.bottom);
    scene.stroke(
        px(column, bottom),
        px(column, bottom + 4.0),
        frame::axis_pen(),
    );
    let outwards = if anchor == Anchor::End {
        OUTWARDS_PX
    } else {
        0.0
    };
    if let Some(text) = text {
        let place = px(column + outwards, bottom + 11.0);
        scene.label(frame::tick_label(place, anchor, text));
    }
}

fn ranges(scene: &mut Scene, temper: &TemperData, labels: &Labels, plane: &Plane) {
    let levels = [plane.y.low(), plane.y.high()];
    if let Some(range) = temper.embrittling_c {
        scene.pattern(
            frame::block(range, levels),
            Pattern::Hatch,
            Fill::new(Ink::Hatch),
        );
        let seen = range.map(|c| plane.x.hold(c));
        if plane.x_px(seen[1]) - plane.x_px(seen[0]) > 24.0 {
            let middle = 0.5 * (plane.x_px(seen[0]) + plane.x_px(seen[1]));
            let text = format!(
                "{}–{}",
                labels.degrees(range[0]),
                labels.temperature(range[1])
            );
            let label = Label::new(
                px(middle, plane.rect.top),
                Anchor::Middle,
                texts::EMBRITTLING,
            )
            .styled(Ink::Hatch, 12.0, Weight::Strong)
            .then(text, Ink::Hatch, 11.0, Weight::Text)
            .grounded(Ink::Sheet);
            let spots = [18.0, 44.0, 70.0, plane.rect.height() - 28.0].map(|drop| Spot {
                at: px(middle, plane.rect.top + drop),
                offset_px: [0.0, 0.0],
                anchor: Anchor::Middle,
            });
            scene.label(label.at_spots(spots.to_vec(), Rank::Boundary));
        }
    }
    if let Some([low, high]) = temper.target_hrc {
        scene.area(
            frame::level_band(plane, [low, high]),
            Fill::thin(Ink::Mark, 0.11),
        );
        let text = texts::target(&fixed(low, 0), &fixed(high, 0));
        let left = plane.rect.left + 5.0;
        let right = plane.rect.right - 5.0;
        let spots = [
            (left, low, 13.0, Anchor::Start),
            (left, high, -5.0, Anchor::Start),
            (right, high, -5.0, Anchor::End),
            (right, low, 13.0, Anchor::End),
        ]
        .map(|(x, level, drop, anchor)| Spot {
            at: px(x, plane.y_px(level)),
            offset_px: [0.0, drop],
            anchor,
        });
        scene.label(
            Label::new(px(left, 0.0), Anchor::Start, text)
                .styled(Ink::Ink2, 11.5, Weight::Text)
                .halo(Ink::Sheet)
                .at_spots(spots.to_vec(), Rank::Boundary),
        );
    }
}

fn curve(scene: &mut Scene, temper: &TemperData) {
    let upper = temper
        .curve
        .iter()
        .map(|p| [p.temperature_c, p.range_hrc[1]]);
    let lower = temper
        .curve
        .iter()
        .rev()
        .map(|p| [p.temperature_c, p.range_hrc[0]]);
    scene.area(upper.chain(lower).collect(), Fill::thin(Ink::Ink, 0.13));
    scene.curve(
        temper
            .curve
            .iter()
            .map(|p| [p.temperature_c, p.hrc])
            .collect(),
        Pen::new(Ink::Ink, 2.25),
    );
}

fn oxide_bar(scene: &mut Scene, temper: &TemperData, plane: &Plane) {
    let rect = plane.rect;
    let bar = Rect::new(
        rect.left,
        rect.bottom + 21.0,
        rect.right,
        rect.bottom + 29.0,
    );
    scene.shape(
        bar.corners().map(|[x, y]| px(x, y)).to_vec(),
        Fill::new(Ink::Steel),
    );
    let stops: Vec<(f64, Fill)> = oxide::COLOURS
        .iter()
        .map(|(c, rgb, _)| (plane.x_px(*c), Fill::new(Paint::Own(*rgb))))
        .filter(|(column, _)| (rect.left..=rect.right).contains(column))
        .collect();
    if let (Some(first), Some(last)) = (stops.first(), stops.last()) {
        let part = Rect::new(first.0, bar.top, last.0, bar.bottom);
        scene.add(Mark::Ramp(Ramp {
            area: part.corners().to_vec(),
            downwards: false,
            stops,
        }));
    }
    let row = rect.bottom + 36.0;
    let mut free = f64::NEG_INFINITY;
    let words = [
        (rect.left, names::BRIGHT, Anchor::Start),
        (plane.x_px(212.0), names::STRAW, Anchor::Middle),
        (plane.x_px(257.0), names::BROWN, Anchor::Middle),
        (plane.x_px(305.0), names::BLUE, Anchor::Middle),
        (rect.right, names::GREY, Anchor::End),
    ];
    for (column, word, anchor) in words {
        let width = face::width_px(word, 11.0, Weight::Text);
        let left = match anchor {
            Anchor::Start => column,
            Anchor::Middle => column - 0.5 * width,
            Anchor::End => column - width,
        };
        if left > free && left + width < rect.right + 1.0 {
            scene.label(frame::tick_label(px(column, row), anchor, word.to_owned()));
            free = left + width + 4.0;
        }
    }
    let column = plane.x_px(plane.x.hold(temper.temper_c));
    scene.shape(
        vec![
            px(column, bar.top),
            px(column - 4.0, bar.top - 5.0),
            px(column + 4.0, bar.top - 5.0),
        ],
        Fill::new(Ink::Mark),
    );
}

fn pointer(scene: &mut Scene, temper: &TemperData, plane: &Plane) {
    let here = [plane.x.hold(temper.temper_c), plane.y.hold(temper.hrc)];
    let pen = Pen::new(Ink::Mark, 1.0);
    scene.guide(
        vec![[here[0], plane.y.low()], [here[0], plane.y.high()]],
        pen,
    );
    scene.guide(vec![[plane.x.low(), here[1]], here], pen);
    let [column, row] = plane.to_px(here);
    let above = row - plane.rect.top > 44.0;
    let tag_row = if above { row - 30.0 } else { row + 30.0 };
    scene.handles.push(Handle {
        at_px: [column, row],
        tag: Some(Rect::new(
            column - 27.0,
            tag_row - 10.0,
            column + 27.0,
            tag_row + 10.0,
        )),
        moves: Some(Moves::Across),
        core: oxide::oxide_srgb(temper.temper_c).map_or(Ink::Steel.into(), Paint::Own),
    });
    let spots = [
        ([22.0, -7.0], Anchor::Start),
        ([22.0, 16.0], Anchor::Start),
        ([-22.0, 20.0], Anchor::End),
        ([-22.0, -8.0], Anchor::End),
    ]
    .map(|(offset_px, anchor)| Spot {
        at: data(here[0], here[1]),
        offset_px,
        anchor,
    });
    scene.label(
        Label::new(px(0.0, 0.0), Anchor::Start, fixed(temper.hrc, 1))
            .styled(Ink::Ink, 14.0, Weight::Name)
            .halo(Ink::Sheet)
            .at_spots(spots.to_vec(), Rank::Margin),
    );
}
