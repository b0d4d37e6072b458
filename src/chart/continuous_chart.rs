//! What forms as it cools: a fan of coolings over the fields of the products, logarithmic time from
//! where the first can form against temperature, with the hardness that each cooling ends at.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, At, CLEAR_PX, Fill, Label, Pattern, Pen, Rank, Scene, data, px};
use recalesce_texts::charts::continuous as texts;

/// One cooling of the fan, from fast to slow.
#[derive(Debug, Clone, PartialEq)]
pub struct FanCurve {
    /// Rate at 700 °C, K/s.
    pub rate_k_per_s: f64,
    /// Time by the clock, s, against temperature, °C.
    pub points: Vec<[f64; 2]>,
    /// Hardness at its end, as it is written; none where it is not known.
    pub hardness: Option<String>,
}

/// The field of a product: along the rates, where it begins and where it ends.
#[derive(Debug, Clone, PartialEq)]
pub struct ProductField {
    /// What forms.
    pub product: Constituent,
    /// Where 1 % of the piece has formed, from fast to slow.
    pub start: Vec<[f64; 2]>,
    /// Where no more forms.
    pub end: Vec<[f64; 2]>,
}

/// What the chart shows.
#[derive(Debug, Clone, PartialEq)]
pub struct ContinuousData {
    /// The coolings that are drawn.
    pub fan: Vec<FanCurve>,
    /// Fields of the products.
    pub fields: Vec<ProductField>,
    /// Start of martensite along the rates, from fast to slow.
    pub ms: Vec<[f64; 2]>,
    /// The planned quench at the place that decides, by the same clock.
    pub planned: Vec<[f64; 2]>,
    /// Where the clock starts: the highest temperature at which anything forms, °C.
    pub clock_c: f64,
}

/// Temperature that the rates are told at, °C.
const RATE_AT_C: f64 = 700.0;
/// Latest time, s: a furnace that cools for a day.
const LATEST_S: f64 = 1e5;
/// Rows at the foot of the plot, px above the axis: the rate, and the hardness over it.
const RATE_ROW_PX: f64 = 8.0;
const HARDNESS_ROW_PX: f64 = 21.0;
/// Numbers of a row stand at least so far apart, px.
const APART_PX: f64 = 30.0;
/// Room for a letter of a hardness, px.
const LETTER_PX: f64 = 7.0;
/// Room for the name of a row at its left end, px.
const ROW_NAME_PX: f64 = 40.0;

/// The chart at a size in css px.
pub fn continuous_chart(shown: &ContinuousData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let plane = Plane::new(
        Axis::log10(0.1, LATEST_S),
        frame::covering([0.0, 800.0], [shown.clock_c + 40.0]),
        Rect::new(46.0, 8.0, width - 12.0, height - 32.0),
    );
    let mut scene = Scene::new(size_px, plane);
    frame::temperature_axis(&mut scene, labels, 5);
    frame::bottom_axis(&mut scene, plane.x.ticks(5, Shown::SAME), true);
    frame::axis_title(
        &mut scene,
        &texts::time_from(&labels.temperature(shown.clock_c)),
    );
    frame::base_line(&mut scene);
    scene.curve(
        vec![
            [plane.x.low(), shown.clock_c],
            [plane.x.high(), shown.clock_c],
        ],
        Pen::new(Ink::Axis, 1.0).dashed(&[1.0, 3.0]),
    );
    let clock = px(plane.rect.right - 2.0, plane.y_px(shown.clock_c) - 8.0);
    let clock = Label::new(clock, Anchor::End, labels.temperature(shown.clock_c));
    scene.label(clock.styled(Ink::Ink2, 11.0, Weight::Text));
    for field in &shown.fields {
        product(&mut scene, field);
    }
    martensite(&mut scene, shown, &plane, labels);
    fan(&mut scene, shown, &plane, labels);
    let planned = above_rows(&shown.planned, &plane);
    let levels = [0.55, 0.65, 0.45, 0.35, 0.75, 0.25];
    let places = levels.map(|f| frame::place_at(&planned, plane.y.value(f)));
    let places: Vec<At> = places.into_iter().flatten().collect();
    scene.curve_clear(planned, Pen::new(Ink::Ink, 2.5), 2.0 * CLEAR_PX);
    scene.label(
        Label::new(px(0.0, 0.0), Anchor::End, texts::PLANNED_QUENCH)
            .styled(Ink::Ink, 12.0, Weight::Name)
            .halo(Ink::Sheet)
            .around(&places, 9.0, Rank::Main)
            .farther(&places, &[22.0, 40.0, 60.0, 90.0])
            .led(),
    );
    scene.summary = summary(shown, labels);
    scene
}

/// The field between where a product begins and where it ends.
fn product(scene: &mut Scene, field: &ProductField) {
    let line = field.product.line();
    let between: Vec<[f64; 2]> = field
        .start
        .iter()
        .chain(field.end.iter().rev())
        .copied()
        .collect();
    let pattern = match field.product {
        Constituent::Bainite => Some(Pattern::ThinSheaves),
        Constituent::Pearlite => Some(Pattern::ThinLamellae),
        _ => None,
    };
    match pattern {
        Some(pattern) => scene.pattern(between, pattern, Fill::new(line)),
        None => scene.area(between, Fill::thin(line, 0.07)),
    }
    scene.curve(field.start.clone(), Pen::new(line, 1.75));
    scene.curve(field.end.clone(), Pen::new(line, 1.25).dashed(&[7.0, 3.0]));
    let places: Vec<_> = [0.3, 0.5, 0.15, 0.7]
        .into_iter()
        .filter_map(|part| {
            let at = (part * field.start.len() as f64) as usize;
            let (start, end) = (field.start.get(at)?, field.end.get(at)?);
            let middle = [(start[0] * end[0]).sqrt(), 0.5 * (start[1] + end[1])];
            Some([middle, *end, *start].map(|[x, y]| data(x, y)))
        })
        .flatten()
        .collect();
    if let Some(&place) = places.first() {
        scene.label(
            Label::new(place, Anchor::Middle, field.product.name())
                .styled(line, 12.0, Weight::Strong)
                .halo(Ink::Sheet)
                .around(&places, 8.0, Rank::Boundary),
        );
    }
}

