//! The route on top of the bench: temperature against time, each step with its own time scale, the
//! glow of the steel under the curve, in the colours of the dim shop.

use super::axis::Axis;
use super::face::Weight;
use super::frame;
use super::glow;
use super::ink::{Ink, Paint};
use super::labels::Labels;
use super::numbers::NBSP;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, At, Coord, Fill, Label, Mark, Pen, Ramp, Rank, Scene, Spot, data, px};
use recalesce_texts::charts::route as texts;

/// A step of the route.
#[derive(Debug, Clone, PartialEq)]
pub struct RouteStep {
    /// Temperature of the steel, `[time s, temperature °C]` from the start of the step, time rising.
    pub points: Vec<[f64; 2]>,
    /// Share of the width against the other steps; 1 is usual.
    pub weight: f64,
    /// Whether its settings are open.
    pub selected: bool,
    /// A place to point out, such as the glow-back: time in s, words.
    pub note: Option<(f64, String)>,
}

/// What the strip shows.
#[derive(Debug, Clone, PartialEq)]
pub struct RouteData {
    /// In the order in which they are done.
    pub steps: Vec<RouteStep>,
    /// Where austenite begins on heating, °C.
    pub a1_c: f64,
}

/// The strip and where its blocks lie.
#[derive(Debug, Clone, PartialEq)]
pub struct RouteStrip {
    /// What to draw; its ground is [`Ink::Shop`].
    pub scene: Scene,
    /// Left and right edge of every block, px, for the buttons under them.
    pub blocks_px: Vec<[f64; 2]>,
}

/// Gap between blocks: the scale of time changes here, px.
const GAP_PX: f64 = 3.0;

/// Opacity of the glow at the bottom of the strip.
const FADED: f64 = 0.42;

/// The strip at a size in css px; below 90 px height without numbers and scale bars.
pub fn route_strip(route: &RouteData, labels: &Labels, size_px: [f64; 2]) -> RouteStrip {
    let [width, height] = size_px;
    let full = height >= 90.0;
    let (left, top, bottom) = if full {
        (40.0, 8.0, height - 2.0)
    } else {
        (4.0, 6.0, height - 2.0)
    };
    let y = strip_axis(route, full);
    let count = route.steps.len().max(1) as f64;
    let weight = |step: &RouteStep| {
        if step.weight > 0.0 {
            step.weight.min(20.0)
        } else {
            1.0
        }
    };
    let total: f64 = route.steps.iter().map(weight).sum::<f64>().max(1e-9);
    let room = (width - left - 4.0 - GAP_PX * (count - 1.0)).max(count);
    let whole = Plane::new(
        Axis::linear(0.0, 1.0),
        y,
        Rect::new(left, top, (width - 4.0).max(left + 1.0), bottom),
    );
    let mut scene = Scene::new(size_px, whole);
    if full {
        numbers(&mut scene, labels, &whole);
    }
    let mut blocks_px = Vec::new();
    let mut from = left;
    for step in &route.steps {
        let to = from + room * weight(step) / total;
        let end_s = step.points.last().map_or(1.0, |p| p[0]);
        let plane = Plane::new(
            Axis::linear(0.0, end_s),
            y,
            Rect::new(from, top, to, bottom),
        );
        scene.open(plane);
        block(&mut scene, step, &plane, labels, full);
        blocks_px.push([from, to]);
        from = to + GAP_PX;
    }
    scene.open(whole);
    a1(&mut scene, route, labels, &whole, full);
    scene.summary = summary(route, labels);
    RouteStrip { scene, blocks_px }
}

fn strip_axis(route: &RouteData, full: bool) -> Axis {
    let (low, high) = route
        .steps
        .iter()
        .flat_map(|step| &step.points)
        .map(|p| p[1])
        .filter(|c| c.is_finite())
        .fold((0.0_f64, 900.0_f64), |(l, h), c| (l.min(c), h.max(c)));
    // Room for the scale bars above the hottest point.
    let above = if full { 0.22 } else { 0.08 };
    Axis::linear(low - 35.0, high + above * (high - low))
}

fn numbers(scene: &mut Scene, labels: &Labels, plane: &Plane) {
    for tick in plane.y.ticks(3, labels.shown()) {
        let at = At {
            x: Coord::Px(plane.rect.left - 16.0),
            y: Coord::Data(tick.value),
        };
        scene.label(Label::new(at, Anchor::End, tick.label).styled(
            Ink::ShopInk2,
            11.0,
            Weight::Text,
        ));
    }
    let strip = Rect::new(
        plane.rect.left - 11.0,
        plane.rect.top,
        plane.rect.left - 5.0,
        plane.rect.bottom,
    );
    frame::glow_ramp(scene, plane, strip);
}

