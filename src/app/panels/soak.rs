//! The soak: phase map with the soak on it, and what happens while it soaks.

use crate::app::charts;
use crate::app::controls::{
    Chevrons, Choice, Entry, Grip, Handle, Typed, Word, quantities,
};
use crate::app::plot::Plot;
use crate::app::state::bench;
use crate::chart::glow_css;
use crate::soak::StartingStructure;
use crate::units::{format_duration_s, format_temperature};
use leptos::prelude::*;

/// Soak temperatures that can be set, °C.
pub(super) const SOAK_RANGE_C: (f64, f64) = (600.0, 1200.0);
/// Soak times that can be set, min.
const TIME_RANGE_MIN: (f64, f64) = (0.5, 600.0);
/// The longest time that the history shows by itself, min.
const SHORTEST_HISTORY_MIN: f64 = 30.0;

const STARTS: [(StartingStructure, &str, &str, &str); 3] = [
    (
        StartingStructure::Spheroidised,
        "spheroidised",
        "spheroidised",
        "round carbides, as the mill delivers it for machining",
    ),
    (
        StartingStructure::LamellarPearlite,
        "lamellar_pearlite",
        "lamellar pearlite",
        "from a slow cool",
    ),
    (
        StartingStructure::FinePearlite,
        "fine_pearlite",
        "fine pearlite",
        "from an air cool after normalising",
    ),
];

/// Time that the history reaches to, min: round, and beyond the soak.
pub(crate) fn history_end_min(time_min: f64) -> f64 {
    if time_min <= 0.8 * SHORTEST_HISTORY_MIN {
        SHORTEST_HISTORY_MIN
    } else {
        // The next of 60, 120, 240, … that leaves room behind the handle.
        let mut end = 2.0 * SHORTEST_HISTORY_MIN;
        while end < 1.2 * time_min {
            end *= 2.0;
        }
        end
    }
}

#[component]
fn SoakWords() -> impl IntoView {
    let bench = bench();
    let soak = Memo::new(move |_| bench.route.with(|r| r.soak));
    let start = Memo::new(move |_| bench.route.with(|r| r.start));
    let word_of = |wanted: StartingStructure| {
        STARTS
            .iter()
            .find(|(start, ..)| *start == wanted)
            .map_or("", |(_, _, title, _)| title)
            .to_owned()
    };
    let value_of = |wanted: StartingStructure| {
        STARTS
            .iter()
            .find(|(start, ..)| *start == wanted)
            .map_or("", |(_, value, ..)| value)
            .to_owned()
    };
    let entries = STARTS
        .iter()
        .map(|(_, value, title, note)| Entry {
            value: (*value).to_owned(),
            title: (*title).to_owned(),
            note: (*note).to_owned(),
        })
        .collect::<Vec<_>>();
    view! {
        <p class="set">
            <Word
                text=Signal::derive(move || format_temperature(
                    soak.get().temperature_c,
                    bench.scale.get(),
                ))
                name="Soak temperature"
            >
                <Typed
                    label="Temperature of the piece"
                    quantity=Signal::derive(move || quantities::temperature(
                        bench.scale.get(),
                        SOAK_RANGE_C,
                    ))
                    value=Signal::derive(move || soak.get().temperature_c)
                    set=move |c| bench.change(|r| r.soak.temperature_c = c)
                />
            </Word> " for "
            <Word
                text=Signal::derive(move || format_duration_s(60.0 * soak.get().time_min))
                name="Soak time"
            >
                <Typed
                    label="Time at temperature"
                    quantity=Signal::stored(quantities::minutes(TIME_RANGE_MIN, 1.0))
                    value=Signal::derive(move || soak.get().time_min)
                    set=move |min| bench.change(|r| r.soak.time_min = min)
                />
                <p class="hint">"Counted from when the piece has the colour of the furnace."</p>
            </Word> ", from "
            <Word
                text=Signal::derive(move || word_of(start.get()))
                name="Structure before hardening"
            >
                <Choice
                    entries=Signal::stored(entries.clone())
                    chosen=Signal::derive(move || value_of(start.get()))
                    pick=move |value: String| {
                        if let Some((start, ..)) = STARTS.iter().find(|(_, v, ..)| *v == value) {
                            bench.change(|r| r.start = *start);
                        }
                    }
                />
            </Word>
        </p>
    }
    .into_any()
}

