//! The fields of a phase map: what stands in them, their fill, and the place of their names.

use super::clip::{clip_polygon, clip_segment, inside};
use super::face::{Weight, width_px};
use super::ink::Ink;
use super::numbers::NBSP;
use super::place::line_width;
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Label, Rank, Scene, Spot, Words, px};
use crate::numeric::order;
use recalesce_texts::charts::constituents as texts;

/// A field of the map.
#[derive(Debug, Clone, PartialEq)]
pub struct MapField {
    /// Austenite is stable.
    pub has_austenite: bool,
    /// Ferrite is stable.
    pub has_ferrite: bool,
    /// Names of the stable carbides, numbers lowered as `M_{7}C_{3}`.
    pub carbides: Vec<String>,
    /// Outline, `[carbon wt %, temperature °C]`.
    pub outline: Vec<[f64; 2]>,
}

impl MapField {
    /// Ground of the field.
    pub(super) fn ink(&self) -> Ink {
        match (
            self.has_austenite,
            self.has_ferrite,
            self.carbides.is_empty(),
        ) {
            (true, true, _) => Ink::FieldAf,
            (true, false, true) => Ink::FieldA,
            (true, false, false) => Ink::FieldAc,
            (false, _, _) => Ink::FieldFc,
        }
    }

    /// Its name, in full and then shorter: beside austenite only what comes to it is named, and
    /// several carbides become one word.
    fn names(&self) -> Vec<Vec<String>> {
        let mut full = Vec::new();
        if !self.has_austenite || (!self.has_ferrite && self.carbides.is_empty()) {
            full.push(if self.has_austenite {
                texts::AUSTENITE
            } else {
                texts::FERRITE
            });
        } else if self.has_ferrite {
            full.push(texts::FERRITE);
        }
        let begins_with_plus = self.has_austenite && full.first() != Some(&texts::AUSTENITE);
        let line = |parts: &[&str], begins_with_plus: bool| {
            let text = parts.join(&format!("{NBSP}+{NBSP}"));
            if begins_with_plus {
                format!("+{NBSP}{text}")
            } else {
                text
            }
        };
        if self.carbides.is_empty() {
            return vec![vec![line(&full, begins_with_plus)]];
        }
        let mut names = Vec::new();
        let each: Vec<&str> = self.carbides.iter().map(String::as_str).collect();
        let together: &[&str] = if each.len() > 1 {
            &[texts::CARBIDES]
        } else {
            &[texts::CARBIDE]
        };
        for carbides in [&each, together] {
            names.push(vec![line(&[&full, carbides].concat(), begins_with_plus)]);
            if !full.is_empty() {
                names.push(vec![line(&full, begins_with_plus), line(carbides, true)]);
            }
        }
        names
    }
}

const SIZE_PX: f64 = 12.0;
const LEADING_PX: f64 = 14.0;
/// Free room around a name.
const ROOM_PX: f64 = 3.0;
/// Places tried across a field, and how many of them are offered.
const TRIED: u32 = 16;
const OFFERED: usize = 12;

/// Names the fields, the largest first; a name that has no room in its field is left out.
pub(super) fn name_fields(scene: &mut Scene, fields: &[MapField], plane: &Plane) {
    let mut named: Vec<(f64, Label)> = fields
        .iter()
        .filter_map(|field| name(field, plane))
        .collect();
    order::sort_by(&mut named, |a, b| b.0.total_cmp(&a.0));
    for (_, label) in named {
        scene.label(label);
    }
}

/// The longest name of a field that has room in it, with the room it has.
fn name(field: &MapField, plane: &Plane) -> Option<(f64, Label)> {
    let outline: Vec<[f64; 2]> = field.outline.iter().map(|p| plane.to_px(*p)).collect();
    let outline = clip_polygon(&outline, &plane.rect);
    let bounds = bounds(&outline)?;
    field.names().into_iter().find_map(|lines| {
        let widths = lines.iter().map(|line| {
            let words = Words {
                text: line.clone(),
                size_px: SIZE_PX,
                weight: Weight::Text,
                paint: Ink::Ink3.into(),
            };
            line_width(&words, &width_px)
        });
        let width = widths.fold(0.0, f64::max) + 2.0 * ROOM_PX;
        let height = LEADING_PX * lines.len() as f64 + ROOM_PX;
        let places = places(&outline, &bounds, [0.5 * width, 0.5 * height]);
        let room = places.first()?.1;
        let first_base = 4.0 - 0.5 * LEADING_PX * (lines.len() as f64 - 1.0);
        let spots = places.into_iter().map(|([x, y], _)| Spot {
            at: px(x, y),
            offset_px: [0.0, first_base],
            anchor: Anchor::Middle,
        });
        let mut lines = lines.into_iter();
        let mut label = Label::new(px(0.0, 0.0), Anchor::Middle, lines.next()?).styled(
            Ink::Ink3,
            SIZE_PX,
            Weight::Text,
        );
        for line in lines {
            label = label.then(line, Ink::Ink3, SIZE_PX, Weight::Text);
        }
        let label = label
            .at_spots(spots.collect(), Rank::Other)
            .halo(field.ink());
        Some((room, label))
    })
}

fn bounds(outline: &[[f64; 2]]) -> Option<Rect> {
    let first = outline.first()?;
    let start = Rect::new(first[0], first[1], first[0], first[1]);
    Some(outline.iter().fold(start, |r, [x, y]| {
        Rect::new(
            r.left.min(*x),
            r.top.min(*y),
            r.right.max(*x),
            r.bottom.max(*y),
        )
    }))
}

/// Centres for a box of a half size within an outline, those with the most room around the box
/// first; the room in multiples of the box.
fn places(outline: &[[f64; 2]], bounds: &Rect, half: [f64; 2]) -> Vec<([f64; 2], f64)> {
    if bounds.width() < 2.0 * half[0] || bounds.height() < 2.0 * half[1] {
        return Vec::new();
    }
    let mut found: Vec<([f64; 2], f64)> = Vec::new();
    for i in 0..TRIED * TRIED {
        let share = |i: u32| (f64::from(i) + 0.5) / f64::from(TRIED);
        let centre = [
            bounds.left + share(i % TRIED) * bounds.width(),
            bounds.top + share(i / TRIED) * bounds.height(),
        ];
        let about = |times: f64| {
            Rect::new(
                centre[0] - times * half[0],
                centre[1] - times * half[1],
                centre[0] + times * half[0],
                centre[1] + times * half[1],
            )
        };
        if !inside(centre, outline) {
            continue;
        }
        let is_free = |times: f64| {
            let room = about(times);
            let next = outline.iter().cycle().skip(1);
            let mut sides = outline.iter().zip(next);
            !sides.any(|(a, b)| clip_segment(*a, *b, &room).is_some())
        };
        // how much larger the box may be
        let steps = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0];
        let room = steps.into_iter().take_while(|times| is_free(*times)).last();
        found.extend(room.map(|room| (centre, room)));
    }
    let middle = [
        f64::midpoint(bounds.left, bounds.right),
        f64::midpoint(bounds.top, bounds.bottom),
    ];
    let from_middle = |p: [f64; 2]| (p[0] - middle[0]).hypot(p[1] - middle[1]);
    order::sort_by(&mut found, |a, b| {
        let by_room = b.1.total_cmp(&a.1);
        by_room.then(from_middle(a.0).total_cmp(&from_middle(b.0)))
    });
    // from all over the field, so that one of them is free of other labels
    let apart = found.len().div_ceil(OFFERED).max(1);
    found.into_iter().step_by(apart).collect()
}
