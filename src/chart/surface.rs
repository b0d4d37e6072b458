//! What a chart is drawn on: a plotters backend for shapes, and beyond it what that cannot do
//! (text in a chosen weight with a halo, many strokes in one path, colours that change).

use plotters::backend::DrawingBackend;
use plotters::style::{RGBAColor, ShapeStyle};

use super::clip;
use super::face::{self, Weight};
use super::ink::Rgb;
use super::plane::Rect;

/// A colour with its opacity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tint {
    /// Red, green, blue.
    pub rgb: Rgb,
    /// 0 to 1.
    pub opacity: f64,
}

impl Tint {
    /// As plotters wants it.
    pub fn color(self) -> RGBAColor {
        let [r, g, b] = self.rgb;
        RGBAColor(r, g, b, self.opacity.clamp(0.0, 1.0))
    }
}

/// A run of text at its place, px.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Writing<'a> {
    /// The characters.
    pub text: &'a str,
    /// Start of the base line.
    pub start_px: [f64; 2],
    /// Size.
    pub size_px: f64,
    /// Weight.
    pub weight: Weight,
    /// Colour.
    pub rgb: Rgb,
    /// Colour of the halo.
    pub halo: Option<Rgb>,
}

/// Width of halos, px.
pub const HALO_PX: f64 = 4.0;

/// Why a chart could not be drawn.
#[derive(Debug, thiserror::Error)]
#[error("{}", recalesce_texts::charts::not_drawn(.0))]
pub struct DrawError(pub String);

/// A place to draw charts on. All numbers are css px.
pub trait Surface {
    /// The plotters backend that draws shapes.
    type Backend: DrawingBackend;

    /// The backend itself.
    fn backend(&mut self) -> &mut Self::Backend;

    /// Backend units in a css px: backend coordinates are whole numbers, so a grid finer than the
    /// pixel keeps curves smooth.
    fn grid(&self) -> f64;

    /// Writes a run of text.
    fn write(&mut self, writing: Writing<'_>) -> Result<(), DrawError>;

    /// Width of a run of text, px.
    fn text_width_px(&self, text: &str, size_px: f64, weight: Weight) -> f64 {
        face::width_px(text, size_px, weight)
    }

    /// Draws lines of one width and colour.
    fn strokes(
        &mut self,
        lines: &[Vec<[f64; 2]>],
        width_px: f64,
        tint: Tint,
    ) -> Result<(), DrawError> {
        let grid = self.grid();
        let style = ShapeStyle {
            color: tint.color(),
            filled: false,
            stroke_width: (width_px * grid).round().max(1.0) as u32,
        };
        for line in lines {
            let path = line.iter().map(|p| unit(*p, grid));
            self.backend().draw_path(path, &style).map_err(told)?;
        }
        Ok(())
    }

    /// Fills an area.
    fn fill(&mut self, area: &[[f64; 2]], tint: Tint) -> Result<(), DrawError> {
        let grid = self.grid();
        let style = ShapeStyle {
            color: tint.color(),
            filled: true,
            stroke_width: 0,
        };
        let corners = area.iter().map(|p| unit(*p, grid));
        self.backend().fill_polygon(corners, &style).map_err(told)
    }

    /// Fills discs of one size and colour.
    fn dots(&mut self, centres: &[[f64; 2]], radius_px: f64, tint: Tint) -> Result<(), DrawError> {
        let grid = self.grid();
        let style = ShapeStyle {
            color: tint.color(),
            filled: true,
            stroke_width: 0,
        };
        let radius = (radius_px * grid).round().max(1.0) as u32;
        for centre in centres {
            self.backend()
                .draw_circle(unit(*centre, grid), radius, &style, true)
                .map_err(told)?;
        }
        Ok(())
    }

    /// Fills an area with a colour that changes along it; here in slices of about 2 px.
    fn ramp(
        &mut self,
        area: &[[f64; 2]],
        downwards: bool,
        stops: &[(f64, Tint)],
    ) -> Result<(), DrawError> {
        let along = usize::from(downwards);
        let ends = area
            .iter()
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], p| {
                [low.min(p[along]), high.max(p[along])]
            });
        if !(ends[0].is_finite() && ends[1] - ends[0] < 1e5) {
            return Ok(());
        }
        let mut from = ends[0];
        while from < ends[1] {
            let to = ((0.5 * from).floor() * 2.0 + 2.0).min(ends[1]);
            let tint = between(stops, 0.5 * (from + to));
            // An opaque slice reaches under the next one, so that no seam shows between them.
            let under = if tint.opacity >= 1.0 { to + 1.0 } else { to };
            let mut slice = Rect::new(-1e6, -1e6, 1e6, 1e6);
            if downwards {
                (slice.top, slice.bottom) = (from, under);
            } else {
                (slice.left, slice.right) = (from, under);
            }
            let piece = clip::clip_polygon(area, &slice);
            if piece.len() > 2 && tint.opacity > 0.0 {
                self.fill(&piece, tint)?;
            }
            from = to;
        }
        Ok(())
    }
}

/// A plotters error, told.
pub fn told<E: std::fmt::Display>(error: E) -> DrawError {
    DrawError(error.to_string())
}

/// A css pixel in backend units.
pub fn unit([x, y]: [f64; 2], grid: f64) -> (i32, i32) {
    // `as` saturates, so that a far point cannot wrap round.
    ((x * grid).round() as i32, (y * grid).round() as i32)
}

fn between(stops: &[(f64, Tint)], place: f64) -> Tint {
    let after = stops.partition_point(|(at, _)| *at <= place);
    let none = Tint {
        rgb: [0; 3],
        opacity: 0.0,
    };
    let low = after.checked_sub(1).and_then(|i| stops.get(i));
    match (low, stops.get(after)) {
        (Some((a, from)), Some((b, to))) => {
            let part = (place - a) / (b - a).max(1e-9);
            let mix = |x: f64, y: f64| x + part * (y - x);
            let channel =
                |i: usize| mix(f64::from(from.rgb[i]), f64::from(to.rgb[i])).round() as u8;
            Tint {
                rgb: [channel(0), channel(1), channel(2)],
                opacity: mix(from.opacity, to.opacity),
            }
        }
        (Some((_, tint)), None) | (None, Some((_, tint))) => *tint,
        (None, None) => none,
    }
}
