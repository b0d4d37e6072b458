//! The soak: on the phase map, and as it goes on.

use super::{labels, phases};
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::chart::{HistoryPoint, Scene, SoakHistoryData, SoakMapData, soak_history, soak_map};
use recalesce::phases::PhaseMap;

/// Where the axis of the map has A1 until that of the steel is known, °C.
const USUAL_A1_C: f64 = 730.0;

/// The phase map with the soak on it, none where this steel has no map. It needs neither the map,
/// which may still be coming, nor an outcome: the soak handle can be dragged before there are any.
pub(crate) fn soak_map_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let mapped = bench.mapped.get();
    if mapped.refusal.is_some() {
        return None;
    }
    let map = mapped.map.as_deref();
    let labels = labels(bench);
    let route = bench.real.get();
    let outcome = bench.outcome();
    // The map is of now: an earlier soak has no place on it.
    let soak = outcome
        .as_ref()
        .filter(|_| !bench.is_of_before())
        .map(|o| &o.soak);
    let dissolved_wt = soak.map_or(0.0, |s| s.end.carbon_wt);
    let possible_wt = soak.map_or(dissolved_wt, |s| s.limit.austenite.c);
    let soak_c = route.soak.temperature_c;
    let path = soak.map_or_else(Vec::new, |s| {
        let reached = s.history.iter().take_while(|p| p.time_s <= s.end.time_s);
        let mut path: Vec<[f64; 2]> = reached.map(|p| [p.carbon_wt, soak_c]).collect();
        path.push([s.end.carbon_wt, soak_c]);
        path
    });
    let line =
        |of: fn(&PhaseMap) -> &Vec<[f64; 2]>| map.map_or_else(Vec::new, |map| of(map).clone());
    let of_outcome = outcome.as_ref().map(|o| o.critical.a1_c);
    let a1_c = map.map(|map| map.a1_c).or(of_outcome).unwrap_or(USUAL_A1_C);
    Some(soak_map(
        &SoakMapData {
            fields: map.map_or_else(Vec::new, |map| {
                map.fields.iter().map(phases::map_field).collect()
            }),
            boundaries: map.map_or_else(Vec::new, |map| {
                map.boundaries.iter().map(|b| b.points.clone()).collect()
            }),
            range_c: PhaseMap::RANGE_C,
            a3: line(|map| &map.a3),
            acm: line(|map| &map.acm),
            a1_lower: line(|map| &map.a1_lower),
            a1_upper: line(|map| &map.a1_upper),
            a1_c,
            bulk_carbon_wt: route.composition.c,
            soak_c,
            wander_k: route.soak_band_k(),
            dissolved_wt,
            possible_wt,
            path,
        },
        &labels,
        [width, height],
    ))
}

/// What happens while it soaks.
pub(crate) fn soak_history_scene(bench: Bench, width: f64, height: f64) -> Option<Scene> {
    let outcome = bench.outcome()?;
    let point = |p: &recalesce::soak::SoakPoint| HistoryPoint {
        time_s: p.time_s,
        carbon_wt: p.carbon_wt,
        carbide_volume_fraction: p.carbide_volume_fraction,
        grain_astm: p.grain_astm,
    };
    let history: Vec<_> = outcome.soak.history.iter().map(point).collect();
    let end_s = history.last()?.time_s;
    let heating = &outcome.heating;
    let to_soak = |&[time_s, core_c]: &[f64; 2]| [time_s - heating.core_at_temperature_s, core_c];
    Some(soak_history(
        &SoakHistoryData {
            history,
            now: point(&outcome.soak.end),
            end_s,
            soak_c: bench.real.with(|r| r.soak.temperature_c),
            heating: heating.core.iter().map(to_soak).collect(),
        },
        &labels(bench),
        [width, height],
    ))
}
