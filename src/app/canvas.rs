//! The browser's canvas as a surface.
//!
//! The 2D context is scaled so that a css px is eight backend units: plotters draws on whole
//! numbers, and this keeps curves smooth. Batches of strokes, text and changing colours go to the
//! context itself, in one path each.

use std::cell::{Cell, RefCell};
use std::collections::HashMap;

use js_sys::{Function, Reflect};
use plotters_canvas::CanvasBackend;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use recalesce::chart::face::{self, Weight};
use recalesce::chart::surface::{DrawError, HALO_PX, Surface, Tint, Writing};

/// Backend units in a css px.
const GRID: f64 = 8.0;

/// Widest device pixel ratio drawn for: finer ones cannot be seen.
const FINEST: f64 = 3.0;

/// Measured widths kept before they are forgotten.
const REMEMBERED: usize = 600;

/// A canvas to draw charts on. Keep it as long as the canvas: it remembers the widths of texts.
pub struct CanvasSurface {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    backend: CanvasBackend,
    widths: RefCell<HashMap<(String, u32, Weight), f64>>,
    font: Cell<Option<(u32, Weight)>>,
}

impl CanvasSurface {
    /// On a canvas element; none when it has no 2D context.
    pub fn new(canvas: HtmlCanvasElement) -> Option<Self> {
        let context = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let backend = CanvasBackend::with_canvas_object(canvas.clone())?;
        Some(Self {
            canvas,
            context,
            backend,
            widths: RefCell::default(),
            font: Cell::new(None),
        })
    }

    /// Starts a frame: the backing store fits the css size at the device pixel ratio, everything
    /// is cleared. The css size itself is left to the style sheet.
    pub fn begin(&mut self, size_px: [f64; 2], device_pixel_ratio: f64) -> Result<(), DrawError> {
        let ratio = if device_pixel_ratio.is_finite() {
            device_pixel_ratio.clamp(0.5, FINEST)
        } else {
            1.0
        };
        let [width, height] = size_px.map(|side| (side * ratio).round().clamp(1.0, 16384.0) as u32);
        // Setting the size clears the context and is slow, so only when it changes.
        if self.canvas.width() != width {
            self.canvas.set_width(width);
        }
        if self.canvas.height() != height {
            self.canvas.set_height(height);
        }
        // A new size also resets the font.
        self.font.set(None);
        let context = &self.context;
        context
            .set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
            .map_err(told)?;
        context.clear_rect(0.0, 0.0, f64::from(width), f64::from(height));
        let scale = ratio / GRID;
        context
            .set_transform(scale, 0.0, 0.0, scale, 0.0, 0.0)
            .map_err(told)?;
        context.set_line_join("round");
        context.set_line_cap("butt");
        context.set_text_align("left");
        context.set_text_baseline("alphabetic");
        Ok(())
    }

    /// Forgets the measured widths, for when the typeface has arrived.
    pub fn forget_widths(&self) {
        self.widths.borrow_mut().clear();
    }

    fn choose_font(&self, size_px: f64, weight: Weight) {
        let font = Some((units(size_px), weight));
        if self.font.replace(font) == font {
            return;
        }
        // `semi-condensed` is 87.5 %, the nearest that a canvas understands.
        self.context.set_font(&format!(
            "{} semi-condensed {}px {}",
            weight.css(),
            units(size_px),
            face::FAMILIES
        ));
    }

    fn trace(&self, points: &[[f64; 2]]) {
        for (i, [x, y]) in points.iter().enumerate() {
            if i == 0 {
                self.context.move_to(x * GRID, y * GRID);
            } else {
                self.context.line_to(x * GRID, y * GRID);
            }
        }
    }

    fn gradient(
        &self,
        [from, to]: [f64; 2],
        downwards: bool,
        stops: &[(f64, Tint)],
    ) -> Result<JsValue, JsValue> {
        let make: Function =
            Reflect::get(&self.context, &"createLinearGradient".into())?.dyn_into()?;
        let ends = if downwards {
            [0.0, from, 0.0, to]
        } else {
            [from, 0.0, to, 0.0]
        };
        let [x0, y0, x1, y1] = ends.map(|v| JsValue::from_f64(v * GRID));
        let gradient = make.call4(&self.context, &x0, &y0, &x1, &y1)?;
        let add: Function = Reflect::get(&gradient, &"addColorStop".into())?.dyn_into()?;
        for (at, tint) in stops {
            let part = ((at - from) / (to - from)).clamp(0.0, 1.0);
            add.call2(&gradient, &part.into(), &css(*tint).into())?;
        }
        Ok(gradient)
    }
}

