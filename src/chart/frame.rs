//! The furniture of plots: grids, axis numbers, the dim-shop window, dimensions, small helpers that
//! several charts share.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::glow;
use super::ink::{Ink, Paint};
use super::labels::Labels;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, At, Coord, Fill, Label, Mark, Pen, Ramp, Scene, data, px};

/// Distance of temperature numbers from the plot; the dim-shop window stands between.
const WINDOW_GAP_PX: f64 = 14.0;

/// Level grid lines and numbers for a temperature axis in °C, with the dim-shop window.
pub(super) fn temperature_axis(scene: &mut Scene, labels: &Labels, about: usize) {
    let plane = scene.last_plane();
    for tick in plane.y.ticks(about, labels.shown()) {
        level_line(scene, tick.value);
        scene.label(tick_label(
            At {
                x: Coord::Px(plane.rect.left - WINDOW_GAP_PX),
                y: Coord::Data(tick.value),
            },
            Anchor::End,
            tick.label,
        ));
    }
    glow_window(scene, &plane);
}

/// A level grid line at a value of the y axis.
pub(super) fn level_line(scene: &mut Scene, value: f64) {
    let plane = scene.last_plane();
    scene.guide(
        vec![[plane.x.low(), value], [plane.x.high(), value]],
        Pen::new(Ink::Grid, 0.75),
    );
}

/// Numbers under the x axis with ticks; upright grid lines on wish.
pub(super) fn bottom_axis(scene: &mut Scene, ticks: Vec<super::axis::Tick>, upright: bool) {
    let plane = scene.last_plane();
    let bottom = plane.rect.bottom;
    for tick in ticks {
        let column = plane.x_px(tick.value);
        if upright {
            scene.guide(
                vec![[tick.value, plane.y.low()], [tick.value, plane.y.high()]],
                Pen::new(Ink::Grid, 0.75),
            );
        }
        scene.stroke(px(column, bottom), px(column, bottom + 4.0), axis_pen());
        scene.label(tick_label(
            px(column, bottom + 12.0),
            Anchor::Middle,
            tick.label,
        ));
    }
}

/// The line under a plot.
pub(super) fn base_line(scene: &mut Scene) {
    let Rect {
        left,
        right,
        bottom,
        ..
    } = scene.last_plane().rect;
    scene.stroke(px(left, bottom), px(right, bottom), axis_pen());
}

/// What the x axis shows, under its right end.
pub(super) fn axis_title(scene: &mut Scene, text: &str) {
    let rect = scene.last_plane().rect;
    scene.label(
        Label::new(px(rect.right, rect.bottom + 25.0), Anchor::End, text).styled(
            Ink::Ink3,
            11.0,
            Weight::Text,
        ),
    );
}

/// Axes of plain numbers: levels, the foot, and what stands across and upwards.
pub(super) fn number_axes(scene: &mut Scene, [across, upwards]: [&str; 2]) {
    let plane = scene.last_plane();
    for tick in plane.y.ticks(5, Shown::SAME) {
        level_line(scene, tick.value);
        let at = px(plane.rect.left - 5.0, plane.y_px(tick.value));
        scene.label(tick_label(at, Anchor::End, tick.label));
    }
    bottom_axis(scene, plane.x.ticks(6, Shown::SAME), true);
    base_line(scene);
    axis_title(scene, across);
    scene.label(Label::new(px(4.0, 9.0), Anchor::Start, upwards).styled(
        Ink::Ink3,
        11.0,
        Weight::Text,
    ));
}

/// Axis lines.
pub(super) fn axis_pen() -> Pen {
    Pen::new(Ink::Axis, 1.0)
}

/// A number of an axis.
pub(super) fn tick_label(at: At, anchor: Anchor, text: String) -> Label {
    Label::new(at, anchor, text).styled(Ink::Ink2, 11.0, Weight::Text)
}

/// Colour of steel at a temperature in the dim shop.
pub(super) fn glow_paint(temperature_c: f64) -> Paint {
    glow::glow(temperature_c).map_or(Ink::Shop.into(), Paint::Own)
}

/// The strip beside a temperature axis: what steel looks like at that height.
fn glow_window(scene: &mut Scene, plane: &Plane) {
    let strip = Rect::new(
        plane.rect.left - 9.0,
        plane.rect.top,
        plane.rect.left - 3.0,
        plane.rect.bottom,
    );
    glow_ramp(scene, plane, strip);
}

