//! What the page holds: a route, how it is shown, the shelf; and what is computed from the route.
//! Nothing else owns state.

mod computed;

use super::browser::{decimals, density, theme};
use super::errand::Runner;
use super::keep::SeenShelf;
use super::logbook::Log;
use super::panels::decide::Deciding;
use super::panels::lessons::Lessons;
use super::parts::Parts;
use super::undo::UndoHandle;
use computed::{Computed, Kept, Mapped, computed, hardened, mapped, overheating, prepared};
use leptos::prelude::*;
use recalesce::advise::Correction;
use recalesce::chart::Palette;
use recalesce::route::{NumberKey, Outcome, Replay, Route, Stopped};
use recalesce::save::Shelf;
use recalesce::soak::GrainAt;
use recalesce::steel::Composition;
use recalesce::units::{LengthUnit, TemperatureScale};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// A place of the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// The bench: one route, live.
    Bench,
    /// Where routes are found and weighed.
    Decide,
    /// Experiments.
    Experiments,
    /// The shelf: saved routes.
    Shelf,
    /// The logbook: what was done and measured.
    Logbook,
    /// The card of the route on the bench.
    Card,
    /// The publications behind the numbers.
    Sources,
}

/// A part of the bench: a plot, a tab on the phone, a block of the route strip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stage {
    /// A step before hardening, counted from zero; the first where there is none yet.
    Prior(usize),
    /// Soak.
    Soak,
    /// Quench and cold bath.
    Quench,
    /// Temper.
    Temper,
}

/// Takes something back. Not a callback of a panel: the panel may be gone by then.
pub(crate) type Undo = Arc<dyn Fn() + Send + Sync>;

/// A notice over the page: what could not be kept or read, or what can be undone.
#[derive(Clone)]
pub(crate) struct Notice {
    /// The line.
    pub(crate) text: String,
    /// Whether it says that something is wrong.
    pub(crate) is_wrong: bool,
    /// Takes back what the line tells, if it can be.
    pub(crate) undo: Option<Undo>,
}

/// What the logbook has taught. Its code lies in the part of what opens on the bench.
#[derive(Clone)]
pub(crate) struct Teach {
    /// Whether it acts.
    pub(crate) is_on: bool,
    /// All of it.
    pub(crate) learnt: Arc<Correction>,
    /// A route as its pieces go through it.
    pub(crate) real: fn(&Correction, &Route) -> Route,
    /// What acts on a route, in sentences.
    pub(crate) words: fn(&Correction, &Route, TemperatureScale) -> Vec<String>,
}

/// Handles to everything the page holds; copied into every panel.
#[derive(Clone, Copy)]
pub(crate) struct Bench {
    /// The route on the bench.
    pub(crate) route: RwSignal<Route>,
    /// What the logbook has taught, once it was read or learnt.
    pub(crate) teach: RwSignal<Option<Teach>>,
    /// The route as its pieces go through it: what the outcome is of.
    pub(crate) real: Memo<Route>,
    /// °C or °F.
    pub(crate) scale: RwSignal<TemperatureScale>,
    /// mm or inch.
    pub(crate) length: RwSignal<LengthUnit>,
    /// Whether numbers have a decimal comma.
    pub(crate) has_decimal_comma: RwSignal<bool>,
    /// Day or shop.
    pub(crate) theme: RwSignal<theme::Theme>,
    /// Whether the user has chosen it; else it follows the system.
    pub(crate) is_theme_chosen: RwSignal<bool>,
    /// Whether the page is being printed: black ink then.
    pub(crate) is_printing: RwSignal<bool>,
    /// Colours of the theme, for the charts.
    pub(crate) palette: Memo<Palette>,
    /// Device pixels per CSS pixel.
    pub(crate) density: Signal<f64>,
    /// Whether the page's typeface has arrived: widths of texts change with it.
    pub(crate) has_typeface: RwSignal<bool>,
    /// Which place is open.
    pub(crate) place: RwSignal<Place>,
    /// Which stage is picked.
    pub(crate) stage: RwSignal<Stage>,
    /// Saved routes.
    pub(crate) shelf: RwSignal<Shelf>,
    /// What was last seen of it in the browser's store.
    pub(crate) seen_shelf: StoredValue<SeenShelf>,
    /// What can be undone.
    pub(crate) undo: UndoHandle,
    /// Logged runs.
    pub(crate) log: Log,
    /// Parts of the program that are loaded when they are opened.
    pub(crate) parts: Parts,
    /// The notice over the page.
    pub(crate) notice: RwSignal<Option<Notice>>,
    /// The number that is opened.
    pub(crate) opened: RwSignal<Option<NumberKey>>,
    /// The route as far as the quench: what follows it is left out.
    pub(crate) quenched: Memo<Route>,
    /// What the steel alone decides.
    pub(crate) prepared: Memo<Kept>,
    /// Outcome of the route.
    pub(crate) computed: Memo<Arc<Computed>>,
    /// Phase map of the steel, or of the steel before while its own is being computed.
    pub(crate) mapped: Memo<Mapped>,
    composition: Memo<Composition>,
    /// The second thread.
    pub(crate) runner: StoredValue<Runner, LocalStorage>,
    /// Grain of the same soak in a furnace that is too hot, where it is known.
    pub(crate) overheating: Memo<Option<[GrainAt; 3]>>,
    /// What the place where it is decided holds, once it was opened.
    deciding: StoredValue<Option<Deciding>>,
    /// Whether an experiment guides the bench, and what the experiments hold once they were opened.
    pub(crate) is_guided: RwSignal<bool>,
    lessons: StoredValue<Option<Lessons>>,
    /// What lives as long as the page.
    root: StoredValue<Option<Owner>>,
}

