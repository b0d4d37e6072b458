//! The only component that paints: a canvas in a sized box, with handles over it.

use super::browser::resize::size_of;
use super::controls::live;
use super::parts::panels::{Panel, panel};
use super::state::{Bench, bench};
use crate::canvas::CanvasSurface;
use leptos::html::{Canvas, Div};
use leptos::prelude::*;
use recalesce::chart::{Scene, draw};
use std::sync::Arc;

/// A scene as it is shared between the painting, the handles and the screen reader's sentence.
pub(crate) type Shown = Signal<Option<Arc<Scene>>>;

/// Builds the handles of a plot from what it shows.
pub(crate) type Handles = Box<dyn FnOnce(Shown) -> AnyView>;

/// A plot. The scene is built for the box's size and again whenever anything it reads changes.
#[component]
pub(crate) fn Plot<F>(
    /// Class of the box: gives it its height.
    class: &'static str,
    /// The scene for a width and height in CSS pixels; none leaves the canvas empty.
    scene: F,
    /// Handles over the plot.
    #[prop(optional)]
    handles: Option<Handles>,
    /// What stands in the box when there is nothing to show.
    #[prop(optional, into)]
    nothing: Signal<String>,
    /// What the chart is called in the name of its file; without it there is none.
    #[prop(optional)]
    file: &'static str,
) -> impl IntoView
where
    F: Fn(f64, f64) -> Option<Scene> + Send + Sync + 'static,
{
    plot(class, Box::new(scene), handles, nothing, file)
}

/// Builds a scene for a width and height.
type Builder = Box<dyn Fn(f64, f64) -> Option<Scene> + Send + Sync>;

/// The plot, one for all scenes: a component for each would bring all of it once more.
fn plot(
    class: &'static str,
    scene: Builder,
    handles: Option<Handles>,
    nothing: Signal<String>,
    file: &'static str,
) -> AnyView {
    let bench = bench();
    let frame = NodeRef::<Div>::new();
    let canvas = NodeRef::<Canvas>::new();
    let size = size_of(frame);
    let built = Memo::new(move |_| {
        let (width, height) = size.get();
        (width > 0.0 && height > 0.0)
            .then(|| scene(width, height))
            .flatten()
            .map(Arc::new)
    });
    // A picture has a name; one without is none to those who do not see it.
    let name = Memo::new(move |_| {
        let name = built.with(|scene| scene.as_ref().map(|s| s.summary.clone()));
        Some(name.unwrap_or_else(|| nothing.get())).filter(|name| !name.is_empty())
    });
    let surface = StoredValue::new_local(None::<CanvasSurface>);
    Effect::new(move |had_typeface: Option<bool>| {
        let (width, height) = size.get();
        let palette = bench.palette.get();
        let density = bench.density.get();
        let has_typeface = bench.has_typeface.get();
        let Some(element) = canvas.get() else {
            return has_typeface;
        };
        let scene = built.get();
        surface.update_value(|surface| {
            if surface.is_none() {
                *surface = CanvasSurface::new(element);
            }
            let Some(surface) = surface else { return };
            if had_typeface == Some(!has_typeface) {
                surface.forget_widths();
            }
            let begun = surface.begin([width, height], density);
            if let (Ok(()), Some(scene)) = (begun, scene) {
                // A canvas that cannot be drawn on leaves the sentence and the table.
                let _ = draw(&scene, &palette, surface);
            }
        });
        has_typeface
    });
    view! {
        <div class=format!("plot {class}") node_ref=frame>
            <canvas
                node_ref=canvas
                role=move || name.with(Option::is_some).then_some("img")
                aria-label=name
                style:visibility=move || {
                    if built.with(Option::is_some) { "visible" } else { "hidden" }
                }
            ></canvas>
            {move || {
                (size.get().0 > 0.0 && built.with(Option::is_none))
                    .then(|| view! { <p class="nothing">{nothing}</p> })
            }}
            {handles.map(|build| build(Signal::derive(move || built.get())))}
            {saved(bench, file, built)}
        </div>
    }
    .into_any()
}

/// The control that saves a chart, once its part is there: nobody waits for it.
fn saved(bench: Bench, file: &'static str, built: Memo<Option<Arc<Scene>>>) -> AnyView {
    if file.is_empty() {
        return ().into_any();
    }
    let shown = Signal::derive(move || built.get());
    let control = move || panel(Panel::SaveChart(file, shown));
    live(move || bench.parts.panels.is_there().then(control).into_any())
}

/// Where the first handle of a scene stands, CSS pixels.
pub(crate) fn handle_at(shown: Shown) -> Signal<Option<(f64, f64)>> {
    Signal::derive(move || {
        let scene = shown.get()?;
        let [x, y] = scene.handles.first()?.at_px;
        Some((x, y))
    })
}

/// The tag of the first handle of a scene.
#[component]
pub(crate) fn Tag(
    /// What is shown.
    shown: Shown,
    /// The words on the tag.
    text: Signal<String>,
) -> impl IntoView {
    let place = move || {
        let scene = shown.get()?;
        let tag = scene.handles.first()?.tag?;
        Some((0.5 * (tag.left + tag.right), 0.5 * (tag.top + tag.bottom)))
    };
    let pixels = |value: Option<f64>| format!("{:.1}px", value.unwrap_or_default());
    view! {
        <span
            class="tag"
            aria-hidden="true"
            style:display=move || if place().is_some() { "block" } else { "none" }
            style:left=move || pixels(place().map(|(x, _)| x))
            style:top=move || pixels(place().map(|(_, y)| y))
        >
            {text}
        </span>
    }
}
