//! Finding a route: what is asked of it, the routes that serve, and hardness against toughness.

use super::decide::{Deciding, Working};
use super::decide_acting::acting_on;
use super::piece::bath_words;
use crate::controls::{Segment, Typed, live, quantities};
use crate::decide::{Question, Told};
use crate::plot::{Plot, Shown};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::{Correction, Found, FoundRoute, Limit, Limits, Purpose, Sought};
use recalesce::chart::{Handle, TradeOffPoint, trade_off_chart};
use recalesce::route::Route;
use recalesce::units::{
    TemperatureScale, format_duration_s, format_factor, format_fixed, format_percent,
    format_temperature,
};
use recalesce_texts::page as texts;
use std::sync::Arc;
use web_sys::MouseEvent;

/// What may be typed.
const TARGET_HRC: (f64, f64) = (20.0, 68.0);
const AUSTENITE_PERCENT: (f64, f64) = (0.0, 100.0);
const GRAIN_ASTM: (f64, f64) = (-2.0, 15.0);
const TIME_H: (f64, f64) = (0.1, 1000.0);
/// Routes that are shown at once; the others open.
const FIRST_ROWS: usize = 5;

fn sought(bench: Bench, deciding: Deciding) -> Sought {
    Sought {
        target: bench.route.with(|route| route.target),
        purpose: deciding.purpose.get(),
        limits: deciding.limits.get(),
    }
}

/// What would be asked now.
fn question(bench: Bench, deciding: Deciding) -> Question {
    let route = bench.route.get();
    let shop = deciding.shop.get();
    let learnt = deciding.counted_with();
    Question::Find(
        Box::new(route),
        Box::new(shop),
        sought(bench, deciding),
        learnt,
    )
}

/// One end of the target.
fn target(bench: Bench, label: &'static str, is_least: bool) -> AnyView {
    let get = move || {
        bench.route.with(|route| {
            if is_least {
                route.target.least_hrc
            } else {
                route.target.most_hrc
            }
        })
    };
    let set = move |hrc: f64| {
        bench.change(|route| {
            let target = &mut route.target;
            if is_least {
                target.least_hrc = hrc;
                target.most_hrc = target.most_hrc.max(hrc);
            } else {
                target.most_hrc = hrc;
                target.least_hrc = target.least_hrc.min(hrc);
            }
        });
    };
    let quantity = quantities::plain(
        "\u{a0}HRC",
        1,
        TARGET_HRC,
        0.5,
        texts::decide::WRITE_A_HARDNESS,
    );
    view! { <Typed label=label quantity=Signal::stored(quantity) value=Signal::derive(get) set=set /> }
    .into_any()
}

/// A limit that may be left open.
fn limit(
    deciding: Deciding,
    label: &'static str,
    quantity: crate::controls::Quantity,
    scale: f64,
    get: fn(&Limits) -> Option<f64>,
    set: fn(&mut Limits, Option<f64>),
) -> AnyView {
    let value = move || {
        deciding
            .limits
            .with(get)
            .map_or(f64::NAN, |value| value * scale)
    };
    view! {
        <Typed
            label=label
            quantity=Signal::stored(quantity.optional())
            value=Signal::derive(value)
            set=move |value: f64| {
                let known = Some(value / scale).filter(|value| !value.is_nan());
                deciding.limits.update(|limits| set(limits, known));
            }
        />
    }
    .into_any()
}

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
fn load(bench: Bench, route: &Route) {
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
fn trade_off(bench: Bench, all: &Arc<(Sought, Found)>) -> AnyView {
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

/// What was found.
fn results(bench: Bench, all: &Arc<(Sought, Found)>, learnt: &Correction) -> AnyView {
    let found = &all.1;
    let scale = bench.scale.get();
    let head = match found.routes.len() {
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

/// The search.
#[component]
pub(super) fn Finding(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let start = move |()| {
        let sought = untrack(|| sought(bench, deciding));
        let question = untrack(|| question(bench, deciding));
        let learnt = untrack(|| deciding.counted_with());
        deciding.finding.ask(&question, move |told| match told {
            Told::Found(done, found) => {
                deciding.found_with.try_set(learnt.clone());
                deciding.found.try_set(Some(Arc::new((sought, *found))));
                done >= 1.0
            }
            _ => false,
        });
    };
    let no_cold = Signal::derive(move || deciding.limits.with(|limits| limits.no_cold));
    view! {
        <h3>{texts::decide::FIND_A_ROUTE}</h3>
        <div class="asked-for">
            {target(bench, texts::decide::HARDNESS_FROM, true)}
            {target(bench, texts::decide::TO, false)}
            <div class="field">
                <span class="label">{texts::decide::FOR}</span>
                <Segment
                    name=texts::decide::WHAT_FOR
                    entries=vec![
                        (Purpose::Edge, texts::decide::A_CUTTING_EDGE),
                        (Purpose::Wear, texts::decide::WEAR),
                        (Purpose::Impact, texts::decide::BLOWS),
                        (Purpose::Spring, texts::decide::A_SPRING),
                    ]
                    chosen=deciding.purpose
                    pick=move |purpose| deciding.purpose.set(purpose)
                />
            </div>
            <div class="field">
                <span class="label">{texts::decide::COLD_STEP}</span>
                <Segment
                    name=texts::decide::COLD_STEP_NAME
                    entries=vec![(false, texts::decide::WHERE_IT_HELPS), (true, texts::decide::NO_COLD_STEP)]
                    chosen=no_cold
                    pick=move |no_cold| deciding.limits.update(|limits| limits.no_cold = no_cold)
                />
            </div>
            {limit(
                deciding,
                texts::decide::AUSTENITE_AT_MOST,
                quantities::plain("\u{a0}%", 0, AUSTENITE_PERCENT, 1.0, texts::decide::WRITE_A_PART),
                100.0,
                |limits| limits.most_austenite,
                |limits, value| limits.most_austenite = value,
            )}
            {limit(
                deciding,
                texts::decide::GRAIN_AT_LEAST,
                quantities::plain("", 1, GRAIN_ASTM, 0.5, texts::decide::WRITE_A_GRAIN),
                1.0,
                |limits| limits.least_grain_astm,
                |limits, value| limits.least_grain_astm = value,
            )}
            {limit(
                deciding,
                texts::decide::DONE_WITHIN,
                quantities::plain("\u{a0}h", 1, TIME_H, 0.5, texts::decide::WRITE_HOURS),
                1.0,
                |limits| limits.longest_h,
                |limits, value| limits.longest_h = value,
            )}
        </div>
        <Working
            task=deciding.finding
            words=texts::decide::FIND_ROUTES
            start=start
            is_stale=Signal::derive(move || deciding.finding.is_stale(&question(bench, deciding)))
        />
        {live(move || {
            deciding
                .found
                .get()
                .map_or_else(|| ().into_any(), |found| {
                    let routes = found.1.routes.iter().map(|found| &found.route);
                    let learnt = deciding.found_with.get();
                    let acting = acting_on(deciding, &learnt, routes);
                    view! { {acting} {results(bench, &found, &learnt)} }.into_any()
                })
        })}
    }
    .into_any()
}