impl Bench {
    /// The page's state, with what the browser has kept: not where the page shows one chart in somebody
    /// else's, which leaves that alone.
    pub(crate) fn open(is_embedded: bool) -> Self {
        let mut notice = None;
        let (route, shelf) = if is_embedded {
            (Route::whole_example(), Shelf::default())
        } else {
            super::keep::warn_of_closed_storage(&mut notice);
            (
                super::keep::bench(&mut notice),
                super::keep::shelf(&mut notice),
            )
        };
        let preferences = super::keep::preferences();
        let theme = RwSignal::new(theme::current());
        let is_printing = RwSignal::new(false);
        let route = RwSignal::new(route);
        let shelf = RwSignal::new(shelf);
        let composition = Memo::new(move |_| route.with(|r| r.composition));
        let (teach, is_guided) = (RwSignal::new(None::<Teach>), RwSignal::new(false));
        let real = Memo::new(move |_| {
            // An experiment is about the models.
            let teach = teach
                .get()
                .filter(|teach: &Teach| teach.is_on && !is_guided.get());
            route.with(|route| {
                teach.map_or_else(|| route.clone(), |teach| (teach.real)(&teach.learnt, route))
            })
        });
        let prepared = prepared(real);
        let runner = StoredValue::new_local(Runner::start());
        let mapped = mapped(runner, composition);
        let notice = RwSignal::new(notice);
        let quenched = Memo::new(move |_| real.with(Route::as_far_as_quench));
        let bench = Self {
            route,
            teach,
            real,
            scale: RwSignal::new(preferences.temperature_scale),
            length: RwSignal::new(preferences.length_unit),
            has_decimal_comma: RwSignal::new(decimals::have_comma()),
            theme,
            is_theme_chosen: RwSignal::new(preferences.theme != recalesce::save::Theme::System),
            is_printing,
            palette: Memo::new(move |_| {
                theme.track();
                if is_printing.get() {
                    Palette::PRINT
                } else {
                    theme::palette()
                }
            }),
            density: density::density(),
            has_typeface: RwSignal::new(false),
            place: RwSignal::new(Place::Bench),
            stage: RwSignal::new(Stage::Quench),
            shelf,
            seen_shelf: StoredValue::default(),
            undo: UndoHandle::new(route, shelf),
            log: Log::new(notice),
            parts: Parts::new(),
            notice,
            opened: RwSignal::new(None),
            quenched,
            prepared,
            computed: computed(real, hardened(quenched, prepared)),
            mapped,
            composition,
            runner,
            overheating: overheating(real, prepared),
            deciding: StoredValue::new(None),
            is_guided,
            lessons: StoredValue::new(None),
            root: StoredValue::new(Owner::current()),
        };
        runner.with_value(|runner| {
            runner.set_alone(move || bench.warn(texts::general::ALONE.to_owned()));
        });
        bench
    }

    /// The outcome to show, if there is one.
    pub(crate) fn outcome(self) -> Option<Arc<Outcome>> {
        self.computed.with(|c| c.outcome.clone())
    }