/// A length in whole backend units.
fn units(length_px: f64) -> u32 {
    (length_px * GRID).round() as u32
}

fn told(error: JsValue) -> DrawError {
    DrawError(format!("{error:?}"))
}

fn css(tint: Tint) -> String {
    let [r, g, b] = tint.rgb;
    if tint.opacity >= 1.0 {
        format!("#{r:02x}{g:02x}{b:02x}")
    } else {
        format!("rgba({r},{g},{b},{})", tint.opacity.max(0.0))
    }
}

impl Surface for CanvasSurface {
    type Backend = CanvasBackend;

    fn backend(&mut self) -> &mut CanvasBackend {
        &mut self.backend
    }

    fn grid(&self) -> f64 {
        GRID
    }

    fn write(&mut self, writing: Writing<'_>) -> Result<(), DrawError> {
        self.choose_font(writing.size_px, writing.weight);
        let [x, y] = writing.start_px.map(|v| v * GRID);
        if let Some(rgb) = writing.halo {
            let tint = Tint { rgb, opacity: 1.0 };
            self.context.set_stroke_style_str(&css(tint));
            self.context.set_line_width(HALO_PX * GRID);
            self.context.stroke_text(writing.text, x, y).map_err(told)?;
        }
        let tint = Tint {
            rgb: writing.rgb,
            opacity: 1.0,
        };
        self.context.set_fill_style_str(&css(tint));
        self.context.fill_text(writing.text, x, y).map_err(told)
    }

    fn text_width_px(&self, text: &str, size_px: f64, weight: Weight) -> f64 {
        let key = (text.to_owned(), units(size_px), weight);
        if let Some(width) = self.widths.borrow().get(&key) {
            return *width;
        }
        self.choose_font(size_px, weight);
        let width = match self.context.measure_text(text) {
            Ok(metrics) => metrics.width() / GRID,
            Err(_) => face::width_px(text, size_px, weight),
        };
        let mut widths = self.widths.borrow_mut();
        if widths.len() >= REMEMBERED {
            widths.clear();
        }
        widths.insert(key, width);
        width
    }

    fn strokes(
        &mut self,
        lines: &[Vec<[f64; 2]>],
        width_px: f64,
        tint: Tint,
    ) -> Result<(), DrawError> {
        if lines.is_empty() || tint.opacity <= 0.0 {
            return Ok(());
        }
        self.context.set_stroke_style_str(&css(tint));
        self.context.set_line_width(width_px * GRID);
        self.context.begin_path();
        for line in lines {
            self.trace(line);
        }
        self.context.stroke();
        Ok(())
    }

    fn dots(&mut self, centres: &[[f64; 2]], radius_px: f64, tint: Tint) -> Result<(), DrawError> {
        self.context.set_fill_style_str(&css(tint));
        self.context.begin_path();
        let radius = radius_px.max(0.0) * GRID;
        for [x, y] in centres {
            let (x, y) = (x * GRID, y * GRID);
            self.context.move_to(x + radius, y);
            self.context
                .arc(x, y, radius, 0.0, std::f64::consts::TAU)
                .map_err(told)?;
        }
        self.context.fill();
        Ok(())
    }

    fn ramp(
        &mut self,
        area: &[[f64; 2]],
        downwards: bool,
        stops: &[(f64, Tint)],
    ) -> Result<(), DrawError> {
        let (Some(first), Some(last)) = (stops.first(), stops.last()) else {
            return Ok(());
        };
        let ends = [first.0, last.0.max(first.0 + 1e-3)];
        let gradient = self.gradient(ends, downwards, stops).map_err(told)?;
        Reflect::set(&self.context, &"fillStyle".into(), &gradient).map_err(told)?;
        self.context.begin_path();
        self.trace(area);
        self.context.close_path();
        self.context.fill();
        Ok(())
    }
}
