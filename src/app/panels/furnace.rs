//! The furnace: how far the piece may be from what is asked for, and what to set.

use crate::controls::{Alternative, Alternatives, Typed, quantities};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::advise::Shop;
use recalesce::route::Thermocouple;
use recalesce::units::{TemperatureScale, format_temperature, format_temperature_band};
use recalesce_texts::page as texts;

const KINDS: [Alternative<Thermocouple>; 3] = [
    Alternative {
        is: Thermocouple::Checked,
        value: "checked",
        title: texts::furnace::CHECKED,
        note: texts::furnace::CHECKED_HOW,
    },
    Alternative {
        is: Thermocouple::TypeKClass1,
        value: "class_1",
        title: texts::furnace::CLASS_1,
        note: texts::furnace::CLASS_1_HOW,
    },
    Alternative {
        is: Thermocouple::TypeKClass2,
        value: "class_2",
        title: texts::furnace::CLASS_2,
        note: texts::furnace::CLASS_2_HOW,
    },
];

/// Evenness, thermocouple and offset of the furnace, with what they come to.
#[component]
pub(crate) fn FurnacePanel() -> impl IntoView {
    let bench = bench();
    let route = bench.route;
    let degrees = move |c: f64| format_temperature(c, bench.scale.get());
    view! {
        <Typed
            label=texts::furnace::BAND
            quantity=Signal::derive(move || quantities::band(bench.scale.get(), (0.0, 60.0)))
            value=Signal::derive(move || route.with(|r| r.furnace_band_k))
            set=move |k| bench.change(|r| r.furnace_band_k = k)
        />
        <p class="hint">
            {texts::furnace::CONTROL}
            {move || match bench.scale.get() {
                TemperatureScale::Celsius => texts::furnace::WANDERS_C,
                TemperatureScale::Fahrenheit => texts::furnace::WANDERS_F,
            }} {texts::furnace::END_TO_END}
        </p>
        <h4>{texts::furnace::THERMOCOUPLE}</h4>
        <Alternatives
            name=texts::furnace::THERMOCOUPLES
            all=&KINDS
            chosen=Signal::derive(move || route.with(|r| r.thermocouple))
            pick=move |kind| bench.change(|r| r.thermocouple = kind)
        />
        <h4>{texts::furnace::SURVEY}</h4>
        <Typed
            label=texts::furnace::OFFSET
            quantity=Signal::derive(move || quantities::difference(
                bench.scale.get(),
                Shop::OFFSET_K,
            ))
            value=Signal::derive(move || route.with(|r| r.furnace_offset_k))
            set=move |k| bench.change(|r| r.furnace_offset_k = k)
        />
        <p class="hint">
            {move || {
                let learnt = bench.teach.get().filter(|_| bench.is_taught());
                let scale = bench.scale.get();
                let set = learnt.and_then(|teach| route.with(|r| teach.learnt.set_words(r, scale)));
                let (soak_c, set_c, band_k) = route
                    .with(|r| (r.soak.temperature_c, r.set_point_c(), r.soak_band_k()));
                let read = texts::furnace::let_it_read(&degrees(soak_c), &degrees(set_c), &format_temperature_band(band_k, scale));
                match set {
                    Some(words) => format!("{read} {}", texts::furnace::by_what_is_taught(&words)),
                    None => read,
                }
            }}
        </p>
    }
    .into_any()
}
