//! Errands: what the page has computed by a second thread, because it takes longer than a frame.

use super::browser::clock::now_ms;
use super::browser::worker::{self, Heard, Worker};
use super::decide::{Question, Told};
use super::own::{self, Fitted};
use super::parts::errands::errands;
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::advise::{Correction, Coupon};
use recalesce::heat::QuenchantFigures;
use recalesce::phases::phase_map;
use recalesce::route::{Known, Route, quench_table_as_taught};
use recalesce::steel::Composition;
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::DedicatedWorkerGlobalScope;

/// Something to compute.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Errand {
    /// The phase map of a steel.
    PhaseMap(Composition),
    /// Which quench still does it, with temperatures of a refusal on a scale: a [`TableOf`], written as a
    /// text by who asks.
    QuenchTable(String, TemperatureScale),
    /// The quenchant that has these figures in a bath, °C.
    Figures(QuenchantFigures, f64),
    /// The quenchant in which the probe cools as this text says, on a scale if that is told, in a
    /// bath, °C.
    Curve(String, Option<TemperatureScale>, f64),
    /// The quenchant in which a coupon came out as hard as it is.
    Coupon(Box<Coupon>),
    /// A [`Question`], written as a text by who asks.
    Decide(String, TemperatureScale),
}

/// A route whose quench is asked for in every quenchant, and what to count with of what a logbook has
/// taught.
pub(crate) type TableOf = (Route, Correction);

/// What comes of an errand, as the text that it is sent as, or why nothing does. It is read only where
/// it is shown, so that what is not opened need not hold how.
pub(crate) type Brought<'a> = Result<&'a str, &'a str>;

/// A map: of which steel, and its numbers or why there are none, on every scale.
pub(crate) type MapOf = (Composition, Result<Vec<f64>, OnScales>);

/// Words on every scale: which is shown is known only to the page, and may change.
pub(crate) type OnScales = [String; 2];

/// Words as they are on every scale.
pub(crate) fn on_scales(words: impl Fn(TemperatureScale) -> String) -> OnScales {
    [TemperatureScale::Celsius, TemperatureScale::Fahrenheit].map(words)
}

/// Place of a scale among such words.
pub(crate) fn place_of(scale: TemperatureScale) -> usize {
    usize::from(scale != TemperatureScale::Celsius)
}

/// Kinds of errand, the most wanted first.
const KINDS: usize = 3;
/// The kind of what has a thread of its own.
const OWN_THREAD: usize = 2;

/// A thread that ends so soon, ms, while nothing is asked, ends as it comes; one that ends later may have
/// been put away by a phone that is put away.
const SOON_MS: f64 = 30_000.0;
/// After so many that did, one after the other, no other is started.
const MOST_ENDED_IDLE: u32 = 4;

impl Errand {
    const fn kind(&self) -> usize {
        match self {
            Self::PhaseMap(_) => 0,
            Self::QuenchTable(..) => 1,
            Self::Figures(..) | Self::Curve(..) | Self::Coupon(_) | Self::Decide(..) => OWN_THREAD,
        }
    }

    /// Does it; `tell` hears how far it is and then what came of it.
    fn done(self, tell: &dyn Fn(&str)) {
        match self {
            Self::PhaseMap(steel) => {
                let map: MapOf = match Known::from(phase_map(&steel)) {
                    Known::Given(map) => (steel, Ok(map.to_numbers())),
                    Known::Refused { refused } => {
                        (steel, Err(on_scales(|scale| refused.words(scale))))
                    }
                };
                say(&map, tell);
            }
            Self::QuenchTable(of, scale) => {
                let table = read::<TableOf>(Ok(&of)).and_then(|(route, learnt)| {
                    quench_table_as_taught(&route, &|route| learnt.taught(route))
                        .map_err(|error| error.words(scale))
                });
                say(&table, tell);
            }
            Self::Figures(figures, bath_c) => say(&own::from_figures(&figures, bath_c), tell),
            Self::Curve(text, scale, bath_c) => {
                let far = |far| say(&Fitted::Progress(far), tell);
                say(&own::from_curve(&text, scale, bath_c, far), tell);
            }
            Self::Coupon(coupon) => say(&own::from_coupon(&coupon), tell),
            Self::Decide(question, scale) => match read::<Question>(Ok(&question)) {
                Ok(question) => question.answer(scale, &|told| say(told, tell)),
                Err(why) => say(&Told::Refused(why), tell),
            },
        }
    }
}

