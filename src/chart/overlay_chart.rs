//! What several routes do, on the same axes: one line each, told apart by its dashes and a number.

use super::axis::Axis;
use super::face::Weight;
use super::frame;
use super::ink::Ink;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Label, Pen, Rank, Scene, data};
use recalesce_texts::charts::compare as texts;

/// Most lines that can be told apart.
pub const MOST_LINES: usize = 6;

/// One line.
#[derive(Debug, Clone, PartialEq)]
pub struct OverlayLine {
    /// The number that stands at it.
    pub number: usize,
    /// What it is of.
    pub name: String,
    /// Its points, in the units shown, by rising abscissa.
    pub points: Vec<[f64; 2]>,
}

/// What the chart shows.
#[derive(Debug, Clone, PartialEq)]
pub struct OverlayData {
    /// What is told of them, for those who cannot see.
    pub title: String,
    /// Abscissa and ordinate, each with its unit.
    pub axes: [String; 2],
    /// Whether the abscissa goes by powers of ten.
    pub is_log: bool,
    /// The lines; those beyond [`MOST_LINES`] are left out.
    pub lines: Vec<OverlayLine>,
}

/// How each line is drawn: width and dashes.
const STYLES: [(f64, &[f64]); MOST_LINES] = [
    (2.5, &[]),
    (2.0, &[8.0, 3.0]),
    (2.0, &[2.0, 3.0]),
    (1.5, &[]),
    (2.0, &[12.0, 3.0, 2.0, 3.0]),
    (1.5, &[5.0, 5.0]),
];
/// Least abscissa of a plot by powers of ten: what comes before is drawn at its edge.
const LEAST_LOG: f64 = 0.1;
/// Part of the range left free above and below.
const ROOM: f64 = 0.06;

/// The chart at a size in css px; none without a line.
pub fn overlay_chart(shown: &OverlayData, size_px: [f64; 2]) -> Option<Scene> {
    let lines: Vec<&OverlayLine> = shown.lines.iter().take(MOST_LINES).collect();
    let points = || lines.iter().flat_map(|line| &line.points);
    points().next()?;
    let range = |axis: usize| {
        let values = points().filter_map(|point| point.get(axis)).copied();
        values
            .filter(|value| value.is_finite())
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                (low.min(value), high.max(value))
            })
    };
    let ((left, right), (low, high)) = (range(0), range(1));
    if !(left <= right && low <= high) {
        return None;
    }
    let room = ROOM * (high - low).max(1e-6 + 0.02 * high.abs());
    let [width, height] = size_px;
    let x = if shown.is_log {
        Axis::log10(LEAST_LOG, right.max(10.0 * LEAST_LOG))
    } else {
        Axis::linear(left, right.max(left + 1e-6))
    };
    let plane = Plane::new(
        x,
        Axis::linear(low - room, high + room),
        Rect::new(46.0, 20.0, width - 18.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::number_axes(&mut scene, shown.axes.each_ref().map(String::as_str));
    for (line, (width_px, dash)) in lines.iter().zip(STYLES) {
        let points: Vec<[f64; 2]> = line
            .points
            .iter()
            .map(|[x, y]| [plane.x.hold(*x), *y])
            .collect();
        let places: Vec<_> = [0.5, 0.35, 0.65, 0.8, 0.2, 0.95]
            .into_iter()
            .filter_map(|part| {
                let at = (part * points.len() as f64) as usize;
                points.get(at).map(|[x, y]| data(*x, *y))
            })
            .collect();
        scene.curve(points, Pen::new(Ink::Ink, width_px).dashed(dash));
        if let Some(&place) = places.first() {
            scene.label(
                Label::new(place, Anchor::Start, line.number.to_string())
                    .styled(Ink::Ink, 13.0, Weight::Strong)
                    .halo(Ink::Sheet)
                    .around(&places, 7.0, Rank::Main),
            );
        }
    }
    let names: Vec<String> = lines
        .iter()
        .map(|line| texts::overlay_line(line.number, &line.name))
        .collect();
    scene.summary = texts::overlay(&shown.title, &names);
    Some(scene)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(number: usize, points: &[[f64; 2]]) -> OverlayLine {
        OverlayLine {
            number,
            name: format!("route {number}"),
            points: points.to_vec(),
        }
    }

    #[test]
    fn each_line_has_its_number_and_all_share_the_axes() {
        let shown = OverlayData {
            title: "Cooling".to_owned(),
            axes: ["s".to_owned(), "°C".to_owned()],
            is_log: true,
            lines: vec![
                line(1, &[[0.0, 800.0], [5.0, 300.0], [60.0, 20.0]]),
                line(3, &[[0.0, 1000.0], [400.0, 500.0], [2000.0, 30.0]]),
            ],
        };
        let scene = overlay_chart(&shown, [420.0, 260.0]).unwrap();
        assert_eq!(scene.summary, "Cooling: 1, “route 1”; 3, “route 3”.");
        assert_eq!(scene.curves_px().len(), 2);
        let plane = scene.plane;
        assert!(plane.x.high() >= 2000.0 && plane.y.high() >= 1000.0);
        let many = OverlayData {
            lines: (1..=7)
                .map(|n| line(n, &[[1.0, 9.0], [2.0, 8.0]]))
                .collect(),
            ..shown.clone()
        };
        let many = overlay_chart(&many, [420.0, 260.0]).unwrap();
        assert_eq!(many.curves_px().len(), MOST_LINES);
        let none = OverlayData {
            lines: vec![line(1, &[])],
            ..shown
        };
        assert!(overlay_chart(&none, [420.0, 260.0]).is_none());
    }
}
