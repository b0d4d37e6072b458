//! Any chart as a file: as a vector that a drawing program opens, or as an image.

use crate::browser::{decimals, files};
use crate::canvas::CanvasSurface;
use crate::plot::Shown;
use crate::state::{Bench, bench};
use leptos::ev::KeyboardEvent;
use leptos::html::Details;
use leptos::prelude::*;
use recalesce::chart::{Ink, Palette, Scene, Surface, draw, svg};
use recalesce_texts::page as texts;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement, HtmlElement};

/// Pixels of an image for each that the chart has on the page: fine enough for paper.
const DENSITY: f64 = 3.0;

/// The kinds of file.
#[derive(Clone, Copy)]
enum Format {
    Svg,
    Png,
}

fn say_failed(bench: Bench) {
    bench.warn(texts::charts::NOT_GIVEN_AWAY.to_owned());
}

fn offer_svg(scene: &Scene, palette: &Palette, name: &str) -> Option<()> {
    let text = decimals::drawing(svg::document(scene, palette).ok()?);
    files::offer(&format!("{name}.svg"), "image/svg+xml", &text)
}

/// Paints the chart on a canvas of its own and hands on the image when the browser has made it.
fn offer_png(bench: Bench, scene: &Scene, palette: &Palette, name: &str) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let canvas: HtmlCanvasElement = document.create_element("canvas").ok()?.dyn_into().ok()?;
    let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    let mut surface = CanvasSurface::new(canvas.clone())?;
    surface.begin(scene.size_px, DENSITY).ok()?;
    let [r, g, b] = palette.rgb(Ink::Sheet.into());
    context.set_fill_style_str(&format!("rgb({r},{g},{b})"));
    // The surface counts in units much finer than pixels: this covers all of it.
    let [width, height] = scene.size_px.map(|side| side * surface.grid());
    context.fill_rect(0.0, 0.0, width, height);
    draw(scene, palette, &mut surface).ok()?;
    let name = format!("{name}.png");
    let made = Closure::once_into_js(move |image: Option<Blob>| {
        if image
            .and_then(|image| files::offer_whole(&name, &image))
            .is_none()
        {
            say_failed(bench);
        }
    });
    canvas.to_blob(made.unchecked_ref()).ok()
}

/// The sign of what is saved: an arrow down onto a line.
pub(super) fn arrow() -> AnyView {
    view! {
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
            <path d="M6 1v6.5M3 5l3 3 3-3M1.5 10.5h9"></path>
        </svg>
    }
    .into_any()
}

/// A small control at the corner of a chart that offers it as a file.
#[component]
pub(crate) fn SaveChart(
    /// What it is called in the name of its file, words parted by hyphens.
    file: &'static str,
    /// What is shown.
    shown: Shown,
) -> impl IntoView {
    let bench = bench();
    let details = NodeRef::<Details>::new();
    let close = move || {
        if let Some(details) = details.get_untracked() {
            // One that is closed already stays so.
            let _ = details.remove_attribute("open");
            let summary = details.query_selector("summary").ok().flatten();
            if let Some(Ok(summary)) = summary.map(JsCast::dyn_into::<HtmlElement>) {
                // One that cannot take the focus leaves it where it was.
                let _ = summary.focus();
            }
        }
    };
    let save = move |format: Format| {
        let Some(scene) = shown.get_untracked() else {
            return;
        };
        let palette = bench.palette.get_untracked();
        let name = format!("recalesce-{file}");
        let offered = match format {
            Format::Svg => offer_svg(&scene, &palette, &name),
            Format::Png => offer_png(bench, &scene, &palette, &name),
        };
        if offered.is_none() {
            say_failed(bench);
        }
        close();
    };
    let key = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            event.stop_propagation();
            close();
        }
    };
    view! {
        <details
            class=format!("save-chart of-{file}")
            node_ref=details
            hidden=move || shown.with(Option::is_none)
            on:keydown=key
            // The chart below it is not pointed at.
            on:pointerdown=|event| event.stop_propagation()
        >
            <summary aria-label=texts::charts::save_named(texts::saved::title(file)) title=texts::charts::SAVE>
                {arrow()}
            </summary>
            <span>
                <button type="button" on:click=move |_| save(Format::Svg)>
                    "SVG"
                </button>
                <button type="button" on:click=move |_| save(Format::Png)>
                    "PNG"
                </button>
            </span>
        </details>
    }
    .into_any()
}
