//! Which curve lies under the pointer.

/// A curve near a pixel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hit {
    /// Index of the curve in the list given.
    pub curve: usize,
    /// Nearest point on the curve, px.
    pub at: [f64; 2],
    /// Distance from the pixel, px.
    pub distance_px: f64,
}

/// The nearest of several curves (polylines in px) within a tolerance in px, if any. Usual
/// tolerances: 8 for a mouse, 22 for a finger.
pub fn nearest<'a>(
    curves: impl IntoIterator<Item = &'a [[f64; 2]]>,
    pixel: [f64; 2],
    tolerance_px: f64,
) -> Option<Hit> {
    let mut best: Option<Hit> = None;
    for (curve, points) in curves.into_iter().enumerate() {
        for pair in points.windows(2) {
            let at = nearest_on_segment(pair[0], pair[1], pixel);
            let distance_px = (at[0] - pixel[0]).hypot(at[1] - pixel[1]);
            let limit = best.map_or(tolerance_px, |hit| hit.distance_px);
            if distance_px < limit || (best.is_none() && distance_px == limit) {
                best = Some(Hit {
                    curve,
                    at,
                    distance_px,
                });
            }
        }
    }
    best
}

fn nearest_on_segment(from: [f64; 2], to: [f64; 2], pixel: [f64; 2]) -> [f64; 2] {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let square = dx * dx + dy * dy;
    if square == 0.0 {
        return from;
    }
    let t = (((pixel[0] - from[0]) * dx + (pixel[1] - from[1]) * dy) / square).clamp(0.0, 1.0);
    [from[0] + t * dx, from[1] + t * dy]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearer_one_within_reach() {
        let flat = [[0.0, 0.0], [100.0, 0.0]];
        let broken = [[0.0, 10.0], [f64::NAN, 10.0], [100.0, 10.0]];
        let steep = [[50.0, 5.0], [50.0, 50.0]];
        let curves = [&flat[..], &broken[..], &steep[..]];
        let hit = nearest(curves, [52.0, 4.0], 8.0).expect("a hit");
        assert_eq!((hit.curve, hit.at), (2, [50.0, 5.0]));
        assert_eq!(nearest(curves, [20.0, 30.0], 8.0), None);
        assert_eq!(nearest(curves, [20.0, 3.0], 8.0).map(|h| h.curve), Some(0));
    }
}
