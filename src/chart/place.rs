//! Where labels go when the plot is crowded: the more important first, each at the free spot that
//! covers least of the curves, the least important left out; never shrunk, never turned.

use super::clip;
use super::face::{self, Weight};
use super::ink::Paint;
use super::plane::Rect;
use super::scene::{Anchor, CLEAR_PX, Label, Rank, Words};
use crate::numeric::order;

/// A label with its spots in px.
pub struct Wanted<'a> {
    /// The label.
    pub label: &'a Label,
    /// Its spots: what it belongs to there, px; the base line of its first line from there.
    pub spots: Vec<([f64; 2], [f64; 2], Anchor)>,
    /// Where it must stay if it is free to move, px.
    pub within: Rect,
}

/// A piece of a line that labels keep clear of.
pub struct Run {
    points: Vec<[f64; 2]>,
    clear_px: f64,
    /// What it takes with its clearance.
    bounds: Rect,
}

impl Run {
    /// Adds a line in pieces, so that those far from a label are told at a glance.
    pub fn add(runs: &mut Vec<Self>, line: &[[f64; 2]], clear_px: f64) {
        const SEGMENTS: usize = 16;
        for start in (0..line.len().saturating_sub(1)).step_by(SEGMENTS) {
            let end = line.len().min(start + SEGMENTS + 1);
            let Some(points) = line.get(start..end) else {
                continue;
            };
            let Some(&[x, y]) = points.first() else {
                continue;
            };
            let bounds = points.iter().fold(Rect::new(x, y, x, y), |r, [x, y]| Rect {
                left: r.left.min(*x),
                top: r.top.min(*y),
                right: r.right.max(*x),
                bottom: r.bottom.max(*y),
            });
            runs.push(Self {
                points: points.to_vec(),
                clear_px,
                bounds: bounds.grown(clear_px),
            });
        }
    }

    /// How far it goes through an area, px.
    fn through_px(&self, area: &Rect) -> f64 {
        let pairs = self.points.windows(2);
        pairs
            .filter_map(|pair| clip::clip_segment(pair[0], pair[1], area))
            .map(|(a, b)| (b[0] - a[0]).hypot(b[1] - a[1]))
            .sum()
    }
}

/// How far lines go through what is around an area and through the area itself, px.
fn covered_px(runs: &[Run], area: &Rect) -> [f64; 2] {
    let near = runs.iter().filter(|run| run.bounds.meets(area));
    near.fold([0.0, 0.0], |[around, through], run| {
        let wide = area.grown(run.clear_px);
        [
            around + run.through_px(&wide),
            through + run.through_px(area),
        ]
    })
}

