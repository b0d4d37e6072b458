//! One chart of a route by itself, as an address asks for it: no handles, nothing kept.

use super::{quench, shelf, temper};
use crate::browser::address;
use crate::charts;
use crate::parts::panels::{Panel, panel};
use crate::plot::Plot;
use crate::state::{Bench, Stage, bench};
use leptos::prelude::*;
use recalesce::save::{ShownChart, read_shown};
use recalesce_texts::page as texts;

/// The chart of the address, or why there is none.
#[component]
pub(crate) fn Embedded() -> impl IntoView {
    let bench = bench();
    // Another address is another page.
    let changed = window_event_listener_untyped("hashchange", |_| address::reload());
    on_cleanup(move || changed.remove());
    let text = address::shown_chart().unwrap_or_default();
    match read_shown(&text) {
        Err(why) => view! {
            <main class="embed">
                <p class="wrong" role="alert">
                    {texts::embed::not_shown(&why)}
                </p>
            </main>
        }
        .into_any(),
        Ok((link, route, chart)) => {
            // No step is picked.
            bench.stage.set(Stage::Prior(usize::MAX));
            bench.route.set(route);
            let opens = address::with_route(link).unwrap_or_default();
            let says = move || bench.route.with(|route| shelf::summary(route, bench));
            view! {
                <main class="embed">
                    <h1>
                        {chart.title()} " " <span>{received(chart)}</span>
                    </h1>
                    <p class="hint">{says}</p>
                    {drawn(bench, chart)}
                    <p class="hint">
                        <a href=opens target="_blank" rel="noopener">
                            {texts::embed::OPEN_ROUTE}
                        </a> {texts::embed::COMPUTED_BY}
                    </p>
                </main>
            }
            .into_any()
        }
    }
}

/// What the chart received from the step before.
fn received(chart: ShownChart) -> Signal<String> {
    match chart {
        ShownChart::Quench => Signal::derive(quench::received()),
        ShownChart::Temper => Signal::derive(temper::received()),
        ShownChart::Soak => Signal::stored(texts::soak::SOAK_RECEIVES.to_owned()),
        ShownChart::Route => Signal::stored(texts::embed::TEMPERATURE_AGAINST_TIME.to_owned()),
        ShownChart::Phases => Signal::stored(texts::embed::PHASES_AT_SOAK.to_owned()),
    }
}

fn drawn(bench: Bench, chart: ShownChart) -> AnyView {
    match chart {
        ShownChart::Soak => view! {
            <Plot
                class="alone" file="phase-map"
                scene=move |w, h| charts::soak_map_scene(bench, w, h)
                nothing=Signal::derive(move || charts::no_map(bench))
            />
        }
        .into_any(),
        ShownChart::Quench => {
            view! { <Plot class="alone" file="quench" scene=move |w, h| charts::quench_scene(bench, w, h) /> }
                .into_any()
        }
        ShownChart::Temper => view! {
            <Plot
                class="alone" file="temper"
                scene=move |w, h| charts::temper_scene(bench, w, h)
                nothing=Signal::derive(move || charts::no_temper(bench))
            />
        }
        .into_any(),
        ShownChart::Phases => {
            view! { <div class="table-view">{panel(Panel::PhaseTable)}</div> }.into_any()
        }
        ShownChart::Route => strip(bench),
    }
}

/// The strip, and below it each step in words.
fn strip(bench: Bench) -> AnyView {
    let steps = move || {
        let outcome = bench.outcome();
        let blocks = bench
            .route
            .with(|route| charts::blocks(bench, route, outcome.as_deref()));
        blocks
            .into_iter()
            .map(|block| {
                view! {
                    <li>
                        <b>{block.title}</b>
                        " "
                        {block.line}
                    </li>
                }
            })
            .collect_view()
    };
    view! {
        <div class="route">
            <Plot class="strip" file="route" scene=move |w, h| Some(charts::strip(bench, w, h).scene) />
        </div>
        <ol>{steps}</ol>
    }
    .into_any()
}
