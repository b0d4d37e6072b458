//! The shelf: saved routes, and files in and out.

use crate::app::browser::files;
use crate::app::state::{Bench, Notice, Place, bench};
use crate::route::Route;
use crate::save::Shelf;
use crate::units::{format_duration_s, format_fixed, format_temperature};
use leptos::html::Input;
use leptos::prelude::*;

/// Name of the file that the shelf is exported to.
const FILE_NAME: &str = "recalesce-shelf.json";

/// Keeps the route on the bench.
pub(crate) fn keep(bench: Bench) {
    let route = bench.route.get_untracked();
    let mut name = String::new();
    bench.shelf.update(|shelf| name = shelf.add(&route));
    say(bench, format!("Kept on the shelf as “{name}”."), false, None);
}

fn say(bench: Bench, text: String, is_wrong: bool, undo: Option<Callback<()>>) {
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
    match crate::save::read(&text) {
        Err(error) => say(bench, format!("Nothing was imported. {error}"), true, None),
        Ok(loaded) => {
            let before = bench.shelf.get_untracked();
            let count = loaded.shelf.items.len();
            let rejected = loaded
                .rejected
                .iter()
                .map(|(index, why)| format!("route {}: {why}", index + 1))
                .collect::<Vec<_>>()
                .join("; ");
            bench.shelf.update(|shelf| shelf.merge(loaded.shelf));
            let words = if rejected.is_empty() {
                format!("{count} imported.")
            } else {
                format!("{count} imported. Left out: {rejected}")
            };
            let undo = Callback::new(move |()| bench.shelf.set(before.clone()));
            say(bench, words, !rejected.is_empty(), Some(undo));
        }
    }
}

fn summary(route: &Route, scale: crate::units::TemperatureScale) -> String {
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
        super::piece::medium_words(&route.quench.medium),
        if tempers.is_empty() { "none" } else { &tempers },
        format_fixed(route.target.least_hrc, 0),
        format_fixed(route.target.most_hrc, 0)
    )
}

#[component]
fn Kept(index: usize, name: String, line: String, count: usize) -> impl IntoView {
    let bench = bench();
    let open = move |_| {
        if let Some(route) = bench
            .shelf
            .with_untracked(|s| s.items.get(index).map(|item| item.route.clone()))
        {
            bench.route.set(route);
            bench.place.set(Place::Bench);
        }
    };
    let remove = move |_| {
        let before = bench.shelf.get_untracked();
        let mut removed = String::new();
        bench.shelf.update(|shelf| {
            if let Some(gone) = shelf.delete(index) {
                removed = gone.item.name;
            }
        });
        let undo = Callback::new(move |()| bench.shelf.set(before.clone()));
        say(bench, format!("“{removed}” is off the shelf."), false, Some(undo));
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
                        bench.shelf.update(|shelf| {
                            shelf.rename(index, &name);
                        });
                    }
                />
                <p>{line}</p>
            </div>
            <div class="actions">
                <button type="button" class="press go" on:click=open>
                    "Put on the bench"
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| bench.shelf.update(|shelf| {
                        shelf.duplicate(index);
                    })
                >
                    "Duplicate"
                </button>
                <button
                    type="button"
                    class="press"
                    aria-label="Move up"
                    disabled=index == 0
                    on:click=move |_| bench.shelf.update(|shelf| {
                        shelf.move_up(index);
                    })
                >
                    "Up"
                </button>
                <button
                    type="button"
                    class="press"
                    aria-label="Move down"
                    disabled={index + 1 == count}
                    on:click=move |_| bench.shelf.update(|shelf| {
                        shelf.move_down(index);
                    })
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

/// The shelf.
#[component]
pub(crate) fn ShelfPanel() -> impl IntoView {
    let bench = bench();
    let picker = NodeRef::<Input>::new();
    let export = move |_| {
        let text = bench.shelf.with_untracked(Shelf::write);
        if files::offer(FILE_NAME, "application/json", &text).is_none() {
            say(bench, "The file could not be offered.".to_owned(), true, None);
        }
    };
    let picked = move |_| {
        if let Some(input) = picker.get_untracked() {
            if let Some(file) = input.files().and_then(|list| list.get(0)) {
                files::read_text(&file, move |text| import(bench, text));
            }
            // So that the same file can be picked again.
            input.set_value("");
        }
    };
    let rows = move || {
        let scale = bench.scale.get();
        bench.shelf.with(|shelf| {
            let count = shelf.items.len();
            shelf
                .items
                .iter()
                .enumerate()
                .map(|(index, item)| {
                    view! {
                        <Kept
                            index=index
                            name=item.name.clone()
                            line=summary(&item.route, scale)
                            count=count
                        />
                    }
                })
                .collect_view()
        })
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
                    disabled=move || bench.shelf.with(|s| s.items.is_empty())
                    on:click=export
                >
                    "Export to a file"
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| {
                        if let Some(input) = picker.get_untracked() {
                            input.click();
                        }
                    }
                >
                    "Import a file"
                </button>
                <input
                    node_ref=picker
                    class="unseen"
                    type="file"
                    accept="application/json,.json"
                    tabindex="-1"
                    aria-label="File to import"
                    on:change=picked
                />
            </div>
            {move || {
                bench
                    .shelf
                    .with(|s| s.items.is_empty())
                    .then(|| {
                        view! { <p>"The shelf is empty. Keep a route and it stands here."</p> }
                    })
            }}
            <ul>{rows}</ul>
        </main>
    }
    .into_any()
}
