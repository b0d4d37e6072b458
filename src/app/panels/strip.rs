//! The route strip: temperature against time for the whole route, a block for each step. Blocks are
//! picked by a press, moved by dragging or with Alt and an arrow, and taken out with Delete.

use crate::browser::resize::size_of;
use crate::charts;
use crate::plot::Plot;
use crate::state::{Bench, Stage, bench};
use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::html::Div;
use leptos::prelude::*;
use recalesce::route::{Route, StepRef};
use recalesce_texts::page as texts;

/// A press that goes further is a drag, px.
const DRAG_FROM_PX: f64 = 6.0;

/// A block that is being dragged.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Dragged {
    step: StepRef,
    from_px: f64,
    /// How far, px; none while it is only a press.
    by_px: Option<f64>,
    width_px: f64,
}

impl Dragged {
    /// By how many places of its like the block has been dragged.
    fn places(self) -> isize {
        let by = self.by_px.unwrap_or(0.0) / self.width_px.max(1.0);
        by.round() as isize
    }
}

/// A block in its place; the button stays while this changes.
#[derive(Debug, Clone, PartialEq)]
struct Placed {
    step: StepRef,
    stage: Stage,
    title: String,
    line: String,
    /// Left and right in parts of the strip's width.
    edges: [f64; 2],
    width_px: f64,
}

/// Moves a step and keeps it picked.
fn move_by(bench: Bench, step: StepRef, by: isize) {
    let mut moved = step;
    bench.change(|route| moved = route.move_step(step, by));
    pick(bench, moved);
}

/// Opens the settings of a step.
pub(super) fn pick(bench: Bench, step: StepRef) {
    bench.stage.set(match step {
        StepRef::Prior(i) => Stage::Prior(i),
        StepRef::Soak => Stage::Soak,
        StepRef::Quench | StepRef::Snap | StepRef::Cold => Stage::Quench,
        StepRef::Temper(_) => Stage::Temper,
    });
}

/// Takes a step out and says so, with its undo.
pub(super) fn remove(bench: Bench, step: StepRef) {
    let before = bench.route.get_untracked();
    let mut is_out = false;
    bench.change(|route| is_out = route.remove_step(step));
    if is_out {
        bench.notice.set(Some(crate::state::Notice {
            text: texts::strip::STEP_TAKEN_OUT.to_owned(),
            is_wrong: false,
            undo: Some(std::sync::Arc::new(move || bench.route.set(before.clone()))),
        }));
    }
}

/// Adds what may follow a step and opens it.
fn add_behind(bench: Bench, step: StepRef) {
    let mut added = None;
    bench.change(|route| added = route.add_behind(step));
    if let Some(added) = added {
        pick(bench, added);
    }
}

/// What a key does to the block that has the focus.
fn by_key(bench: Bench, step: StepRef, key: &KeyboardEvent) {
    match (key.key().as_str(), key.alt_key()) {
        ("ArrowLeft", true) => move_by(bench, step, -1),
        ("ArrowRight", true) => move_by(bench, step, 1),
        ("+", _) => add_behind(bench, step),
        ("Delete", _) => remove(bench, step),
        _ => return,
    }
    key.prevent_default();
}

const fn is_movable(step: StepRef) -> bool {
    matches!(step, StepRef::Prior(_) | StepRef::Temper(_))
}

