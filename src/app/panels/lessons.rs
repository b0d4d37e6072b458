//! Experiments: the list of them, and the one that runs on the bench.

use super::class::{Class, ClassView};
use super::lessons_kept::{foreign, keep, played, with_kept};
use super::lessons_step::{step_view, told};
use crate::browser::{address, files, storage};
use crate::controls::{FileButton, Segment, live};
use crate::link;
use crate::state::{Bench, Place, bench};
use leptos::html::Div;
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::teach::{
    BUNDLED, Experiment, LARGEST_EXPERIMENT_BYTES, read_experiment, read_experiment_link,
    read_pasted, write_experiment_link,
};
use recalesce_texts::page as texts;
use std::collections::BTreeSet;
use std::sync::Arc;
use web_sys::File;

/// What the lessons hold; it stays while another place is looked at.
#[derive(Clone, Copy)]
pub(crate) struct Lessons {
    pub(super) bench: Bench,
    /// Those of the project, and those that were loaded.
    all: RwSignal<Vec<Arc<Experiment>>>,
    /// The one that runs.
    pub(super) of: RwSignal<Option<Arc<Experiment>>>,
    /// Its step, counted from zero; one past the last at its end.
    pub(super) step: RwSignal<usize>,
    /// What was chosen or answered in this step.
    pub(super) chosen: RwSignal<Option<usize>>,
    pub(super) answered: RwSignal<Option<f64>>,
    /// Whether the goal of this step was reached.
    pub(super) is_reached: RwSignal<bool>,
    /// The route that was on the bench before.
    before: StoredValue<Option<Route>>,
    /// Titles of those played to their end.
    done: RwSignal<BTreeSet<String>>,
    /// What is wrong with a file or a pasted text.
    wrong: RwSignal<Option<String>>,
    /// What is being pasted.
    pasted: RwSignal<String>,
    /// The one that a link brought or that was pasted last.
    brought: RwSignal<Option<Arc<Experiment>>>,
    /// Whether the class is looked at, and what it holds.
    is_class: RwSignal<bool>,
    class: Class,
    /// One that was loaded and is called as another is: it waits for what shall become of it.
    twin: RwSignal<Option<Arc<Experiment>>>,
    /// Where the step is read.
    text: NodeRef<Div>,
}

impl Lessons {
    fn open(bench: Bench) -> Self {
        let all = BUNDLED.iter().filter_map(|text| read_experiment(text).ok());
        Self {
            bench,
            all: RwSignal::new(with_kept(all.map(Arc::new).collect())),
            of: RwSignal::new(None),
            step: RwSignal::new(0),
            chosen: RwSignal::new(None),
            answered: RwSignal::new(None),
            is_reached: RwSignal::new(false),
            before: StoredValue::new(None),
            done: RwSignal::new(played().into_iter().collect()),
            wrong: RwSignal::new(None),
            pasted: RwSignal::new(String::new()),
            brought: RwSignal::new(None),
            is_class: RwSignal::new(false),
            class: Class::open(bench),
            twin: RwSignal::new(None),
            text: NodeRef::new(),
        }
    }

    /// Puts its route on the bench and begins.
    fn start(self, experiment: Arc<Experiment>) {
        let bench = self.bench;
        if !bench.is_guided.get_untracked() {
            self.before.set_value(Some(bench.route.get_untracked()));
        }
        bench.is_guided.set(true);
        self.brought.set(None);
        bench.route.set(experiment.route.clone());
        self.of.set(Some(experiment));
        self.step.set(0);
        self.forget();
        bench.place.set(Place::Bench);
        // The list was scrolled, and the guide stands on top.
        request_animation_frame(|| {
            if let Some(window) = web_sys::window() {
                window.scroll_to_with_x_and_y(0.0, 0.0);
            }
        });
    }

    fn forget(self) {
        self.chosen.set(None);
        self.answered.set(None);
        self.is_reached.set(false);
    }

