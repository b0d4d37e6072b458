//! Patterns as strokes and dots, cut to an area of any shape. They are fixed to the sheet, so that
//! they stay put while the area changes.

use super::clip;
use super::scene::Pattern;
use crate::numeric::turn::sin_cos_of_turn;

/// Strokes and dots of a pattern, px.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Texture {
    /// Polylines.
    pub strokes: Vec<Vec<[f64; 2]>>,
    /// Width of the strokes.
    pub width_px: f64,
    /// Centres of dots.
    pub dots: Vec<[f64; 2]>,
    /// Their radius.
    pub radius_px: f64,
    /// How strong the pattern is, 0 to 1.
    pub opacity: f64,
}

struct Tile {
    width: f64,
    height: f64,
    strokes: &'static [[f64; 4]],
    dots: &'static [[f64; 2]],
}

const LATHS: Tile = Tile {
    width: 11.0,
    height: 11.0,
    strokes: &[
        [1.0, 10.0, 6.0, 1.5],
        [6.5, 9.5, 10.5, 5.0],
        [7.5, 1.0, 4.5, 6.5],
    ],
    dots: &[],
};

const GRAINS: Tile = Tile {
    width: 9.0,
    height: 9.0,
    strokes: &[
        [0.0, 4.5, 3.0, 4.5],
        [3.0, 4.5, 4.5, 2.0],
        [4.5, 2.0, 7.5, 2.0],
        [7.5, 2.0, 9.0, 4.5],
        [3.0, 4.5, 4.5, 7.0],
        [4.5, 7.0, 7.5, 7.0],
        [7.5, 7.0, 9.0, 4.5],
    ],
    dots: &[],
};

const PARTICLES: Tile = Tile {
    width: 6.0,
    height: 6.0,
    strokes: &[],
    dots: &[[1.8, 1.8], [4.7, 4.6]],
};

const SPARSE: Tile = Tile {
    width: 11.0,
    height: 11.0,
    strokes: &[],
    dots: &[[3.0, 3.0], [8.5, 8.5]],
};

const SHEAVES: Tile = Tile {
    width: 6.0,
    height: 7.0,
    strokes: &[[1.0, 5.0, 3.0, 1.0], [4.0, 7.0, 6.0, 3.0]],
    dots: &[],
};

const THIN_SHEAVES: Tile = Tile {
    width: 8.0,
    height: 9.0,
    strokes: &[[1.0, 6.0, 3.0, 2.0], [5.0, 9.0, 7.0, 5.0]],
    dots: &[],
};

/// No sheet is larger: a pattern over more would never be seen, and never end.
const LARGEST_PX: f64 = 10_000.0;

/// A pattern cut to an area (px). Nothing for an area of fewer than three corners.
pub fn texture(pattern: Pattern, area: &[[f64; 2]]) -> Texture {
    let (width_px, radius_px, opacity) = match pattern {
        Pattern::Laths => (1.0, 0.0, 1.0),
        Pattern::Grains => (0.8, 0.0, 0.75),
        Pattern::Particles => (0.0, 1.1, 1.0),
        Pattern::Lamellae => (1.2, 0.0, 1.0),
        Pattern::Sheaves => (1.1, 0.0, 1.0),
        Pattern::SparseParticles => (0.0, 0.9, 0.6),
        Pattern::ThinLamellae => (1.0, 0.0, 0.38),
        Pattern::ThinSheaves => (1.0, 0.0, 0.42),
        Pattern::Hatch => (1.0, 0.0, 0.55),
    };
    let mut texture = Texture {
        width_px,
        radius_px,
        opacity,
        ..Texture::default()
    };
    let extent = |axis: usize| {
        let [low, high] = bounds(area, |p| p[axis]);
        high - low
    };
    if area.len() < 3 || !(extent(0) < LARGEST_PX && extent(1) < LARGEST_PX) {
        return texture;
    }
    match pattern {
        Pattern::Laths => tiled(&LATHS, area, &mut texture),
        Pattern::Grains => tiled(&GRAINS, area, &mut texture),
        Pattern::Particles => tiled(&PARTICLES, area, &mut texture),
        Pattern::Sheaves => tiled(&SHEAVES, area, &mut texture),
        Pattern::SparseParticles => tiled(&SPARSE, area, &mut texture),
        Pattern::ThinSheaves => tiled(&THIN_SHEAVES, area, &mut texture),
        Pattern::Lamellae => ruled(35.0, 4.0, area, &mut texture),
        Pattern::ThinLamellae => ruled(35.0, 5.0, area, &mut texture),
        Pattern::Hatch => ruled(-45.0, 6.0, area, &mut texture),
    }
    texture
}

