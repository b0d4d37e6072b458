//! A quenchant of the user's own: the probe as measured and as computed, and the heat transfer that
//! was found. Both charts have the temperature upwards, so that one can be read beside the other.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::Ink;
use super::labels::Labels;
use super::numbers::{NBSP, fixed};
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Mark, Pattern, Pen, Rank, Scene, data, px};
use recalesce_texts::charts::own_quenchant as texts;

/// A reading beside what is computed for its time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProbePoint {
    /// Time since entry, s.
    pub time_s: f64,
    /// As measured in the centre of the probe, °C.
    pub measured_c: f64,
    /// As computed, °C.
    pub computed_c: f64,
}

/// A point of the heat-transfer curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatTransferPoint {
    /// Temperature of the surface, °C.
    pub surface_c: f64,
    /// Coefficient, W/m²K.
    pub h_w_m2k: f64,
    /// It lies within this factor either way.
    pub band_factor: f64,
    /// Whether the test says little about it by itself.
    pub is_weak: bool,
}

/// Temperatures that both charts show at least, °C.
const RANGE_C: [f64; 2] = [0.0, 900.0];
/// Dots of readings are not nearer than this, px: fifty thousand would be a smear.
const DOTS_APART_PX: f64 = 7.0;
/// Room beside the curve, as a factor.
const ROOM: f64 = 1.12;
/// Coefficients that the axis names, W/m²K.
const NAMED_H: [f64; 10] = [
    50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10_000.0, 20_000.0, 50_000.0,
];

fn plot(size_px: [f64; 2]) -> Rect {
    let [width, height] = size_px;
    Rect::new(46.0, 8.0, width - 12.0, height - 34.0)
}

/// The probe as measured and as computed, at a size in css px. Times rise.
pub fn probe_test(points: &[ProbePoint], labels: &Labels, size_px: [f64; 2]) -> Scene {
    let end_s = points.iter().fold(1.0_f64, |end, p| end.max(p.time_s));
    let plane = Plane::new(
        Axis::linear(0.0, end_s),
        frame::covering(RANGE_C, points.iter().map(|p| p.measured_c)),
        plot(size_px),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::temperature_axis(&mut scene, labels, 5);
    let mut ticks = plane.x.ticks(4, Shown::SAME);
    if let Some(last) = ticks.last_mut() {
        last.label = format!("{}{NBSP}s", last.label);
    }
    frame::bottom_axis(&mut scene, ticks, true);
    frame::base_line(&mut scene);
    frame::axis_title(&mut scene, texts::PROBE_TIME);
    let computed: Vec<[f64; 2]> = points.iter().map(|p| [p.time_s, p.computed_c]).collect();
    let place = frame::place_at(&computed, 0.5 * (RANGE_C[0] + RANGE_C[1]));
    scene.curve(computed, Pen::new(Ink::Ink, 2.25));
    let mut last_px: Option<[f64; 2]> = None;
    for point in points {
        let here_px = plane.to_px([point.time_s, point.measured_c]);
        let is_clear =
            last_px.is_none_or(|[x, y]| (here_px[0] - x).hypot(here_px[1] - y) >= DOTS_APART_PX);
        if is_clear {
            scene.add(Mark::Dot {
                at: data(point.time_s, point.measured_c),
                radius_px: 2.25,
                paint: Ink::Sheet.into(),
                rim: Some((Ink::Ink2.into(), 1.0)),
            });
            last_px = Some(here_px);
        }
    }
    if let Some(place) = place {
        let words = Label::new(place, Anchor::Start, texts::DOTS)
            .then(texts::LINE, Ink::Ink, 12.0, Weight::Strong)
            .halo(Ink::Sheet);
        scene.label(words.around(&[place], 12.0, Rank::Main));
    }
    let largest_k = points.iter().fold(0.0_f64, |most, p| {
        most.max((p.computed_c - p.measured_c).abs())
    });
    scene.summary = texts::probe(&fixed(end_s, 0), &fixed(largest_k, 1));
    scene
}

/// What the chart of the heat transfer shows.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatTransferData {
    /// The curve, temperatures rising.
    pub points: Vec<HeatTransferPoint>,
    /// Temperature of the bath, °C.
    pub bath_c: f64,
    /// Whether it comes from readings, which end where the curve ends.
    pub is_measured: bool,
}

