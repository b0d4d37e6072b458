//! While it soaks: carbon in solution, carbide left and grain, each in a lane of its own over time.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Constituent, Ink, Paint};
use super::labels::Labels;
use super::numbers::{NBSP, duration, fixed, with_unit};
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Handle, Label, Mark, Moves, Pen, Ramp, Scene, data, px};
use recalesce_texts::charts::soak as texts;

/// The state at a time of the soak.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HistoryPoint {
    /// Time at heat, s.
    pub time_s: f64,
    /// Carbon in austenite, wt %.
    pub carbon_wt: f64,
    /// Carbide left, volume fraction.
    pub carbide_volume_fraction: f64,
    /// ASTM grain number.
    pub grain_astm: f64,
}

/// What the lanes show.
#[derive(Debug, Clone, PartialEq)]
pub struct SoakHistoryData {
    /// From the start of the soak to the end of the axis, time rising.
    pub history: Vec<HistoryPoint>,
    /// The state at the chosen time.
    pub now: HistoryPoint,
    /// End of the axis, s.
    pub end_s: f64,
    /// Soak temperature, °C.
    pub soak_c: f64,
    /// Temperature of the core on the way there, `[time s, temperature °C]`, time rising to zero,
    /// where the soak begins.
    pub heating: Vec<[f64; 2]>,
}

struct Lane {
    name: &'static str,
    value: fn(&HistoryPoint) -> f64,
    /// The least span of its axis, so that noise does not look like news.
    span: f64,
    paint: Ink,
    pen: Pen,
    text: String,
}

/// Height of the ribbon that shows how the piece glows, px.
const RIBBON_PX: f64 = 5.0;
/// Room for values at the right, px.
const VALUES_PX: f64 = 64.0;
const LEFT_PX: f64 = 4.0;
const LANE_PX: f64 = 40.0;

/// The lanes at a width in css px; the height is 142 px or what is given, at least that.
pub fn soak_history(soak: &SoakHistoryData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let now = &soak.now;
    let lane_px = ((size_px[1] - 22.0) / 3.0).max(LANE_PX);
    let austenite = Constituent::Austenite.line();
    let carbide = Constituent::Carbide.line();
    let lanes = [
        Lane {
            name: texts::CARBON_DISSOLVED,
            value: |p| p.carbon_wt,
            span: 0.25,
            paint: austenite,
            pen: Pen::new(austenite, 2.0),
            text: with_unit(now.carbon_wt, 2, "%"),
        },
        Lane {
            name: Constituent::Carbide.name(),
            value: |p| 100.0 * p.carbide_volume_fraction,
            span: 6.0,
            paint: carbide,
            pen: Pen::new(carbide, 2.0),
            text: with_unit(
                100.0 * now.carbide_volume_fraction,
                carbide_decimals(now),
                "%",
            ),
        },
        Lane {
            name: texts::GRAIN_NUMBER,
            value: |p| p.grain_astm,
            span: 4.0,
            paint: Ink::Ink2,
            pen: Pen::new(Ink::Ink2, 2.0).dashed(&[4.0, 2.0]),
            text: format!("ASTM{NBSP}{}", fixed(now.grain_astm, 0)),
        },
    ];
    let right = size_px[0] - VALUES_PX;
    let start_s = soak.heating.first().map_or(0.0, |p| p[0]).min(0.0);
    let time = Axis::linear(start_s, soak.end_s);
    let planes: Vec<Plane> = lanes
        .iter()
        .enumerate()
        .map(|(i, lane)| {
            let top = i as f64 * lane_px;
            let rect = Rect::new(LEFT_PX, top + 13.0, right, top + lane_px - 1.0);
            Plane::new(time, lane_axis(soak, lane), rect)
        })
        .collect();
    let last = planes.last().copied().unwrap_or(Plane::new(
        time,
        Axis::linear(0.0, 1.0),
        Rect::new(LEFT_PX, 0.0, right, size_px[1] - 23.0),
    ));
    let mut scene = Scene::new(size_px, last);
    for (i, (lane, plane)) in lanes.iter().zip(&planes).enumerate() {
        scene.open(*plane);
        scene.area(
            frame::block([start_s, 0.0], [plane.y.low(), plane.y.high()]),
            Fill::thin(Ink::Grid, 0.6),
        );
        draw_lane(&mut scene, soak, lane, plane);
        if i < 2 {
            frame::level_line(&mut scene, plane.y.low());
        }
    }
    ribbon(&mut scene, soak, &last);
    bottom(&mut scene, soak, &last);
    // Dots come last, over the line of the chosen time.
    for (lane, plane) in lanes.iter().zip(&planes) {
        scene.open(*plane);
        scene.add(Mark::Dot {
            at: data(now.time_s, (lane.value)(now)),
            radius_px: 4.25,
            paint: lane.paint.into(),
            rim: Some((Ink::Sheet.into(), 1.5)),
        });
    }
    scene.label(
        Label::new(
            px(right + 10.0, 6.5),
            Anchor::Start,
            texts::at(&minutes(now.time_s)),
        )
        .styled(Ink::Ink2, 11.5, Weight::Text),
    );
    let column = last.x_px(last.x.hold(now.time_s));
    let row = last.rect.bottom;
    let beside = if column + 66.0 < right { 16.0 } else { -66.0 };
    scene.handles.push(Handle {
        at_px: [column, row],
        tag: Some(Rect::new(
            column + beside,
            row - 23.0,
            column + beside + 50.0,
            row - 3.0,
        )),
        moves: Some(Moves::Across),
        core: Paint::Named(Ink::Sheet),
    });
    scene.summary = texts::history(
        &minutes(now.time_s),
        &labels.temperature(soak.soak_c),
        &fixed(now.carbon_wt, 2),
        &fixed(100.0 * now.carbide_volume_fraction, carbide_decimals(now)),
        &fixed(now.grain_astm, 0),
    );
    scene
}