/// A strip of glow along the y axis of a plane.
pub(super) fn glow_ramp(scene: &mut Scene, plane: &Plane, strip: Rect) {
    let steps = (strip.height() / 4.0).ceil().clamp(2.0, 400.0);
    let stops = (0..=steps as usize)
        .map(|i| {
            let row = strip.top + strip.height() * i as f64 / steps;
            let [_, temperature_c] = plane.to_data([plane.rect.left, row]);
            (row, Fill::new(glow_paint(temperature_c)))
        })
        .collect();
    scene.add(Mark::Ramp(Ramp {
        area: strip.corners().to_vec(),
        downwards: true,
        stops,
    }));
}

/// A rectangle of the plane as corners in data units.
pub(super) fn block(x: [f64; 2], y: [f64; 2]) -> Vec<[f64; 2]> {
    vec![[x[0], y[0]], [x[1], y[0]], [x[1], y[1]], [x[0], y[1]]]
}

/// The whole width of a plane between two values of y.
pub(super) fn level_band(plane: &Plane, y: [f64; 2]) -> Vec<[f64; 2]> {
    block([plane.x.low(), plane.x.high()], y)
}

/// An arrow head with its tip at a pixel, pointing along a direction.
pub(super) fn arrow_head(
    scene: &mut Scene,
    tip: [f64; 2],
    direction: [f64; 2],
    paint: impl Into<Paint>,
) {
    let [dx, dy] = direction;
    let (back, half) = (6.0, 2.6);
    let foot = [tip[0] - back * dx, tip[1] - back * dy];
    scene.shape(
        vec![
            px(tip[0], tip[1]),
            px(foot[0] - half * dy, foot[1] + half * dx),
            px(foot[0] + half * dy, foot[1] - half * dx),
        ],
        Fill::new(paint),
    );
}

/// The y value of a curve of x, y pairs at an x, between points linearly. The curve's x must rise.
pub(super) fn height_at(curve: &[[f64; 2]], x: f64) -> Option<f64> {
    curve.windows(2).find_map(|pair| {
        let ([x0, y0], [x1, y1]) = (pair[0], pair[1]);
        (x0 <= x && x <= x1).then(|| {
            if x1 > x0 {
                y0 + (x - x0) / (x1 - x0) * (y1 - y0)
            } else {
                y0
            }
        })
    })
}

/// The x value where a curve of x, y pairs first passes a y.
pub(super) fn reach(curve: &[[f64; 2]], y: f64) -> Option<f64> {
    curve.windows(2).find_map(|pair| {
        let ([x0, y0], [x1, y1]) = (pair[0], pair[1]);
        let passes = (y0 - y) * (y1 - y) <= 0.0 && y0 != y1;
        passes.then(|| x0 + (y - y0) / (y1 - y0) * (x1 - x0))
    })
}

/// A place of a curve in data units at a y, if it gets there.
pub(super) fn place_at(curve: &[[f64; 2]], y: f64) -> Option<At> {
    reach(curve, y).map(|x| data(x, y))
}

/// A temperature axis that covers the usual range and what must be seen, rounded outwards to 50 K.
pub(super) fn covering(usual_c: [f64; 2], seen_c: impl IntoIterator<Item = f64>) -> Axis {
    let [mut low, mut high] = usual_c;
    for value in seen_c.into_iter().filter(|v| v.is_finite()) {
        low = low.min((value / 50.0).floor() * 50.0);
        high = high.max((value / 50.0).ceil() * 50.0);
    }
    Axis::linear(low.max(-273.15), high.min(2000.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn along_curves() {
        let curve = [[0.0, 900.0], [1.0, 700.0], [1.0, 600.0], [5.0, 200.0]];
        assert_eq!(reach(&curve, 800.0), Some(0.5));
        assert_eq!(reach(&curve, 100.0), None);
        assert_eq!(height_at(&curve, 3.0), Some(400.0));
        assert_eq!(height_at(&curve, 6.0), None);
        let axis = covering([-100.0, 1000.0], [1080.0, f64::NAN, -196.0]);
        assert_eq!((axis.low(), axis.high()), (-200.0, 1100.0));
    }
}
