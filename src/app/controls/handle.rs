//! A handle over a chart: a focusable slider that is dragged by mouse, pen or finger and moved by
//! keys. Where it stands and what a place means are the chart's business.

use leptos::ev;
use leptos::html::Button;
use leptos::prelude::*;
use recalesce::chart::Moves;

/// Steps that a key with Shift, or a page key, moves at once.
const COARSE_STEPS: f64 = 10.0;

/// What the page does with a handle.
#[derive(Clone, Copy)]
pub(crate) struct Grip {
    /// The value that a place in the plot stands for, in CSS pixels from its corner.
    pub(crate) value_at: Callback<(f64, f64), f64>,
    /// Takes a new value.
    pub(crate) set: Callback<f64>,
    /// The value moved by a number of steps.
    pub(crate) stepped: Callback<(f64, f64), f64>,
    /// Smallest and largest value.
    pub(crate) range: Signal<(f64, f64)>,
    /// Whether the value grows to the right; on a time axis a faster quench lies to the left.
    pub(crate) grows_rightward: bool,
}

/// Drag in progress: the pointer, where it took hold, and the value to go back to on Escape.
#[derive(Debug, Clone, Copy)]
struct Drag {
    pointer: i32,
    grab: (f64, f64),
    before: f64,
}

/// A handle.
#[component]
pub(crate) fn Handle(
    /// Short key, for tests and styles.
    key: &'static str,
    /// What it moves, for screen readers.
    name: &'static str,
    /// Where it stands, CSS pixels from the plot's corner; not drawn when the chart has no place.
    #[prop(into)]
    at: Signal<Option<(f64, f64)>>,
    /// The value now.
    #[prop(into)]
    value: Signal<f64>,
    /// The value in words, with unit.
    #[prop(into)]
    text: Signal<String>,
    /// What the page does with it.
    grip: Grip,
    /// The way it moves: drawn as two chevrons beside it.
    moves: Moves,
    /// Colour of its core: what the steel looks like there.
    #[prop(into)]
    core: Signal<String>,
) -> impl IntoView {
    let button = NodeRef::<Button>::new();
    let drag = RwSignal::new(None::<Drag>);

    let down = move |press: ev::PointerEvent| {
        if !press.is_primary() || press.button() != 0 {
            return;
        }
        let Some((x, y)) = at.get_untracked() else {
            return;
        };
        press.prevent_default();
        if let Some(element) = button.get_untracked() {
            // Without capture a quick drag still ends on `pointerup` inside the page.
            let _ = element.set_pointer_capture(press.pointer_id());
            let _ = element.focus();
        }
        drag.set(Some(Drag {
            pointer: press.pointer_id(),
            grab: (
                f64::from(press.client_x()) - x,
                f64::from(press.client_y()) - y,
            ),
            before: value.get_untracked(),
        }));
    };
    let moved = move |press: ev::PointerEvent| {
        let Some(held) = drag.get_untracked() else {
            return;
        };
        if held.pointer == press.pointer_id() {
            let place = (
                f64::from(press.client_x()) - held.grab.0,
                f64::from(press.client_y()) - held.grab.1,
            );
            grip.set.run(grip.value_at.run(place));
        }
    };
    let ended = move |_| drag.set(None);
    let keys = move |key: ev::KeyboardEvent| {
        let now = value.get_untracked();
        let (least, most) = grip.range.get_untracked();
        let many = if key.shift_key() { COARSE_STEPS } else { 1.0 };
        let rightward = if grip.grows_rightward { many } else { -many };
        let next = match key.key().as_str() {
            "ArrowUp" => grip.stepped.run((now, many)),
            "ArrowDown" => grip.stepped.run((now, -many)),
            "ArrowRight" => grip.stepped.run((now, rightward)),
            "ArrowLeft" => grip.stepped.run((now, -rightward)),
            "PageUp" => grip.stepped.run((now, COARSE_STEPS)),
            "PageDown" => grip.stepped.run((now, -COARSE_STEPS)),
            "Home" => least,
            "End" => most,
            "Escape" => match drag.get_untracked() {
                Some(held) => {
                    drag.set(None);
                    held.before
                }
                None => return,
            },
            _ => return,
        };
        key.prevent_default();
        grip.set.run(next);
    };
    let path = match moves {
        Moves::Upright => "M18.5 7.5 22 4l3.5 3.5M18.5 36.5 22 40l3.5-3.5",
        Moves::Across => "M7.5 18.5 4 22l3.5 3.5M36.5 18.5 40 22l-3.5 3.5",
    };
    let pixels = |place: Option<f64>| format!("{:.1}px", place.unwrap_or_default());
    view! {
        <button
            node_ref=button
            type="button"
            class="handle"
            class:dragged=move || drag.get().is_some()
            role="slider"
            data-handle=key
            aria-label=name
            aria-orientation=match moves {
                Moves::Upright => "vertical",
                Moves::Across => "horizontal",
            }
            aria-valuemin=move || grip.range.get().0
            aria-valuemax=move || grip.range.get().1
            aria-valuenow=value
            aria-valuetext=text
            style:display=move || if at.get().is_some() { "block" } else { "none" }
            style:left=move || pixels(at.get().map(|(x, _)| x))
            style:top=move || pixels(at.get().map(|(_, y)| y))
            on:pointerdown=down
            on:pointermove=moved
            on:pointerup=ended
            on:pointercancel=ended
            on:lostpointercapture=ended
            on:keydown=keys
        >
            <svg viewBox="0 0 44 44" aria-hidden="true">
                <path d=path></path>
            </svg>
            <span class="ring"></span>
            <span class="core" style:background=core></span>
        </button>
    }
    .into_any()
}
