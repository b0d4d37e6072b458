//! The guide above the bench: the step of the experiment that runs.

use super::lessons::lessons;
use super::lessons_kept::foreign;
use super::lessons_step::{step_view, told};
use crate::controls::live;
use crate::state::{Place, bench};
use leptos::prelude::*;
use recalesce::teach::{Experiment, Step};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Keeps keys and readers of the screen from what is veiled, which a style alone does not.
fn keep_from_keys(is_veiled: bool) {
    let Some(document) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    for veiled in [".tabs", ".bench"] {
        if let Ok(Some(element)) = document.query_selector(veiled) {
            // An attribute of this name is always taken.
            let _ = element.toggle_attribute_with_force("inert", is_veiled);
        }
    }
}

/// The guide above the bench.
#[component]
pub(crate) fn Guide() -> impl IntoView {
    let bench = bench();
    let lessons = lessons(bench);
    // The bench would tell what is to be predicted.
    let asks = Memo::new(move |_| {
        let step = lessons.step.get();
        let is_prediction =
            |of: &Arc<Experiment>| matches!(of.steps.get(step), Some(Step::Predict { .. }));
        lessons.of.with(|of| of.as_ref().is_some_and(is_prediction))
            && lessons.chosen.get().is_none()
    });
    Effect::new(move |_| keep_from_keys(asks.get()));
    on_cleanup(|| keep_from_keys(false));
    let inside = live(move || {
        let Some(of) = lessons.of.get() else {
            return ().into_any();
        };
        let step = lessons.step.get();
        let count = of.steps.len();
        let head = if step < count {
            texts::lessons::step_of(step + 1, count)
        } else {
            texts::lessons::AT_THE_FORGE.to_owned()
        };
        let body = match of.steps.get(step) {
            Some(one) => step_view(lessons, &of, step, one),
            None => view! {
                <p>{told(bench, &of.at_the_forge)}</p>
                <div class="actions">
                    <button
                        type="button"
                        class="press go"
                        on:click=move |_| {
                            lessons.leave();
                            bench.place.set(Place::Experiments);
                        }
                    >
                        {texts::lessons::ALL_EXPERIMENTS}
                    </button>
                </div>
            }
            .into_any(),
        };
        let of_others = lessons.all.with_untracked(|all| foreign(&of, all));
        view! {
            <div class="guide-head">
                <h2>{of.title.clone()}</h2>
                <span class="hint">{head}</span>
                <button
                    type="button"
                    class="press"
                    aria-label=texts::lessons::LEAVE_THE_EXPERIMENT
                    on:click=move |_| lessons.leave()
                >
                    {texts::lessons::LEAVE}
                </button>
            </div>
            {of_others}
            <div class="guide-text" tabindex="-1" aria-live="polite" node_ref=lessons.text>
                {body}
            </div>
        }
        .into_any()
    });
    view! {
        <section class="guide" class:asks=move || asks.get() aria-label=texts::lessons::EXPERIMENT>
            {inside}
        </section>
    }
    .into_any()
}
