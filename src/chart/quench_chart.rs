//! The quench: cooling curves over transformation curves, logarithmic time against temperature.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::numbers::{NBSP, duration};
use super::plane::{Plane, Rect};
use super::quench_margin::{Margin, dimension};
use super::scene::{
    Anchor, At, CLEAR_PX, Coord, Fill, Handle, Label, Mark, Moves, Pattern, Pen, Rank, Scene, Spot,
    px,
};
use crate::numeric::order;
use recalesce_texts::charts::quench as texts;

/// The transformation curves of a product, `[time s, temperature °C]`.
#[derive(Debug, Clone, PartialEq)]
pub struct ProductCurves {
    /// What forms.
    pub product: Constituent,
    /// Where 1 % has formed.
    pub start: Vec<[f64; 2]>,
    /// Where 99 % has formed.
    pub finish: Vec<[f64; 2]>,
    /// The earliest point of the start curve.
    pub nose: [f64; 2],
}

/// What a cooling curve belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// The place the verdict is about.
    Main,
    /// The surface.
    Surface,
    /// The edge of a blade.
    Edge,
    /// The same place in the next slower medium.
    Slower,
}

/// A cooling curve, `[time s, temperature °C]` from leaving the furnace, time rising.
#[derive(Debug, Clone, PartialEq)]
pub struct CoolingTrace {
    /// What it belongs to.
    pub role: Role,
    /// What it is called on the chart.
    pub name: String,
    /// The curve.
    pub points: Vec<[f64; 2]>,
}

/// Where the main curve goes into a later bath.
#[derive(Debug, Clone, PartialEq)]
pub struct BathChange {
    /// Time from leaving the furnace, s.
    pub time_s: f64,
    /// Temperature of the main curve then, °C.
    pub temperature_c: f64,
    /// The bath that it goes into.
    pub name: String,
}

/// What the chart shows.
#[derive(Debug, Clone, PartialEq)]
pub struct QuenchData {
    /// Transformation curves of what was dissolved.
    pub products: Vec<ProductCurves>,
    /// Cooling curves, the main one among them.
    pub cooling: Vec<CoolingTrace>,
    /// Where the main one changes the bath.
    pub changes: Vec<BathChange>,
    /// Martensite start, °C; none where the model gives none.
    pub ms_c: Option<f64>,
    /// Half martensite, °C.
    pub m50_c: Option<f64>,
    /// Nine tenths martensite, °C.
    pub m90_c: Option<f64>,
    /// Where austenite begins on heating, °C.
    pub a1_c: f64,
    /// Soak temperature, °C.
    pub soak_c: f64,
    /// Cold bath, °C.
    pub cold_c: Option<f64>,
    /// The margin at the nose.
    pub margin: Option<Margin>,
}

/// How far names keep from the main curve, px: a ring may stand at any place of it.
const PLACE_PX: f64 = 6.0;

/// The chart at a size in css px.
pub fn quench_chart(quench: &QuenchData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let seen = [
        quench.soak_c + 40.0,
        quench.cold_c.map_or(0.0, |c| c - 15.0),
    ];
    let y = frame::covering([-100.0, 1000.0], seen);
    let x = Axis::log10(0.1, last_decade_s(quench));
    let plane = Plane::new(x, y, Rect::new(46.0, 8.0, width - 46.0, height - 32.0));
    let mut scene = Scene::new(size_px, plane);
    frame::temperature_axis(&mut scene, labels, 5);
    frame::bottom_axis(&mut scene, plane.x.ticks(5, Shown::SAME), true);
    frame::axis_title(&mut scene, texts::TIME);
    frame::base_line(&mut scene);
    levels(&mut scene, quench, labels, &plane);
    products(&mut scene, quench, &plane);
    cooling(&mut scene, quench, labels, &plane);
    changes(&mut scene, quench, &plane);
    if let Some(margin) = &quench.margin {
        dimension(&mut scene, margin, labels, &plane);
    }
    scene.summary = summary(quench, labels);
    scene
}

