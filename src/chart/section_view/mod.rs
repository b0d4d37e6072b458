//! Where the section hardens: its outline with the structure inside.

mod blade;
mod dimension;

use crate::numeric::turn::sin_cos_of_turn;
use recalesce_texts::charts::section as texts;

use super::axis::Axis;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::plane::{Plane, Rect};
use super::scene::{Fill, Mark, Pattern, Pen, Scene};
use blade::blade;
use dimension::{depth_text, remark, thickness_dimension};

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
    /// What hardens of the rest where it hardens least, as a fraction.
    pub core_hardened: f64,
    /// A remark on the rest; none when it is empty.
    pub note: String,
}

impl SectionData {
    /// Whether it is worth telling that the rest hardens in part.
    const fn is_core_mixed(&self) -> bool {
        self.core_hardened >= MIXED
    }

    /// How sure it is that it hardens through.
    const fn through_words(&self) -> &'static str {
        if self.is_certain {
            texts::CERTAIN_THROUGH
        } else {
            texts::JUST_THROUGH
        }
    }
}

/// What hardens of a core that is told to harden in part, as a fraction.
const MIXED: f64 = 0.1;
/// How opaque a core is at least that hardens nearly.
const LEAST_OPACITY: f64 = 0.3;

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

/// Adds the piece as it is where it hardens, an area given in px downwards.
fn fill_hardened(scene: &mut Scene, area: &[[f64; 2]]) {
    let upwards = upwards(scene, area);
    scene.add(structure(upwards, Constituent::Martensite));
}

fn upwards(scene: &Scene, area: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let height = scene.size_px[1];
    area.iter().map(|[x, y]| [*x, height - y]).collect()
}

/// Adds what may stay softer: over the martensite, which is seen through it where it hardens in part.
fn fill_core(scene: &mut Scene, area: &[[f64; 2]], section: &SectionData) {
    let mut core = structure(upwards(scene, area), section.core);
    if let (true, Mark::Area { fill, .. }) = (section.is_core_mixed(), &mut core) {
        let opacity = (1.0 - section.core_hardened).max(LEAST_OPACITY);
        *fill = Some(Fill::thin(section.core.fill(), opacity));
    }
    scene.add(core);
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

fn plate(scene: &mut Scene, section: &SectionData, labels: &Labels, thickness: f64) {
    let [width, height] = scene.size_px;
    let (left, right) = (12.0, (width - 150.0).max(100.0));
    let middle = 0.5 * height;
    // Below it is room for a remark.
    let half = f64::min(30.0, middle - 26.0);
    let body = Rect::new(left, middle - half, right, middle + half).corners();
    fill_hardened(scene, &body);
    let depth = section.hardened_mm.max(0.0).min(0.5 * thickness);
    let soft = half * (1.0 - depth / (0.5 * thickness));
    if soft > 0.5 {
        let band = Rect::new(left, middle - soft, right, middle + soft).corners();
        fill_core(scene, &band, section);
    }
    outlined(scene, &body);
    thickness_dimension(
        scene,
        right,
        middle,
        half,
        &labels.given_length(thickness),
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
    fill_hardened(scene, &disc(radius));
    let depth = section.hardened_mm.max(0.0).min(0.5 * diameter);
    let soft = radius * (1.0 - depth / (0.5 * diameter));
    if soft > 0.5 {
        fill_core(scene, &disc(soft), section);
    }
    outlined(scene, &disc(radius));
    let right = centre[0] + radius;
    thickness_dimension(
        scene,
        right,
        centre[1],
        radius,
        &labels.given_length(diameter),
        texts::ACROSS,
    );
    depth_text(scene, section, labels, depth, 0.5 * diameter, [12.0, 16.0]);
    if soft > 0.5 {
        remark(scene, section, centre, centre[1] + radius);
    }
}
