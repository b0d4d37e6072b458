//! One number of a route while one input of it is taken through a range.

use super::axis::Axis;
use super::frame;
use super::ink::Ink;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Fill, Mark, Pen, Scene, data};
use recalesce_texts::charts::compare as texts;

/// What the chart shows, in the units shown.
#[derive(Debug, Clone, PartialEq)]
pub struct SweepData {
    /// The input with its unit.
    pub input: String,
    /// The number with its unit.
    pub output: String,
    /// Where the route stands.
    pub now: f64,
    /// Input and number; not a number where there is no outcome.
    pub points: Vec<[f64; 2]>,
    /// Input, and the ends of the band about the number; empty where none is known.
    pub band: Vec<[f64; 3]>,
}

/// Part of the range left free above and below.
const ROOM: f64 = 0.08;
/// Part of a number below which a range of it is drawn no larger.
const LEAST_PART: f64 = 0.02;

/// The chart at a size in css px; none without an outcome.
pub fn sweep_chart(sweep: &SweepData, size_px: [f64; 2]) -> Option<Scene> {
    let known: Vec<[f64; 2]> = sweep
        .points
        .iter()
        .copied()
        .filter(|[x, y]| x.is_finite() && y.is_finite())
        .collect();
    let first = known.first()?;
    let inputs = sweep.points.iter().map(|[x, _]| *x);
    let (left, right) = inputs.fold((first[0], first[0]), |(l, r), x| (l.min(x), r.max(x)));
    let range = |(l, h): (f64, f64), y: f64| (l.min(y), h.max(y));
    let (least, most) = known
        .iter()
        .fold((first[1], first[1]), |l, [_, y]| range(l, *y));
    let ends = sweep.band.iter().flat_map(|[_, low, high]| [*low, *high]);
    let (low, high) = ends.fold((least, most), range);
    let least_span = (LEAST_PART * high.abs()).max(1e-6);
    let short = (least_span - (high - low)).max(0.0);
    let room = ROOM * (high - low).max(least_span);
    let [width, height] = size_px;
    let plane = Plane::new(
        Axis::linear(left, right.max(left + 1e-6)),
        Axis::linear(low - 0.5 * short - room, high + 0.5 * short + room),
        Rect::new(46.0, 20.0, width - 14.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::number_axes(&mut scene, [&sweep.input, &sweep.output]);
    let below = sweep.band.iter().map(|[x, low, _]| [*x, *low]);
    let above = sweep.band.iter().rev().map(|[x, _, high]| [*x, *high]);
    scene.area(below.chain(above).collect(), Fill::thin(Ink::Ink, 0.1));
    scene.curve(sweep.points.clone(), Pen::new(Ink::Ink, 1.75));
    if let Some(value) = at(&sweep.points, sweep.now) {
        scene.guide(
            vec![[sweep.now, plane.y.low()], [sweep.now, plane.y.high()]],
            Pen::new(Ink::Mark, 1.0),
        );
        scene.add(Mark::Dot {
            at: data(sweep.now, value),
            radius_px: 4.5,
            paint: Ink::Mark.into(),
            rim: Some((Ink::Sheet.into(), 1.75)),
        });
    }
    let ends = [known.first()?, known.last()?]
        .map(|[x, y]| texts::number_at(&fixed(*y, 2), &fixed(*x, 1)));
    scene.summary = texts::sweep(
        &sweep.output,
        &sweep.input,
        ends.each_ref().map(String::as_str),
        &fixed(least, 2),
        &fixed(most, 2),
    );
    if let (Some(first), Some(last)) = (sweep.band.first(), sweep.band.last()) {
        let [first, last] = [first, last]
            .map(|[x, low, high]| texts::band_at(&fixed(*low, 2), &fixed(*high, 2), &fixed(*x, 1)));
        scene.summary += &texts::sweep_band(&first, &last);
    }
    Some(scene)
}

/// The number at an input, straight between two points; none beyond them and in a gap.
fn at(known: &[[f64; 2]], input: f64) -> Option<f64> {
    known.windows(2).find_map(|pair| {
        let [[x0, y0], [x1, y1]] = [pair[0], pair[1]];
        let part = (input - x0) / (x1 - x0);
        let value = y0 + part * (y1 - y0);
        ((0.0..=1.0).contains(&part) && value.is_finite()).then_some(value)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_route_stands_on_its_curve_and_gaps_are_left_out() {
        let sweep = SweepData {
            input: "soak temperature, °C".to_owned(),
            output: "hardness, HRC".to_owned(),
            now: 815.0,
            points: vec![[700.0, f64::NAN], [800.0, 60.0], [830.0, 63.0]],
            band: vec![[800.0, 55.0, 62.0], [830.0, 61.0, 65.0]],
        };
        assert_eq!(at(&sweep.points[1..], 815.0), Some(61.5));
        assert_eq!(at(&sweep.points, 750.0), None);
        assert_eq!(at(&sweep.points, 900.0), None);
        let scene = sweep_chart(&sweep, [420.0, 260.0]).unwrap();
        assert!(
            scene.summary.contains("60.00 at 800.0"),
            "{}",
            scene.summary
        );
        assert!(scene.plane.y.low() < 55.0 && scene.plane.y.high() > 65.0);
        let nothing = SweepData {
            points: vec![[700.0, f64::NAN]],
            ..sweep
        };
        assert!(sweep_chart(&nothing, [420.0, 260.0]).is_none());
    }
}