/// Decimals of a carbide content in per cent: as sentences tell it.
fn carbide_decimals(now: &HistoryPoint) -> usize {
    usize::from(now.carbide_volume_fraction < 0.0995)
}

fn minutes(time_s: f64) -> String {
    if time_s < 60.0 {
        duration(time_s)
    } else {
        let minutes = time_s / 60.0;
        let broken = (minutes - minutes.round()).abs() > 0.05 && minutes < 10.0;
        with_unit(minutes, usize::from(broken), "min")
    }
}

fn lane_axis(soak: &SoakHistoryData, lane: &Lane) -> Axis {
    let (low, high) = soak
        .history
        .iter()
        .map(lane.value)
        .chain([(lane.value)(&soak.now)])
        .filter(|v| v.is_finite())
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| {
            (l.min(v), h.max(v))
        });
    let spare = (lane.span - (high - low)).max(0.0);
    let margin = 0.12 * (high - low).max(lane.span);
    Axis::linear(low - 0.5 * spare - margin, high + 0.5 * spare + margin)
}

fn draw_lane(scene: &mut Scene, soak: &SoakHistoryData, lane: &Lane, plane: &Plane) {
    let top = plane.rect.top - 13.0;
    scene.label(
        Label::new(px(LEFT_PX, top + 6.5), Anchor::Start, lane.name).styled(
            Ink::Ink2,
            11.5,
            Weight::Text,
        ),
    );
    let points = soak
        .history
        .iter()
        .map(|p| [p.time_s, (lane.value)(p)])
        .collect();
    scene.curve(points, lane.pen);
    let row = 0.5 * (plane.rect.top + plane.rect.bottom);
    scene.label(
        Label::new(
            px(plane.rect.right + 10.0, row),
            Anchor::Start,
            lane.text.clone(),
        )
        .styled(Ink::Ink, 12.0, Weight::Name),
    );
}

/// How the core glows from going in to the end, along the axis of time.
fn ribbon(scene: &mut Scene, soak: &SoakHistoryData, plane: &Plane) {
    let ends = [[0.0, soak.soak_c], [soak.end_s, soak.soak_c]];
    let stops = soak
        .heating
        .iter()
        .chain(&ends)
        .map(|&[time_s, core_c]| (plane.x_px(time_s), Fill::new(frame::glow_paint(core_c))))
        .collect();
    let Rect {
        left,
        right,
        bottom,
        ..
    } = plane.rect;
    scene.add(Mark::Ramp(Ramp {
        area: Rect::new(left, bottom - RIBBON_PX, right, bottom)
            .corners()
            .to_vec(),
        downwards: false,
        stops,
    }));
}

fn bottom(scene: &mut Scene, soak: &SoakHistoryData, plane: &Plane) {
    let hours = soak.end_s > 3.0 * 3600.0;
    let (shown, unit) = if hours {
        (Shown::by(|s| s / 3600.0), "h")
    } else {
        (Shown::by(|s| s / 60.0), "min")
    };
    let mut ticks = plane.x.ticks(3, shown);
    if let Some(tick) = ticks.last_mut() {
        tick.label = format!("{}{NBSP}{unit}", tick.label);
    }
    frame::bottom_axis(scene, ticks, false);
    frame::base_line(scene);
    let column = plane.x_px(plane.x.hold(soak.now.time_s));
    scene.stroke(
        px(column, 4.0),
        px(column, plane.rect.bottom),
        Pen::new(Ink::Mark, 1.0),
    );
}
