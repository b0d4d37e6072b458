//! Where the section hardens: its outline with the structure inside.

use crate::numeric::turn::sin_cos_of_turn;
use recalesce_texts::charts::section as texts;

use super::axis::Axis;
use super::face::{self, Weight};
use super::frame;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Label, Mark, Pattern, Pen, Scene, px};

/// The shape of the piece across.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outline {
    /// A flat piece.
    Plate {
        /// Thickness, mm.
        thickness_mm: f64,
    },
    /// A bar.
    Round {
        /// Diameter, mm.
        diameter_mm: f64,
    },
    /// A square bar.
    Square {
        /// Side, mm.
        side_mm: f64,
    },
    /// A blade that widens from edge to spine.
    Blade {
        /// Thickness at the edge, mm.
        edge_mm: f64,
        /// Thickness at the spine, mm.
        spine_mm: f64,
        /// From edge to spine, mm.
        height_mm: f64,
        /// Whether the flanks bulge.
        is_convex: bool,
    },
}

/// What the view shows.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionData {
    /// The shape.
    pub outline: Outline,
    /// How far it hardens, mm: from the surface inwards; in a blade from the edge up.
    pub hardened_mm: f64,
    /// Whether it does so over the whole band of what is open.
    pub is_certain: bool,
    /// What the rest may hold.
    pub core: Constituent,
    /// A remark on the rest; none when it is empty.
    pub note: String,
}

impl SectionData {
    /// How sure it is that it hardens through.
    const fn through_words(&self) -> &'static str {
        if self.is_certain {
            texts::CERTAIN_THROUGH
        } else {
            texts::JUST_THROUGH
        }
    }
}

/// Straight parts that a flank of a blade is drawn with.
const FLANK_PARTS: u8 = 24;

/// Pattern of a constituent where it fills an area.
pub(super) fn pattern_of(constituent: Constituent) -> Option<Pattern> {
    match constituent {
        Constituent::Martensite => Some(Pattern::Laths),
        Constituent::Austenite => Some(Pattern::Grains),
        Constituent::Carbide => Some(Pattern::Particles),
        Constituent::Pearlite => Some(Pattern::Lamellae),
        Constituent::Bainite => Some(Pattern::Sheaves),
        Constituent::Ferrite => None,
    }
}

/// An area filled with a constituent: its colour and its pattern.
pub(super) fn structure(points: Vec<[f64; 2]>, constituent: Constituent) -> Mark {
    Mark::Area {
        points,
        fill: Some(Fill::new(constituent.fill())),
        pattern: pattern_of(constituent)
            .map(|pattern| (pattern, Fill::new(constituent.pattern_ink()))),
    }
}

/// The view at a size in css px.
pub fn section_view(section: &SectionData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    // The plane is the sheet itself in px, y downwards turned to upwards.
    let sheet = Rect::new(0.0, 0.0, size_px[0], size_px[1]);
    let plane = Plane::new(
        Axis::linear(0.0, size_px[0]),
        Axis::linear(0.0, size_px[1]),
        sheet,
    );
    let mut scene = Scene::new(size_px, plane);
    let hardened = section.hardened_mm.max(0.0);
    match section.outline {
        Outline::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            is_convex,
        } => {
            let sizes = [edge_mm, spine_mm, height_mm].map(drawable_mm);
            blade(&mut scene, section, labels, sizes, is_convex);
        }
        Outline::Plate { thickness_mm } => {
            plate(&mut scene, section, labels, drawable_mm(thickness_mm));
        }
        Outline::Round { diameter_mm } => {
            bar(&mut scene, section, labels, drawable_mm(diameter_mm), false);
        }
        Outline::Square { side_mm } => {
            bar(&mut scene, section, labels, drawable_mm(side_mm), true);
        }
    }
    scene.summary = if hardened >= full_mm(&section.outline) {
        match section.is_certain {
            true => texts::HARDENS_THROUGH.to_owned(),
            false => texts::HARDENS_JUST_THROUGH.to_owned(),
        }
    } else {
        let depth = labels.length(hardened);
        match section.outline {
            Outline::Blade { .. } => texts::hardens_from_edge(&depth),
            _ => texts::hardens_below_surface(&depth),
        }
    };
    scene
}