fn say(brought: &impl Serialize, tell: &dyn Fn(&str)) {
    if let Ok(text) = serde_json::to_string(brought) {
        tell(&text);
    }
}

/// Reads what was brought: as saved files are read, by way of a [`Value`], since another way would
/// have its own code for each type that is sent.
pub(crate) fn read<T: DeserializeOwned>(brought: Brought<'_>) -> Result<T, String> {
    let value = serde_json::from_str::<Value>(brought?);
    value
        .and_then(serde_json::from_value)
        .map_err(|fault| fault.to_string())
}

/// Serves as the second thread, once what it does is loaded. The page's own tasks are not set up there.
pub(super) fn serve(thread: DedicatedWorkerGlobalScope) {
    wasm_bindgen_futures::spawn_local(async move {
        match errands().await {
            Ok(part) => worker::serve(thread, part.answer),
            Err(_) => worker::give_up(&thread),
        }
    });
}

/// Does an errand, from text to texts that `tell` brings back: what the second thread is there for.
pub(super) fn answer(errand: &str, tell: &dyn Fn(&str)) {
    if let Ok(errand) = read::<Errand>(Ok(errand)) {
        errand.done(tell);
    }
}

/// Runs errands one after the other. While one is out, only the newest of each kind waits: a drag
/// asks faster than the thread answers. The thread ends, whatever it is at, when the last of its
/// runners is dropped.
#[derive(Clone)]
pub(crate) struct Runner {
    state: Rc<RefCell<State>>,
}

