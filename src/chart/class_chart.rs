//! Two numbers of many routes against each other.

use super::axis::Axis;
use super::frame;
use super::ink::{Ink, Paint};
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Handle, Mark, Scene, data};
use recalesce_texts::charts::compare as texts;

/// Part of the range left free on every side.
const ROOM: f64 = 0.08;
/// Part of a number below which a range of it is drawn no larger.
const LEAST_PART: f64 = 0.02;
/// Radius of a point, px.
const RADIUS_PX: f64 = 5.0;

/// The least range that is drawn with room about the values.
fn range(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    let (low, high) = values.fold(None, |range: Option<(f64, f64)>, value| {
        let (low, high) = range.unwrap_or((value, value));
        Some((low.min(value), high.max(value)))
    })?;
    let span = (high - low).max(LEAST_PART * high.abs()).max(1e-6);
    let middle = 0.5 * (low + high);
    Some((middle - (0.5 + ROOM) * span, middle + (0.5 + ROOM) * span))
}

/// The chart at a size in css px, of points `[across, upwards]` in the units shown; none without a point.
/// Each has a handle, in the order of the points; points that are not finite must be left out.
pub fn class_chart(
    points: &[[f64; 2]],
    [across, upwards]: [&str; 2],
    size_px: [f64; 2],
) -> Option<Scene> {
    let (left, right) = range(points.iter().map(|[x, _]| *x))?;
    let (low, high) = range(points.iter().map(|[_, y]| *y))?;
    let [width, height] = size_px;
    let plane = Plane::new(
        Axis::linear(left, right),
        Axis::linear(low, high),
        Rect::new(46.0, 20.0, width - 14.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::number_axes(&mut scene, [across, upwards]);
    for &[x, y] in points {
        scene.add(Mark::Dot {
            at: data(x, y),
            radius_px: RADIUS_PX,
            paint: Ink::Mark.into(),
            rim: Some((Ink::Sheet.into(), 1.75)),
        });
        scene.handles.push(Handle {
            at_px: plane.to_px([x, y]),
            tag: None,
            moves: None,
            core: Paint::from(Ink::Mark),
        });
    }
    let ends = |axis: usize| {
        let values = points.iter().map(|point| point[axis]);
        let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| {
            (l.min(v), h.max(v))
        });
        texts::range(&fixed(low, 2), &fixed(high, 2))
    };
    scene.summary = texts::class(upwards, across, points.len(), &ends(1), &ends(0));
    Some(scene)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_point_stands_inside_the_plane_in_its_order() {
        let points = [[800.0, 62.0], [830.0, 64.0], [830.0, 61.0]];
        let names = ["soak, °C", "hardness, HRC"];
        let scene = class_chart(&points, names, [420.0, 260.0]).unwrap();
        let at = |place: usize| scene.handles[place].at_px;
        assert_eq!(scene.handles.len(), 3);
        assert!(at(0)[0] < at(1)[0] && at(1)[1] < at(0)[1] && at(0)[1] < at(2)[1]);
        assert!(
            scene
                .handles
                .iter()
                .all(|h| scene.plane.rect.holds(h.at_px))
        );
        assert!(scene.summary.contains("3 routes: 61.00 to 64.00"));
        assert!(class_chart(&points[..1], names, [420.0, 260.0]).is_some());
        assert!(class_chart(&[], names, [420.0, 260.0]).is_none());
    }
}
