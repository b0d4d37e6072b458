//! Experiments: those that there are, and the one that runs with how far it is.

use super::class::Class;
use super::lessons_kept::{keep, played, with_kept};
use crate::browser::{address, files, storage};
use crate::state::{Bench, Place};
use leptos::html::Div;
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::teach::{
    BUNDLED, Experiment, LARGEST_EXPERIMENT_BYTES, read_experiment, read_experiment_link,
    read_pasted,
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
    pub(super) all: RwSignal<Vec<Arc<Experiment>>>,
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
    pub(super) done: RwSignal<BTreeSet<String>>,
    /// What is wrong with a file or a pasted text.
    pub(super) wrong: RwSignal<Option<String>>,
    /// What is being pasted.
    pub(super) pasted: RwSignal<String>,
    /// The one that a link brought or that was pasted last.
    pub(super) brought: RwSignal<Option<Arc<Experiment>>>,
    /// Whether the class is looked at, and what it holds.
    pub(super) is_class: RwSignal<bool>,
    pub(super) class: Class,
    /// One that was loaded and is called as another is: it waits for what shall become of it.
    pub(super) twin: RwSignal<Option<Arc<Experiment>>>,
    /// Where the step is read.
    pub(super) text: NodeRef<Div>,
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
    pub(super) fn start(self, experiment: Arc<Experiment>) {
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
    pub(super) fn replace(self) {
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
    pub(super) fn paste(self) {
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
    pub(super) fn load(self, file: &File) {
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
pub(super) fn lessons(bench: Bench) -> Lessons {
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
