//! From the outcome to the plain data that charts take. No geometry and no physics here.

mod hardenability;
mod hardness;
mod own;
mod phases;
mod quench;
mod replay;
mod soak;
mod strip;
mod words;

pub(crate) use hardenability::{continuous_scene, end_quench_scene, short_hardness};
pub(crate) use hardness::{influences_scene, ladder_scene, temper_scene};
pub(crate) use own::{probe_scene, transfer_scene};
pub(crate) use phases::{own_fields, soak_phases};
pub(crate) use quench::{quench_scene, section_scene};
pub(crate) use replay::replay_scene;
pub(crate) use soak::{soak_history_scene, soak_map_scene};
pub(crate) use strip::{blocks, strip};
pub(crate) use words::{answer, no_map, no_temper, still_does};

use super::state::Bench;
use leptos::prelude::*;
use recalesce::chart::{Constituent, Labels, glow, oxide};
use recalesce::heat::CoolingCurve;
use recalesce::transform::{Forming, Fractions};
use recalesce::units::{LengthUnit, TemperatureScale};

/// A colour as CSS.
fn css([r, g, b]: [u8; 3]) -> String {
    format!("rgb({r} {g} {b})")
}

/// Displayed colour of steel in the dim shop.
pub(crate) fn glow_css(temperature_c: f64) -> String {
    css(glow::glow_srgb(temperature_c))
}

/// Whether steel glows in the dim shop.
pub(crate) fn glows(temperature_c: f64) -> bool {
    glow::glow(temperature_c).is_some()
}

/// Oxide colour of bright steel after a temper.
pub(crate) fn oxide_css(temperature_c: f64) -> String {
    oxide::oxide_srgb(temperature_c).map_or_else(|| "var(--steel)".to_owned(), css)
}

/// How the user wants quantities on charts.
fn labels(bench: Bench) -> Labels {
    let mut labels = Labels::METRIC;
    if bench.scale.get() == TemperatureScale::Fahrenheit {
        labels.temperature = |c| TemperatureScale::Fahrenheit.of_celsius(c);
        labels.temperature_unit = "°F";
    }
    if bench.length.get() == LengthUnit::Inch {
        labels.length = |mm| LengthUnit::Inch.of_mm(mm);
        labels.length_unit = "in";
        labels.length_decimals = 3;
    }
    labels
}

const fn constituent(forming: Forming) -> Constituent {
    match forming {
        Forming::GrainBoundaryCarbide => Constituent::Carbide,
        Forming::Ferrite => Constituent::Ferrite,
        Forming::Pearlite => Constituent::Pearlite,
        Forming::Bainite => Constituent::Bainite,
    }
}

/// Constituents in the order of the bars.
pub(crate) fn amounts(fractions: &Fractions) -> Vec<(Constituent, f64)> {
    vec![
        (Constituent::Martensite, fractions.martensite),
        (Constituent::Austenite, fractions.austenite),
        (Constituent::Carbide, fractions.carbide),
        (Constituent::Pearlite, fractions.pearlite),
        (Constituent::Bainite, fractions.bainite),
        (Constituent::Ferrite, fractions.ferrite),
    ]
}

fn points(curve: &CoolingCurve) -> Vec<[f64; 2]> {
    curve
        .time_s
        .iter()
        .zip(&curve.temperature_c)
        .map(|(&t, &c)| [t, c])
        .collect()
}
