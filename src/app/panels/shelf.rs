//! The shelf: saved routes, and files in and out.

use super::piece::{bath_words, size_words};
use crate::browser::files;
use crate::controls::FileButton;
use crate::link;
use crate::state::{Bench, Notice, Undo, bench};
use leptos::html::Button;
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::save::{ItemId, Shelf, ShelfError, ShownChart, frame_text};
use recalesce::units::{format_duration_s, format_fixed, format_temperature};
use recalesce_texts::page as texts;
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
            say(bench, texts::shelf::kept_as(&name), false, None);
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
        return say(
            bench,
            texts::general::FILE_UNREADABLE.to_owned(),
            true,
            None,
        );
    };
    match recalesce::save::read(&text) {
        Err(reason) => say(bench, texts::shelf::nothing_imported(&reason), true, None),
        Ok(loaded) => {
            let mut faults: Vec<String> = loaded
                .rejected
                .iter()
                .map(|(index, why)| texts::shelf::fault_of_route(index + 1, why))
                .collect();
            let mut added = Vec::new();
            bench.shelf.update(|shelf| {
                let imported = shelf.import(loaded.shelf);
                added = imported.added;
                if imported.left_out > 0 {
                    faults.push(texts::shelf::no_room(imported.left_out));
                }
            });
            let words = if faults.is_empty() {
                texts::shelf::imported(added.len())
            } else {
                texts::shelf::imported_but(added.len(), &faults.join("; "))
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

/// What a route does in a line: all that tells it from others of its piece and steel.
fn steps(route: &Route, bench: Bench) -> String {
    let (scale, length) = (bench.scale.get(), bench.length.get());
    let held = |temperature_c: f64, time_min: f64| {
        texts::shelf::held(
            &format_temperature(temperature_c, scale),
            &format_duration_s(60.0 * time_min),
        )
    };
    let (size, of) = size_words(&route.section, length);
    let [least, most] =
        [route.target.least_hrc, route.target.most_hrc].map(|hrc| format_fixed(hrc, 0));
    let tempers: Vec<String> = route
        .tempers
        .iter()
        .map(|temper| held(temper.temperature_c, temper.time_min))
        .collect();
    texts::shelf::steps(
        &(size + of),
        route.prior.len(),
        &held(route.soak.temperature_c, route.soak.time_min),
        &bath_words(&route.quench, scale),
        &route.cold.as_ref().map_or_else(String::new, |cold| {
            texts::shelf::cold(&held(cold.temperature_c, cold.time_min))
        }),
        &tempers.join(", "),
        [&least, &most],
    )
}

/// A route in a line with what it is of; what its piece is called stays as it was written.
pub(super) fn summary(route: &Route, bench: Bench) -> AnyView {
    let grade = route.grade.as_deref().unwrap_or(texts::piece::OWN_STEEL);
    view! {
        <span translate="no">{route.piece.clone()}</span>
        {texts::shelf::of_steel(grade)}
        {steps(route, bench)}
    }
    .into_any()
}

/// What stands below the name of a kept route; what that tells already is not told again.
fn below_name(name: &str, route: &Route, bench: Bench) -> AnyView {
    if name.starts_with(&route.name()) {
        steps(route, bench).into_any()
    } else {
        summary(route, bench)
    }
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
        bench.shelf.with(|s| {
            s.get(id)
                .map(|item| below_name(&item.name, &item.route, bench))
        })
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
        let words = texts::shelf::off_the_shelf(gone.name());
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
                    aria-label=texts::shelf::NAME
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
                    {texts::shelf::PUT_ON_BENCH}
                </button>
                <button type="button" class="press" on:click=copy>
                    {texts::general::COPY_LINK}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| change(bench, |shelf| shelf.duplicate(id).map(|_| ()))
                >
                    {texts::general::DUPLICATE}
                </button>
                <button
                    node_ref=up
                    type="button"
                    class="press"
                    aria-label=texts::shelf::MOVE_UP
                    disabled=is_first
                    on:click=move |_| {
                        change(bench, |shelf| shelf.move_up(id));
                        focus_after_move(up, down);
                    }
                >
                    {texts::shelf::UP}
                </button>
                <button
                    node_ref=down
                    type="button"
                    class="press"
                    aria-label=texts::shelf::MOVE_DOWN
                    disabled=is_last
                    on:click=move |_| {
                        change(bench, |shelf| shelf.move_down(id));
                        focus_after_move(down, up);
                    }
                >
                    {texts::shelf::DOWN}
                </button>
                <button type="button" class="press" on:click=remove>
                    {texts::shelf::TAKE_OFF}
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
                    aria-label=texts::shelf::copy_link_of(chart.title())
                    on:click=move |_| link::copy_text(bench, address(), texts::shelf::LINK_TO_CHART)
                >
                    {texts::general::COPY_LINK}
                </button>
                <button
                    type="button"
                    class="press"
                    aria-label=texts::shelf::copy_frame_of(chart.title())
                    on:click=move |_| link::copy_text(bench, frame(), texts::shelf::FRAME)
                >
                    {texts::shelf::COPY_FRAME}
                </button>
            </li>
        }
    });
    view! {
        <details class="elsewhere">
            <summary>{texts::shelf::ONE_CHART}</summary>
            <p class="hint">
                {texts::shelf::SHOWN_BY_ITSELF}
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
                    texts::general::NO_FILE_OFFERED.to_owned(),
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
            <h2>{texts::shelf::SHELF}</h2>
            <p>
                {texts::shelf::ABOUT}
            </p>
            <div class="actions">
                <button type="button" class="press go" on:click=move |_| keep(bench)>
                    {texts::shelf::KEEP_ROUTE}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| bench.route.with_untracked(|route| link::copy(bench, route))
                >
                    {texts::shelf::COPY_LINK_TO_IT}
                </button>
                <button
                    type="button"
                    class="press"
                    disabled=move || bench.shelf.with(|s| s.items().is_empty())
                    on:click=export
                >
                    {texts::general::EXPORT_TO_FILE}
                </button>
                <FileButton
                    words=texts::shelf::IMPORT_FILE
                    name=texts::shelf::FILE_TO_IMPORT
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
                        view! { <p>{texts::shelf::EMPTY}</p> }
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
