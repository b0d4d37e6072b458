//! The soak: phase map with the soak on it, and what happens while it soaks.

use super::opening::Opening;
use super::outcome::say_each;
use super::structures::StructureWord;
use crate::charts::{self, glow_css};
use crate::controls::{Grip, Handle, Typed, Word, quantities, stepped};
use crate::parts::panels::{Panel, panel};
use crate::plot::{Plot, Shown, Tag, handle_at};
use crate::state::{Stage, bench};
use leptos::prelude::*;
use recalesce::chart::Moves;
use recalesce::route::soak_notes;
use recalesce::units::{format_duration_s, format_temperature};
use recalesce_texts::page as texts;

/// Soak temperatures that can be set, °C.
pub(super) const SOAK_RANGE_C: (f64, f64) = (600.0, 1200.0);
/// Soak times that can be set, min.
const TIME_RANGE_MIN: (f64, f64) = (0.5, 600.0);
/// One step of that, min.
const TIME_STEP_MIN: f64 = 1.0;

/// Temperature of the soak.
#[component]
pub(crate) fn SoakTemperaturePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Typed
            label=texts::soak::TEMPERATURE_OF_PIECE
            quantity=Signal::derive(move || {
                quantities::temperature(bench.scale.get(), SOAK_RANGE_C)
            })
            value=Signal::derive(move || bench.route.with(|r| r.soak.temperature_c))
            set=move |c| bench.change(|r| r.soak.temperature_c = c)
        />
    }
}

/// Time of the soak.
#[component]
pub(crate) fn SoakTimePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Typed
            label=texts::soak::TIME_AT_TEMPERATURE
            quantity=Signal::stored(quantities::minutes(TIME_RANGE_MIN, TIME_STEP_MIN))
            value=Signal::derive(move || bench.route.with(|r| r.soak.time_min))
            set=move |min| bench.change(|r| r.soak.time_min = min)
        />
        <p class="hint">{texts::soak::COUNTED_FROM}</p>
    }
}

#[component]
fn SoakWords() -> impl IntoView {
    let bench = bench();
    let soak = Memo::new(move |_| bench.route.with(|r| r.soak));
    let prior = Memo::new(move |_| bench.route.with(|r| r.prior.len()));
    let from = move || {
        match prior.get() {
        0 => view! {
            {texts::soak::FROM}
            <StructureWord name=texts::soak::STRUCTURE_BEFORE />
        }
        .into_any(),
        n => view! {
            {texts::soak::AFTER_THE}
            <button
                type="button"
                class="number"
                on:click=move |_| bench.stage.set(Stage::Prior(n - 1))
            >
                {if n == 1 { texts::soak::STEP_BEFORE.to_owned() } else { texts::soak::steps_before(n) }}
            </button>
        }
        .into_any(),
    }
    };
    view! {
        <p class="set">
            <Word
                text=Signal::derive(move || format_temperature(
                    soak.get().temperature_c,
                    bench.scale.get(),
                ))
                name=texts::soak::SOAK_TEMPERATURE
            >
                {panel(Panel::SoakTemperature)}
            </Word> {texts::soak::FOR}
            <Word
                text=Signal::derive(move || format_duration_s(60.0 * soak.get().time_min))
                name=texts::soak::SOAK_TIME
                mark=","
            >
                {panel(Panel::SoakTime)}
            </Word>
            {from}
        </p>
    }
    .into_any()
}

/// Heating up, overheating, and the surface in air.
#[component]
fn SoakNotes() -> impl IntoView {
    let bench = bench();
    let notes = Memo::new(move |_| {
        let outcome = bench.outcome()?;
        let grains = bench.overheating.get();
        let (scale, length) = (bench.scale.get(), bench.length.get());
        Some(
            bench
                .route
                .with(|route| soak_notes(route, &outcome, grains.as_ref(), scale, length)),
        )
    });
    view! { <div class="notes">{say_each(notes)}</div> }.into_any()
}