/// The strip with its blocks.
#[component]
pub(crate) fn Strip() -> impl IntoView {
    let bench = bench();
    let frame = NodeRef::<Div>::new();
    let size = size_of(frame);
    let dragged = RwSignal::new(None::<Dragged>);
    let strip = Memo::new(move |_| {
        let (width, height) = size.get();
        (width > 0.0 && height > 0.0).then(|| charts::strip(bench, width, height))
    });
    let blocks = Memo::new(move |_| {
        let strip = strip.get()?;
        // In parts of the width, which paper changes without a new picture.
        let [width, _] = strip.scene.size_px;
        let route = bench.route.get();
        let outcome = bench.outcome();
        let blocks = charts::blocks(bench, &route, outcome.as_deref()).into_iter();
        let placed = blocks.zip(strip.blocks_px).map(|(block, edges_px)| Placed {
            step: block.step,
            stage: block.stage,
            title: block.title,
            line: block.line,
            edges: edges_px.map(|px| px / width),
            width_px: edges_px[1] - edges_px[0],
        });
        Some(placed.collect::<Vec<_>>())
    });
    let steps = Memo::new(move |_| {
        blocks.with(|all| {
            let all = all.iter().flatten();
            all.map(|block| (block.step, block.stage))
                .collect::<Vec<_>>()
        })
    });
    let blocks = move || {
        let steps = steps.get().into_iter().enumerate();
        steps
            .map(|(place, (step, stage))| {
                let placed =
                    Memo::new(move |_| blocks.with(|all| all.as_ref()?.get(place).cloned()));
                let part = move |pick: fn(&Placed) -> f64| {
                    placed.with(|p| p.as_ref().map(|p| format!("{:.3}%", 100.0 * pick(p))))
                };
                let word = move |pick: fn(&Placed) -> &String| {
                    placed.with(|p| p.as_ref().map(|p| pick(p).clone()))
                };
                let press = move |event: PointerEvent| {
                    let width_px = placed.with_untracked(|p| p.as_ref().map(|p| p.width_px));
                    if is_movable(step) && event.button() == 0 {
                        dragged.set(Some(Dragged {
                            step,
                            from_px: f64::from(event.client_x()),
                            by_px: None,
                            width_px: width_px.unwrap_or_default(),
                        }));
                    }
                };
                let by_px = move || {
                    dragged
                        .get()
                        .filter(|d| d.step == step)
                        .and_then(|d| d.by_px)
                };
                view! {
                    <button
                        type="button"
                        class:movable=is_movable(step)
                        class:dragged=move || by_px().is_some()
                        aria-pressed=move || (bench.stage.get() == stage).to_string()
                        title=is_movable(step)
                            .then_some(
                                texts::strip::HOW_TO_MOVE_A_STEP,
                            )
                        style:left=move || part(|p| p.edges[0])
                        style:width=move || part(|p| p.edges[1] - p.edges[0])
                        style:transform=move || {
                            by_px().map(|px| format!("translateX({px:.0}px)"))
                        }
                        on:pointerdown=press
                        on:keydown=move |key| by_key(bench, step, &key)
                        on:click=move |_| bench.stage.set(stage)
                    >
                        <b>{move || word(|p| &p.title)}</b>
                        <small>{move || word(|p| &p.line)}</small>
                    </button>
                }
            })
            .collect_view()
    };
    let moved = window_event_listener(leptos::ev::pointermove, move |event| {
        let Some(Some(now)) = dragged.try_get_untracked() else {
            return;
        };
        let by_px = f64::from(event.client_x()) - now.from_px;
        if now.by_px.is_some() || by_px.abs() > DRAG_FROM_PX {
            dragged.set(Some(Dragged {
                by_px: Some(by_px),
                ..now
            }));
        }
    });
    let let_go = move |is_done: bool| {
        let Some(Some(now)) = dragged.try_get_untracked() else {
            return;
        };
        dragged.set(None);
        if is_done && now.places() != 0 {
            move_by(bench, now.step, now.places());
        }
    };
    let up = window_event_listener(leptos::ev::pointerup, move |_| let_go(true));
    let away = window_event_listener(leptos::ev::pointercancel, move |_| let_go(false));
    on_cleanup(move || {
        moved.remove();
        up.remove();
        away.remove();
    });
    view! {
        <div
            class="route"
            class:stale=move || bench.is_of_before()
            aria-label=texts::strip::ROUTE
        >
            <div node_ref=frame>
                <Plot class="strip" file="route" scene=move |_, _| strip.get().map(|s| s.scene) />
            </div>
            <div class="blocks">
                <button
                    type="button"
                    class="add"
                    aria-label=texts::strip::STEPS_BEFORE
                    title=texts::strip::STEPS_BEFORE_LISTED
                    aria-pressed=move || {
                        matches!(bench.stage.get(), Stage::Prior(_)).to_string()
                    }
                    on:click=move |_| {
                        let last = bench.route.with_untracked(|r| r.prior.len());
                        bench.stage.set(Stage::Prior(last.saturating_sub(1)));
                    }
                >
                    "+"
                </button>
                {blocks}
                <button
                    type="button"
                    class="add last"
                    aria-label=texts::strip::ONE_MORE_TEMPER
                    title=texts::strip::ONE_MORE_TEMPER
                    disabled=move || bench.route.with(|r| !r.has_room_for_a_temper())
                    on:click=move |_| {
                        add_behind(bench, bench.route.with_untracked(Route::last_step));
                    }
                >
                    "+"
                </button>
            </div>
        </div>
    }
    .into_any()
}
