//! The steps before hardening: one of them open, with what it does, and the piece after each.

use super::outcome::Say;
use super::prior_states::PriorStates;
use super::prior_words::{PriorWords, WorkWord};
use super::strip::{pick, remove};
use super::structures::StructureWord;
use crate::charts;
use crate::parts::panels::{Panel, panel};
use crate::plot::Plot;
use crate::state::{Bench, Stage, bench};
use leptos::prelude::*;
use recalesce::chart::phase_bar;
use recalesce::route::{
    PriorStep, Route, Setting, StepRef, Work, departures, forging_window, prior_sentences,
    starting_steps,
};
use recalesce_texts::page as texts;

/// The step that is open, if any step can be.
fn open_step(bench: Bench) -> usize {
    match bench.stage.get() {
        Stage::Prior(i) => {
            let count = bench.route.with(|r| r.prior.len());
            i.min(count.saturating_sub(1))
        }
        _ => 0,
    }
}

/// Puts a step in behind the open one and opens it.
fn add(bench: Bench, at: usize, work: Work) {
    let a1_c = bench.outcome_now().map_or(727.0, |o| o.critical.a1_c);
    let count = bench.route.with_untracked(|r| r.prior.len());
    let place = if count == 0 { 0 } else { at + 1 };
    bench.change(|r| {
        r.insert_prior(place, PriorStep::first_offered(work, a1_c));
    });
    pick(bench, StepRef::Prior(place));
}

/// The handbook's steps for the grade in place of those that are there.
fn take_handbook(bench: Bench) {
    if let Some(grade) = bench.route.with_untracked(Route::listed_grade) {
        bench.change(|r| r.prior = starting_steps(grade));
        pick(bench, StepRef::Prior(0));
    }
}

/// Buttons that change the list of steps.
#[component]
fn Tools(#[prop(into)] at: Signal<usize>, #[prop(into)] count: Signal<usize>) -> impl IntoView {
    let bench = bench();
    let shift = move |by: isize| {
        let mut moved = StepRef::Prior(at.get_untracked());
        bench.change(|r| moved = r.move_step(moved, by));
        pick(bench, moved);
    };
    let copy = move |_| {
        let mut copied = None;
        bench.change(|r| copied = r.duplicate_step(StepRef::Prior(at.get_untracked())));
        if let Some(copied) = copied {
            pick(bench, copied);
        }
    };
    let has_grade = move || bench.route.with(|r| r.grade.is_some());
    let on_step = move || {
        (count.get() > 0).then(|| {
            view! {
                <button
                    type="button"
                    class="press"
                    disabled=move || at.get() == 0
                    on:click=move |_| shift(-1)
                >
                    {texts::steps::EARLIER}
                </button>
                <button
                    type="button"
                    class="press"
                    disabled=move || { at.get() + 1 >= count.get() }
                    on:click=move |_| shift(1)
                >
                    {texts::steps::LATER}
                </button>
                <button type="button" class="press" on:click=copy>
                    {texts::general::DUPLICATE}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| remove(bench, StepRef::Prior(at.get_untracked()))
                >
                    {texts::steps::TAKE_OUT}
                </button>
            }
        })
    };
    view! {
        <div class="step-tools">
            <p class="set">
                <WorkWord
                    text=Signal::stored(texts::steps::ADD_A_STEP.to_owned())
                    name=texts::steps::ADD_A_STEP_NAME
                    chosen=Signal::stored(usize::MAX)
                    pick=move |work| add(bench, at.get_untracked(), work)
                />
            </p>
            {on_step}
            <button
                type="button"
                class="press"
                disabled=move || !has_grade()
                on:click=move |_| take_handbook(bench)
            >
                {texts::steps::HANDBOOK_STEPS}
            </button>
        </div>
    }
    .into_any()
}

/// The handbook's forging range of the grade, °C.
fn handbook_forging_c(route: &Route) -> Option<(f64, f64)> {
    route.listed_grade()?.forge_c.span
}

/// What the open step does.
#[component]
fn Notes(#[prop(into)] at: Signal<usize>) -> impl IntoView {
    let bench = bench();
    let notes = move || {
        let outcome = bench.outcome()?;
        let scale = bench.scale.get();
        let route = bench.route.get();
        let i = at.get();
        let (step, done) = (route.prior.get(i)?, outcome.prior.get(i)?);
        let window = forging_window(&route.composition, &outcome.critical);
        let says = prior_sentences(
            step,
            done,
            &window,
            outcome.critical.a1_c,
            (scale, bench.length.get()),
        )
        .into_iter()
        .map(|sentence| view! { <Say sentence=sentence /> })
        .collect_view();
        let departs: Vec<String> = departures(&route)
            .iter()
            .filter(|d| d.of == Setting::Prior(i) || d.of == Setting::Finish(i))
            .map(|d| texts::steps::departs_from(&d.words(scale)))
            .collect();
        let forging = matches!(step.work, Work::Forge { .. }).then(
            || view! { <p class="hint">{window.words(handbook_forging_c(&route), scale)}</p> },
        );
        let bar = done
            .state
            .given()
            .and_then(|state| state.fractions)
            .map(|fractions| {
                view! {
                    <Plot
                        class="bar"
                        scene=move |w, h| Some(phase_bar(&charts::amounts(&fractions), [w, h]))
                    />
                }
            });
        Some(view! {
            {says}
            {bar}
            {forging}
            {(!departs.is_empty()).then(|| view! { <p class="hint departs">{departs.join(" ")}</p> })}
        })
    };
    view! { <div class="notes">{notes}</div> }.into_any()
}

/// The panel, where a step before hardening is picked.
#[component]
pub(crate) fn PriorPanel() -> impl IntoView {
    let bench = bench();
    let is_open = Memo::new(move |_| matches!(bench.stage.get(), Stage::Prior(_)));
    let inside = move || {
        is_open.get().then(|| {
            view! {
                <section class="before" aria-label=texts::steps::BEFORE_HARDENING>
                    {panel(Panel::Prior)}
                </section>
            }
        })
    };
    inside.into_any()
}

/// The open step, and the piece after each.
#[component]
pub(crate) fn PriorInside() -> impl IntoView {
    let bench = bench();
    let at = Memo::new(move |_| open_step(bench));
    let count = Memo::new(move |_| bench.route.with(|r| r.prior.len()));
    let received = move || match count.get() {
        0 => texts::steps::NO_STEP_YET.to_owned(),
        n => texts::steps::step_of(at.get() + 1, n),
    };
    let words = move || (count.get() > 0).then(|| view! { <PriorWords at=at.get() /> });
    let states = move || (count.get() > 0).then(|| view! { <PriorStates open=at /> });
    view! {
        <div>
            <h2>
                {texts::steps::BEFORE_HARDENING_THEN} <span>{received}</span>
            </h2>
            {words}
            <Tools at=at count=count />
            <Notes at=at />
        </div>
        <div>
            <p class="set">{texts::steps::STOCK_IS} <StructureWord name=texts::steps::STRUCTURE_OF_STOCK /> "."</p>
            {states}
        </div>
    }
}