/// The soak.
#[component]
pub(crate) fn SoakStage() -> impl IntoView {
    let bench = bench();
    let soak_c = Memo::new(move |_| bench.route.with(|r| r.soak.temperature_c));
    let time_min = Memo::new(move |_| bench.route.with(|r| r.soak.time_min));
    let step_c = move |(c, steps): (f64, f64)| {
        let degree_k = bench.scale.get_untracked().to_kelvin_difference(1.0);
        stepped(c, steps, SOAK_RANGE_C, degree_k)
    };
    let map_handle = move |shown: Shown| {
        let at = handle_at(shown);
        let text = Signal::derive(move || format_temperature(soak_c.get(), bench.scale.get()));
        let grip = Grip {
            value_at: Callback::new(move |(_, y): (f64, f64)| {
                shown
                    .get_untracked()
                    .map_or(soak_c.get_untracked(), |scene| {
                        let plane = &scene.plane;
                        step_c((plane.to_data([plane.rect.left, y])[1], 0.0))
                    })
            }),
            set: Callback::new(move |c: f64| bench.change(|r| r.soak.temperature_c = c)),
            stepped: Callback::new(step_c),
            range: Signal::stored(SOAK_RANGE_C),
            grows_rightward: true,
        };
        view! {
            <Tag shown=shown text=text />
            <Handle
                key="soak"
                name=texts::soak::SOAK_TEMPERATURE
                at=at
                value=soak_c
                text=text
                grip=grip
                moves=Moves::Upright
                core=Signal::derive(move || glow_css(soak_c.get()))
            />
        }
        .into_any()
    };
    let time_handle = move |shown: Shown| {
        let at = handle_at(shown);
        let text = Signal::derive(move || format_duration_s(60.0 * time_min.get()));
        let grip = Grip {
            value_at: Callback::new(move |(x, _): (f64, f64)| {
                shown
                    .get_untracked()
                    .map_or(time_min.get_untracked(), |scene| {
                        let plane = &scene.plane;
                        let time_s = plane.to_data([x, plane.rect.bottom])[0];
                        stepped(time_s / 60.0, 0.0, TIME_RANGE_MIN, TIME_STEP_MIN)
                    })
            }),
            set: Callback::new(move |min: f64| bench.change(|r| r.soak.time_min = min)),
            stepped: Callback::new(move |(min, steps)| {
                stepped(min, steps, TIME_RANGE_MIN, TIME_STEP_MIN)
            }),
            range: Signal::stored(TIME_RANGE_MIN),
            grows_rightward: true,
        };
        view! {
            <Tag shown=shown text=text />
            <Handle
                key="soak-time"
                name=texts::soak::SOAK_TIME
                at=at
                value=time_min
                text=text
                grip=grip
                moves=Moves::Across
                core=Signal::derive(move || glow_css(soak_c.get()))
            />
        }
        .into_any()
    };
    let is_coming = move || bench.is_map_coming().to_string();
    // The chart of a soak that has no outcome is that of the last one that had.
    let charted_c = Memo::new(move |last: Option<&f64>| {
        let before = last.filter(|_| bench.is_of_before());
        before.copied().unwrap_or_else(|| soak_c.get())
    });
    view! {
        <SoakWords />
        <div class="map" aria-busy=is_coming>
            <Plot
                class="tall" file="phase-map"
                scene=move |w, h| charts::soak_map_scene(bench, w, h)
                nothing=Signal::derive(move || charts::no_map(bench))
                handles=Box::new(map_handle)
            />
            <p class="late" aria-hidden="true">
                {texts::soak::MAP_COMING}
            </p>
        </div>
        <div class="sub">
            <h3>
                {texts::soak::WHILE_IT_SOAKS}
                {move || format_temperature(charted_c.get(), bench.scale.get())}
            </h3>
            <Plot
                class="history" file="soak"
                scene=move |w, h| charts::soak_history_scene(bench, w, h)
                handles=Box::new(time_handle)
            />
            <SoakNotes />
        </div>
        <Opening title=texts::soak::PHASES_AS_TABLE panel=Panel::PhaseTable />
    }
    .into_any()
}
