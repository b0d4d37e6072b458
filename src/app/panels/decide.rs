//! The place where it is decided: what the shop owns, which routes serve the piece on the bench, how
//! sure the route there is and what matters most about it.

use super::acting::{kept_shop, teach};
use super::decide_acting::take_over;
use super::decide_compare::{Compared, Comparing, Picked};
use super::decide_find::Finding;
use super::decide_learn::Learning;
use super::decide_shop::ShopFields;
use super::decide_sure::HowSure;
use super::decide_sweep::{Sweeping, Swept, Through};
use crate::browser::storage;
use crate::decide::{Question, Sure, Taught, Told};
use crate::errand::{Errand, Runner, read};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::{Correction, Found, Limits, Purpose, Shop, Sought, Tolerances};
use recalesce::route::Route;
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use std::sync::Arc;

/// How a piece of work stands.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Work {
    Still,
    /// Part that is done.
    Out(f64),
    Stopped,
    Done,
    Refused(String),
}

/// Work that a thread of its own does.
#[derive(Clone, Copy)]
pub(crate) struct Task {
    /// How it stands.
    pub(super) work: RwSignal<Work>,
    /// What was asked last.
    asked: RwSignal<(String, TemperatureScale)>,
    /// Counts what was asked and stopped: without a thread an answer may come after that.
    turn: StoredValue<u32>,
    bench: Bench,
    runner: StoredValue<Option<Runner>, LocalStorage>,
}

impl Task {
    fn new(bench: Bench) -> Self {
        Self {
            work: RwSignal::new(Work::Still),
            asked: RwSignal::default(),
            turn: StoredValue::new(0),
            bench,
            runner: StoredValue::new_local(None),
        }
    }

    pub(super) fn is_out(self) -> bool {
        self.work.with(|work| matches!(work, Work::Out(_)))
    }

    /// Asks; `take` hears what is found on the way and in the end, and says whether that is all.
    pub(super) fn ask(self, question: &Question, take: impl Fn(Told) -> bool + 'static) {
        let Ok(text) = serde_json::to_string(question) else {
            return;
        };
        self.work.set(Work::Out(0.0));
        let scale = self.bench.scale.get_untracked();
        self.asked.set((text.clone(), scale));
        let turn = self.next_turn();
        let hear = move |told: Result<Told, String>| {
            if self.turn.try_get_value() != Some(turn) {
                return;
            }
            let work = match told {
                Ok(Told::Progress(done)) => Work::Out(done),
                Ok(Told::Refused(why)) | Err(why) => Work::Refused(why),
                Ok(told) => {
                    let done = match &told {
                        Told::Found(done, _) => *done,
                        _ => self.done(),
                    };
                    if take(told) {
                        Work::Done
                    } else {
                        Work::Out(done)
                    }
                }
            };
            self.work.try_set(work);
        };
        let runner = Runner::of_its_own(move |brought| hear(read(brought)));
        runner.send(Errand::Decide(text, scale));
        self.runner.set_value(Some(runner));
    }

    /// Whether something else would be asked now than what was asked last.
    pub(super) fn is_stale(self, now: &Question) -> bool {
        self.asked.with(|(asked, scale)| {
            let is_other = || serde_json::to_string(now).is_ok_and(|now| now != *asked);
            !asked.is_empty() && (*scale != self.bench.scale.get() || is_other())
        })
    }

    /// Part that is done.
    fn done(self) -> f64 {
        self.work.with_untracked(|work| match work {
            Work::Out(done) => *done,
            _ => 0.0,
        })
    }

    /// Leaves what was asked before behind.
    fn next_turn(self) -> u32 {
        self.turn.update_value(|turn| *turn = turn.wrapping_add(1));
        self.turn.get_value()
    }

    /// Ends the thread: it is in the middle of a step.
    pub(super) fn stop(self) {
        self.next_turn();
        self.runner.set_value(None);
        self.work.set(Work::Stopped);
    }
}

/// What the place holds; it stays while another place is looked at.
#[derive(Clone, Copy)]
pub(crate) struct Deciding {
    pub(super) bench: Bench,
    /// What the shop owns.
    pub(super) shop: RwSignal<Shop>,
    /// What is looked for, but for its target, which is that of the route on the bench.
    pub(super) purpose: RwSignal<Purpose>,
    pub(super) limits: RwSignal<Limits>,
    /// The search.
    pub(super) finding: Task,
    pub(super) found: RwSignal<Option<Arc<(Sought, Found)>>>,
    /// What it counted with.
    pub(super) found_with: RwSignal<Correction>,
    /// How sure the route is, with the route it was asked of.
    pub(super) weighing: Task,
    pub(super) sure: RwSignal<Option<Arc<Sure>>>,
    pub(super) weighed: RwSignal<Option<Route>>,
    pub(super) weighed_with: RwSignal<Correction>,
    /// What the logbook teaches.
    pub(super) learning: Task,
    pub(super) taught: RwSignal<Option<Arc<Taught>>>,
    /// Routes side by side.
    pub(super) comparing: Task,
    pub(super) compared: RwSignal<Option<Arc<Compared>>>,
    pub(super) picked: Picked,
    /// One input through a range.
    pub(super) sweeping: Task,
    pub(super) swept: RwSignal<Option<Arc<Swept>>>,
    pub(super) through: Through,
}