fn block(scene: &mut Scene, step: &RouteStep, plane: &Plane, labels: &Labels, full: bool) {
    let rect = plane.rect;
    let corners = rect.corners().map(|[x, y]| px(x, y)).to_vec();
    scene.shape(corners, Fill::new(Ink::ShopPlot));
    for tick in plane.y.ticks(3, labels.shown()) {
        let level = [plane.x.low(), plane.x.high()].map(|x| [x, tick.value]);
        scene.guide(level.to_vec(), Pen::new(Ink::ShopGrid, 0.75));
    }
    glow_columns(scene, step, plane);
    scene.guide(step.points.clone(), Pen::new(Ink::ShopInk, 1.75));
    if full {
        scale_bar(scene, plane);
    }
    if let Some((time_s, words)) = &step.note
        && full
    {
        note(scene, step, *time_s, words);
    }
    if step.selected {
        let [a, b, c, d] = Rect::new(
            rect.left + 0.5,
            rect.top + 0.5,
            rect.right - 0.5,
            rect.bottom - 0.5,
        )
        .corners()
        .map(|[x, y]| px(x, y));
        for (from, to) in [(a, b), (b, c), (c, d), (d, a)] {
            scene.stroke(from, to, Pen::new(Ink::ShopMark, 1.5));
        }
    }
}

/// The area under the curve in the colours the steel has at each instant, fading downwards.
fn glow_columns(scene: &mut Scene, step: &RouteStep, plane: &Plane) {
    let hot = |p: &[f64; 2]| p[1] >= glow::FIRST_GLOW_C;
    if !step.points.iter().any(hot) {
        return;
    }
    let rect = plane.rect;
    let curve: Vec<[f64; 2]> = step.points.iter().map(|p| plane.to_px(*p)).collect();
    let mut area = curve.clone();
    area.push([curve.last().map_or(rect.right, |p| p[0]), rect.bottom]);
    area.push([curve.first().map_or(rect.left, |p| p[0]), rect.bottom]);
    let columns = (rect.width() / 3.0).ceil().clamp(2.0, 500.0) as usize;
    let mut stops = Vec::with_capacity(columns + 1);
    let mut next = 0;
    for i in 0..=columns {
        let x = rect.left + rect.width() * i as f64 / columns as f64;
        while curve.get(next + 1).is_some_and(|p| p[0] < x) {
            next += 1;
        }
        let row = match (curve.get(next), curve.get(next + 1)) {
            (Some(a), Some(b)) if b[0] > a[0] => {
                a[1] + ((x - a[0]) / (b[0] - a[0])).clamp(0.0, 1.0) * (b[1] - a[1])
            }
            (Some(a), _) => a[1],
            (None, _) => rect.bottom,
        };
        let [_, temperature_c] = plane.to_data([x, row]);
        let fill = glow::glow(temperature_c).map_or(Fill::thin(Paint::Own([0; 3]), 0.0), |rgb| {
            Fill::new(Paint::Own(rgb))
        });
        stops.push((x, fill));
    }
    scene.add(Mark::Ramp(Ramp {
        area: area.clone(),
        downwards: false,
        stops,
    }));
    scene.add(Mark::Ramp(Ramp {
        area,
        downwards: true,
        stops: vec![
            (rect.top, Fill::thin(Ink::ShopPlot, 0.0)),
            (rect.bottom, Fill::thin(Ink::ShopPlot, 1.0 - FADED)),
        ],
    }));
}

/// A letter of a scale bar's time at the most, px.
const LETTER_PX: f64 = 5.2;

