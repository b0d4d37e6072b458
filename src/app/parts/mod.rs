//! Parts of the program that are loaded when they are first opened. Each is a table of functions, and
//! lies with all that only these functions need in a WebAssembly file of its own.

pub(crate) mod decide;
pub(crate) mod errands;
pub(crate) mod lessons;
pub(crate) mod panels;
pub(crate) mod places;

use super::browser::style;
use super::controls::live;
use super::state::{Bench, Notice};
use decide::Deciding;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::Teaching;
use panels::Panels;
use places::Places;
use recalesce_texts::page as texts;
use std::pin::Pin;
use std::time::Duration;
use wasm_bindgen::JsCast;
use wasm_split_helpers::SplitLoaderError;
use web_sys::{Element, HtmlElement, MouseEvent};

/// When it is taken to be idle where the browser does not tell.
const WITHOUT_IDLE: Duration = Duration::from_millis(500);

/// Loads a part; a load that has failed can be tried again.
type Load<T> = fn() -> Pin<Box<dyn Future<Output = Result<T, SplitLoaderError>>>>;

/// How far a part is.
#[derive(Clone, Copy)]
enum Arrival<T> {
    Unasked,
    Coming,
    There(T),
    Failed,
}

/// Handle to a part, by its table of functions.
pub(crate) struct Part<T: 'static> {
    arrival: RwSignal<Arrival<T>>,
    /// Whether something that was pressed waits for it.
    is_awaited: RwSignal<bool>,
    load: Load<T>,
}

impl<T> Clone for Part<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Part<T> {}

impl<T: Copy + Send + Sync + 'static> Part<T> {
    fn new(load: Load<T>) -> Self {
        Self {
            arrival: RwSignal::new(Arrival::Unasked),
            is_awaited: RwSignal::new(false),
            load,
        }
    }

    /// Whether it is there.
    pub(crate) fn is_there(self) -> bool {
        self.arrival
            .with(|arrival| matches!(arrival, Arrival::There(_)))
    }

    /// The part, if it is there.
    pub(crate) fn now(self) -> Option<T> {
        match self.arrival.get_untracked() {
            Arrival::There(part) => Some(part),
            _ => None,
        }
    }

    async fn fetch(self) -> Option<T> {
        // Both are on their way at once; nothing is shown without its style.
        let style = style::later();
        let found = (self.load)().await.ok();
        let is_styled = match style {
            Ok(style) => style.await.is_ok(),
            Err(_) => false,
        };
        let found = found.filter(|_| is_styled);
        let arrival = found.map_or(Arrival::Failed, Arrival::There);
        self.arrival.try_set(arrival);
        found
    }

    /// Loads it, unless it is there or on its way.
    pub(crate) fn ask(self) {
        if let Arrival::Unasked | Arrival::Failed = self.arrival.get_untracked() {
            self.arrival.set(Arrival::Coming);
            spawn_local(async move {
                self.fetch().await;
            });
        }
    }

    /// Does something with it, at once when it is there; while that waits, further presses count for
    /// nothing. Where it cannot be loaded a line says so, and what was pressed can be pressed again.
    pub(crate) fn then(self, bench: Bench, act: impl FnOnce(T) + 'static) {
        if let Some(part) = self.now() {
            return act(part);
        }
        if self.is_awaited.get_untracked() {
            return;
        }
        self.is_awaited.set(true);
        spawn_local(async move {
            let found = self.fetch().await;
            self.is_awaited.set(false);
            match found {
                Some(part) => act(part),
                None => bench.notice.set(Some(Notice {
                    text: texts::general::PART_NOT_LOADED_TRY_AGAIN.to_owned(),
                    is_wrong: true,
                    undo: None,
                })),
            }
        });
    }

    /// What a part shows; a quiet line until it is there.
    pub(crate) fn view(self, inside: impl Fn(T) -> AnyView + Send + 'static) -> AnyView {
        self.ask();
        // Where loading was tried again: the focus is there.
        let spot = StoredValue::new_local(None::<Spot>);
        let again = move |press: MouseEvent| {
            spot.set_value(Spot::of(&press));
            self.ask();
        };
        live(move || match self.arrival.get() {
            Arrival::There(part) => {
                if let Some(spot) = spot.try_update_value(Option::take).flatten() {
                    request_animation_frame(move || spot.focus());
                }
                untrack(|| inside(part))
            }
            Arrival::Failed => view! {
                <p class="hint coming" role="alert">
                    {texts::general::PART_NOT_LOADED}
                    " "
                    <button type="button" class="press" on:click=again>
                        {texts::general::TRY_AGAIN}
                    </button>
                </p>
            }
            .into_any(),
            Arrival::Unasked | Arrival::Coming => {
                view! { <p class="hint coming" role="status">{texts::general::LOADING}</p> }
                    .into_any()
            }
        })
    }
}

/// Where a line stands that is replaced by its part.
struct Spot {
    parent: Element,
    before: Option<Element>,
}

impl Spot {
    /// That of the line whose button was pressed.
    fn of(press: &MouseEvent) -> Option<Self> {
        let button: Element = press.target()?.dyn_into().ok()?;
        let line = button.parent_element()?;
        Some(Self {
            parent: line.parent_element()?,
            before: line.previous_element_sibling(),
        })
    }

    /// Puts the focus on the first control of what stands there now.
    fn focus(&self) {
        let mut here = match &self.before {
            Some(before) => before.next_element_sibling(),
            None => self.parent.first_element_child(),
        };
        while let Some(element) = here {
            let first = element.query_selector("input, summary, button, textarea");
            if let Some(first) = first.ok().flatten() {
                if let Ok(first) = first.dyn_into::<HtmlElement>() {
                    // One that cannot take the focus leaves it where it was.
                    let _ = first.focus();
                }
                return;
            }
            here = element.next_element_sibling();
        }
    }
}

/// Handles to the parts of the page.
#[derive(Clone, Copy)]
pub(crate) struct Parts {
    /// What opens on the bench.
    pub(crate) panels: Part<Panels>,
    /// The places beside the bench.
    pub(crate) places: Part<Places>,
    /// The place where it is decided.
    pub(crate) deciding: Part<Deciding>,
    /// Experiments.
    pub(crate) teaching: Part<Teaching>,
}

impl Parts {
    /// None of them asked for yet.
    pub(crate) fn new() -> Self {
        Self {
            panels: Part::new(|| Box::pin(panels::panels())),
            places: Part::new(|| Box::pin(places::places())),
            deciding: Part::new(|| Box::pin(decide::deciding())),
            teaching: Part::new(|| Box::pin(lessons::teaching())),
        }
    }

    /// Loads them once the page has nothing else to do, so that they open at once.
    pub(crate) fn bring_when_idle(self) {
        let bring = move || {
            self.panels.ask();
            self.places.ask();
            self.deciding.ask();
            self.teaching.ask();
        };
        if request_idle_callback_with_handle(bring).is_err() {
            set_timeout(bring, WITHOUT_IDLE);
        }
    }
}
