//! The only component that paints: a canvas in a sized box, with handles over it.

use super::browser::resize::{device_pixel_ratio, size_of};
use super::state::bench;
use crate::chart::{Plane, Scene};
use leptos::html::{Canvas, Div};
use leptos::prelude::*;

/// Builds the handles of a plot from its plane.
pub(crate) type Handles = Box<dyn FnOnce(Signal<Option<Plane>>) -> AnyView>;

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
) -> impl IntoView
where
    F: Fn(f64, f64) -> Option<Scene> + Send + Sync + 'static,
{
    let bench = bench();
    let frame = NodeRef::<Div>::new();
    let canvas = NodeRef::<Canvas>::new();
    let size = size_of(frame);
    let built = Memo::new(move |_| {
        let (width, height) = size.get();
        (width > 0.0 && height > 0.0)
            .then(|| scene(width, height))
            .flatten()
    });
    let plane = Signal::derive(move || built.with(|scene| scene.as_ref().map(|s| s.plane)));
    let summary = move || {
        built.with(|scene| {
            scene
                .as_ref()
                .map(|s| s.summary.clone())
                .unwrap_or_default()
        })
    };
    Effect::new(move |_| {
        let (width, height) = size.get();
        let palette = bench.palette.get();
        if let Some(element) = canvas.get() {
            built.with(|scene| {
                crate::chart::canvas::paint(
                    &element,
                    scene.as_ref(),
                    &palette,
                    [width, height],
                    device_pixel_ratio(),
                );
            });
        }
    });
    view! {
        <div class=format!("plot {class}") node_ref=frame>
            <canvas node_ref=canvas role="img" aria-label=summary></canvas>
            {handles.map(|build| build(plane))}
        </div>
    }
    .into_any()
}