/// The axis ends at a full decade that shows the nearest nose and the end of the main curve.
fn last_decade_s(quench: &QuenchData) -> f64 {
    let noses = quench.products.iter().map(|p| 20.0 * p.nose[0]);
    let arrival = quench
        .cooling
        .iter()
        .filter(|t| t.role == Role::Main)
        .filter_map(|trace| {
            let warm = quench.ms_c.unwrap_or(200.0).min(200.0);
            frame::reach(&trace.points, warm)
        });
    let latest = noses.fold(f64::INFINITY, f64::min).min(1e5);
    let latest = arrival.fold(latest, f64::max).clamp(900.0, 9e5);
    10f64.powf((latest.log10() - 1e-6).ceil())
}

fn levels(scene: &mut Scene, quench: &QuenchData, labels: &Labels, plane: &Plane) {
    let whole = |y: f64| vec![[plane.x.low(), y], [plane.x.high(), y]];
    scene.curve(
        whole(quench.a1_c),
        Pen::new(Ink::Axis, 1.0).dashed(&[1.0, 3.0]),
    );
    let beside = plane.rect.right + 5.0;
    let mut sides: Vec<(f64, Label)> = vec![(
        quench.a1_c,
        Label::new(px(beside, plane.y_px(quench.a1_c)), Anchor::Start, "A_{1}").styled(
            Ink::Ink2,
            12.0,
            Weight::Strong,
        ),
    )];
    if let Some(ms) = quench.ms_c {
        scene.area(
            frame::level_band(plane, [plane.y.low(), ms]),
            Fill::thin(Ink::PhMartensite, 0.07),
        );
    }
    let martensite = Constituent::Martensite.line();
    let lines = [
        ("Ms", quench.ms_c, Pen::new(martensite, 1.5)),
        (
            "M50",
            quench.m50_c,
            Pen::new(martensite, 1.0).dashed(&[4.0, 3.0]),
        ),
        (
            "M90",
            quench.m90_c,
            Pen::new(martensite, 1.0).dashed(&[4.0, 3.0]),
        ),
    ];
    for (name, level, pen) in lines {
        let Some(level) = level.filter(|c| (plane.y.low()..plane.y.high()).contains(c)) else {
            continue;
        };
        scene.curve(whole(level), pen);
        let text = format!("{name}{NBSP}{}", labels.degrees(level));
        let label = Label::new(px(beside, plane.y_px(level)), Anchor::Start, text);
        sides.push((level, label.styled(martensite, 11.0, Weight::Strong)));
    }
    // Names beside the plot keep their lines' order and stand apart.
    order::sort_by(&mut sides, |a, b| b.0.total_cmp(&a.0));
    let mut lowest = f64::NEG_INFINITY;
    for (level, label) in sides {
        let row = plane.y_px(level);
        let free = row.max(lowest + 12.5);
        lowest = free;
        scene.label(label.nudged(0.0, free - row));
    }
    if let Some(cold) = quench.cold_c {
        let (row, right) = (plane.y_px(cold), plane.rect.right);
        scene.stroke(
            px(right - 34.0, row),
            px(right, row),
            Pen::new(martensite, 2.5),
        );
        scene.label(
            Label::new(
                px(right - 38.0, row),
                Anchor::End,
                texts::cold_bath(&labels.degrees(cold)),
            )
            .styled(Ink::Ink2, 11.5, Weight::Text),
        );
    }
}

fn products(scene: &mut Scene, quench: &QuenchData, plane: &Plane) {
    for curves in &quench.products {
        let pattern = match curves.product {
            Constituent::Bainite => Some(Pattern::ThinSheaves),
            Constituent::Pearlite => Some(Pattern::ThinLamellae),
            _ => None,
        };
        let between: Vec<[f64; 2]> = curves
            .start
            .iter()
            .chain(curves.finish.iter().rev())
            .copied()
            .collect();
        let line = curves.product.line();
        match pattern {
            Some(pattern) => scene.pattern(between, pattern, Fill::new(line)),
            None => scene.area(between, Fill::thin(line, 0.07)),
        }
    }
    for curves in &quench.products {
        let line = curves.product.line();
        scene.curve(curves.start.clone(), Pen::new(line, 1.75));
        scene.curve(
            curves.finish.clone(),
            Pen::new(line, 1.25).dashed(&[7.0, 3.0]),
        );
        let spots = spots_beside_nose(curves, plane);
        scene.label(
            Label::new(px(0.0, 0.0), Anchor::Start, curves.product.name())
                .styled(line, 12.0, Weight::Strong)
                .halo(Ink::Sheet)
                .at_spots(spots, Rank::Boundary)
                .led(),
        );
    }
}

