//! The guide above the bench: the step of the experiment that runs.

use super::lessons::lessons;
use super::lessons_kept::foreign;
use super::lessons_step::{step_view, told};
use crate::controls::live;
use crate::state::{Place, bench};
use leptos::prelude::*;
use recalesce_texts::page as texts;

/// The guide above the bench.
#[component]
pub(crate) fn Guide() -> impl IntoView {
    let bench = bench();
    let lessons = lessons(bench);
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
                <button type="button" class="press" on:click=move |_| lessons.leave()>
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
    view! { <section class="guide" aria-label=texts::lessons::EXPERIMENT>{inside}</section> }
        .into_any()
}
