//! The quench in slow motion.

use super::labels;
use crate::state::Bench;
use recalesce::chart::{Across, Constituent, ReplayData, Scene, replay_view};
use recalesce::heat::Section;
use recalesce::route::Replay;
use recalesce::units::format_duration_s;
use recalesce_texts::page as texts;

/// The section at a time, s from leaving the furnace.
pub(crate) fn replay_scene(
    bench: Bench,
    replay: &Replay,
    time_s: f64,
    width: f64,
    height: f64,
) -> Scene {
    let shown = bench.shown_as_real();
    let (section, start_c) = (shown.section, shown.soak.temperature_c);
    let (size_mm, ends) = match section {
        Section::Blade { height_mm, .. } => (
            height_mm,
            [texts::charts::CUTTING_EDGE, texts::charts::SPINE],
        ),
        Section::Plate { thickness_mm: size } => {
            (0.5 * size, [texts::charts::SURFACE, texts::charts::SURFACE])
        }
        Section::Round { diameter_mm: size } | Section::Square { side_mm: size } => {
            (0.5 * size, [texts::charts::SURFACE, texts::charts::SURFACE])
        }
    };
    let places = replay.at(time_s);
    let last = places.len().saturating_sub(1).max(1) as f64;
    let mut across: Vec<Across> = places
        .iter()
        .enumerate()
        .map(|(i, place)| {
            let f = place.fractions;
            Across {
                at_mm: size_mm * i as f64 / last,
                temperature_c: place.temperature_c,
                parts: vec![
                    (Constituent::Carbide, f.carbide),
                    (Constituent::Ferrite, f.ferrite),
                    (Constituent::Pearlite, f.pearlite),
                    (Constituent::Bainite, f.bainite),
                    (Constituent::Martensite, f.martensite),
                    (Constituent::Austenite, f.austenite),
                ],
            }
        })
        .collect();
    if !matches!(section, Section::Blade { .. }) {
        // Both halves are alike.
        let other = across.iter().skip(1).rev().map(|place| Across {
            at_mm: -place.at_mm,
            ..place.clone()
        });
        across = other.chain(across.iter().cloned()).collect();
    }
    replay_view(
        &ReplayData {
            across,
            ends,
            start_c,
            time: format_duration_s(time_s),
        },
        &labels(bench),
        [width, height],
    )
}
