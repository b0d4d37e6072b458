//! The shelf: saved routes, and files in and out.

use crate::browser::files;
use crate::controls::FileButton;
use crate::link;
use crate::state::{Bench, Notice, Undo, bench};
use leptos::html::Button;
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::save::{ItemId, Shelf, ShelfError, ShownChart, frame_text};
use recalesce::units::{format_duration_s, format_fixed, format_temperature};
use std::sync::Arc;
use wasm_bindgen::JsCast;
use web_sys::File;

/// Name of the file that the shelf is exported to.
const FILE_NAME: &str = "recalesce-shelf.json";

/// Keeps the route on the bench.
pub(crate) fn keep(bench: Bench) {
    keep_route(bench, bench.route.get_untracked());
}

/// Keeps a route.
pub(crate) fn keep_route(bench: Bench, route: Route) {
    let name = route.name();
    let mut kept = Err(ShelfError::Full);
    bench.shelf.update(|shelf| kept = shelf.add(&name, route));
    match kept {
        Ok(id) => {
            let name = bench
                .shelf
                .with_untracked(|s| s.get(id).map(|item| item.name.clone()))
                .unwrap_or_default();
            say(
                bench,
                format!("Kept on the shelf as “{name}”."),
                false,
                None,
            );
        }
        Err(reason) => say(bench, reason.to_string(), true, None),
    }
}

fn say(bench: Bench, text: String, is_wrong: bool, undo: Option<Undo>) {
    bench.notice.set(Some(Notice {
        text,
        is_wrong,
        undo,
    }));
}

/// Takes the text of a file onto the shelf, and says what came of it.
fn import(bench: Bench, text: Option<String>) {
    let Some(text) = text else {
        return say(bench, "That file cannot be read.".to_owned(), true, None);
    };
    match recalesce::save::read(&text) {
        Err(reason) => say(bench, format!("Nothing was imported. {reason}"), true, None),
        Ok(loaded) => {
            let mut faults: Vec<String> = loaded
                .rejected
                .iter()
                .map(|(index, why)| format!("route {}: {why}", index + 1))
                .collect();
            let mut added = Vec::new();
            bench.shelf.update(|shelf| {
                let imported = shelf.import(loaded.shelf);
                added = imported.added;
                if imported.left_out > 0 {
                    faults.push(format!("no room for {}", imported.left_out));
                }
            });
            let words = if faults.is_empty() {
                format!("{} imported.", added.len())
            } else {
                format!("{} imported. Left out: {}", added.len(), faults.join("; "))
            };
            // Only what came with the file goes again, not what was done since.
            let undo: Undo = Arc::new(move || {
                bench.shelf.update(|shelf| {
                    for id in &added {
                        // One that is off the shelf already needs no removing.
                        let _ = shelf.delete(*id);
                    }
                });
            });
            say(bench, words, !faults.is_empty(), Some(undo));
        }
    }
}

/// Does something to the shelf and says what it refuses.
fn change(bench: Bench, change: impl FnOnce(&mut Shelf) -> Result<(), ShelfError>) {
    let mut result = Ok(());
    bench.shelf.update(|shelf| result = change(shelf));
    if let Err(reason) = result {
        say(bench, reason.to_string(), true, None);
    }
}

/// The row that had the focus is gone: the line with its undo is next.
pub(crate) fn focus_on_undo() {
    let button = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.query_selector(".message button").ok().flatten())
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(button) = button {
        // A button that cannot take the focus leaves it where it was.
        let _ = button.focus();
    }
}

pub(super) fn summary(route: &Route, scale: recalesce::units::TemperatureScale) -> String {
    let tempers = route
        .tempers
        .iter()
        .map(|t| format_temperature(t.temperature_c, scale))
        .collect::<Vec<_>>()
        .join(", ");
    format!(
        "{} of {}; soak {} for {}; {}; temper {}; for {} to {} HRC",
        route.piece,
        route.grade.as_deref().unwrap_or("own steel"),
        format_temperature(route.soak.temperature_c, scale),
        format_duration_s(60.0 * route.soak.time_min),
        super::piece::bath_words(&route.quench, scale),
        if tempers.is_empty() { "none" } else { &tempers },
        format_fixed(route.target.least_hrc, 0),
        format_fixed(route.target.most_hrc, 0)
    )
}

/// Gives the focus back to a button whose row has moved in the document, or to the other one where
/// the row can go no further. Before the next key is pressed.
fn focus_after_move(pressed: NodeRef<Button>, other: NodeRef<Button>) {
    leptos::task::spawn_local(async move {
        leptos::task::tick().await;
        let button = [pressed, other]
            .into_iter()
            .filter_map(|button| button.try_get_untracked().flatten())
            .find(|button| !button.disabled());
        if let Some(button) = button {
            // A button that cannot take the focus leaves it where it was.
            let _ = button.focus();
        }
    });
}

