//! A typed quantity: a text field between a minus and a plus, with what is wrong said below it.

use crate::state::bench;
use leptos::ev;
use leptos::prelude::*;
use recalesce::units::{read_with_decimal_comma, with_decimal_comma};
use recalesce_texts::page as texts;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Reads a value from text, or says what is wrong with it.
pub(crate) type Reader = Arc<dyn Fn(&str) -> Result<f64, String> + Send + Sync>;

/// How a quantity is read from text and shown.
#[derive(Clone)]
pub(crate) struct Quantity {
    /// Text of a value in the units shown.
    pub(crate) show: Arc<dyn Fn(f64) -> String + Send + Sync>,
    /// Value from text, or what is wrong with it; not a number for an empty field that may be.
    pub(crate) read: Reader,
    /// Smallest and largest value allowed.
    pub(crate) range: (f64, f64),
    /// One press of plus or minus.
    pub(crate) step: f64,
}

impl Quantity {
    /// The value of a text when it is in range, or one line on what is wrong.
    fn checked(&self, text: &str, has_comma: bool) -> Result<f64, String> {
        let value = if has_comma {
            read_with_decimal_comma(text, |text| (self.read)(text))?
        } else {
            (self.read)(text)?
        };
        let (least, most) = self.range;
        if value.is_nan() || (least..=most).contains(&value) {
            Ok(value)
        } else {
            Err(texts::general::between(
                &(self.show)(least),
                &(self.show)(most),
            ))
        }
    }

    /// The same for a value that may be unknown: an empty field.
    pub(crate) fn optional(self) -> Self {
        let (show, read) = (self.show, self.read);
        Self {
            show: Arc::new(move |value| {
                if value.is_nan() {
                    String::new()
                } else {
                    show(value)
                }
            }),
            read: Arc::new(move |text| {
                if text.trim().is_empty() {
                    Ok(f64::NAN)
                } else {
                    read(text)
                }
            }),
            ..self
        }
    }
}

/// A value moved by a number of steps, on the grid of steps and within the range; from nothing, to the least.
/// By itself, so that a handle needs nothing that reads what is typed.
pub(crate) fn stepped(value: f64, steps: f64, (least, most): (f64, f64), step: f64) -> f64 {
    if value.is_nan() {
        return least;
    }
    ((value / step + steps).round() * step).clamp(least, most)
}

/// Each field needs an id of its own to tie its label and its message to it.
static FIELDS: AtomicUsize = AtomicUsize::new(0);

/// A labelled field for one quantity. A wrong text stays in the field, with the reason below; the
/// last good value stays in force.
#[component]
pub(crate) fn Typed(
    /// What is typed.
    label: &'static str,
    /// How it is read and shown.
    #[prop(into)]
    quantity: Signal<Quantity>,
    /// The value now.
    #[prop(into)]
    value: Signal<f64>,
    /// Called with each good value.
    #[prop(into)]
    set: Callback<f64>,
    /// What is wrong with the good value beside others.
    #[prop(optional, into)]
    fault: Signal<Option<String>>,
) -> impl IntoView {
    let id = format!("typed-{}", FIELDS.fetch_add(1, Ordering::Relaxed));
    let wrong_id = format!("{id}-wrong");
    let wrong = RwSignal::new(None::<String>);
    let said = move || wrong.get().or_else(|| fault.get());
    let has_comma = bench().has_decimal_comma;
    let checked = move |text: String| {
        quantity
            .get_untracked()
            .checked(&text, has_comma.get_untracked())
    };
    let take = move |text: String| match checked(text) {
        Ok(good) => {
            wrong.set(None);
            set.run(good);
        }
        Err(reason) => wrong.set(Some(reason)),
    };
    let nudge = move |steps: f64| {
        wrong.set(None);
        let moved = quantity.with_untracked(|quantity| {
            stepped(value.get_untracked(), steps, quantity.range, quantity.step)
        });
        set.run(moved);
    };
    let keys = move |key: ev::KeyboardEvent| {
        let steps = match key.key().as_str() {
            "ArrowUp" => 1.0,
            "ArrowDown" => -1.0,
            "PageUp" => 10.0,
            "PageDown" => -10.0,
            _ => return,
        };
        key.prevent_default();
        nudge(steps);
    };
    let shown = move || {
        let text = (quantity.get().show)(value.get());
        if has_comma.get() {
            with_decimal_comma(&text)
        } else {
            text
        }
    };
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <div class="typed">
                <button type="button" aria-label=texts::general::less(label) on:click=move |_| nudge(-1.0)>
                    "\u{2212}"
                </button>
                <input
                    class="text"
                    type="text"
                    id=id
                    autocomplete="off"
                    prop:value=shown
                    aria-invalid=move || said().is_some().to_string()
                    aria-describedby=wrong_id.clone()
                    on:change:target=move |event| take(event.target().value())
                    on:keydown=keys
                />
                <button type="button" aria-label=texts::general::more(label) on:click=move |_| nudge(1.0)>
                    "+"
                </button>
            </div>
            <span class="wrong" id=wrong_id role="alert">
                {said}
            </span>
        </div>
    }
    .into_any()
}
