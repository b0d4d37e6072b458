//! The route strip: temperature against time for the whole route, a block for each step.

use crate::app::browser::resize::size_of;
use crate::app::charts;
use crate::app::plot::Plot;
use crate::app::state::bench;
use leptos::html::Div;
use leptos::prelude::*;

/// The strip with its blocks.
#[component]
pub(crate) fn Strip() -> impl IntoView {
    let bench = bench();
    let frame = NodeRef::<Div>::new();
    let size = size_of(frame);
    let strip = Memo::new(move |_| {
        let (width, height) = size.get();
        (width > 0.0 && height > 0.0).then(|| charts::strip(bench, width, height))
    });
    let blocks = move || {
        let strip = strip.get()?;
        // In parts of the width, which paper changes without a new picture.
        let [width, _] = strip.scene.size_px;
        let part = move |px: f64| format!("{:.3}%", 100.0 * px / width);
        let route = bench.route.get();
        let outcome = bench.outcome();
        Some(
            charts::blocks(bench, &route, outcome.as_deref())
                .into_iter()
                .zip(strip.blocks_px)
                .map(|(block, [left, right])| {
                    let stage = block.stage;
                    view! {
                        <button
                            type="button"
                            aria-pressed=move || (bench.stage.get() == stage).to_string()
                            style:left=part(left)
                            style:width=part(right - left)
                            on:click=move |_| bench.stage.set(stage)
                        >
                            <b>{block.title}</b>
                            <small>{block.line}</small>
                        </button>
                    }
                })
                .collect_view(),
        )
    };
    view! {
        <div class="route" aria-label="Route">
            <div node_ref=frame>
                <Plot class="strip" scene=move |_, _| strip.get().map(|s| s.scene) />
            </div>
            <div class="blocks">{blocks}</div>
        </div>
    }
    .into_any()
}
