//! Charts as SVG documents: for print, for export, for tests without a page.

use std::fmt::Write as _;

use plotters::backend::{DrawingBackend, SVGBackend};

use super::draw;
use super::face;
use super::ink::{Ink, Palette};
use super::scene::Scene;
use super::surface::{DrawError, HALO_PX, Surface, Writing, told};

/// Backend units in a css px.
const GRID: f64 = 8.0;

struct SvgSurface<'a> {
    shapes: SVGBackend<'a>,
    words: String,
}

impl<'a> Surface for SvgSurface<'a> {
    type Backend = SVGBackend<'a>;

    fn backend(&mut self) -> &mut SVGBackend<'a> {
        &mut self.shapes
    }

    fn grid(&self) -> f64 {
        GRID
    }

    fn write(&mut self, writing: Writing<'_>) -> Result<(), DrawError> {
        let [r, g, b] = writing.rgb;
        let halo = writing.halo.map_or_else(String::new, |[r, g, b]| {
            let width = HALO_PX * GRID;
            format!(
                " stroke=\"#{r:02x}{g:02x}{b:02x}\" stroke-width=\"{width}\" paint-order=\"stroke\""
            )
        });
        writeln!(
            self.words,
            "<text x=\"{:.0}\" y=\"{:.0}\" font-size=\"{:.0}\" font-weight=\"{}\" fill=\"#{r:02x}{g:02x}{b:02x}\"{halo}>{}</text>",
            GRID * writing.start_px[0],
            GRID * writing.start_px[1],
            GRID * writing.size_px,
            writing.weight.css(),
            escaped(writing.text),
        )
        .map_err(told)
    }
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// A scene as an SVG document with a ground in the colour of the sheet. The typeface is named, not
/// embedded.
pub fn document(scene: &Scene, palette: &Palette) -> Result<String, DrawError> {
    document_on(scene, palette, Some(Ink::Sheet))
}

/// As [`document`], on a ground of one's own, or none.
pub fn document_on(
    scene: &Scene,
    palette: &Palette,
    ground: Option<Ink>,
) -> Result<String, DrawError> {
    let [width, height] = scene.size_px.map(|side| side.clamp(1.0, 20_000.0));
    let size = (
        (width * GRID).round() as u32,
        (height * GRID).round() as u32,
    );
    let mut shapes = String::new();
    let mut surface = SvgSurface {
        shapes: SVGBackend::with_string(&mut shapes, size),
        words: String::new(),
    };
    draw::draw(scene, palette, &mut surface)?;
    surface.shapes.present().map_err(told)?;
    let words = std::mem::take(&mut surface.words);
    drop(surface);
    // The backend writes its own frame; ours carries the css size, the title and the typeface.
    let inner = shapes
        .split_once('>')
        .and_then(|(_, rest)| rest.rsplit_once("</svg>"))
        .map_or("", |(inner, _)| inner);
    let ground = ground.map_or_else(String::new, |ink| {
        let [r, g, b] = palette.rgb(ink.into());
        format!("<rect width=\"100%\" height=\"100%\" fill=\"#{r:02x}{g:02x}{b:02x}\"/>\n")
    });
    Ok(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {} {}\" role=\"img\" stroke-linejoin=\"round\">\n<title>{}</title>\n{ground}{inner}\
         <g font-family=\"{}\" font-stretch=\"{}%\" font-variant=\"tabular-nums lining-nums\">\n\
         {words}</g>\n</svg>\n",
        size.0,
        size.1,
        escaped(&scene.summary),
        escaped(face::FAMILIES),
        face::STRETCH_PERCENT,
    ))
}
