//! The routes that a search has found, each with what is known of it.

use super::decide_trade_off::trade_off;
use super::piece::bath_words;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::advise::{Correction, Found, FoundRoute, Limit, Sought};
use recalesce::route::Route;
use recalesce::units::{
    TemperatureScale, format_duration_s, format_factor, format_fixed, format_percent,
    format_temperature,
};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Routes that are shown at once; the others open.
const FIRST_ROWS: usize = 5;

/// The steps of a route in a line.
pub(super) fn steps(route: &Route, scale: TemperatureScale) -> String {
    let mut parts = vec![
        texts::decide::soak_for(
            &format_temperature(route.soak.temperature_c, scale),
            &format_duration_s(60.0 * route.soak.time_min),
        ),
        bath_words(&route.quench, scale),
    ];
    parts.extend(route.cold.as_ref().map(|cold| {
        let at = format_temperature(cold.temperature_c, scale);
        texts::decide::cold_at(&at)
    }));
    let tempers = route.tempers.chunk_by(|a, b| a == b).filter_map(|same| {
        let temper = same.first()?;
        let times = match same.len() {
            1 => String::new(),
            times => format!("{times} × "),
        };
        Some(texts::decide::temper_at(
            &times,
            &format_duration_s(60.0 * temper.time_min),
            &format_temperature(temper.temperature_c, scale),
        ))
    });
    parts.extend(tempers);
    parts.join(texts::decide::THEN)
}

/// What is known of a route that was found, counting with what was learnt: of a furnace that is set by that,
/// with how sure it is.
fn facts(found: &FoundRoute, learnt: &Correction, scale: TemperatureScale) -> String {
    let [least, most] = found.band_hrc.map(|hrc| format_fixed(hrc, 1));
    let mut facts = vec![texts::decide::nine_in_ten(&least, &most)];
    let [soak, set] = [found.route.soak.temperature_c, found.route.set_point_c()]
        .map(|at_c| format_temperature(at_c, scale));
    if set != soak {
        let set = learnt
            .set_point(&found.route)
            .map_or(set, |by_learnt| format_temperature(by_learnt.set_c, scale));
        facts.push(texts::decide::furnace_set_to(&set, &soak));
    }
    facts.extend(
        found
            .margin_factor
            .map(|factor| texts::decide::could_be_slower(&format_factor(factor))),
    );
    facts.extend(
        found
            .austenite
            .map(|austenite| texts::decide::retained_austenite(&format_percent(austenite))),
    );
    facts.push(texts::decide::of_grain(&format_fixed(found.grain_astm, 1)));
    facts.push(format_duration_s(3600.0 * found.time_h));
    if found.may_crack {
        facts.push(texts::decide::MAY_CRACK.to_owned());
    }
    if found.embrittles {
        facts.push(texts::decide::EMBRITTLING.to_owned());
    }
    let not_checked = found.not_checked.iter().map(|limit| match limit {
        Limit::Margin => texts::decide::MARGIN_NOT_KNOWN,
        _ => texts::decide::AUSTENITE_NOT_KNOWN,
    });
    facts.extend(not_checked.map(str::to_owned));
    facts.join("; ")
}

/// Puts a route on the bench, and leads there.
pub(super) fn load(bench: Bench, route: &Route) {
    bench.put(route.clone());
}

fn row(
    bench: Bench,
    (place, found): (usize, &FoundRoute),
    learnt: &Correction,
    scale: TemperatureScale,
) -> AnyView {
    let chance = found.chance.map_or_else(
        || texts::decide::CHANCE_NOT_KNOWN.to_owned(),
        |chance| texts::decide::in_100_meet(&format_fixed(100.0 * chance, 0)),
    );
    let keep = found.route.clone();
    let route = found.route.clone();
    view! {
        <li>
            <p class="title">
                <b>{format_fixed(found.hrc, 1)} "\u{a0}HRC"</b>
                " "
                <span class="chance">{chance}</span>
            </p>
            <p>{steps(&found.route, scale)}</p>
            <p class="hint">{found.reason.clone()} " " {facts(found, learnt, scale)} "."</p>
            <div class="actions">
                <button
                    type="button"
                    class="press"
                    aria-label=texts::decide::put_route(place + 1)
                    on:click=move |_| load(bench, &route)
                >
                    {texts::shelf::PUT_ON_BENCH}
                </button>
                <button
                    type="button"
                    class="press"
                    aria-label=texts::decide::keep_route(place + 1)
                    on:click=move |_| super::shelf::keep_route(bench, keep.clone())
                >
                    {texts::decide::KEEP_ON_SHELF}
                </button>
            </div>
        </li>
    }
    .into_any()
}

/// What was found.
pub(super) fn results(bench: Bench, all: &Arc<(Sought, Found)>, learnt: &Correction) -> AnyView {
    let found = &all.1;
    let scale = bench.scale.get();
    let head = match found.routes.len() {
        // What came nearest is told once all of them are weighed.
        0 if found.nearest.is_none() => texts::decide::tried_so_far(found.tried),
        0 => texts::decide::none_serves(found.tried),
        1 => texts::decide::one_serves(found.tried),
        count => texts::decide::best_of(count, found.tried),
    };
    let mut rows: Vec<AnyView> = found
        .routes
        .iter()
        .enumerate()
        .map(|placed| row(bench, placed, learnt, scale))
        .collect();
    let more = rows.split_off(rows.len().min(FIRST_ROWS));
    let more = (!more.is_empty()).then(|| {
        view! {
            <details>
                <summary>{texts::decide::more(more.len())}</summary>
                <ol>{more}</ol>
            </details>
        }
    });
    let nearest = found
        .nearest
        .as_ref()
        .map(|nearest| view! { <p class="nearest">{nearest.words.clone()}</p> });
    let chart = (!found.trade_off.is_empty()).then(|| trade_off(bench, all));
    view! {
        <p role="status">{head}</p>
        {(!found.routes.is_empty())
            .then(|| {
                view! {
                    <p class="hint">
                        {texts::decide::ABOUT_CHANCES}
                    </p>
                }
            })}
        {nearest}
        <div class="found">
            <div>
                <ol>{rows}</ol>
                {more}
            </div>
            {chart}
        </div>
    }
    .into_any()
}