/// A length that can be drawn, whatever was given.
fn drawable_mm(length_mm: f64) -> f64 {
    if length_mm.is_finite() {
        length_mm.clamp(1e-3, 1e5)
    } else {
        1.0
    }
}

fn full_mm(outline: &Outline) -> f64 {
    match *outline {
        Outline::Blade { height_mm, .. } => height_mm,
        Outline::Plate { thickness_mm } => 0.5 * thickness_mm,
        Outline::Round { diameter_mm } => 0.5 * diameter_mm,
        Outline::Square { side_mm } => 0.5 * side_mm,
    }
}

/// Adds an area given in px downwards.
fn fill(scene: &mut Scene, area: &[[f64; 2]], constituent: Constituent) {
    let height = scene.size_px[1];
    let upwards = area.iter().map(|[x, y]| [*x, height - y]).collect();
    scene.add(structure(upwards, constituent));
}

fn outlined(scene: &mut Scene, area: &[[f64; 2]]) {
    let height = scene.size_px[1];
    let closed = area
        .iter()
        .chain(area.first())
        .map(|[x, y]| [*x, height - y])
        .collect();
    scene.curve(closed, Pen::new(Ink::Ink, 1.5));
}

fn blade(
    scene: &mut Scene,
    section: &SectionData,
    labels: &Labels,
    [edge, spine, tall]: [f64; 3],
    is_convex: bool,
) {
    let [width, height] = scene.size_px;
    let left = 12.0;
    let long = (width - 172.0).max(80.0);
    let along = long / tall;
    // The thickness keeps the scale unless the blade is so thin that nothing could be seen in it.
    let across = along.clamp(30.0 / spine, 60.0 / spine);
    let middle = 0.5 * height;
    let half = |mm: f64| {
        let up = (mm / tall).clamp(0.0, 1.0);
        let thicker = if is_convex { up * (2.0 - up) } else { up };
        0.5 * across * (edge + (spine - edge) * thicker)
    };
    let x = |mm: f64| left + along * mm;
    let flank: Vec<[f64; 2]> = (0..=FLANK_PARTS)
        .map(|i| tall * f64::from(i) / f64::from(FLANK_PARTS))
        .map(|mm| [x(mm), half(mm)])
        .collect();
    let upper = flank.iter().map(|[x, half]| [*x, middle - half]);
    let lower = flank.iter().rev().map(|[x, half]| [*x, middle + half]);
    let body: Vec<[f64; 2]> = upper.chain(lower).collect();
    fill(scene, &body, Constituent::Martensite);
    let hardened = section.hardened_mm.max(0.0).min(tall);
    let through = hardened >= tall;
    if !through {
        fill(scene, &core(hardened, tall, x, half, middle), section.core);
    }
    outlined(scene, &body);
    let ext = Pen::new(Ink::Ink2, 0.9);
    let line = middle - half(tall) - 16.0;
    let text = if through {
        texts::through_all(section.through_words(), &labels.length(tall))
    } else {
        texts::part_of(
            &fixed(
                (labels.length)(hardened),
                labels.length_decimals.saturating_sub(1),
            ),
            &length_short(labels, tall),
        )
    };
    for (mm, top) in [(0.0, half(0.0)), (hardened, half(hardened))] {
        scene.stroke(px(x(mm), middle - top - 3.0), px(x(mm), line - 5.0), ext);
    }
    level_dimension(scene, [x(0.0), x(hardened)], line, &text);
    let beside = x(tall) + 3.0;
    for side in [-1.0, 1.0] {
        let row = middle + side * half(tall);
        scene.stroke(px(beside, row), px(beside + 14.0, row), ext);
    }
    scene.stroke(
        px(beside + 9.0, middle - half(tall)),
        px(beside + 9.0, middle + half(tall)),
        Pen::new(Ink::Ink, 1.0),
    );
    name_side(
        scene,
        beside + 16.0,
        middle,
        &labels.length(spine),
        texts::SPINE,
    );
    scene.label(small(
        px(left, middle + half(0.0) + 18.0),
        Anchor::Start,
        texts::cutting_edge(&labels.length(edge)),
    ));
    if !through {
        remark(
            scene,
            section,
            [x(0.5 * (hardened + tall)), middle],
            middle + half(tall),
        );
    }
}

