//! From the target back to the temper: temperatures and the time that meet it, each to be taken.

use super::temper::{move_tempers, time_tempers};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::route::{Outcome, Route};
use recalesce::units::{TemperatureScale, format_duration_s, format_hrc, format_temperature};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Tempers nearer than this to one that meets the target are it, K and parts of the time.
const SAME_K: f64 = 1.0;
const SAME_PART: f64 = 0.05;

/// A way to the target.
#[derive(Clone, Copy)]
enum Way {
    Temperature { c: f64, is_embrittling: bool },
    Time { s: f64 },
}

/// All ways, the preferred one first.
fn ways(route: &Route, outcome: &Outcome) -> Vec<Way> {
    let (Some(temper), Some(planned)) = (outcome.temper.given(), route.tempers.first()) else {
        return Vec::new();
    };
    let [from_c, to_c] = temper.embrittling_c;
    let temperatures = temper.meets_target_c.iter().map(|&c| Way::Temperature {
        c,
        is_embrittling: (from_c..=to_c).contains(&c),
    });
    let time = temper.meets_target_s.map(|s| Way::Time { s });
    temperatures
        .chain(time)
        .filter(|way| match *way {
            Way::Temperature { c, .. } => (c - planned.temperature_c).abs() > SAME_K,
            Way::Time { s } => (s / (60.0 * planned.time_min) - 1.0).abs() > SAME_PART,
        })
        .collect()
}

impl Way {
    fn words(self, route: &Route, scale: TemperatureScale) -> (String, String) {
        match self {
            Self::Temperature { c, is_embrittling } => (
                format_temperature(c, scale),
                if is_embrittling {
                    texts::temper::WHERE_IT_EMBRITTLES.to_owned()
                } else {
                    String::new()
                },
            ),
            Self::Time { s } => {
                let planned_c = route.tempers.first().map_or(0.0, |t| t.temperature_c);
                let each = if route.tempers.len() > 1 {
                    texts::temper::EACH
                } else {
                    ""
                };
                (
                    format_duration_s(s),
                    texts::temper::each_at(each, &format_temperature(planned_c, scale)),
                )
            }
        }
    }

    fn take(self, route: &mut Route) {
        match self {
            Self::Temperature { c, .. } => move_tempers(route, c.round()),
            Self::Time { s } => time_tempers(route, (s / 60.0).round().max(1.0)),
        }
    }
}

/// The ways as a line of words and buttons; nothing where the plan is the only one.
#[component]
pub(super) fn TemperTarget() -> impl IntoView {
    let bench = bench();
    move || {
        // An outcome of before knows nothing of the target and the tempers of now.
        if bench.is_of_before() {
            return None;
        }
        let outcome: Arc<Outcome> = bench.outcome()?;
        let route = bench.route.get();
        let scale = bench.scale.get();
        let ways = ways(&route, &outcome);
        let target = 0.5 * (route.target.least_hrc + route.target.most_hrc);
        let buttons: Vec<_> = ways
            .into_iter()
            .enumerate()
            .map(|(i, way)| {
                let (value, note) = way.words(&route, scale);
                view! {
                    {if i == 0 { " " } else { texts::temper::OR }}
                    <button type="button" class="number" on:click=move |_| bench.change(|r| way.take(r))>
                        {value}
                    </button>
                    {note}
                }
            })
            .collect();
        (!buttons.is_empty()).then(|| {
            view! {
                <p class="hint target-ways">
                    {texts::temper::middle_comes_with(&format_hrc(target))} {buttons} "."
                </p>
            }
        })
    }
}
