//! Where labels go when the plot is crowded: the more important first, each at the free spot that
//! covers least of the curves, the least important left out; never shrunk, never turned.

use super::clip;
use super::face::{self, Weight};
use super::ink::Paint;
use super::plane::Rect;
use super::scene::{Anchor, Label, Rank, Words};
use crate::numeric::order;

/// A label with its spots in px.
pub struct Wanted<'a> {
    /// The label.
    pub label: &'a Label,
    /// Base line of its first line at each of its spots, px.
    pub spots: Vec<([f64; 2], Anchor)>,
    /// Where it must stay if it is free to move, px.
    pub within: Rect,
    /// What its leader points at, px.
    pub target: Option<[f64; 2]>,
}

/// What came of placing labels.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Placed {
    /// Lines of text.
    pub words: Vec<PlacedWords>,
    /// Boxes behind labels.
    pub grounds: Vec<(Rect, Paint)>,
    /// Leaders, from label to target.
    pub leaders: Vec<[[f64; 2]; 2]>,
}

/// A line of text with its place.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedWords {
    /// Text, size, weight, colour.
    pub words: Words,
    /// Start of the base line, px.
    pub start_px: [f64; 2],
    /// Width, px.
    pub width_px: f64,
    /// Colour of the halo.
    pub halo: Option<Paint>,
}

/// Width of a label's line with its lowered parts.
pub fn line_width(words: &Words, measure: &dyn Fn(&str, f64, Weight) -> f64) -> f64 {
    face::runs(&words.text)
        .iter()
        .map(|run| {
            let size = words.size_px * if run.lowered { face::LOWERED_SIZE } else { 1.0 };
            measure(run.text, size, words.weight)
        })
        .sum()
}

/// Longest reach of a curve through a label that still counts as covering nothing, px.
const TOUCH_PX: f64 = 1.0;