/// The part of a blade that may stay soft: a rounded tongue from the spine towards the edge.
fn core(
    hardened: f64,
    tall: f64,
    x: impl Fn(f64) -> f64,
    half: impl Fn(f64) -> f64,
    middle: f64,
) -> Vec<[f64; 2]> {
    let upper = (0..=16).map(|i| {
        let f = f64::from(i) / 16.0;
        let mm = hardened + (tall - hardened) * f;
        (
            x(mm),
            0.55 * half(mm) * (1.0 - (1.0 - f).powi(3)).max(0.0).sqrt(),
        )
    });
    let upper: Vec<(f64, f64)> = upper.collect();
    let top = upper.iter().map(|(x, h)| [*x, middle - h]);
    let bottom = upper.iter().rev().map(|(x, h)| [*x, middle + h]);
    top.chain(bottom).collect()
}

fn plate(scene: &mut Scene, section: &SectionData, labels: &Labels, thickness: f64) {
    let [width, height] = scene.size_px;
    let (left, right) = (12.0, (width - 150.0).max(100.0));
    let middle = 0.5 * height;
    let half = 30.0;
    let body = Rect::new(left, middle - half, right, middle + half).corners();
    fill(scene, &body, Constituent::Martensite);
    let depth = section.hardened_mm.max(0.0).min(0.5 * thickness);
    let soft = half * (1.0 - depth / (0.5 * thickness));
    if soft > 0.5 {
        let band = Rect::new(left, middle - soft, right, middle + soft).corners();
        fill(scene, &band, section.core);
    }
    outlined(scene, &body);
    thickness_dimension(
        scene,
        right,
        middle,
        half,
        &labels.length(thickness),
        texts::THICK,
    );
    depth_text(
        scene,
        section,
        labels,
        depth,
        0.5 * thickness,
        [left, middle - half],
    );
    if soft > 0.5 {
        remark(
            scene,
            section,
            [0.5 * (left + right), middle],
            middle + half,
        );
    }
}

/// A round or a square bar.
fn bar(scene: &mut Scene, section: &SectionData, labels: &Labels, diameter: f64, is_square: bool) {
    let [width, height] = scene.size_px;
    let radius = (0.5 * height - 26.0).clamp(20.0, 60.0);
    let centre = [(0.5 * width - 30.0).max(radius + 12.0), 0.5 * height];
    let disc = |r: f64| -> Vec<[f64; 2]> {
        if is_square {
            let [x, y] = centre;
            return Rect::new(x - r, y - r, x + r, y + r).corners().to_vec();
        }
        (0..72)
            .map(|i| {
                let (sin, cos) = sin_cos_of_turn(f64::from(i) / 72.0);
                [centre[0] + r * cos, centre[1] + r * sin]
            })
            .collect()
    };
    fill(scene, &disc(radius), Constituent::Martensite);
    let depth = section.hardened_mm.max(0.0).min(0.5 * diameter);
    let soft = radius * (1.0 - depth / (0.5 * diameter));
    if soft > 0.5 {
        fill(scene, &disc(soft), section.core);
    }
    outlined(scene, &disc(radius));
    let right = centre[0] + radius;
    thickness_dimension(
        scene,
        right,
        centre[1],
        radius,
        &labels.length(diameter),
        texts::ACROSS,
    );
    depth_text(scene, section, labels, depth, 0.5 * diameter, [12.0, 16.0]);
    if soft > 0.5 {
        remark(scene, section, centre, centre[1] + radius);
    }
}