    /// Goes on; the end counts as played.
    pub(super) fn next(self) {
        self.forget();
        self.step.update(|step| *step += 1);
        // The button that was pressed is gone: reading goes on with the new step.
        request_animation_frame(move || {
            if let Some(text) = self.text.get_untracked() {
                // One that cannot take the focus leaves it where it was.
                let _ = text.focus();
            }
        });
        let finished = self.of.with_untracked(|of| {
            let of = of.as_ref()?;
            (self.step.get_untracked() >= of.steps.len()).then(|| of.title.clone())
        });
        if let Some(title) = finished {
            self.done.update(|done| {
                // In another window others may have been.
                done.extend(played());
                done.insert(title);
            });
            let done = self
                .done
                .with_untracked(|d| d.iter().cloned().collect::<Vec<_>>());
            if let Ok(text) = serde_json::to_string(&done)
                && let Err(why) = storage::write(storage::EXPERIMENTS, &text)
            {
                self.bench.warn(why.to_owned());
            }
        }
    }

    /// Ends it, and puts the route back that was on the bench.
    pub(super) fn leave(self) {
        self.bench.is_guided.set(false);
        if let Some(route) = self.before.try_update_value(Option::take).flatten() {
            self.bench.route.set(route);
        }
        self.of.set(None);
    }

    /// Puts an experiment on the list; one that is called as another is waits.
    fn take(self, experiment: Experiment) {
        let place = self.all.with_untracked(|all| {
            let mut titles = all.iter().map(|other| &other.title);
            titles.position(|title| *title == experiment.title)
        });
        self.wrong.set(None);
        self.twin.set(None);
        match place {
            None => {
                self.all.update(|all| all.push(Arc::new(experiment)));
                self.keep();
            }
            Some(place) if place < BUNDLED.len() => self
                .wrong
                .set(Some(texts::lessons::title_is_taken(&experiment.title))),
            Some(_) => self.twin.set(Some(Arc::new(experiment))),
        }
    }

    /// Puts the one that waits in the place of the other.
    fn replace(self) {
        let Some(twin) = self.twin.get_untracked() else {
            return;
        };
        self.twin.set(None);
        self.all.update(|all| {
            for other in all.iter_mut().filter(|other| other.title == twin.title) {
                *other = twin.clone();
            }
        });
        self.keep();
    }

    fn keep(self) {
        if let Err(why) = self.all.with_untracked(|all| keep(all)) {
            self.bench.warn(why.to_owned());
        }
    }

    /// Takes one that a link brought, and offers to begin with it. One that is on the list as it is stays
    /// there.
    fn bring(self, experiment: Experiment) {
        let known = self.all.with_untracked(|all| {
            let mut all = all.iter();
            all.find(|other| ***other == experiment).cloned()
        });
        if known.is_none() {
            self.take(experiment.clone());
        }
        let is_listed = self
            .all
            .with_untracked(|all| all.iter().any(|other| **other == experiment));
        self.brought
            .set(is_listed.then(|| known.unwrap_or_else(|| Arc::new(experiment))));
    }

    /// Takes the experiment of what was pasted. What cannot be read stays in its field.
    fn paste(self) {
        match self.pasted.with_untracked(|text| read_pasted(text)) {
            Ok(experiment) => {
                self.wrong.set(None);
                self.pasted.set(String::new());
                self.bring(experiment);
            }
            Err(why) => self.wrong.set(Some(why.to_string())),
        }
    }

    /// Takes an experiment from a file.
    fn load(self, file: &File) {
        if file.size() > LARGEST_EXPERIMENT_BYTES as f64 {
            let most = LARGEST_EXPERIMENT_BYTES / 1000;
            self.wrong.set(Some(texts::lessons::file_too_large(most)));
            return;
        }
        files::read_text(file, move |text| {
            let read = text.as_deref().map(read_experiment);
            match read {
                Some(Ok(experiment)) => self.take(experiment),
                Some(Err(why)) => self.wrong.set(Some(why.to_string())),
                None => self
                    .wrong
                    .set(Some(texts::general::FILE_UNREADABLE.to_owned())),
            }
        });
    }
}

/// The lessons of a page.
fn lessons(bench: Bench) -> Lessons {
    bench.lessons(|| Lessons::open(bench))
}

/// Takes in the experiment that the address brings.
pub(crate) fn take_link(bench: Bench) {
    let Some(link) = address::take_experiment() else {
        return;
    };
    match read_experiment_link(&link) {
        Err(why) => bench.warn(texts::lessons::link_not_opened(&why)),
        Ok(experiment) => {
            let lessons = lessons(bench);
            lessons.is_class.set(false);
            lessons.bring(experiment);
            bench.place.set(Place::Experiments);
        }
    }
}

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