/// A round time whose bar is easy to read: the longest that takes no more than a third of the block. None
/// where it has no room beside its words.
fn scale_bar(scene: &mut Scene, plane: &Plane) {
    const ROUND: [(f64, &str); 16] = [
        (0.1, "0.1 s"),
        (0.5, "0.5 s"),
        (1.0, "1 s"),
        (2.0, "2 s"),
        (5.0, "5 s"),
        (10.0, "10 s"),
        (30.0, "30 s"),
        (60.0, "1 min"),
        (120.0, "2 min"),
        (300.0, "5 min"),
        (600.0, "10 min"),
        (1200.0, "20 min"),
        (1800.0, "30 min"),
        (3600.0, "1 h"),
        (7200.0, "2 h"),
        (14400.0, "4 h"),
    ];
    let rect = plane.rect;
    let px_per_s = rect.width() / (plane.x.high() - plane.x.low());
    let most = (0.34 * rect.width()).min(52.0);
    let Some((time_s, text)) = ROUND.iter().rev().find(|(s, _)| s * px_per_s <= most) else {
        return;
    };
    let (right, row) = (rect.right - 6.0, rect.top + 9.0);
    let left = right - time_s * px_per_s;
    if left - 4.0 - LETTER_PX * text.len() as f64 <= rect.left {
        return;
    }
    let pen = Pen::new(Ink::ShopInk2, 1.0);
    scene.stroke(px(left, row), px(right, row), pen);
    for column in [left, right] {
        scene.stroke(px(column, row - 3.0), px(column, row + 3.0), pen);
    }
    let text = text.replace(' ', &NBSP.to_string());
    scene.label(Label::new(px(left - 4.0, row), Anchor::End, text).styled(
        Ink::ShopInk2,
        11.0,
        Weight::Text,
    ));
}

fn note(scene: &mut Scene, step: &RouteStep, time_s: f64, words: &str) {
    let Some(temperature_c) = frame::height_at(&step.points, time_s) else {
        return;
    };
    let at = data(time_s, temperature_c);
    let spots = [[10.0, -3.0], [12.0, -12.0], [12.0, 22.0], [16.0, -22.0]].map(|offset_px| Spot {
        at,
        offset_px,
        anchor: Anchor::Start,
    });
    let label = Label::new(at, Anchor::Start, words)
        .styled(Ink::ShopInk2, 11.0, Weight::Text)
        .at_spots(spots.to_vec(), Rank::Other)
        .led();
    scene.label(label);
}

fn a1(scene: &mut Scene, route: &RouteData, labels: &Labels, plane: &Plane, full: bool) {
    scene.guide(
        vec![[plane.x.low(), route.a1_c], [plane.x.high(), route.a1_c]],
        Pen::new(Ink::ShopInk2, 1.0).dashed(&[1.0, 4.0]),
    );
    if full {
        let at = px(plane.rect.right - 4.0, plane.y_px(route.a1_c) - 8.0);
        let text = format!("A_{{1}}{NBSP}{}", labels.temperature(route.a1_c));
        scene.label(Label::new(at, Anchor::End, text).styled(Ink::ShopInk2, 11.0, Weight::Text));
    }
}

fn summary(route: &RouteData, labels: &Labels) -> String {
    let hottest = route
        .steps
        .iter()
        .flat_map(|step| &step.points)
        .map(|p| p[1])
        .fold(f64::NEG_INFINITY, f64::max);
    let count = route.steps.len();
    if count == 0 || !hottest.is_finite() {
        return texts::NO_STEPS.to_owned();
    }
    texts::summary(count, &labels.temperature(hottest))
}

#[cfg(test)]
mod tests {
    use super::super::face;
    use super::*;

    /// Words of the scale bars of a strip of some steps, with where each begins and its block does, px.
    fn scale_bars(steps: usize, end_s: f64) -> Vec<[f64; 2]> {
        let step = RouteStep {
            points: vec![[0.0, 20.0], [end_s, 850.0]],
            weight: 1.0,
            selected: false,
            note: None,
        };
        let route = RouteData {
            steps: vec![step; steps],
            a1_c: 730.0,
        };
        let strip = route_strip(&route, &Labels::METRIC, [732.0, 116.0]);
        let marks = strip
            .scene
            .panels
            .iter()
            .flat_map(|panel| panel.marks.iter().map(move |mark| (panel, mark)));
        marks
            .filter_map(|(panel, mark)| {
                let Mark::Label(label) = mark else {
                    return None;
                };
                let words = &label.lines.first()?.text;
                let Coord::Px(right) = label.spots.first()?.at.x else {
                    return None;
                };
                let is_time = words.ends_with(['s', 'n', 'h']);
                let width = face::width_px(words, 11.0, Weight::Text);
                is_time.then_some([right - width, panel.plane.rect.left])
            })
            .collect()
    }

    #[test]
    fn no_scale_bar_reaches_into_the_block_before() {
        assert_eq!(scale_bars(4, 900.0).len(), 4);
        assert_eq!(scale_bars(15, 4000.0).len(), 0);
        for steps in 1..20 {
            for end_s in [0.9, 40.0, 900.0, 4000.0, 40_000.0] {
                let bars = scale_bars(steps, end_s);
                assert!(
                    bars.iter().all(|[left, block]| left > block),
                    "{steps} steps of {end_s} s: {bars:?}"
                );
            }
        }
    }
}
