//! The furnace: how far the piece may be from what is asked for, and what to set.

use crate::app::controls::{Choice, Entry, Typed, quantities};
use crate::app::state::bench;
use crate::route::Thermocouple;
use crate::units::{TemperatureScale, format_temperature, format_temperature_band};
use leptos::prelude::*;

/// Value, title and note of each kind of thermocouple.
const KINDS: [(Thermocouple, &str, &str, &str); 3] = [
    (
        Thermocouple::Checked,
        "checked",
        "Checked",
        "against a reference, or the band above already holds it",
    ),
    (
        Thermocouple::TypeKClass1,
        "class_1",
        "Type K, class 1",
        "the closer tolerance: 0.4 % of the reading",
    ),
    (
        Thermocouple::TypeKClass2,
        "class_2",
        "Type K, class 2",
        "what most furnaces come with: 0.75 % of the reading",
    ),
];

/// Evenness, thermocouple and offset of the furnace, with what they come to.
#[component]
pub(super) fn FurnacePanel() -> impl IntoView {
    let bench = bench();
    let route = bench.route;
    let entries = KINDS.map(|(_, value, title, note)| Entry {
        value: value.to_owned(),
        title: title.to_owned(),
        note: note.to_owned(),
    });
    let chosen = Signal::derive(move || {
        let now = route.with(|r| r.thermocouple);
        KINDS
            .iter()
            .find(|(kind, ..)| *kind == now)
            .map_or_else(String::new, |(_, value, ..)| (*value).to_owned())
    });
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
        <Choice
            name="Thermocouples"
            entries=Signal::stored(entries.to_vec())
            chosen=chosen
            pick=move |value: String| {
                if let Some((kind, ..)) = KINDS.iter().find(|(_, v, ..)| *v == value) {
                    bench.change(|r| r.thermocouple = *kind);
                }
            }
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
        </p>
    }
    .into_any()
}