/// The soak.
#[component]
pub(crate) fn SoakStage() -> impl IntoView {
    let bench = bench();
    let soak_c = Memo::new(move |_| bench.route.with(|r| r.soak.temperature_c));
    let time_min = Memo::new(move |_| bench.route.with(|r| r.soak.time_min));
    let step_c = move |(c, steps): (f64, f64)| {
        quantities::temperature(bench.scale.get_untracked(), SOAK_RANGE_C).stepped(c, steps)
    };
    let map_handle = move |plane: Signal<Option<crate::chart::Plane>>| {
        let at = Signal::derive(move || {
            plane
                .get()
                .map(|p| (p.rect.right - 15.0, p.y_px(soak_c.get())))
        });
        let tag_at = move || at.get().map_or("-99px".to_owned(), |(x, _)| format!("{:.1}px", x - 51.0));
        let tag_top = move || at.get().map_or("-99px".to_owned(), |(_, y)| format!("{y:.1}px"));
        let text = Signal::derive(move || format_temperature(soak_c.get(), bench.scale.get()));
        let grip = Grip {
            value_at: Callback::new(move |(_, y): (f64, f64)| {
                plane.get_untracked().map_or(soak_c.get_untracked(), |p| {
                    let c = p.to_data([p.rect.left, y])[1];
                    step_c((c, 0.0))
                })
            }),
            set: Callback::new(move |c: f64| bench.change(|r| r.soak.temperature_c = c)),
            stepped: Callback::new(step_c),
            range: Signal::stored(SOAK_RANGE_C),
            grows_rightward: true,
        };
        view! {
            <span class="tag" style:left=tag_at style:top=tag_top>
                {text}
            </span>
            <Handle
                key="soak"
                name="Soak temperature"
                at=at
                value=soak_c
                text=text
                grip=grip
                chevrons=Chevrons::Vertical
                core=Signal::derive(move || glow_css(soak_c.get()))
            />
        }
        .into_any()
    };
    let time_handle = move |plane: Signal<Option<crate::chart::Plane>>| {
        let at = Signal::derive(move || {
            plane
                .get()
                .map(|p| (p.x_px(time_min.get()), p.rect.bottom))
        });
        let minutes = quantities::minutes(TIME_RANGE_MIN, 1.0);
        let stepping = minutes.clone();
        let text = Signal::derive(move || format_duration_s(60.0 * time_min.get()));
        let grip = Grip {
            value_at: Callback::new(move |(x, _): (f64, f64)| {
                plane.get_untracked().map_or(time_min.get_untracked(), |p| {
                    minutes.stepped(p.to_data([x, p.rect.bottom])[0], 0.0)
                })
            }),
            set: Callback::new(move |min: f64| bench.change(|r| r.soak.time_min = min)),
            stepped: Callback::new(move |(min, steps)| stepping.stepped(min, steps)),
            range: Signal::stored(TIME_RANGE_MIN),
            grows_rightward: true,
        };
        view! {
            <Handle
                key="soak-time"
                name="Soak time"
                at=at
                value=time_min
                text=text
                grip=grip
                chevrons=Chevrons::Horizontal
                core=Signal::derive(move || glow_css(soak_c.get()))
            />
        }
        .into_any()
    };
    view! {
        <SoakWords />
        <Plot
            class="tall"
            scene=move |w, h| charts::soak_map(bench, w, h)
            handles=Box::new(map_handle)
        />
        <div class="sub">
            <h3>
                "While it soaks at "
                {move || format_temperature(soak_c.get(), bench.scale.get())}
            </h3>
            <Plot
                class="history"
                scene=move |w, h| charts::soak_history(bench, w, h)
                handles=Box::new(time_handle)
            />
        </div>
    }
    .into_any()
}