    /// Whether the outcome is that of an earlier route: this one has none.
    pub(crate) fn is_of_before(self) -> bool {
        self.computed.with(|c| c.error.is_some())
    }

    /// The route whose outcome is shown; where this one has none, that of before as its pieces go through it.
    pub(crate) fn shown(self) -> Arc<Route> {
        let before = self.computed.with(|c| c.before());
        before.unwrap_or_else(|| Arc::new(self.route.get()))
    }

    /// The same as its pieces go through it.
    pub(crate) fn shown_as_real(self) -> Arc<Route> {
        let before = self.computed.with(|c| c.before());
        before.unwrap_or_else(|| Arc::new(self.real.get()))
    }

    /// Whether what the logbook has taught acts here: an experiment is about the models.
    pub(crate) fn is_taught(self) -> bool {
        let is_on = |teach: &Option<Teach>| teach.as_ref().is_some_and(|teach| teach.is_on);
        self.teach.with(is_on) && !self.is_guided.get()
    }

    /// Another route as its pieces would go through it.
    pub(crate) fn as_real(self, route: &Route) -> Route {
        let teach = self.teach.get().filter(|_| self.is_taught());
        teach.map_or_else(|| route.clone(), |teach| (teach.real)(&teach.learnt, route))
    }

    /// What acts of what the logbook has taught on the route on the bench, in sentences.
    pub(crate) fn taught_words(self) -> Vec<String> {
        let scale = self.scale.get();
        let teach = self.teach.get().filter(|_| self.is_taught());
        teach.map_or_else(Vec::new, |teach| {
            self.route
                .with(|route| (teach.words)(&teach.learnt, route, scale))
        })
    }

    /// The outcome without being told of later ones.
    pub(crate) fn outcome_now(self) -> Option<Arc<Outcome>> {
        self.computed.with_untracked(|c| c.outcome.clone())
    }

    /// The quench stopped at a time, s from leaving the furnace, where it can be told.
    pub(crate) fn stopped_at(self, time_s: f64) -> Option<Stopped> {
        self.computed
            .with(|c| c.hardened.result.as_ref().ok()?.stopped_at(time_s))
    }

    /// The quench across the section, where it can be told.
    pub(crate) fn replay(self) -> Option<Replay> {
        let prepared = self.prepared.get();
        self.quenched
            .with(|route| prepared.as_ref().as_ref()?.replay(route).ok())
    }

    /// Whether the map of this steel is being computed.
    pub(crate) fn is_map_coming(self) -> bool {
        let of = self.mapped.with(|mapped| mapped.of);
        of != Some(self.composition.get())
    }

    /// What the place where it is decided holds; made when it is opened first, and then as long there
    /// as the page.
    pub(crate) fn deciding(self, open: impl FnOnce() -> Deciding) -> Deciding {
        self.made_once(self.deciding, open)
    }

    /// The same of the experiments.
    pub(crate) fn lessons(self, open: impl FnOnce() -> Lessons) -> Lessons {
        self.made_once(self.lessons, open)
    }

    fn made_once<T: Copy + Send + Sync + 'static>(
        self,
        kept: StoredValue<Option<T>>,
        open: impl FnOnce() -> T,
    ) -> T {
        if let Some(made) = kept.get_value() {
            return made;
        }
        let made = match self.root.get_value() {
            Some(root) => root.with(open),
            None => open(),
        };
        kept.set_value(Some(made));
        made
    }

    /// Puts a route on the bench that the user has asked for, and leads there: an experiment that runs
    /// is over.
    pub(crate) fn put(self, route: Route) {
        self.is_guided.set(false);
        self.route.set(route);
        self.place.set(Place::Bench);
    }

    /// Says that something is wrong.
    pub(crate) fn warn(self, text: String) {
        self.notice.set(Some(Notice {
            text,
            is_wrong: true,
            undo: None,
        }));
    }

    /// Goes to another place, and leaves behind a notice that only confirms something.
    pub(crate) fn go_to(self, place: Place) {
        let confirms = |notice: &Notice| !notice.is_wrong && notice.undo.is_none();
        if self
            .notice
            .with_untracked(|notice| notice.as_ref().is_some_and(confirms))
        {
            self.notice.set(None);
        }
        self.place.set(place);
    }

    /// Changes the route.
    pub(crate) fn change(self, change: impl FnOnce(&mut Route)) {
        self.route.update(change);
    }
}

/// The page's state, from the context.
pub(crate) fn bench() -> Bench {
    expect_context::<Bench>()
}