fn bounds(area: &[[f64; 2]], measure: impl Fn(&[f64; 2]) -> f64) -> [f64; 2] {
    area.iter()
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], p| {
            let value = measure(p);
            [low.min(value), high.max(value)]
        })
}

fn tiled(tile: &Tile, area: &[[f64; 2]], texture: &mut Texture) {
    let [left, right] = bounds(area, |p| p[0]);
    let [top, bottom] = bounds(area, |p| p[1]);
    let columns = (left / tile.width).floor() as i32..=(right / tile.width).floor() as i32;
    let rows = (top / tile.height).floor() as i32..=(bottom / tile.height).floor() as i32;
    for row in rows {
        for column in columns.clone() {
            let (x, y) = (f64::from(column) * tile.width, f64::from(row) * tile.height);
            for [x0, y0, x1, y1] in tile.strokes {
                clip::clip_to_area([x + x0, y + y0], [x + x1, y + y1], area, |a, b| {
                    texture.strokes.push(vec![a, b]);
                });
            }
            for [x0, y0] in tile.dots {
                if clip::inside([x + x0, y + y0], area) {
                    texture.dots.push([x + x0, y + y0]);
                }
            }
        }
    }
}

fn ruled(degrees: f64, spacing_px: f64, area: &[[f64; 2]], texture: &mut Texture) {
    let (sin, cos) = sin_cos_of_turn(degrees / 360.0);
    let across = |p: &[f64; 2]| cos * p[1] - sin * p[0];
    let along = |p: &[f64; 2]| cos * p[0] + sin * p[1];
    let [first, last] = bounds(area, across);
    let [start, end] = bounds(area, along);
    let from = (first / spacing_px).ceil() as i32;
    let to = (last / spacing_px).floor() as i32;
    for i in from..=to {
        let level = f64::from(i) * spacing_px;
        let at = |t: f64| [cos * t - sin * level, sin * t + cos * level];
        clip::clip_to_area(at(start - 1.0), at(end + 1.0), area, |a, b| {
            texture.strokes.push(vec![a, b]);
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_leaves_the_area() {
        let hook = [
            [0.0, 0.0],
            [60.0, 0.0],
            [60.0, 60.0],
            [45.0, 60.0],
            [45.0, 15.0],
            [0.0, 15.0],
        ];
        for pattern in [
            Pattern::Laths,
            Pattern::Grains,
            Pattern::Particles,
            Pattern::Lamellae,
            Pattern::Sheaves,
            Pattern::SparseParticles,
            Pattern::ThinLamellae,
            Pattern::ThinSheaves,
            Pattern::Hatch,
        ] {
            let texture = texture(pattern, &hook);
            assert!(
                texture.strokes.len() + texture.dots.len() > 5,
                "{pattern:?}"
            );
            for stroke in &texture.strokes {
                let middle = [
                    0.5 * (stroke[0][0] + stroke[1][0]),
                    0.5 * (stroke[0][1] + stroke[1][1]),
                ];
                assert!(clip::inside(middle, &hook), "{pattern:?} {stroke:?}");
            }
            assert!(texture.dots.iter().all(|dot| clip::inside(*dot, &hook)));
        }
        assert!(texture(Pattern::Hatch, &hook[..2]).strokes.is_empty());
    }
}
