//! Errands: what the page has computed by a second thread, because it takes longer than a frame.

use super::browser::worker::{Heard, Worker};
use super::own::{self, Found};
use crate::heat::{CurveFitProgress, Figure, QuenchantFigures};
use crate::route::{QuenchTable, Route, quench_table};
use crate::units::TemperatureScale;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::rc::Rc;

/// Something to compute.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Errand {
    /// Which quench still does it, with temperatures of a refusal on a scale.
    QuenchTable(Box<Route>, TemperatureScale),
    /// The quenchant that has these figures in a bath, °C.
    Figures(QuenchantFigures, f64),
    /// The quenchant in which the probe cools as this text says, on a scale if that is told, in a
    /// bath, °C.
    Curve(String, Option<TemperatureScale>, f64),
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Brought {
    /// The table.
    QuenchTable(QuenchTable),
    /// How far a fit is; more comes.
    Progress(CurveFitProgress),
    /// A quenchant.
    Quenchant(Box<Found>),
    /// No quenchant, and why; the figure that is to blame if there is one.
    Refused { figure: Option<Figure>, why: String },
    /// Nothing, and why in a sentence.
    Nothing(String),
}

/// Does an errand, from text to texts that `tell` brings back: what the second thread is there for.
pub(super) fn answer(errand: &str, tell: &dyn Fn(&str)) {
    let say = |brought: &Brought| tell(&serde_json::to_string(brought).unwrap_or_default());
    say(&match serde_json::from_str(errand) {
        Ok(Errand::QuenchTable(route, scale)) => match quench_table(&route) {
            Ok(table) => Brought::QuenchTable(table),
            Err(error) => Brought::Nothing(error.words(scale)),
        },
        Ok(Errand::Figures(figures, bath_c)) => own::from_figures(&figures, bath_c),
        Ok(Errand::Curve(text, scale, bath_c)) => {
            own::from_curve(&text, scale, bath_c, |far| say(&Brought::Progress(far)))
        }
        Err(fault) => Brought::Nothing(fault.to_string()),
    });
}

/// Runs errands one after the other. While one is out, only the newest of those that come waits:
/// a drag asks faster than the thread answers. The thread ends, whatever it is at, when this is
/// dropped.
pub(crate) struct Runner {
    state: Rc<RefCell<State>>,
}

#[derive(Default)]
struct State {
    worker: Option<Worker>,
    is_free: bool,
    waiting: Option<String>,
}

impl State {
    fn send(&mut self) {
        if let (true, Some(worker)) = (self.is_free, &self.worker)
            && let Some(errand) = self.waiting.take()
        {
            worker.tell(&errand);
            self.is_free = false;
        }
    }
}

impl Runner {
    /// Starts a thread that brings everything to `take`.
    pub(crate) fn start(take: impl Fn(Brought) + 'static) -> Self {
        let state = Rc::new(RefCell::new(State::default()));
        let heard = {
            let state = Rc::downgrade(&state);
            move |heard| {
                let Some(state) = state.upgrade() else {
                    return;
                };
                let brought = match heard {
                    Heard::Ready => None,
                    Heard::Answer(text) => Some(
                        serde_json::from_str(&text)
                            .unwrap_or_else(|fault| Brought::Nothing(fault.to_string())),
                    ),
                };
                if !matches!(brought, Some(Brought::Progress(_))) {
                    let mut state = state.borrow_mut();
                    state.is_free = true;
                    state.send();
                }
                if let Some(brought) = brought {
                    take(brought);
                }
            }
        };
        state.borrow_mut().worker = Worker::hire(heard);
        Self { state }
    }

    /// Sends an errand, now or when the thread is free.
    pub(crate) fn send(&self, errand: &Errand) {
        let mut state = self.state.borrow_mut();
        state.waiting = serde_json::to_string(errand).ok();
        state.send();
    }
}

/// What a thread has brought last for what `errand` asks, kept up to date; none until then.
pub(crate) fn kept_up(errand: Memo<Errand>) -> ReadSignal<Option<Brought>> {
    let (brought, set_brought) = signal(None);
    let runner = StoredValue::new_local(Runner::start(move |now| {
        set_brought.try_set(Some(now));
    }));
    Effect::new(move || errand.with(|errand| runner.with_value(|runner| runner.send(errand))));
    brought
}