type Take = Rc<dyn Fn(Brought<'_>)>;

#[derive(Default)]
struct State {
    worker: Option<Worker>,
    is_ready: bool,
    /// When it was, ms.
    ready_ms: f64,
    /// What is out.
    out: Option<Errand>,
    /// Threads that have ended over what is out, or over what was out before them.
    lost: u32,
    /// Threads that have ended soon while nothing was out, since the last answer.
    ended_idle: u32,
    /// Hears that no other thread is started.
    alone: Option<Rc<dyn Fn()>>,
    waiting: [Option<Errand>; KINDS],
    takers: [Option<Take>; KINDS],
}

impl State {
    /// Sends the most wanted errand, if the thread is free.
    fn send(&mut self) {
        let Some(worker) = self
            .worker
            .as_ref()
            .filter(|_| self.is_ready && self.out.is_none())
        else {
            return;
        };
        let Some(errand) = self.waiting.iter_mut().find_map(Option::take) else {
            return;
        };
        if let Ok(text) = serde_json::to_string(&errand) {
            self.out = Some(errand);
            worker.tell(&text);
        }
    }
}

impl Runner {
    /// Starts a thread.
    pub(crate) fn start() -> Self {
        let runner = Self {
            state: Rc::new(RefCell::new(State::default())),
        };
        runner.hire();
        runner
    }

    fn hire(&self) {
        let state = Rc::downgrade(&self.state);
        let worker = Worker::hire(move |heard| {
            if let Some(state) = state.upgrade() {
                Self { state }.hear(heard);
            }
        });
        self.state.borrow_mut().worker = worker;
    }

    /// Starts a thread for one kind of work, which brings everything to `take`.
    pub(crate) fn of_its_own(take: impl Fn(Brought<'_>) + 'static) -> Self {
        let runner = Self::start();
        runner.set_taker(OWN_THREAD, take);
        runner
    }

    fn hear(&self, heard: Heard) {
        let mut is_to_hire = false;
        let mut alone = None;
        let brought = {
            let mut state = self.state.borrow_mut();
            let of_out = |state: &State| {
                let kind = state.out.as_ref().map(Errand::kind);
                kind.and_then(|kind| state.takers[kind].clone())
            };
            match heard {
                Heard::Ready => {
                    state.is_ready = true;
                    state.ready_ms = now_ms();
                    None
                }
                Heard::Ended => {
                    state.worker = None;
                    // Where none can be started, what was out is done here; where one did its work until
                    // now, by another, unless something newer waits. What has ended two is given up.
                    is_to_hire = std::mem::take(&mut state.is_ready);
                    if state.out.is_some() {
                        state.lost += 1;
                    } else {
                        state.lost = 0;
                        let was_soon = now_ms() - state.ready_ms < SOON_MS;
                        state.ended_idle = if was_soon { state.ended_idle + 1 } else { 1 };
                        // A browser that ends each as it comes would be asked for threads for ever.
                        if is_to_hire && state.ended_idle >= MOST_ENDED_IDLE {
                            is_to_hire = false;
                            alone = state.alone.clone();
                        }
                    }
                    if is_to_hire && state.lost > 1 {
                        let take = of_out(&state);
                        state.out = None;
                        take.map(|take| (take, Err(texts::general::BROKEN_OFF)))
                    } else {
                        if let Some(errand) = state.out.take() {
                            state.waiting[errand.kind()].get_or_insert(errand);
                        }
                        None
                    }
                }
                Heard::Answer(text) => of_out(&state).map(|take| (take, Ok(text))),
                Heard::Done => {
                    state.out = None;
                    state.lost = 0;
                    state.ended_idle = 0;
                    None
                }
            }
        };
        if is_to_hire {
            self.hire();
        }
        if let Some(tell) = alone {
            tell();
        }
        self.state.borrow_mut().send();
        self.do_here();
        if let Some((take, brought)) = brought {
            take(brought.as_deref().map_err(|why| *why));
        }
    }

    /// Sends an errand, now or when the thread is free; without a thread it is done here.
    pub(crate) fn send(&self, errand: Errand) {
        {
            let mut state = self.state.borrow_mut();
            let kind = errand.kind();
            state.waiting[kind] = Some(errand);
            state.send();
        }
        self.do_here();
    }

    /// Does what waits for a thread that there is not.
    fn do_here(&self) {
        let (waiting, takers) = {
            let mut state = self.state.borrow_mut();
            if state.worker.is_some() {
                return;
            }
            (std::mem::take(&mut state.waiting), state.takers.clone())
        };
        for (errand, take) in waiting.into_iter().zip(takers) {
            if let (Some(errand), Some(take)) = (errand, take)
                && let Ok(errand) = serde_json::to_string(&errand)
            {
                spawn_local(async move {
                    match errands().await {
                        Ok(part) => (part.answer)(&errand, &|text| take(Ok(text))),
                        Err(_) => take(Err(texts::general::PART_NOT_LOADED)),
                    }
                });
            }
        }
    }

    /// Whether what is brought now is of an errand; without a thread it always is of the newest.
    fn is_of(&self, errand: &Errand) -> bool {
        let state = self.state.borrow();
        state.worker.is_none() || state.out.as_ref() == Some(errand)
    }

    /// Who hears that threads end as they come, so that all is done here from then on.
    pub(crate) fn set_alone(&self, tell: impl Fn() + 'static) {
        self.state.borrow_mut().alone = Some(Rc::new(tell));
    }

    /// Who takes what is brought of the kind of an errand.
    fn set_taker(&self, kind: usize, take: impl Fn(Brought<'_>) + 'static) {
        self.state.borrow_mut().takers[kind] = Some(Rc::new(take));
    }
}

/// What the thread has brought last for what `errand` asks, kept up to date, none until then; and whether
/// that is still of an errand before. All errands of one memo are of one kind, and no two memos of the same.
pub(crate) fn kept_up<T: DeserializeOwned + Send + Sync + 'static>(
    runner: StoredValue<Runner, LocalStorage>,
    errand: Memo<Errand>,
) -> (ReadSignal<Option<Result<T, String>>>, ReadSignal<bool>) {
    let (brought, set_brought) = signal(None);
    let (is_of_before, set_of_before) = signal(true);
    let kind = errand.with_untracked(Errand::kind);
    runner.with_value(|held| {
        held.set_taker(kind, move |now| {
            set_brought.try_set(Some(read(now)));
            let is_newest = runner
                .try_with_value(|runner| errand.try_with_untracked(|errand| runner.is_of(errand)));
            set_of_before.try_set(is_newest.flatten() != Some(true));
        });
    });
    Effect::new(move || {
        let errand = errand.get();
        set_of_before.set(true);
        runner.with_value(|runner| runner.send(errand));
    });
    (brought, is_of_before)
}
