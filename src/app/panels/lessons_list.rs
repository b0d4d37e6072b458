//! The place of the experiments: the list of them, and how others come onto it.

use super::class::ClassView;
use super::lessons::{Lessons, lessons};
use super::lessons_kept::foreign;
use super::lessons_step::told;
use crate::browser::address;
use crate::controls::{FileButton, Segment, live};
use crate::link;
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::teach::{Experiment, write_experiment_link};
use recalesce_texts::page as texts;
use web_sys::File;

/// Puts the address that brings an experiment onto the clipboard.
fn copy_link(bench: Bench, experiment: &Experiment) {
    let text = write_experiment_link(experiment).map_err(|why| why.to_string());
    let address = text.and_then(|text| {
        address::with_experiment(&text).ok_or_else(|| texts::general::NO_ADDRESS.to_owned())
    });
    link::copy_text(bench, address, texts::lessons::LINK_TO_EXPERIMENT);
}

/// What a link brought, ready to begin.
fn brought(lessons: Lessons) -> AnyView {
    live(move || {
        let Some(experiment) = lessons.brought.get() else {
            return ().into_any();
        };
        let words = texts::lessons::on_the_list(&experiment.title);
        view! {
            <p class="brought" role="status">
                {words}
                " "
                <button
                    type="button"
                    class="press go"
                    on:click=move |_| lessons.start(experiment.clone())
                >
                    {texts::lessons::BEGIN_WITH_IT}
                </button>
            </p>
        }
        .into_any()
    })
}

/// Where an experiment is pasted, as a link or as the text of its file.
fn pasting(lessons: Lessons) -> AnyView {
    view! {
        <details class="paste">
            <summary>{texts::lessons::PASTE}</summary>
            <textarea
                aria-label=texts::lessons::LINK_OR_TEXT
                rows="5"
                spellcheck="false"
                prop:value=lessons.pasted
                on:input:target=move |event| lessons.pasted.set(event.target().value())
            ></textarea>
            <button type="button" class="press" on:click=move |_| lessons.paste()>
                {texts::lessons::TAKE_PASTED}
            </button>
        </details>
    }
    .into_any()
}

/// The list.
#[component]
pub(crate) fn LessonsPlace() -> impl IntoView {
    let bench = bench();
    let lessons = lessons(bench);
    let rows = live(move || {
        let all = lessons.all.get();
        let rows = all.into_iter().map(|experiment| {
            let title = experiment.title.clone();
            let name = title.clone();
            let is_done = move || lessons.done.with(|done| done.contains(&name));
            let about = told(bench, &experiment.about);
            let minutes = experiment.minutes;
            let aria = texts::lessons::start_of(&title);
            let link = texts::lessons::copy_link_of(&title);
            let shared = experiment.clone();
            let of_others = lessons.all.with_untracked(|all| foreign(&experiment, all));
            view! {
                <li class="lesson">
                    <div>
                        <h3>{title}</h3>
                        <p>{about}</p>
                        {of_others}
                        <p class="hint">
                            {texts::lessons::about_minutes(minutes)}
                            {move || is_done().then_some(texts::lessons::PLAYED_TO_END)}
                        </p>
                    </div>
                    <div class="actions">
                        <button
                            type="button"
                            class="press go"
                            aria-label=aria
                            on:click=move |_| lessons.start(experiment.clone())
                        >
                            {texts::lessons::START}
                        </button>
                        <button
                            type="button"
                            class="press"
                            aria-label=link
                            on:click=move |_| copy_link(bench, &shared)
                        >
                            {texts::general::COPY_LINK}
                        </button>
                    </div>
                </li>
            }
        });
        rows.collect_view().into_any()
    });
    let class = live(move || {
        if lessons.is_class.get() {
            view! { <ClassView class=lessons.class /> }.into_any()
        } else {
            ().into_any()
        }
    });
    view! {
        <main class="leaf lessons">
            <h2>{texts::lessons::EXPERIMENTS}</h2>
            <Segment
                name=texts::lessons::SHOWN
                entries=vec![(false, texts::lessons::SHOW_EXPERIMENTS), (true, texts::lessons::CLASS_TOGETHER)]
                chosen=lessons.is_class
                pick=move |is_class| lessons.is_class.set(is_class)
            />
            <div hidden=move || lessons.is_class.get()>
                <p>
                    {texts::lessons::ABOUT}
                </p>
                {brought(lessons)}
                <ol class="lesson-list">{rows}</ol>
                <div class="actions">
                    <FileButton
                        words=texts::lessons::LOAD
                        name=texts::lessons::EXPERIMENT
                        accept=".json,application/json"
                        pick=move |file: File| lessons.load(&file)
                    />
                </div>
                {pasting(lessons)}
                <p class="wrong" role="alert">
                    {move || lessons.wrong.get()}
                </p>
            </div>
            {class}
            {live(move || {
                let Some(twin) = lessons.twin.get() else {
                    return ().into_any();
                };
                view! {
                    <div role="alert">
                        <p>
                            {texts::lessons::called_so_already(&twin.title)}
                        </p>
                        <div class="actions">
                            <button
                                type="button"
                                class="press"
                                on:click=move |_| lessons.replace()
                            >
                                {texts::lessons::PUT_NEW}
                            </button>
                            <button
                                type="button"
                                class="press"
                                on:click=move |_| lessons.twin.set(None)
                            >
                                {texts::lessons::KEEP_OLD}
                            </button>
                        </div>
                    </div>
                }
                .into_any()
            })}
        </main>
    }
    .into_any()
}
