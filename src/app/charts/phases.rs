//! The phases of the map in the words of charts and tables.

use crate::state::Bench;
use leptos::prelude::*;
use recalesce::chart::MapField;
use recalesce::phases::{Field, PhaseError, PhaseName, equilibrium};
use recalesce::route::Known;
use recalesce::units::{format_percent, format_temperature};
use recalesce_texts::page as texts;

/// A field of the map as the chart takes it.
pub(super) fn map_field(field: &Field) -> MapField {
    let phases = field.phases.iter().copied();
    MapField {
        has_austenite: field.phases.contains(&PhaseName::Austenite),
        has_ferrite: field.phases.contains(&PhaseName::Ferrite),
        carbides: phases
            .filter(|phase| phase.is_carbide())
            .map(|phase| lowered(name(phase)))
            .collect(),
        outline: field.outline.clone(),
    }
}

const fn name(phase: PhaseName) -> &'static str {
    match phase {
        PhaseName::Austenite => texts::charts::AUSTENITE,
        PhaseName::Ferrite => texts::charts::FERRITE,
        PhaseName::Cementite => texts::charts::CEMENTITE,
        PhaseName::M7C3 => "M7C3",
        PhaseName::M23C6 => "M23C6",
        PhaseName::M6C => "M6C",
        PhaseName::Mc => "MC",
    }
}

/// A formula with its numbers lowered, as labels of charts write it.
fn lowered(name: &str) -> String {
    let mut text = String::with_capacity(name.len());
    let mut was_digit = false;
    for letter in name.chars() {
        let is_digit = letter.is_ascii_digit();
        match (was_digit, is_digit) {
            (false, true) => text.push_str("_{"),
            (true, false) => text.push('}'),
            _ => {}
        }
        text.push(letter);
        was_digit = is_digit;
    }
    if was_digit {
        text.push('}');
    }
    text
}

/// What is stable at the steel's own carbon, from cold to hot: temperatures and phases.
pub(crate) fn own_fields(bench: Bench) -> Vec<(String, String)> {
    let scale = bench.scale.get();
    let mapped = bench.mapped.get();
    let own = mapped.map.as_ref().map_or(&[][..], |map| &map.own);
    own.iter()
        .map(|field| {
            let names: Vec<_> = field.phases.iter().copied().map(name).collect();
            let [from, to] = [field.from_c, field.to_c].map(|c| format_temperature(c, scale));
            (texts::general::range(&from, &to), names.join(", "))
        })
        .collect()
}

/// Phases at the soak temperature in the end, with their share of the mass; or why there are none.
pub(crate) fn soak_phases(bench: Bench) -> Result<Vec<(String, String)>, String> {
    let found = bench
        .route
        .with(|r| equilibrium(&r.composition, r.soak.temperature_c));
    let found = Known::from(found.map_err(PhaseError::from));
    if let Some(why) = found.refusal() {
        return Err(why.words(bench.scale.get()));
    }
    let phases = found.given().into_iter().flat_map(|found| &found.phases);
    Ok(phases
        .map(|phase| {
            (
                name(phase.name).to_owned(),
                format_percent(phase.mass_fraction),
            )
        })
        .collect())
}
