//! The furnace: how far the piece may be from what is asked for, and what to set.

use crate::controls::{Alternative, Alternatives, Typed, quantities};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::route::Thermocouple;
use recalesce::units::{TemperatureScale, format_temperature, format_temperature_band};

const KINDS: [Alternative<Thermocouple>; 3] = [
    Alternative {
        is: Thermocouple::Checked,
        value: "checked",
        title: "Checked",
        note: "against a reference, or the band above already holds it",
    },
    Alternative {
        is: Thermocouple::TypeKClass1,
        value: "class_1",
        title: "Type K, class 1",
        note: "the closer tolerance: 0.4 % of the reading",
    },
    Alternative {
        is: Thermocouple::TypeKClass2,
        value: "class_2",
        title: "Type K, class 2",
        note: "what most furnaces come with: 0.75 % of the reading",
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
            label="The piece may be this far from the reading"
            quantity=Signal::derive(move || quantities::band(bench.scale.get(), (0.0, 60.0)))
            value=Signal::derive(move || route.with(|r| r.furnace_band_k))
            set=move |k| bench.change(|r| r.furnace_band_k = k)
        />
        <p class="hint">
            "Control and evenness. A small kiln wanders "
            {move || match bench.scale.get() {
                TemperatureScale::Celsius => "10 to 25 °C",
                TemperatureScale::Fahrenheit => "18 to 45 °F",
            }} " from end to end."
        </p>
        <h4>"Thermocouple"</h4>
        <Alternatives
            name="Thermocouples"
            all=&KINDS
            chosen=Signal::derive(move || route.with(|r| r.thermocouple))
            pick=move |kind| bench.change(|r| r.thermocouple = kind)
        />
        <h4>"Survey"</h4>
        <Typed
            label="The piece is hotter than the furnace reads by"
            quantity=Signal::derive(move || quantities::difference(
                bench.scale.get(),
                (-60.0, 60.0),
            ))
            value=Signal::derive(move || route.with(|r| r.furnace_offset_k))
            set=move |k| bench.change(|r| r.furnace_offset_k = k)
        />
        <p class="hint">
            {move || {
                let (soak_c, set_c, band_k) = route
                    .with(|r| (r.soak.temperature_c, r.set_point_c(), r.soak_band_k()));
                format!(
                    "For {} let it read {}. The piece is then within {}.",
                    degrees(soak_c),
                    degrees(set_c),
                    format_temperature_band(band_k, bench.scale.get()),
                )
            }}
            {move || {
                let teach = bench.teach.get().filter(|_| bench.is_taught())?;
                let set = route.with(|route| teach.learnt.set_point(route))?;
                let words = set.words(bench.scale.get());
                Some(format!(" By what the logbook has taught: {words}"))
            }}
        </p>
    }
    .into_any()
}
