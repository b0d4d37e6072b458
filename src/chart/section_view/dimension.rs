//! Dimensions of a section and what is written beside it.

use super::SectionData;
use crate::chart::face::{self, Weight};
use crate::chart::frame;
use crate::chart::ink::Ink;
use crate::chart::labels::Labels;
use crate::chart::numbers::with_unit;
use crate::chart::scene::{Anchor, At, Label, Pen, Scene, px};
use recalesce_texts::charts::section as texts;

pub(super) fn thickness_dimension(
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

pub(super) fn depth_text(
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
    } else if section.is_core_mixed() {
        texts::partly_from_surface_in(section.core.name())
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

pub(super) fn length_short(labels: &Labels, length_mm: f64) -> String {
    with_unit(
        (labels.length)(length_mm),
        labels.length_decimals.saturating_sub(1),
        labels.length_unit,
    )
}

pub(super) fn small(at: At, anchor: Anchor, text: String) -> Label {
    Label::new(at, anchor, text).styled(Ink::Ink2, 11.5, Weight::Text)
}

pub(super) fn name_side(scene: &mut Scene, left: f64, middle: f64, size: &str, what: &str) {
    let size = Label::new(px(left, middle - 6.0), Anchor::Start, size);
    scene.label(size.then(what, Ink::Ink2, 11.5, Weight::Text));
}

pub(super) fn level_dimension(scene: &mut Scene, [from, to]: [f64; 2], row: f64, text: &str) {
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

pub(super) fn remark(scene: &mut Scene, section: &SectionData, from: [f64; 2], bottom: f64) {
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