/// Chooses a spot for every label that finds one.
pub fn place(
    wanted: &[Wanted<'_>],
    curves: &[Vec<[f64; 2]>],
    taken: &[Rect],
    measure: &dyn Fn(&str, f64, Weight) -> f64,
) -> Placed {
    let mut wanted: Vec<&Wanted<'_>> = wanted.iter().collect();
    order::sort_by_key(&mut wanted, |w| std::cmp::Reverse(w.label.rank));
    let mut taken: Vec<Rect> = taken.to_vec();
    let mut placed = Placed::default();
    for want in wanted {
        let label = want.label;
        let widths: Vec<f64> = label
            .lines
            .iter()
            .map(|line| line_width(line, measure))
            .collect();
        let widest = widths.iter().copied().fold(0.0, f64::max);
        let fixed = label.rank == Rank::Fixed;
        let mut best: Option<(f64, usize, Rect)> = None;
        for (i, (base, anchor)) in want.spots.iter().enumerate() {
            if !(base[0].is_finite() && base[1].is_finite()) {
                continue;
            }
            let area = extent(label, *base, *anchor, widest);
            if fixed {
                best = Some((0.0, i, area));
                break;
            }
            let free = want.within.holds([area.left, area.top])
                && want.within.holds([area.right, area.bottom])
                && !taken.iter().any(|other| other.meets(&area));
            if !free {
                continue;
            }
            let covered = covered_px(curves, &area);
            if best.is_none_or(|(least, _, _)| covered + TOUCH_PX < least) {
                best = Some((covered, i, area));
            }
            if covered < TOUCH_PX {
                break;
            }
        }
        let Some((_, i, area)) = best else { continue };
        let Some((base, anchor)) = want.spots.get(i) else {
            continue;
        };
        taken.push(area.grown(1.0));
        if let Some(paint) = label.ground {
            placed.grounds.push((area.grown(3.0), paint));
        }
        if let Some(target) = want.target {
            placed.leaders.extend(leader(&area, target));
        }
        for (row, (words, width_px)) in label.lines.iter().zip(&widths).enumerate() {
            let left = match anchor {
                Anchor::Start => base[0],
                Anchor::Middle => base[0] - 0.5 * width_px,
                Anchor::End => base[0] - width_px,
            };
            placed.words.push(PlacedWords {
                words: words.clone(),
                start_px: [left, base[1] + row as f64 * label.leading_px],
                width_px: *width_px,
                halo: label.halo,
            });
        }
    }
    placed
}

fn extent(label: &Label, base: [f64; 2], anchor: Anchor, width: f64) -> Rect {
    let left = match anchor {
        Anchor::Start => base[0],
        Anchor::Middle => base[0] - 0.5 * width,
        Anchor::End => base[0] - width,
    };
    let first = label.lines.first().map_or(12.0, |line| line.size_px);
    let rows = label.lines.len().saturating_sub(1) as f64;
    Rect::new(
        left,
        base[1] - 0.78 * first,
        left + width,
        base[1] + rows * label.leading_px + 0.22 * first,
    )
}

/// From the middle of the facing edge of a label to just before its target.
fn leader(area: &Rect, target: [f64; 2]) -> Option<[[f64; 2]; 2]> {
    const SHORT_PX: f64 = 6.0;
    let x = target[0].clamp(area.left + 4.0, (area.right - 4.0).max(area.left + 4.0));
    let from = if target[1] > area.bottom {
        [x, area.bottom + 2.0]
    } else if target[1] < area.top {
        [x, area.top - 2.0]
    } else if target[0] > area.right {
        [area.right + 2.0, 0.5 * (area.top + area.bottom)]
    } else {
        [area.left - 2.0, 0.5 * (area.top + area.bottom)]
    };
    let (dx, dy) = (target[0] - from[0], target[1] - from[1]);
    let length = dx.hypot(dy);
    let part = (length > 2.0 * SHORT_PX).then(|| (length - SHORT_PX) / length)?;
    Some([from, [from[0] + part * dx, from[1] + part * dy]])
}

fn covered_px(curves: &[Vec<[f64; 2]>], area: &Rect) -> f64 {
    curves
        .iter()
        .flat_map(|curve| curve.windows(2))
        .filter_map(|pair| clip::clip_segment(pair[0], pair[1], area))
        .map(|(a, b)| (b[0] - a[0]).hypot(b[1] - a[1]))
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::scene::{At, data, px};

    fn wanted(label: &Label) -> Wanted<'_> {
        let pixel = |at: At| match (at.x, at.y) {
            (crate::chart::scene::Coord::Px(x), crate::chart::scene::Coord::Px(y)) => [x, y],
            _ => [f64::NAN; 2],
        };
        Wanted {
            label,
            spots: label
                .spots
                .iter()
                .map(|s| {
                    let at = pixel(s.at);
                    ([at[0] + s.offset_px[0], at[1] + s.offset_px[1]], s.anchor)
                })
                .collect(),
            within: Rect::new(0.0, 0.0, 200.0, 100.0),
            target: None,
        }
    }

    #[test]
    fn the_important_stay_and_curves_stay_clear() {
        let main = Label::new(px(0.0, 0.0), Anchor::Start, "centre").around(
            &[px(100.0, 50.0)],
            8.0,
            Rank::Main,
        );
        let other = Label::new(px(0.0, 0.0), Anchor::Start, "surface").around(
            &[px(100.0, 50.0)],
            8.0,
            Rank::Other,
        );
        let lost = Label::new(data(1.0, 1.0), Anchor::Start, "nowhere");
        let curve = vec![[0.0, 50.0], [100.0, 50.0]];
        let mut wants = [wanted(&other), wanted(&main), wanted(&lost)];
        wants[1].target = Some([100.0, 90.0]);
        let placed = place(&wants, &[curve], &[], &face::width_px);
        assert_eq!(placed.words.len(), 2);
        assert_eq!(placed.words[0].words.text, "centre");
        assert!(
            placed.words[0].start_px[0] > 100.0,
            "right of the curve's end"
        );
        assert!(
            (placed.words[1].start_px[1] - 54.0).abs() > 5.0,
            "left is the curve, right is taken"
        );
        assert_eq!(placed.leaders.len(), 1);
        assert!(placed.leaders[0][1][1] < 90.0);
        let full = [wants[0].within];
        let none = place(&wants[..2], &[], &full, &face::width_px);
        assert_eq!(none, Placed::default());
    }
}