/// How many lines a leader crosses.
fn crossed(runs: &[Run], [from, to]: [[f64; 2]; 2]) -> usize {
    let side = |a: [f64; 2], b: [f64; 2], p: [f64; 2]| {
        (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0.0
    };
    let about = Rect::new(from[0], from[1], to[0], to[1]).grown(0.5);
    let near = runs.iter().filter(|run| run.bounds.meets(&about));
    let pairs = near.flat_map(|run| run.points.windows(2));
    pairs
        .filter(|pair| {
            let (a, b) = (pair[0], pair[1]);
            side(from, to, a) != side(from, to, b) && side(a, b, from) != side(a, b, to)
        })
        .count()
}

/// How much worse it is that a line goes through the words than that it goes close by.
const STRUCK: f64 = 10.0;
/// What a leader across a line counts, px.
const CROSSED: f64 = 4.0;
/// What a leader counts that goes below a handle or another label, px: only what is always told has such a one.
const BLOCKED: f64 = 1000.0;
/// How far a line may go close by a label that is left out before others, px.
const CLOSE_PX: f64 = 5.0;

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
    mut runs: Vec<Run>,
    mut taken: Vec<Rect>,
    measure: &dyn Fn(&str, f64, Weight) -> f64,
) -> Placed {
    let mut wanted: Vec<&Wanted<'_>> = wanted.iter().collect();
    order::sort_by_key(&mut wanted, |w| std::cmp::Reverse(w.label.rank));
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
        let mut best: Option<(f64, f64, usize, Rect)> = None;
        for (i, (at, offset, anchor)) in want.spots.iter().enumerate() {
            let base = [at[0] + offset[0], at[1] + offset[1]];
            if !(base[0].is_finite() && base[1].is_finite()) {
                continue;
            }
            let area = extent(label, base, *anchor, widest);
            if fixed {
                best = Some((0.0, 0.0, i, area));
                break;
            }
            let free = want.within.holds([area.left, area.top])
                && want.within.holds([area.right, area.bottom])
                && !taken.iter().any(|other| other.meets(&area));
            let lead = label.leads.then(|| leader(&area, *at)).flatten();
            let is_blocked = lead.is_some_and(|[from, to]| {
                taken
                    .iter()
                    .any(|other| clip::clip_segment(from, to, other).is_some())
            });
            if !free || is_blocked && label.rank < Rank::Main {
                continue;
            }
            let [around, through] = covered_px(&runs, &area);
            let crossed = lead.map_or(0, |line| crossed(&runs, line)) as f64;
            let blocked = if is_blocked { BLOCKED } else { 0.0 };
            let covered = around + STRUCK * through + CROSSED * crossed + blocked;
            if best.is_none_or(|(least, ..)| covered + TOUCH_PX < least) {
                best = Some((covered, through, i, area));
            }
            if covered < TOUCH_PX {
                break;
            }
        }
        let Some((covered, through, i, area)) = best else {
            continue;
        };
        // What is least important is rather left out than struck through, unless it has a box.
        let is_left_out = match label.rank {
            Rank::Other => covered > CLOSE_PX,
            Rank::Boundary => through > TOUCH_PX,
            _ => false,
        };
        if is_left_out && label.ground.is_none() {
            continue;
        }
        let Some((at, offset, anchor)) = want.spots.get(i) else {
            continue;
        };
        let base = [at[0] + offset[0], at[1] + offset[1]];
        taken.push(area.grown(if fixed { 1.0 } else { 3.0 }));
        if let Some(paint) = label.ground {
            placed.grounds.push((area.grown(3.0), paint));
        }
        if let Some(line) = label.leads.then(|| leader(&area, *at)).flatten() {
            Run::add(&mut runs, &line, CLEAR_PX);
            placed.leaders.push(line);
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

/// From the edge of a label that faces its target to just before that: from the side where it lies
/// more aside than above or below, so that it never underlines the words.
fn leader(area: &Rect, target: [f64; 2]) -> Option<[[f64; 2]; 2]> {
    const SHORT_PX: f64 = 6.0;
    let x = target[0].clamp(area.left + 4.0, (area.right - 4.0).max(area.left + 4.0));
    let aside = (area.left - target[0]).max(target[0] - area.right);
    let upright = (area.top - target[1]).max(target[1] - area.bottom);
    let from = if aside > upright {
        let edge = if target[0] > area.right {
            area.right + 2.0
        } else {
            area.left - 2.0
        };
        [edge, 0.5 * (area.top + area.bottom)]
    } else if target[1] > area.bottom {
        [x, area.bottom + 2.0]
    } else {
        [x, area.top - 2.0]
    };
    let (dx, dy) = (target[0] - from[0], target[1] - from[1]);
    let length = dx.hypot(dy);
    let part = (length > 2.0 * SHORT_PX).then(|| (length - SHORT_PX) / length)?;
    Some([from, [from[0] + part * dx, from[1] + part * dy]])
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
                .map(|s| (pixel(s.at), s.offset_px, s.anchor))
                .collect(),
            within: Rect::new(0.0, 0.0, 200.0, 100.0),
        }
    }

    #[test]
    fn what_is_struck_through_is_left_out_and_what_stands_off_has_a_leader() {
        let near = |rank| {
            let label = Label::new(px(0.0, 0.0), Anchor::Start, "surface");
            label.around(&[px(100.0, 50.0)], 8.0, rank)
        };
        let fence = || {
            let mut runs = Vec::new();
            for column in [75.0, 100.0, 125.0] {
                Run::add(&mut runs, &[[column, 0.0], [column, 100.0]], CLEAR_PX);
            }
            runs
        };
        let count = |label: &Label| {
            let placed = place(&[wanted(label)], fence(), Vec::new(), &face::width_px);
            (placed.words.len(), placed.leaders.len())
        };
        assert_eq!(count(&near(Rank::Other)), (0, 0));
        assert_eq!(count(&near(Rank::Boundary)), (0, 0));
        assert_eq!(count(&near(Rank::Main)), (1, 0));
        let off = near(Rank::Other).farther(&[px(100.0, 50.0)], &[40.0]).led();
        assert_eq!(count(&off), (1, 1));
        let line = leader(&Rect::new(20.0, 40.0, 60.0, 52.0), [100.0, 60.0]).expect("a leader");
        assert_eq!(
            line[0],
            [62.0, 46.0],
            "from the side, never under the words"
        );
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
            12.0,
            Rank::Other,
        );
        let lost = Label::new(data(1.0, 1.0), Anchor::Start, "nowhere");
        let curve = || {
            let mut runs = Vec::new();
            Run::add(&mut runs, &[[0.0, 50.0], [100.0, 50.0]], CLEAR_PX);
            runs
        };
        let wants = [wanted(&other), wanted(&main), wanted(&lost)];
        let placed = place(&wants, curve(), Vec::new(), &face::width_px);
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
        let full = vec![wants[0].within];
        let none = place(&wants[..2], curve(), full, &face::width_px);
        assert_eq!(none, Placed::default());
    }
}
