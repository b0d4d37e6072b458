//! Errands: what the page has computed by a second thread, because it takes longer than a frame.

use super::browser::worker::{Heard, Worker};
use crate::phases::phase_map;
use crate::route::{Known, QuenchTable, Route, quench_table};
use crate::steel::Composition;
use crate::units::TemperatureScale;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::rc::Rc;

/// Something to compute.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Errand {
    /// The phase map of a steel.
    PhaseMap(Composition),
    /// Which quench still does it, with temperatures of a refusal on a scale.
    QuenchTable(Box<Route>, TemperatureScale),
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Brought {
    /// The numbers of a map, and of which steel.
    PhaseMap(Composition, Vec<f64>),
    /// No map of a steel, and why, on every scale.
    NoMap(Composition, [String; 2]),
    /// The table.
    QuenchTable(QuenchTable),
    /// Nothing, and why in a sentence.
    Nothing(String),
}

const SCALES: [TemperatureScale; 2] = [TemperatureScale::Celsius, TemperatureScale::Fahrenheit];

/// Place of a scale among the words of a refusal.
pub(crate) fn place_of(scale: TemperatureScale) -> usize {
    usize::from(scale != TemperatureScale::Celsius)
}

/// Kinds of errand, the most wanted first.
const KINDS: usize = 2;

impl Errand {
    const fn kind(&self) -> usize {
        match self {
            Self::PhaseMap(_) => 0,
            Self::QuenchTable(..) => 1,
        }
    }

    fn done(self) -> Brought {
        match self {
            Self::PhaseMap(steel) => match Known::from(phase_map(&steel)) {
                Known::Given(map) => Brought::PhaseMap(steel, map.to_numbers()),
                Known::Refused { refused } => {
                    Brought::NoMap(steel, SCALES.map(|scale| refused.words(scale)))
                }
            },
            Self::QuenchTable(route, scale) => match quench_table(&route) {
                Ok(table) => Brought::QuenchTable(table),
                Err(error) => Brought::Nothing(error.words(scale)),
            },
        }
    }
}

/// Does an errand, from text to text: what the second thread is there for.
pub(super) fn answer(errand: &str) -> String {
    let brought = match serde_json::from_str::<Errand>(errand) {
        Ok(errand) => errand.done(),
        Err(fault) => Brought::Nothing(fault.to_string()),
    };
    serde_json::to_string(&brought).unwrap_or_default()
}

/// Runs errands one after the other. While one is out, only the newest of each kind waits: a drag
/// asks faster than the thread answers.
#[derive(Clone)]
pub(crate) struct Runner {
    state: Rc<RefCell<State>>,
}

type Take = Rc<dyn Fn(Brought)>;

#[derive(Default)]
struct State {
    worker: Option<Worker>,
    is_ready: bool,
    /// The kind that is out.
    out: Option<usize>,
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
            self.out = Some(errand.kind());
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
        let heard = {
            let state = Rc::downgrade(&runner.state);
            move |heard| {
                if let Some(state) = state.upgrade() {
                    Self { state }.hear(heard);
                }
            }
        };
        runner.state.borrow_mut().worker = Worker::hire(heard);
        runner
    }

    fn hear(&self, heard: Heard) {
        let brought = {
            let mut state = self.state.borrow_mut();
            match heard {
                Heard::Ready => {
                    state.is_ready = true;
                    None
                }
                Heard::Ended => {
                    state.worker = None;
                    None
                }
                Heard::Answer(text) => {
                    let take = state.out.take().and_then(|kind| state.takers[kind].clone());
                    take.map(|take| (take, text))
                }
            }
        };
        self.state.borrow_mut().send();
        self.do_here();
        if let Some((take, text)) = brought {
            let brought = serde_json::from_str(&text);
            take(brought.unwrap_or_else(|fault| Brought::Nothing(fault.to_string())));
        }
    }

    /// Sends an errand, now or when the thread is free; without a thread it is done here.
    fn send(&self, errand: Errand) {
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
            if let (Some(errand), Some(take)) = (errand, take) {
                take(errand.done());
            }
        }
    }

    /// Who takes what is brought of the kind of an errand.
    fn set_taker(&self, kind: usize, take: impl Fn(Brought) + 'static) {
        self.state.borrow_mut().takers[kind] = Some(Rc::new(take));
    }
}

/// What the thread has brought last for what `errand` asks, kept up to date; none until then.
/// All errands of one memo are of one kind, and no two memos of the same.
pub(crate) fn kept_up(
    runner: StoredValue<Runner, LocalStorage>,
    errand: Memo<Errand>,
) -> ReadSignal<Option<Brought>> {
    let (brought, set_brought) = signal(None);
    let kind = errand.with_untracked(Errand::kind);
    runner.with_value(|runner| {
        runner.set_taker(kind, move |now| {
            set_brought.try_set(Some(now));
        });
    });
    Effect::new(move || {
        let errand = errand.get();
        runner.with_value(|runner| runner.send(errand));
    });
    brought
}
