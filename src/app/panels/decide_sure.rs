//! How sure the route on the bench is, and what matters most about it.

use super::decide::{Deciding, Working};
use super::decide_acting::{ActingHere, acting_on};
use super::save_table::SaveTable;
use crate::controls::live;
use crate::decide::{Matters, Question, Sure, Told, Varies};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::Quantiles;
use recalesce::units::{format_factor, format_fixed, format_percent, format_weight_percent};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Least part of a spread that is shown.
const LEAST_PART: f64 = 0.01;

impl Varies {
    const fn words(self) -> &'static str {
        match self {
            Self::FinalHrc => texts::decide::HARDNESS_IN_THE_END,
            Self::QuenchedHrc => texts::decide::HARDNESS_QUENCHED,
            Self::QuenchedMartensite => texts::decide::MARTENSITE_QUENCHED,
            Self::FinalAustenite => texts::decide::AUSTENITE_IN_THE_END,
            Self::Carbon => texts::decide::CARBON,
            Self::Grain => texts::decide::GRAIN,
            Self::Margin => texts::decide::MARGIN,
        }
    }

    fn figure(self, value: f64) -> String {
        match self {
            Self::FinalHrc | Self::QuenchedHrc => format!("{}\u{a0}HRC", format_fixed(value, 1)),
            Self::QuenchedMartensite | Self::FinalAustenite => format_percent(value),
            Self::Carbon => format_weight_percent(value),
            Self::Grain => format_fixed(value, 1),
            Self::Margin => format_factor(value),
        }
    }
}

fn row(varies: Varies, quantiles: &Quantiles) -> AnyView {
    let cells = [
        quantiles.p05,
        quantiles.p25,
        quantiles.p50,
        quantiles.p75,
        quantiles.p95,
    ]
    .map(|value| view! { <td>{varies.figure(value)}</td> });
    view! {
        <tr>
            <th scope="row">{varies.words()}</th>
            {cells}
        </tr>
    }
    .into_any()
}

/// What matters for one number: the sentence, and a bar for each thing that is open.
fn matters(one: &Matters) -> AnyView {
    let all: f64 = one
        .shares
        .iter()
        .map(|(_, total, _)| total.max(0.0))
        .sum::<f64>()
        .max(f64::MIN_POSITIVE);
    let parts = one
        .shares
        .iter()
        .map(|(name, total, error)| (name, total.max(0.0) / all, error / all));
    let bars = parts
        .filter(|(_, part, _)| *part >= LEAST_PART)
        .map(|(name, part, error)| {
            view! {
                <li>
                    <span>{name.clone()}</span>
                    <span class="bar" aria-hidden="true">
                        <i style:width=format!("{:.1}%", 100.0 * part)></i>
                    </span>
                    <span class="part">
                        {format_percent(part)} <small>"\u{a0}±\u{a0}" {format_percent(error)}</small>
                    </span>
                </li>
            }
        })
        .collect_view();
    view! {
        <section class="matters">
            <p>{one.words.clone()}</p>
            <ul>{bars}</ul>
        </section>
    }
    .into_any()
}

fn results(bench: Bench, sure: &Sure, seed: u32) -> AnyView {
    let in_100 = |part: f64| format_fixed(100.0 * part, 0);
    let mut says = Vec::new();
    says.extend(
        sure.meets_target_part
            .map(|part| texts::decide::meet_target(&in_100(part))),
    );
    says.extend(
        sure.hardens_part
            .map(|part| texts::decide::harden_slowest(&in_100(part))),
    );
    if sure.refused > 0 {
        says.push(texts::decide::cases_refused(
            sure.refused,
            sure.cases + sure.refused,
        ));
    }
    let rows = sure
        .numbers
        .iter()
        .map(|(varies, quantiles)| row(*varies, quantiles))
        .collect_view();
    let open = sure
        .open
        .iter()
        .map(|(name, source)| view! { <li>{name.clone()} ": " {source.clone()}</li> })
        .collect_view();
    view! {
        <p class="says">{says.join(" ")}</p>
        <div class="scrolled" tabindex="0" role="region" aria-label=texts::decide::HOW_SURE_EACH>
            <table>
                <thead>
                    <tr>
                        <td></td>
                        <th scope="col">{texts::decide::ONE_IN_20_BELOW}</th>
                        <th scope="col">{texts::decide::QUARTER_BELOW}</th>
                        <th scope="col">{texts::decide::MIDDLE}</th>
                        <th scope="col">{texts::decide::QUARTER_ABOVE}</th>
                        <th scope="col">{texts::decide::ONE_IN_20_ABOVE}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        <SaveTable file="how-sure" />
        <h4>{texts::decide::WHAT_MATTERS}</h4>
        {if sure.is_whole {
            sure.matters.iter().map(matters).collect_view().into_any()
        } else {
            view! { <p class="hint">{texts::decide::BEING_WORKED_OUT}</p> }.into_any()
        }}
        <details>
            <summary>{texts::decide::WHAT_WAS_DRAWN}</summary>
            <ul class="open">{open}</ul>
            <p class="hint">
                {texts::decide::how_drawn(sure.cases + sure.refused, seed)}
            </p>
            <button
                type="button"
                class="press"
                on:click=move |_| bench.change(|route| route.seed = seed.wrapping_add(1))
            >
                {texts::decide::ANOTHER_SEED}
            </button>
        </details>
    }
    .into_any()
}

/// The panel.
#[component]
pub(super) fn HowSure(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let start = move |()| {
        let route = bench.route.get_untracked();
        let tolerances = untrack(|| deciding.tolerances(&route));
        deciding.weighed.set(Some(route.clone()));
        deciding.sure.set(None);
        let learnt = untrack(|| deciding.counted_with());
        deciding.weighed_with.set(learnt.clone());
        let question = Question::Sure(Box::new(route), tolerances, learnt);
        deciding.weighing.ask(&question, move |told| match told {
            Told::Sure(sure) => {
                let is_whole = sure.is_whole;
                deciding.sure.try_set(Some(Arc::new(*sure)));
                is_whole
            }
            _ => false,
        });
    };
    let is_of_another = move || {
        deciding.sure.with(Option::is_some)
            && deciding
                .weighed
                .with(|weighed| bench.route.with(|now| weighed.as_ref() != Some(now)))
            || deciding.sure.with(Option::is_some)
                && deciding
                    .weighed_with
                    .with(|with| *with != deciding.counted_with())
    };
    // Beside numbers, what they were asked with; before, what would be counted with now.
    let acting = move || {
        if deciding.sure.with(Option::is_none) {
            return Some(view! { <ActingHere deciding=deciding /> }.into_any());
        }
        deciding.weighed.with(|route| {
            deciding
                .weighed_with
                .with(|learnt| acting_on(deciding, learnt, route.iter()))
        })
    };
    view! {
        <h3>{texts::decide::HOW_SURE}</h3>
        <p class="hint">
            {texts::decide::ABOUT_SURE}
        </p>
        <Working task=deciding.weighing words=texts::decide::WORK_IT_OUT start=start />
        {acting}
        <Show when=is_of_another>
            <p class="hint">{texts::decide::CHANGED_SINCE}</p>
        </Show>
        {live(move || {
            let seed = deciding.weighed.with(|route| route.as_ref().map_or(1, |route| route.seed));
            deciding.sure.get().map_or_else(|| ().into_any(), |sure| results(bench, &sure, seed))
        })}
    }
    .into_any()
}
