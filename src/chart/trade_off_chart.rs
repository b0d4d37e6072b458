//! Hardness against toughness: of all routes those that none other beats in both.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Ink, Paint};
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Handle, Label, Mark, Pen, Scene, data, px};
use recalesce_texts::charts::compare as texts;

/// A route on the chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TradeOffPoint {
    /// Hardness after the last step, HRC.
    pub hrc: f64,
    /// Points for toughness: an order, not a quantity.
    pub toughness_points: f64,
}

/// The least width of the axis of hardness, HRC.
const LEAST_SPAN_HRC: f64 = 6.0;
/// Part of the range of points left free above and below.
const ROOM: f64 = 0.12;
/// Radius of a point, px.
const RADIUS_PX: f64 = 5.0;

/// The chart at a size in css px, the target shaded; none without a route. Each point has a handle,
/// in the order of the points.
pub fn trade_off_chart(
    points: &[TradeOffPoint],
    target_hrc: [f64; 2],
    size_px: [f64; 2],
) -> Option<Scene> {
    let first = points.first()?;
    let ends = |of: fn(&TradeOffPoint) -> f64, with: &[f64]| {
        let values = points.iter().map(of).chain(with.iter().copied());
        values.fold((of(first), of(first)), |(low, high), value| {
            (low.min(value), high.max(value))
        })
    };
    let (least, most) = ends(|point| point.hrc, &target_hrc);
    let short = (LEAST_SPAN_HRC - (most - least)).max(0.0);
    let (low_hrc, high_hrc) = (
        (least - 0.5 * short - 0.5).floor(),
        (most + 0.5 * short + 0.5).ceil(),
    );
    let (low, high) = ends(|point| point.toughness_points, &[]);
    let room = ROOM * (high - low).max(1.0);
    let [width, height] = size_px;
    let plane = Plane::new(
        Axis::linear(low_hrc, high_hrc),
        Axis::linear(low - room, high + room),
        Rect::new(16.0, 20.0, width - 12.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    let [from, to] = target_hrc;
    let (bottom, top) = (plane.y.low(), plane.y.high());
    scene.area(
        vec![[from, bottom], [to, bottom], [to, top], [from, top]],
        Fill::thin(Ink::Ink, 0.08),
    );
    frame::bottom_axis(&mut scene, plane.x.ticks(5, Shown::SAME), true);
    frame::base_line(&mut scene);
    frame::axis_title(&mut scene, "HRC");
    scene.label(
        Label::new(px(4.0, 9.0), Anchor::Start, texts::TOUGHER_UPWARDS).styled(
            Ink::Ink3,
            11.0,
            Weight::Text,
        ),
    );
    scene.label(
        Label::new(
            px(plane.x_px(0.5 * (from + to)), plane.rect.bottom - 8.0),
            Anchor::Middle,
            texts::TARGET,
        )
        .styled(Ink::Ink3, 11.0, Weight::Text),
    );
    let at = |point: &TradeOffPoint| [point.hrc, point.toughness_points];
    scene.guide(points.iter().map(at).collect(), Pen::new(Ink::Ink3, 1.25));
    for point in points {
        let meets = (from..=to).contains(&point.hrc);
        let (paint, rim) = if meets {
            (Ink::Mark, Ink::Sheet)
        } else {
            (Ink::Sheet, Ink::Mark)
        };
        scene.add(Mark::Dot {
            at: data(point.hrc, point.toughness_points),
            radius_px: RADIUS_PX,
            paint: paint.into(),
            rim: Some((rim.into(), 1.75)),
        });
        scene.handles.push(Handle {
            at_px: plane.to_px(at(point)),
            tag: None,
            moves: None,
            core: Paint::from(Ink::Mark),
        });
    }
    let meeting = points.iter().filter(|p| (from..=to).contains(&p.hrc));
    let (softest, hardest) = ends(|point| point.hrc, &[]);
    scene.summary = texts::trade_off(
        points.len(),
        [&fixed(softest, 1), &fixed(hardest, 1)],
        meeting.count(),
        [&fixed(from, 1), &fixed(to, 1)],
    );
    Some(scene)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_route_stands_inside_the_plane_and_the_tougher_one_higher() {
        let points =
            [(64.0, 1.0), (60.5, 4.0), (58.0, 9.0)].map(|(hrc, toughness_points)| TradeOffPoint {
                hrc,
                toughness_points,
            });
        let scene = trade_off_chart(&points, [60.0, 62.0], [360.0, 240.0]).unwrap();
        assert_eq!(scene.handles.len(), 3);
        for pair in scene.handles.windows(2) {
            let [[x0, y0], [x1, y1]] = [pair[0].at_px, pair[1].at_px];
            assert!(x1 < x0 && y1 < y0);
        }
        let holds = |handle: &Handle| scene.plane.rect.holds(handle.at_px);
        assert!(scene.handles.iter().all(holds));
        assert!(scene.summary.contains("3 routes") && scene.summary.contains("1 within"));
        assert!(trade_off_chart(&[], [60.0, 62.0], [360.0, 240.0]).is_none());
        assert!(trade_off_chart(&points[..1], [60.0, 62.0], [360.0, 240.0]).is_some());
    }
}