/// Inside the start curve, else outside of it, farther off with a leader.
fn spots_beside_nose(curves: &ProductCurves, plane: &Plane) -> Vec<Spot> {
    let [_, nose_c] = curves.nose;
    let reach_k = curves
        .start
        .iter()
        .map(|p| p[1] - nose_c)
        .fold(0.0, f64::max);
    let places = [
        0.1, -0.1, 0.25, -0.3, 0.45, -0.45, -0.6, 0.65, -0.75, -0.9, -1.05, -1.2,
    ]
    .map(|part| {
        let level = nose_c + part * reach_k.min(100.0);
        let first = curves
            .start
            .iter()
            .min_by(|a, b| (a[1] - level).abs().total_cmp(&(b[1] - level).abs()))
            .map_or(curves.nose, |p| *p);
        (plane.x_px(first[0]), level)
    });
    let spot = |(column, level): (f64, f64), offset_px: [f64; 2], anchor: Anchor| Spot {
        at: At {
            x: Coord::Px(column),
            y: Coord::Data(level),
        },
        offset_px,
        anchor,
    };
    let inside = places.iter().flat_map(|&(column, level)| {
        [9.0, 18.0, 32.0, 50.0, 65.0, 80.0, 95.0]
            .map(|gap| spot((column + gap, level), [0.0, 4.0], Anchor::Start))
    });
    let outside = [8.0, 30.0].into_iter().flat_map(|gap| {
        let beside = move |&place| spot(place, [-gap, 4.0], Anchor::End);
        places.iter().map(beside)
    });
    inside.chain(outside).collect()
}

fn cooling(scene: &mut Scene, quench: &QuenchData, labels: &Labels, plane: &Plane) {
    let mut traces: Vec<&CoolingTrace> = quench.cooling.iter().collect();
    order::sort_by_key(&mut traces, |trace| match trace.role {
        Role::Slower => 0,
        Role::Edge => 1,
        Role::Surface => 2,
        Role::Main => 3,
    });
    let mut names = Vec::new();
    for trace in traces {
        let (pen, levels): (Pen, &[f64]) = match trace.role {
            Role::Main => (
                Pen::new(Ink::Ink, 2.5),
                &[0.3, 0.34, 0.26, 0.5, 0.2, 0.6, 0.4, 0.15],
            ),
            Role::Surface => (
                Pen::new(Ink::Ink, 1.25),
                &[0.73, 0.68, 0.63, 0.56, 0.35, 0.3],
            ),
            Role::Edge => (
                Pen::new(Ink::Ink2, 1.25).dashed(&[5.0, 2.5]),
                &[0.54, 0.5, 0.45, 0.6, 0.65, 0.3],
            ),
            Role::Slower => (
                Pen::new(Ink::Ink2, 1.5).dashed(&[2.0, 3.0]),
                &[0.21, 0.24, 0.18, 0.3, 0.36, 0.42, 0.5, 0.8, 0.77, 0.15],
            ),
        };
        let points = seen_from_start(&trace.points, plane);
        let places: Vec<At> = levels
            .iter()
            .filter_map(|f| frame::place_at(&points, plane.y.value(*f)))
            .collect();
        let clear_px = match trace.role {
            Role::Main => PLACE_PX,
            _ => CLEAR_PX,
        };
        scene.curve_clear(points, pen, clear_px);
        let (paint, size, weight, rank) = match trace.role {
            Role::Main => (Ink::Ink, 12.0, Weight::Name, Rank::Main),
            Role::Slower => (Ink::Ink2, 11.5, Weight::Text, Rank::Boundary),
            Role::Surface | Role::Edge => (Ink::Ink, 12.0, Weight::Text, Rank::Other),
        };
        let label = Label::new(px(0.0, 0.0), Anchor::End, trace.name.clone());
        names.push(
            label
                .styled(paint, size, weight)
                .halo(Ink::Sheet)
                .around(&places, 4.0 + clear_px, rank)
                .farther(&places, &[22.0, 44.0, 80.0])
                .led(),
        );
    }
    // The quenchant that is not used is left out first.
    for name in names.into_iter().rev() {
        scene.label(name);
    }
    let left = plane.rect.left;
    scene.label(
        Label::new(
            px(left + 4.0, plane.y_px(quench.soak_c) - 9.0),
            Anchor::Start,
            labels.temperature(quench.soak_c),
        )
        .styled(Ink::Ink2, 11.5, Weight::Text),
    );
    handle(scene, quench, plane);
}