impl Deciding {
    /// With the shop that the browser has kept, or the made-up one.
    fn open(bench: Bench) -> Self {
        let (shop, learnt) = match kept_shop(bench) {
            Some(Ok(kept)) => (kept.shop, kept.learnt),
            Some(Err(reason)) => {
                let text = storage::read(storage::SHOP);
                let text = text.as_deref().unwrap_or_default();
                let is_aside = storage::set_aside_or_hold(storage::SHOP, text);
                let what = texts::decide::YOUR_SHOP;
                bench.warn(texts::general::unread(what, &reason.to_string(), is_aside));
                (Shop::example(), None)
            }
            None => (Shop::example(), None),
        };
        if let Some(learnt) = learnt {
            teach(bench, learnt);
        }
        let shop = RwSignal::new(shop);
        let elsewhere = window_event_listener_untyped("storage", move |_| take_over(bench, shop));
        on_cleanup(move || elsewhere.remove());
        Self {
            bench,
            shop,
            purpose: RwSignal::new(Purpose::Edge),
            limits: RwSignal::default(),
            finding: Task::new(bench),
            found: RwSignal::new(None),
            found_with: RwSignal::default(),
            weighing: Task::new(bench),
            sure: RwSignal::new(None),
            weighed: RwSignal::new(None),
            weighed_with: RwSignal::default(),
            learning: Task::new(bench),
            taught: RwSignal::new(None),
            comparing: Task::new(bench),
            compared: RwSignal::new(None),
            picked: Picked::default(),
            sweeping: Task::new(bench),
            swept: RwSignal::new(None),
            through: Through::about(bench),
        }
    }

    /// What is open about a route in this shop: its oven counts for the last temper.
    pub(super) fn tolerances(self, route: &Route) -> Tolerances {
        self.shop.with(|shop| shop.tolerances(route))
    }

    /// Changes the shop and keeps it.
    pub(super) fn change_shop(self, change: impl FnOnce(&mut Shop)) {
        self.shop.update(change);
        self.keep_shop();
    }
}

/// A button that starts and stops work, and how that goes.
#[component]
pub(super) fn Working(
    /// The work.
    task: Task,
    /// Words on the button that starts it.
    words: &'static str,
    /// Starts it.
    #[prop(into)]
    start: Callback<()>,
    /// Whether what is shown answers another question than the one that stands now.
    #[prop(optional, into)]
    is_stale: Signal<bool>,
) -> impl IntoView {
    let press = move |_| {
        if untrack(|| task.is_out()) {
            task.stop();
        } else {
            start.run(());
        }
    };
    let rule = move || {
        task.work.with(|work| match work {
            Work::Out(done) => Some(view! { <progress aria-label=words value=*done></progress> }),
            _ => None,
        })
    };
    let said = move || {
        task.work.with(|work| match work {
            Work::Still | Work::Refused(_) => "",
            Work::Out(_) => texts::general::WORKING_IT_OUT,
            Work::Stopped => texts::own::STOPPED,
            Work::Done => texts::decide::DONE,
        })
    };
    let wrong = move || {
        task.work.with(|work| match work {
            Work::Refused(why) => Some(why.clone()),
            _ => None,
        })
    };
    view! {
        <div class="actions">
            <button type="button" class="press" class:go=move || !task.is_out() on:click=press>
                {move || if task.is_out() { texts::own::CANCEL } else { words }}
            </button>
            <span role="status">{said}</span>
            {rule}
        </div>
        <Show when=move || is_stale.get() && !task.is_out()>
            <p class="hint">{texts::decide::OF_BEFORE}</p>
        </Show>
        <p class="wrong" role="alert">
            {wrong}
        </p>
    }
    .into_any()
}

/// The place.
#[component]
pub(crate) fn DecidePlace() -> impl IntoView {
    let bench = bench();
    let deciding = bench.deciding(|| Deciding::open(bench));
    view! {
        <main class="leaf decide">
            <h2>{texts::decide::DECIDE}</h2>
            <p>
                {texts::decide::FOR_THE_PIECE}
                <span translate="no">{move || bench.route.with(Route::name)}</span>
                {texts::decide::WHAT_COUNTS}
            </p>
            <ShopFields deciding=deciding />
            <Finding deciding=deciding />
            <HowSure deciding=deciding />
            <Comparing deciding=deciding />
            <Sweeping deciding=deciding />
            <Learning deciding=deciding />
        </main>
    }
    .into_any()
}