fn martensite(scene: &mut Scene, shown: &ContinuousData, plane: &Plane, labels: &Labels) {
    let (Some(&[_, first_c]), Some(&[last_s, last_c])) = (shown.ms.first(), shown.ms.last()) else {
        return;
    };
    let mut line = vec![[plane.x.low(), first_c]];
    line.extend(shown.ms.iter().filter(|point| point[0] > plane.x.low()));
    let mut below = line.clone();
    below.push([last_s, plane.y.low()]);
    below.push([plane.x.low(), plane.y.low()]);
    scene.area(below, Fill::thin(Ink::PhMartensite, 0.07));
    let paint = Constituent::Martensite.line();
    scene.curve(line, Pen::new(paint, 1.5));
    scene.stroke(
        data(last_s, last_c),
        data(last_s, plane.y.low()),
        Pen::new(paint, 0.75).dashed(&[2.0, 3.0]),
    );
    let text = format!("Ms {}", labels.degrees(first_c));
    let at = px(plane.rect.left + 6.0, plane.y_px(first_c) - 8.0);
    scene.label(
        Label::new(at, Anchor::Start, text)
            .styled(paint, 11.0, Weight::Strong)
            .halo(Ink::Sheet),
    );
}

/// The coolings, and the rows at their feet.
fn fan(scene: &mut Scene, shown: &ContinuousData, plane: &Plane, labels: &Labels) {
    let rect = plane.rect;
    let mut free_px = rect.left + ROW_NAME_PX;
    for curve in &shown.fan {
        let points = above_rows(&curve.points, plane);
        let end = points.last().filter(|end| end[1] <= foot_c(plane));
        let column = end.map(|end| plane.x_px(end[0]));
        scene.guide(points, Pen::new(Ink::Ink3, 0.9));
        let Some(column) = column.filter(|x| *x >= free_px && *x <= rect.right - 8.0) else {
            continue;
        };
        let letters = curve
            .hardness
            .as_ref()
            .map_or(0, |words| words.chars().count());
        free_px = column + APART_PX.max(LETTER_PX * letters as f64);
        let mut row = |above_px: f64, text: String, weight: Weight| {
            let at = px(column, rect.bottom - above_px);
            let label = Label::new(at, Anchor::Middle, text);
            scene.label(label.styled(Ink::Ink, 11.0, weight).halo(Ink::Sheet));
        };
        if let Some(hardness) = &curve.hardness {
            row(HARDNESS_ROW_PX, hardness.clone(), Weight::Name);
        }
        let rate = few_digits(labels.rate(curve.rate_k_per_s));
        row(RATE_ROW_PX, rate, Weight::Text);
    }
    let rate_unit = labels.rate_unit();
    for (above_px, name) in [(HARDNESS_ROW_PX, "HRC"), (RATE_ROW_PX, rate_unit.as_str())] {
        let at = px(rect.left + 6.0, rect.bottom - above_px);
        let label = Label::new(at, Anchor::Start, name);
        scene.label(label.styled(Ink::Ink2, 11.0, Weight::Text).halo(Ink::Sheet));
    }
}

/// A cooling rate in few digits.
fn few_digits(rate: f64) -> String {
    let decimals = match rate {
        r if r >= 9.5 => 0,
        r if r >= 0.95 => 1,
        r if r >= 0.095 => 2,
        _ => 3,
    };
    fixed(rate, decimals)
}

/// Where curves end, just above the rows, °C.
fn foot_c(plane: &Plane) -> f64 {
    let foot_px = plane.rect.bottom - HARDNESS_ROW_PX - 9.0;
    plane.to_data([plane.rect.left, foot_px])[1]
}

/// A curve down to just above the rows; its points before the first of the axis stand just left of
/// that.
fn above_rows(points: &[[f64; 2]], plane: &Plane) -> Vec<[f64; 2]> {
    let foot_c = foot_c(plane);
    let early = 0.5 * plane.x.low();
    let points: Vec<[f64; 2]> = points.iter().map(|[t, c]| [t.max(early), *c]).collect();
    let end = frame::reach(&points, foot_c).map(|time_s| [time_s, foot_c]);
    let above = points.into_iter().take_while(|point| point[1] > foot_c);
    above.chain(end).collect()
}

fn summary(shown: &ContinuousData, labels: &Labels) -> String {
    let unit = labels.rate_unit();
    let ends = |curve: &FanCurve| {
        let hardness = curve.hardness.as_deref().unwrap_or(texts::NOT_KNOWN);
        let rate = few_digits(labels.rate(curve.rate_k_per_s));
        texts::cooling(&format!("{rate} {unit}"), hardness)
    };
    let ends: Vec<String> = shown.fan.iter().map(ends).collect();
    texts::summary(&labels.temperature(RATE_AT_C), &ends)
}