/// The heat-transfer curve with its band, at a size in css px.
pub fn heat_transfer(found: &HeatTransferData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let points = &found.points;
    let (least, most) = points.iter().fold((f64::MAX, f64::MIN), |(low, high), p| {
        (
            low.min(p.h_w_m2k / p.band_factor),
            high.max(p.h_w_m2k * p.band_factor),
        )
    });
    let plane = Plane::new(
        Axis::log10(least.max(40.0) / ROOM, most.min(1e5) * ROOM),
        frame::covering(RANGE_C, points.iter().map(|p| p.surface_c)),
        plot(size_px),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::temperature_axis(&mut scene, labels, 5);
    let inside = |h: &f64| (plane.x.low()..=plane.x.high()).contains(h);
    let ticks = NAMED_H.into_iter().filter(inside);
    let ticks = ticks.map(|value| super::axis::Tick {
        value,
        label: fixed(value, 0),
    });
    frame::bottom_axis(&mut scene, ticks.collect(), true);
    frame::base_line(&mut scene);
    frame::axis_title(&mut scene, texts::HEAT_TRANSFER);
    if found.is_measured {
        unseen(&mut scene, points, &plane);
    }
    band(&mut scene, points);
    let at = |p: &HeatTransferPoint| [p.h_w_m2k, p.surface_c];
    for pair in points.windows(2) {
        let pen = Pen::new(Ink::Ink, 2.25);
        let is_weak = pair.iter().any(|p| p.is_weak);
        let pen = if is_weak {
            pen.dashed(&[2.0, 3.0])
        } else {
            pen
        };
        scene.curve(pair.iter().map(at).collect(), pen);
    }
    name_parts(&mut scene, points);
    let peak = points.iter().max_by(|a, b| a.h_w_m2k.total_cmp(&b.h_w_m2k));
    scene.summary = peak.map_or_else(String::new, |peak| {
        texts::heat_transfer(
            &labels.temperature(found.bath_c),
            &fixed(peak.h_w_m2k, 0),
            &labels.temperature(peak.surface_c),
        )
    });
    scene
}

/// Says which part is which, where there are both.
fn name_parts(scene: &mut Scene, points: &[HeatTransferPoint]) {
    let known = points.iter().filter(|p| !p.is_weak);
    let best = known.min_by(|a, b| a.band_factor.total_cmp(&b.band_factor));
    let weak: Vec<&HeatTransferPoint> = points.iter().filter(|p| p.is_weak).collect();
    let (Some(best), Some(middle)) = (best, weak.get(weak.len() / 2)) else {
        return;
    };
    for (point, words) in [(best, texts::WELL_DETERMINED), (*middle, texts::WEAKLY)] {
        let place = data(point.h_w_m2k, point.surface_c);
        scene.label(
            Label::new(place, Anchor::Start, words)
                .styled(Ink::Ink2, 12.0, Weight::Text)
                .halo(Ink::Sheet)
                .around(&[place], 14.0, Rank::Main),
        );
    }
}

/// What lies below the coldest and above the hottest point: no reading came from there.
fn unseen(scene: &mut Scene, points: &[HeatTransferPoint], plane: &Plane) {
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        return;
    };
    for range in [
        [plane.y.low(), first.surface_c],
        [last.surface_c, plane.y.high()],
    ] {
        let [bottom_px, top_px] = range.map(|c| plane.y_px(c));
        if bottom_px - top_px < 2.0 {
            continue;
        }
        let fill = Fill::thin(Ink::Ink3, 0.5);
        scene.pattern(frame::level_band(plane, range), Pattern::Hatch, fill);
        if bottom_px - top_px > 14.0 {
            let middle = px(plane.rect.right - 8.0, 0.5 * (bottom_px + top_px));
            scene.label(
                Label::new(middle, Anchor::End, texts::NOT_SEEN)
                    .styled(Ink::Ink2, 11.0, Weight::Text)
                    .grounded(Ink::Sheet),
            );
        }
    }
}

fn band(scene: &mut Scene, points: &[HeatTransferPoint]) {
    let low = points
        .iter()
        .map(|p| [p.h_w_m2k / p.band_factor, p.surface_c]);
    let high = points
        .iter()
        .rev()
        .map(|p| [p.h_w_m2k * p.band_factor, p.surface_c]);
    scene.area(low.chain(high).collect(), Fill::thin(Ink::Ink, 0.13));
}
