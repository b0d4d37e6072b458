//! Clipping in pixels: curves to the plot, areas to the plot, pattern strokes to an area.

use super::plane::Rect;

/// Part of a segment inside a rectangle, after Liang and Barsky.
pub fn clip_segment(from: [f64; 2], to: [f64; 2], rect: &Rect) -> Option<([f64; 2], [f64; 2])> {
    // Most lie wholly on one side.
    if from[0].max(to[0]) < rect.left
        || from[0].min(to[0]) > rect.right
        || from[1].max(to[1]) < rect.top
        || from[1].min(to[1]) > rect.bottom
    {
        return None;
    }
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (p, q) in [
        (-dx, from[0] - rect.left),
        (dx, rect.right - from[0]),
        (-dy, from[1] - rect.top),
        (dy, rect.bottom - from[1]),
    ] {
        if p == 0.0 {
            if q < 0.0 {
                return None;
            }
        } else if p < 0.0 {
            enter = enter.max(q / p);
        } else {
            leave = leave.min(q / p);
        }
    }
    if enter > leave {
        return None;
    }
    let at = |t: f64| [from[0] + t * dx, from[1] + t * dy];
    let start = if enter == 0.0 { from } else { at(enter) };
    let end = if leave == 1.0 { to } else { at(leave) };
    Some((start, end))
}

fn finite(point: [f64; 2]) -> bool {
    point[0].is_finite() && point[1].is_finite()
}

/// Parts of a polyline inside a rectangle. It breaks where it leaves and where a point is not finite.
pub fn clip_polyline(points: &[[f64; 2]], rect: &Rect) -> Vec<Vec<[f64; 2]>> {
    let mut parts: Vec<Vec<[f64; 2]>> = Vec::new();
    let mut open: Vec<[f64; 2]> = Vec::new();
    for pair in points.windows(2) {
        let piece = (finite(pair[0]) && finite(pair[1]))
            .then(|| clip_segment(pair[0], pair[1], rect))
            .flatten();
        let Some((start, end)) = piece else {
            close(&mut open, &mut parts);
            continue;
        };
        if open.last() != Some(&start) {
            close(&mut open, &mut parts);
            open.push(start);
        }
        open.push(end);
    }
    close(&mut open, &mut parts);
    parts
}

fn close(open: &mut Vec<[f64; 2]>, parts: &mut Vec<Vec<[f64; 2]>>) {
    if open.len() > 1 {
        parts.push(std::mem::take(open));
    } else {
        open.clear();
    }
}

/// An area clipped to a rectangle, after Sutherland and Hodgman. Points that are not finite are
/// left out. Empty when nothing is inside.
pub fn clip_polygon(points: &[[f64; 2]], rect: &Rect) -> Vec<[f64; 2]> {
    let mut area: Vec<[f64; 2]> = points.iter().copied().filter(|p| finite(*p)).collect();
    let mut next = Vec::with_capacity(area.len() + 4);
    for (axis, limit, sign) in [
        (0, rect.left, 1.0),
        (0, rect.right, -1.0),
        (1, rect.top, 1.0),
        (1, rect.bottom, -1.0),
    ] {
        let depth = |p: &[f64; 2]| sign * (p[axis] - limit);
        next.clear();
        for (i, here) in area.iter().enumerate() {
            let before = if i == 0 { area.last() } else { area.get(i - 1) };
            let Some(before) = before else { continue };
            let (a, b) = (depth(before), depth(here));
            if (a < 0.0) != (b < 0.0) {
                let t = a / (a - b);
                let mut cut = [
                    before[0] + t * (here[0] - before[0]),
                    before[1] + t * (here[1] - before[1]),
                ];
                cut[axis] = limit;
                next.push(cut);
            }
            if b >= 0.0 {
                next.push(*here);
            }
        }
        std::mem::swap(&mut area, &mut next);
    }
    area
}

/// Whether a point lies inside an area, even-odd rule.
pub fn inside(point: [f64; 2], area: &[[f64; 2]]) -> bool {
    let mut odd = false;
    let mut before = match area.last() {
        Some(last) => *last,
        None => return false,
    };
    for here in area {
        if (here[1] > point[1]) != (before[1] > point[1]) {
            let x = here[0] + (point[1] - here[1]) / (before[1] - here[1]) * (before[0] - here[0]);
            if point[0] < x {
                odd = !odd;
            }
        }
        before = *here;
    }
    odd
}