/// A ring on the main curve, and the bath that follows.
fn changes(scene: &mut Scene, quench: &QuenchData, plane: &Plane) {
    for change in &quench.changes {
        let column = plane.x_px(plane.x.hold(change.time_s));
        let row = plane.y_px(plane.y.hold(change.temperature_c));
        scene.add(Mark::Dot {
            at: px(column, row),
            radius_px: 3.5,
            paint: Ink::Sheet.into(),
            rim: Some((Ink::Ink.into(), 1.75)),
        });
        let place = At {
            x: Coord::Px(column),
            y: Coord::Px(row),
        };
        scene.label(
            Label::new(px(column, row), Anchor::Start, change.name.clone())
                .styled(Ink::Ink2, 11.5, Weight::Text)
                .halo(Ink::Sheet)
                .around(&[place], 10.0, Rank::Boundary)
                .farther(&[place], &[24.0, 40.0, 60.0, 90.0])
                .led(),
        );
    }
}

/// The handle rides on the main curve between the nose and Ms.
fn handle(scene: &mut Scene, quench: &QuenchData, plane: &Plane) {
    let Some(main) = quench.cooling.iter().find(|t| t.role == Role::Main) else {
        return;
    };
    let nose_c = quench.margin.as_ref().map_or(550.0, |m| m.nose_c);
    let level = 0.5 * (nose_c + quench.ms_c.unwrap_or(250.0));
    let last = main.points.last().copied().unwrap_or([1.0, level]);
    let time_s = frame::reach(&main.points, level).unwrap_or(last[0]);
    let temperature_c = if time_s == last[0] { last[1] } else { level };
    let column = plane.x_px(plane.x.hold(time_s));
    scene.handles.push(Handle {
        at_px: [column, plane.y_px(plane.y.hold(temperature_c))],
        tag: None,
        moves: Some(Moves::Across),
        core: frame::glow_paint(temperature_c),
    });
}

/// A curve from zero time has no start on a logarithmic axis: its first point stands left of it.
fn seen_from_start(points: &[[f64; 2]], plane: &Plane) -> Vec<[f64; 2]> {
    let early = 0.5 * plane.x.low();
    points.iter().map(|[t, c]| [t.max(early), *c]).collect()
}

fn summary(quench: &QuenchData, labels: &Labels) -> String {
    let margin = quench.margin.as_ref().map_or_else(
        || texts::NOT_KNOWN.to_owned(),
        |m| {
            let gap = duration((m.nose_s - m.arrival_s).abs());
            let nose = labels.temperature(m.nose_c);
            if m.arrival_s < m.nose_s {
                texts::passes_nose(&nose, &gap)
            } else {
                texts::misses_nose(&nose, &gap)
            }
        },
    );
    let changes = quench.changes.iter().map(|change| {
        texts::goes_into(
            &duration(change.time_s),
            &labels.temperature(change.temperature_c),
            &change.name,
        )
    });
    let ms = quench.ms_c.iter();
    let ms = ms.map(|ms| texts::martensite_starts(&labels.temperature(*ms)));
    let sentences: Vec<String> = [margin].into_iter().chain(changes).chain(ms).collect();
    texts::summary(&sentences)
}
