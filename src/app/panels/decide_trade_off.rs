//! Hardness against toughness of the routes that a search has found.

use super::decide_found::{load, steps};
use crate::plot::{Plot, Shown};
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::advise::{Found, Sought};
use recalesce::chart::{Handle, TradeOffPoint, trade_off_chart};
use recalesce::units::format_fixed;
use recalesce_texts::page as texts;
use std::sync::Arc;
use web_sys::MouseEvent;

/// The ring about the point that is picked; a press picks the nearest.
fn points(picked: RwSignal<usize>, shown: Shown) -> AnyView {
    let pick = move |press: MouseEvent| {
        let at_px = [f64::from(press.offset_x()), f64::from(press.offset_y())];
        let Some(scene) = shown.get_untracked() else {
            return;
        };
        let distance_px = |handle: &Handle| {
            let [x, y] = handle.at_px;
            (x - at_px[0]).hypot(y - at_px[1])
        };
        let all = scene.handles.iter().enumerate();
        let nearest = all.min_by(|a, b| distance_px(a.1).total_cmp(&distance_px(b.1)));
        if let Some((place, _)) = nearest {
            picked.set(place);
        }
    };
    let at = move || {
        let scene = shown.get()?;
        scene.handles.get(picked.get()).map(|handle| handle.at_px)
    };
    let px = move |axis: usize| at().map_or_else(String::new, |at| format!("{:.1}px", at[axis]));
    view! {
        <div class="points" aria-hidden="true" on:click=pick>
            <i class="ring" style:left=move || px(0) style:top=move || px(1)></i>
        </div>
    }
    .into_any()
}

/// Hardness against toughness: a route is picked on the chart or with the slider.
pub(super) fn trade_off(bench: Bench, all: &Arc<(Sought, Found)>) -> AnyView {
    let (sought, found) = all.as_ref();
    let target = [sought.target.least_hrc, sought.target.most_hrc];
    let data: Vec<TradeOffPoint> = found
        .trade_off
        .iter()
        .map(|point| TradeOffPoint {
            hrc: point.hrc,
            toughness_points: point.toughness_points,
        })
        .collect();
    let first = data
        .iter()
        .position(|point| (target[0]..=target[1]).contains(&point.hrc));
    let picked = RwSignal::new(first.unwrap_or_default());
    let last = data.len() - 1;
    let of = {
        let all = all.clone();
        move |place: usize| all.1.trade_off.get(place).cloned()
    };
    let words = {
        let of = of.clone();
        Signal::derive(move || {
            of(picked.get()).map_or_else(String::new, |point| {
                let hrc = format_fixed(point.hrc, 1);
                format!("{hrc}\u{a0}HRC: {}", steps(&point.route, bench.scale.get()))
            })
        })
    };
    let put = move |_| {
        if let Some(point) = of(picked.get_untracked()) {
            load(bench, &point.route);
        }
    };
    view! {
        <section class="trade-off" aria-label=texts::decide::TRADE_OFF>
            <h4>{texts::decide::TRADE_OFF}</h4>
            <p class="hint">
                {texts::decide::ABOUT_TRADE_OFF}
            </p>
            <Plot
                class="trade" file="trade-off"
                scene=move |width, height| trade_off_chart(&data, target, [width, height])
                handles=Box::new(move |shown| points(picked, shown))
            />
            <input
                type="range"
                min="0"
                max=last.to_string()
                step="1"
                aria-label=texts::decide::ROUTE_ON_CHART
                aria-valuetext=words
                prop:value=move || picked.get().to_string()
                on:input:target=move |event| {
                    if let Ok(place) = event.target().value().parse() {
                        picked.set(place);
                    }
                }
            />
            <p>{words}</p>
            <button type="button" class="press" on:click=put>
                {texts::decide::PUT_THIS}
            </button>
        </section>
    }
    .into_any()
}
