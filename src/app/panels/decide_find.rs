//! Finding a route: what is asked of it, and the search.

use super::decide::{Deciding, Working};
use super::decide_acting::acting_on;
use super::decide_found::results;
use crate::controls::{Segment, Typed, live, quantities};
use crate::decide::{Question, Told};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::{Limits, Purpose, Sought};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// What may be typed.
const TARGET_HRC: (f64, f64) = (20.0, 68.0);
const AUSTENITE_PERCENT: (f64, f64) = (0.0, 100.0);
const GRAIN_ASTM: (f64, f64) = (-2.0, 15.0);
const TIME_H: (f64, f64) = (0.1, 1000.0);

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