fn thickness_dimension(
    scene: &mut Scene,
    right: f64,
    middle: f64,
    half: f64,
    size: &str,
    what: &str,
) {
    let ext = Pen::new(Ink::Ink2, 0.9);
    for side in [-1.0, 1.0] {
        let row = middle + side * half;
        scene.stroke(px(right + 3.0, row), px(right + 17.0, row), ext);
    }
    scene.stroke(
        px(right + 12.0, middle - half),
        px(right + 12.0, middle + half),
        Pen::new(Ink::Ink, 1.0),
    );
    frame::arrow_head(scene, [right + 12.5, middle - half], [0.0, -1.0], Ink::Ink);
    frame::arrow_head(scene, [right + 12.5, middle + half], [0.0, 1.0], Ink::Ink);
    name_side(scene, right + 20.0, middle, size, what);
}

fn depth_text(
    scene: &mut Scene,
    section: &SectionData,
    labels: &Labels,
    depth: f64,
    full: f64,
    [left, above]: [f64; 2],
) {
    let text = if depth >= full {
        texts::to_the_centre(section.through_words())
    } else if depth > 0.0 {
        texts::deep(&labels.length(depth))
    } else {
        texts::from_surface_in(section.core.name())
    };
    scene.label(
        Label::new(px(left, above - 10.0), Anchor::Start, text).styled(
            Ink::Ink,
            12.0,
            Weight::Name,
        ),
    );
}

fn length_short(labels: &Labels, length_mm: f64) -> String {
    super::numbers::with_unit(
        (labels.length)(length_mm),
        labels.length_decimals.saturating_sub(1),
        labels.length_unit,
    )
}

fn small(at: super::scene::At, anchor: Anchor, text: String) -> Label {
    Label::new(at, anchor, text).styled(Ink::Ink2, 11.5, Weight::Text)
}

fn name_side(scene: &mut Scene, left: f64, middle: f64, size: &str, what: &str) {
    let size = Label::new(px(left, middle - 6.0), Anchor::Start, size);
    scene.label(size.then(what, Ink::Ink2, 11.5, Weight::Text));
}

fn level_dimension(scene: &mut Scene, [from, to]: [f64; 2], row: f64, text: &str) {
    let width = face::width_px(text, 12.0, Weight::Name);
    let pen = Pen::new(Ink::Ink, 1.0);
    let middle = 0.5 * (from + to);
    let label = |x: f64, anchor: Anchor| {
        Label::new(px(x, row), anchor, text).styled(Ink::Ink, 12.0, Weight::Name)
    };
    if to - from > width + 32.0 {
        scene.stroke(px(from, row), px(middle - 0.5 * width - 5.0, row), pen);
        scene.stroke(px(middle + 0.5 * width + 5.0, row), px(to, row), pen);
        scene.label(label(middle, Anchor::Middle));
    } else {
        scene.stroke(px(from, row), px(to, row), pen);
        scene.label(label(to + 8.0, Anchor::Start));
    }
    if to - from > 14.0 {
        frame::arrow_head(scene, [from, row], [-1.0, 0.0], Ink::Ink);
        frame::arrow_head(scene, [to, row], [1.0, 0.0], Ink::Ink);
    }
}

fn remark(scene: &mut Scene, section: &SectionData, from: [f64; 2], bottom: f64) {
    if section.note.is_empty() {
        return;
    }
    let row = bottom + 11.0;
    scene.stroke(
        px(from[0], from[1] + 4.0),
        px(from[0], row),
        Pen::new(Ink::Ink2, 1.0),
    );
    let half = 0.5 * face::width_px(&section.note, 11.5, Weight::Text);
    let width = scene.size_px[0];
    let column = from[0].clamp(half + 2.0, (width - half - 2.0).max(half + 2.0));
    scene.label(small(
        px(column, row + 8.0),
        Anchor::Middle,
        section.note.clone(),
    ));
}