#[component]
fn Kept(id: ItemId) -> impl IntoView {
    let bench = bench();
    let (up, down) = (NodeRef::<Button>::new(), NodeRef::<Button>::new());
    let name = move || {
        bench
            .shelf
            .with(|s| s.get(id).map(|item| item.name.clone()))
            .unwrap_or_default()
    };
    let line = move || {
        let scale = bench.scale.get();
        bench
            .shelf
            .with(|s| s.get(id).map(|item| summary(&item.route, scale)))
    };
    let is_first = move || {
        bench
            .shelf
            .with(|s| s.items().first().is_some_and(|item| item.id == id))
    };
    let is_last = move || {
        bench
            .shelf
            .with(|s| s.items().last().is_some_and(|item| item.id == id))
    };
    let open = move |_| {
        if let Some(route) = bench
            .shelf
            .with_untracked(|s| s.get(id).map(|item| item.route.clone()))
        {
            bench.put(route);
        }
    };
    let copy = move |_| {
        if let Some(route) = bench
            .shelf
            .with_untracked(|s| s.get(id).map(|item| item.route.clone()))
        {
            link::copy(bench, &route);
        }
    };
    let remove = move |_| {
        let mut gone = Err(ShelfError::Gone);
        bench.shelf.update(|shelf| gone = shelf.delete(id));
        let Ok(gone) = gone else { return };
        let words = format!("“{}” is off the shelf.", gone.name());
        let undo: Undo = Arc::new(move || {
            let gone = gone.clone();
            change(bench, |shelf| shelf.restore(gone).map(|_| ()));
        });
        say(bench, words, false, Some(undo));
        leptos::task::spawn_local(async {
            leptos::task::tick().await;
            focus_on_undo();
        });
    };
    view! {
        <li class="kept">
            <div>
                <input
                    class="title"
                    type="text"
                    aria-label="Name"
                    prop:value=name
                    on:change:target=move |event| {
                        let name = event.target().value();
                        change(bench, |shelf| shelf.rename(id, &name));
                    }
                />
                <p>{line}</p>
            </div>
            <div class="actions">
                <button type="button" class="press go" on:click=open>
                    "Put on the bench"
                </button>
                <button type="button" class="press" on:click=copy>
                    "Copy link"
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| change(bench, |shelf| shelf.duplicate(id).map(|_| ()))
                >
                    "Duplicate"
                </button>
                <button
                    node_ref=up
                    type="button"
                    class="press"
                    aria-label="Move up"
                    disabled=is_first
                    on:click=move |_| {
                        change(bench, |shelf| shelf.move_up(id));
                        focus_after_move(up, down);
                    }
                >
                    "Up"
                </button>
                <button
                    node_ref=down
                    type="button"
                    class="press"
                    aria-label="Move down"
                    disabled=is_last
                    on:click=move |_| {
                        change(bench, |shelf| shelf.move_down(id));
                        focus_after_move(down, up);
                    }
                >
                    "Down"
                </button>
                <button type="button" class="press" on:click=remove>
                    "Take off"
                </button>
            </div>
        </li>
    }
}

/// One chart of the bench's route for a slide or another page: its link, or the text that shows it there.
#[component]
fn ChartElsewhere() -> impl IntoView {
    let bench = bench();
    let rows = ShownChart::ALL.map(|chart| {
        let address = move || {
            bench
                .route
                .with_untracked(|route| link::address_of_chart(route, chart))
        };
        let frame = move || {
            let name = bench.route.with_untracked(Route::name);
            let title = format!("{}: {name}", chart.title());
            address().map(|address| frame_text(&address, &title))
        };
        view! {
            <li class="actions">
                <span>{chart.title()}</span>
                <button
                    type="button"
                    class="press"
                    aria-label=format!("Copy link: {}", chart.title())
                    on:click=move |_| link::copy_text(bench, address(), "The link to the chart")
                >
                    "Copy link"
                </button>
                <button
                    type="button"
                    class="press"
                    aria-label=format!("Copy text for a web page: {}", chart.title())
                    on:click=move |_| link::copy_text(bench, frame(), "The text for a web page")
                >
                    "Copy text for a web page"
                </button>
            </li>
        }
    });
    view! {
        <details class="elsewhere">
            <summary>"One chart of the bench’s route, for a slide or a web page"</summary>
            <p class="hint">
                "It is shown by itself, with the route as it is now. The route travels in the link; whoever opens it keeps their own bench."
            </p>
            <ul>{rows.collect_view()}</ul>
        </details>
    }
    .into_any()
}

/// The shelf.
#[component]
pub(crate) fn ShelfPanel() -> impl IntoView {
    let bench = bench();
    let export = move |_| match bench.shelf.with_untracked(recalesce::save::write_shelf) {
        Ok(text) => {
            if files::offer(FILE_NAME, "application/json", &text).is_none() {
                say(
                    bench,
                    "The file could not be offered.".to_owned(),
                    true,
                    None,
                );
            }
        }
        Err(reason) => say(bench, reason.to_string(), true, None),
    };
    let ids = move || {
        bench
            .shelf
            .with(|s| s.items().iter().map(|item| item.id).collect::<Vec<_>>())
    };
    view! {
        <main class="leaf">
            <h2>"Shelf"</h2>
            <p>
                "Routes that you keep. They stay in this browser; export them to a file to carry them elsewhere."
            </p>
            <div class="actions">
                <button type="button" class="press go" on:click=move |_| keep(bench)>
                    "Keep the bench’s route"
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| bench.route.with_untracked(|route| link::copy(bench, route))
                >
                    "Copy a link to it"
                </button>
                <button
                    type="button"
                    class="press"
                    disabled=move || bench.shelf.with(|s| s.items().is_empty())
                    on:click=export
                >
                    "Export to a file"
                </button>
                <FileButton
                    words="Import a file"
                    name="File to import"
                    accept="application/json,.json"
                    pick=move |file: File| {
                        files::read_text(&file, move |text| import(bench, text));
                    }
                />
            </div>
            <ChartElsewhere />
            {move || {
                bench
                    .shelf
                    .with(|s| s.items().is_empty())
                    .then(|| {
                        view! { <p>"The shelf is empty. Keep a route and it stands here."</p> }
                    })
            }}
            <ul>
                <For each=ids key=|id| *id let:id>
                    <Kept id=id />
                </For>
            </ul>
        </main>
    }
    .into_any()
}