/// Parts of a segment inside an area that may be hollow or bent, even-odd rule.
pub fn clip_to_area(
    from: [f64; 2],
    to: [f64; 2],
    area: &[[f64; 2]],
    mut keep: impl FnMut([f64; 2], [f64; 2]),
) {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let side = |p: &[f64; 2]| dx * (p[1] - from[1]) - dy * (p[0] - from[0]);
    let Some(mut before) = area.last() else {
        return;
    };
    let mut before_side = side(before);
    // Where the whole line crosses the border; the line starts outside, so crossings pair up.
    let mut crossings: Vec<f64> = Vec::new();
    for here in area {
        let here_side = side(here);
        if (here_side > 0.0) != (before_side > 0.0) {
            let u = before_side / (before_side - here_side);
            let cut = [
                before[0] + u * (here[0] - before[0]),
                before[1] + u * (here[1] - before[1]),
            ];
            crossings
                .push(((cut[0] - from[0]) * dx + (cut[1] - from[1]) * dy) / (dx * dx + dy * dy));
        }
        before = here;
        before_side = here_side;
    }
    crossings.sort_by(f64::total_cmp);
    for pair in crossings.chunks_exact(2) {
        let (start, end) = (pair[0].max(0.0), pair[1].min(1.0));
        if start < end {
            keep(
                [from[0] + start * dx, from[1] + start * dy],
                [from[0] + end * dx, from[1] + end * dy],
            );
        }
    }
}

/// Cuts a polyline into its dashes: on, off, on, off … in pixels along the line.
pub fn dashes(points: &[[f64; 2]], pattern: &[f64]) -> Vec<Vec<[f64; 2]>> {
    let total: f64 = pattern.iter().sum();
    if pattern.is_empty() || !total.is_finite() || total < 0.5 {
        return vec![points.to_vec()];
    }
    let mut parts = Vec::new();
    let mut place = 0;
    let mut left = pattern.first().copied().unwrap_or(total);
    let mut open: Vec<[f64; 2]> = points.first().copied().into_iter().collect();
    for pair in points.windows(2) {
        let [mut from, to] = [pair[0], pair[1]];
        let mut length = (to[0] - from[0]).hypot(to[1] - from[1]);
        while length > left {
            let t = left / length;
            from = [
                from[0] + t * (to[0] - from[0]),
                from[1] + t * (to[1] - from[1]),
            ];
            length -= left;
            if place % 2 == 0 {
                open.push(from);
                close(&mut open, &mut parts);
            }
            place = (place + 1) % (2 * pattern.len());
            left = pattern
                .get(place % pattern.len())
                .copied()
                .unwrap_or(total)
                .max(0.05);
            if place % 2 == 0 {
                open = vec![from];
            }
        }
        left -= length;
        if place % 2 == 0 {
            open.push(to);
        }
    }
    close(&mut open, &mut parts);
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOX: Rect = Rect {
        left: 0.0,
        top: 0.0,
        right: 10.0,
        bottom: 10.0,
    };

    #[test]
    fn slopes_survive_the_border() {
        let parts = clip_polyline(&[[-5.0, 0.0], [5.0, 5.0], [15.0, 10.0]], &BOX);
        assert_eq!(parts, [vec![[0.0, 2.5], [5.0, 5.0], [10.0, 7.5]]]);
    }

    #[test]
    fn gaps_stay_gaps() {
        let curve = [
            [1.0, 1.0],
            [2.0, 2.0],
            [f64::NAN, 3.0],
            [4.0, 4.0],
            [5.0, 5.0],
        ];
        assert_eq!(clip_polyline(&curve, &BOX).len(), 2);
        let out_and_in = [[1.0, 1.0], [1.0, 20.0], [3.0, 20.0], [3.0, 1.0]];
        assert_eq!(clip_polyline(&out_and_in, &BOX).len(), 2);
        assert!(clip_polyline(&[[1.0, 1.0]], &BOX).is_empty());
        assert!(clip_polyline(&[[f64::INFINITY, 1.0], [2.0, 2.0]], &BOX).is_empty());
    }

    #[test]
    fn areas() {
        let diamond = [[5.0, -5.0], [15.0, 5.0], [5.0, 15.0], [-5.0, 5.0]];
        let cut = clip_polygon(&diamond, &BOX);
        assert!(cut.iter().all(|p| BOX.holds(*p)));
        assert!(clip_polygon(&[[20.0, 0.0], [30.0, 0.0], [30.0, 5.0]], &BOX).is_empty());
        let hook = [
            [0.0, 0.0],
            [10.0, 0.0],
            [10.0, 10.0],
            [8.0, 10.0],
            [8.0, 2.0],
            [0.0, 2.0],
        ];
        assert!(inside([9.0, 9.0], &hook) && !inside([5.0, 5.0], &hook));
        let mut kept = Vec::new();
        clip_to_area([-1.0, 9.0], [11.0, 1.0], &hook, |a, b| kept.push((a, b)));
        assert_eq!(kept.len(), 1);
        assert!((kept[0].0[0] - 8.0).abs() < 1e-9);
    }

    #[test]
    fn dashes_keep_their_length() {
        let parts = dashes(&[[0.0, 0.0], [4.0, 0.0], [4.0, 16.0]], &[7.0, 3.0]);
        assert_eq!(parts.len(), 2);
        assert_eq!(parts[0], [[0.0, 0.0], [4.0, 0.0], [4.0, 3.0]]);
        assert_eq!(parts[1], [[4.0, 6.0], [4.0, 13.0]]);
        assert_eq!(dashes(&[[0.0, 0.0], [4.0, 0.0]], &[]).len(), 1);
    }
}
