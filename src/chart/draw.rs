//! Draws a scene on any surface: projects, clips, dashes, fills with patterns, places the labels.

use super::clip;
use super::face;
use super::ink::{Ink, Palette};
use super::pattern;
use super::place::{self, PlacedWords, Run, Wanted};
use super::plane::{Plane, Rect};
use super::scene::{CLEAR_PX, Fill, Handle, Label, Mark, Moves, Pattern, Pen, Scene, Words};
use super::surface::{DrawError, Surface, Tint, Writing};
use crate::numeric::order;

/// Draws a scene. Marks come in the order of the scene, labels last.
pub fn draw<S: Surface>(
    scene: &Scene,
    palette: &Palette,
    surface: &mut S,
) -> Result<(), DrawError> {
    let mut wanted: Vec<Wanted<'_>> = Vec::new();
    let mut runs: Vec<Run> = Vec::new();
    for panel in &scene.panels {
        let mut painter = Painter {
            plane: &panel.plane,
            palette,
            surface,
        };
        for mark in &panel.marks {
            match mark {
                Mark::Label(label) => wanted.push(want(label, &panel.plane)),
                Mark::Line {
                    points,
                    pen,
                    clear_px,
                } => {
                    let parts = painter.line(points, pen)?;
                    if let Some(clear_px) = clear_px {
                        for part in parts {
                            Run::add(&mut runs, &part, clear_px + 0.5 * pen.width_px);
                        }
                    }
                }
                Mark::Stroke { from, to, pen } => {
                    let line = [from, to].map(|end| end.on(&panel.plane));
                    if finite(&line) {
                        Run::add(&mut runs, &line, CLEAR_PX + 0.5 * pen.width_px);
                    }
                    painter.mark(mark)?;
                }
                other => painter.mark(other)?,
            }
        }
    }
    let taken: Vec<Rect> = scene.handles.iter().flat_map(taken).collect();
    let mut placed = {
        let measure = |text: &str, size: f64, weight| surface.text_width_px(text, size, weight);
        place::place(&wanted, runs, taken, &measure)
    };
    for (area, paint) in &placed.grounds {
        let tint = Tint {
            rgb: palette.rgb(*paint),
            opacity: 1.0,
        };
        surface.fill(&area.corners(), tint)?;
    }
    let leaders: Vec<Vec<[f64; 2]>> = placed.leaders.iter().map(|line| line.to_vec()).collect();
    let tint = Tint {
        rgb: palette.rgb(Ink::Ink2.into()),
        opacity: 1.0,
    };
    surface.strokes(&leaders, 1.0, tint)?;
    // Those of one face follow one another: a canvas takes long to change it.
    order::sort_by_key(&mut placed.words, |placed| {
        let Words {
            size_px, weight, ..
        } = placed.words;
        (weight.css(), size_px.to_bits())
    });
    for words in placed.words {
        write(&words, palette, surface)?;
    }
    Ok(())
}

/// What a handle takes: its ring, its chevrons, its tag.
fn taken(handle: &Handle) -> impl Iterator<Item = Rect> {
    let [x, y] = handle.at_px;
    let about = |dx: f64, dy: f64| Rect::new(x - dx, y - dy, x + dx, y + dy);
    let chevrons = handle.moves.map(|moves| match moves {
        Moves::Across => about(21.0, 7.0),
        Moves::Upright => about(7.0, 21.0),
    });
    let tag = handle.tag.map(|tag| tag.grown(2.0));
    [Some(about(12.0, 12.0)), chevrons, tag]
        .into_iter()
        .flatten()
}

fn want<'a>(label: &'a Label, plane: &Plane) -> Wanted<'a> {
    let spots = label
        .spots
        .iter()
        .map(|spot| {
            let at = spot.at.on(plane);
            (at, spot.offset_px, spot.anchor)
        })
        .collect();
    Wanted {
        label,
        spots,
        within: plane.rect.grown(1.0),
    }
}

fn write<S: Surface>(
    placed: &PlacedWords,
    palette: &Palette,
    surface: &mut S,
) -> Result<(), DrawError> {
    let [mut x, base] = placed.start_px;
    let words = &placed.words;
    for run in face::runs(&words.text) {
        let (size_px, drop) = if run.lowered {
            (
                words.size_px * face::LOWERED_SIZE,
                words.size_px * face::LOWERED_DROP,
            )
        } else {
            (words.size_px, 0.0)
        };
        surface.write(Writing {
            text: run.text,
            start_px: [x, base + drop],
            size_px,
            weight: words.weight,
            rgb: palette.rgb(words.paint),
            halo: placed.halo.map(|paint| palette.rgb(paint)),
        })?;
        x += surface.text_width_px(run.text, size_px, words.weight);
    }
    Ok(())
}

struct Painter<'a, S: Surface> {
    plane: &'a Plane,
    palette: &'a Palette,
    surface: &'a mut S,
}

