//! The page: state in one place, panels that read it, plots that paint it.
#![allow(unreachable_pub, reason = "the component macro emits public items")]

mod browser;
mod canvas;
mod charts;
mod controls;
mod decide;
mod errand;
mod keep;
mod link;
mod logbook;
mod logbook_photos;
mod logbook_store;
mod logbook_undo;
mod own;
mod panels;
mod parts;
mod plot;
mod state;
mod undo;

use browser::storage;
use leptos::prelude::*;
use panels::header::Header;
use panels::opened::Opened;
use panels::outcome::{OutcomePanel, refusal, say_all};
use panels::piece::Piece;
use panels::prior::PriorPanel;
use panels::quench::QuenchStage;
use panels::soak::SoakStage;
use panels::strip::Strip;
use panels::temper::TemperStage;
use parts::panels::{Panel, panel};
use recalesce_texts::page as texts;
use state::{Bench, Place, Stage, Undo, bench};
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Mounts the page in its place in the document; in a worker, answers what it is asked.
fn main() {
    browser::panic::watch();
    if let Some(thread) = browser::worker::this_thread() {
        return errand::serve(thread);
    }
    let place = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id("app"))
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(place) = place {
        place.set_inner_html("");
        leptos::mount::mount_to(place, Page).forget();
    }
}

/// The page.
#[component]
fn Page() -> impl IntoView {
    let is_embedded = browser::address::shown_chart().is_some();
    let state = Bench::open(is_embedded);
    provide_context(state);
    browser::typeface::when_ready(move || {
        state.has_typeface.try_set(true);
    });
    if is_embedded {
        return state.parts.places.view(|part| (part.embedded)());
    }
    keep::keep(state);
    undo::follow(state.undo, state.place);
    link::follow(state);
    browser::print::follow(state.is_printing);
    state.parts.bring_when_idle();
    let place = move || match state.place.get() {
        Place::Bench => view! { <BenchPlace /> }.into_any(),
        Place::Decide => state.parts.deciding.view(|part| (part.show)()),
        Place::Experiments => state.parts.teaching.view(|part| (part.show)()),
        place => state.parts.places.view(move |part| (part.show)(place)),
    };
    view! {
        <Header />
        <NoticeLine />
        {place}
        <Opened />
        <footer class="foot">
            {texts::general::FOOT}
        </footer>
    }
    .into_any()
}

/// The notice over the page.
#[component]
fn NoticeLine() -> impl IntoView {
    let state = bench();
    let button = move |word: &'static str, act: Option<Undo>| {
        view! {
            <button
                type="button"
                class="press"
                on:click=move |_| {
                    state.notice.set(None);
                    if let Some(act) = &act {
                        act();
                    }
                }
            >
                {word}
            </button>
        }
        .into_any()
    };
    let offer = move || {
        let offered = move || {
            state
                .parts
                .panels
                .then(state, move |part| (part.offer_held)(state))
        };
        let offered: Undo = Arc::new(offered);
        button(texts::general::SAVE_HELD, Some(offered))
    };
    let line = move || {
        state.notice.get().map(|notice| {
            let undo = notice.undo;
            view! {
                <p class="message" class:wrong-input=notice.is_wrong>
                    <span>{notice.text}</span>
                    {undo.map(|undo| button(texts::general::UNDO, Some(undo)))}
                    {storage::holds().then(offer)}
                    {button(texts::general::DISMISS, None)}
                </p>
            }
        })
    };
    view! { <div role="status">{line}</div> }
}

/// One stage of the sheet. On the phone only the picked one is shown.
#[component]
fn StageFrame(
    stage: Stage,
    title: &'static str,
    received: Signal<String>,
    children: Children,
) -> impl IntoView {
    let state = bench();
    let sentence = match stage {
        Stage::Soak => 0,
        Stage::Quench => 1,
        Stage::Prior(_) | Stage::Temper => usize::MAX,
    };
    view! {
        <section
            class="stage"
            class:shown=move || state.stage.get() == stage
            class:stale=move || state.is_of_before()
            aria-label=title
        >
            <h2>
                {title} <span>{received}</span>
            </h2>
            <div>{children()}</div>
            <div class="phone-only">{refusal(state)}</div>
            <div class="phone-only">{say_all(Some(sentence))}</div>
        </section>
    }
    .into_any()
}

/// Tabs of the phone: each with its answer.
#[component]
fn Tabs() -> impl IntoView {
    let state = bench();
    let tabs = [
        (Stage::Prior(0), texts::general::BEFORE),
        (Stage::Soak, texts::general::SOAK),
        (Stage::Quench, texts::general::QUENCH),
        (Stage::Temper, texts::general::TEMPER),
    ]
    .map(|(stage, word)| {
        let is_open = move |open: Stage| match stage {
            Stage::Prior(_) => matches!(open, Stage::Prior(_)),
            _ => open == stage,
        };
        view! {
            <button
                type="button"
                role="tab"
                aria-selected=move || is_open(state.stage.get()).to_string()
                on:click=move |_| state.stage.set(stage)
            >
                {word}
                <small>{move || charts::answer(state, stage)}</small>
            </button>
        }
    });
    view! {
        <div class="tabs" role="tablist" aria-label=texts::general::STAGE>
            {tabs}
        </div>
    }
    .into_any()
}

/// The bench.
#[component]
fn BenchPlace() -> impl IntoView {
    let state = bench();
    let took_ms = move || state.computed.with(|c| format!("{:.3}", c.took_ms));
    let guide = move || {
        let is_guided = state.is_guided.get();
        is_guided.then(|| state.parts.teaching.view(|part| (part.guide)()))
    };
    view! {
        {guide}
        <Piece />
        <Strip />
        <Tabs />
        <PriorPanel />
        <main class="bench" data-recompute-ms=took_ms>
            <div class="sheet">
                <StageFrame
                    stage=Stage::Soak
                    title=texts::general::SOAK
                    received=Signal::stored(texts::soak::SOAK_RECEIVES.to_owned())
                >
                    <SoakStage />
                </StageFrame>
                <StageFrame
                    stage=Stage::Quench
                    title=texts::general::QUENCH
                    received=Signal::derive(panels::quench::received())
                >
                    <QuenchStage />
                </StageFrame>
                <StageFrame
                    stage=Stage::Temper
                    title=texts::general::TEMPER
                    received=Signal::derive(panels::temper::received())
                >
                    <TemperStage />
                </StageFrame>
            </div>
            <OutcomePanel />
            {panel(Panel::Own)}
            {panel(Panel::QuenchTable)}
        </main>
        {panel(Panel::Dock)}
    }
    .into_any()
}