impl<S: Surface> Painter<'_, S> {
    fn tint(&self, fill: Fill) -> Tint {
        Tint {
            rgb: self.palette.rgb(fill.paint),
            opacity: fill.opacity,
        }
    }

    fn line(&mut self, points: &[[f64; 2]], pen: &Pen) -> Result<Vec<Vec<[f64; 2]>>, DrawError> {
        let projected: Vec<[f64; 2]> = points.iter().map(|p| self.plane.to_px(*p)).collect();
        let parts: Vec<Vec<[f64; 2]>> = clip::clip_polyline(&projected, &self.plane.rect)
            .into_iter()
            .map(thinned)
            .collect();
        self.pen(&parts, pen)?;
        Ok(parts)
    }

    fn pen(&mut self, parts: &[Vec<[f64; 2]>], pen: &Pen) -> Result<(), DrawError> {
        let tint = Tint {
            rgb: self.palette.rgb(pen.paint),
            opacity: pen.opacity,
        };
        let straight = parts.iter().all(|part| part.len() == 2);
        if pen.dash.is_empty() && !straight {
            return self.surface.strokes(parts, pen.width_px, tint);
        }
        let crisp: Vec<Vec<[f64; 2]>>;
        let parts = if straight {
            crisp = parts.iter().map(|part| crisp_line(part)).collect();
            &crisp[..]
        } else {
            parts
        };
        let cut: Vec<Vec<[f64; 2]>> = parts
            .iter()
            .flat_map(|part| clip::dashes(part, pen.dash))
            .collect();
        self.surface.strokes(&cut, pen.width_px, tint)
    }

    fn textured(
        &mut self,
        area: &[[f64; 2]],
        pattern: Pattern,
        fill: Fill,
    ) -> Result<(), DrawError> {
        let texture = pattern::texture(pattern, area);
        let mut tint = self.tint(fill);
        tint.opacity *= texture.opacity;
        if !texture.strokes.is_empty() {
            self.surface
                .strokes(&texture.strokes, texture.width_px, tint)?;
        }
        if !texture.dots.is_empty() {
            self.surface.dots(&texture.dots, texture.radius_px, tint)?;
        }
        Ok(())
    }

    fn mark(&mut self, mark: &Mark) -> Result<(), DrawError> {
        match mark {
            Mark::Area {
                points,
                fill,
                pattern,
            } => {
                let projected: Vec<[f64; 2]> =
                    points.iter().map(|p| self.plane.to_px(*p)).collect();
                let area = clip::clip_polygon(&projected, &self.plane.rect);
                if area.len() < 3 {
                    return Ok(());
                }
                if let Some(fill) = fill {
                    self.surface.fill(&area, self.tint(*fill))?;
                }
                if let Some((pattern, fill)) = pattern {
                    self.textured(&area, *pattern, *fill)?;
                }
            }
            Mark::Stroke { from, to, pen } => {
                let line = vec![from.on(self.plane), to.on(self.plane)];
                if finite(&line) {
                    self.pen(&[line], pen)?;
                }
            }
            Mark::Shape { points, fill } => {
                let area: Vec<[f64; 2]> = points.iter().map(|at| at.on(self.plane)).collect();
                if finite(&area) {
                    self.surface.fill(&area, self.tint(*fill))?;
                }
            }
            Mark::Dot {
                at,
                radius_px,
                paint,
                rim,
            } => {
                let centre = at.on(self.plane);
                if finite(&[centre]) {
                    if let Some((rim, width)) = rim {
                        let tint = self.tint(Fill::new(*rim));
                        self.surface
                            .dots(&[centre], radius_px + 0.5 * width, tint)?;
                    }
                    let inner = radius_px - rim.map_or(0.0, |(_, width)| 0.5 * width);
                    let tint = self.tint(Fill::new(*paint));
                    self.surface.dots(&[centre], inner, tint)?;
                }
            }
            Mark::Ramp(ramp) => {
                let stops: Vec<(f64, Tint)> = ramp
                    .stops
                    .iter()
                    .map(|(place, fill)| (*place, self.tint(*fill)))
                    .collect();
                if finite(&ramp.area) && ramp.area.len() > 2 && !stops.is_empty() {
                    self.surface.ramp(&ramp.area, ramp.downwards, &stops)?;
                }
            }
            Mark::Line { points, pen, .. } => {
                self.line(points, pen)?;
            }
            Mark::Label(_) => {}
        }
        Ok(())
    }
}

fn finite(points: &[[f64; 2]]) -> bool {
    points.iter().all(|p| p[0].is_finite() && p[1].is_finite())
}

/// Level and upright lines on the middle of a pixel, where they are sharp.
fn crisp_line(line: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let sharp = |value: f64| value.floor() + 0.5;
    match line {
        [a, b] if (a[0] - b[0]).abs() < 1e-6 => {
            vec![[sharp(a[0]), a[1]], [sharp(a[0]), b[1]]]
        }
        [a, b] if (a[1] - b[1]).abs() < 1e-6 => {
            vec![[a[0], sharp(a[1])], [b[0], sharp(a[1])]]
        }
        other => other.to_vec(),
    }
}

/// Leaves out points that lie within half a pixel of the one kept before; both ends stay.
fn thinned(points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    let last = points.len().saturating_sub(1);
    let mut kept: Vec<[f64; 2]> = Vec::with_capacity(points.len().min(1024));
    for (i, point) in points.into_iter().enumerate() {
        let near = kept
            .last()
            .is_some_and(|k| (point[0] - k[0]).abs() < 0.5 && (point[1] - k[1]).abs() < 0.5);
        if !near || i == last {
            kept.push(point);
        }
    }
    kept
}
