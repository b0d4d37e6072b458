//! The outcome, always in view: sentences, what the piece is made of, hardness, cautions.

use super::opening::Opening;
use crate::app::charts;
use crate::app::parts::panels::Panel;
use crate::app::plot::Plot;
use crate::app::state::bench;
use crate::chart::{Constituent, phase_bar, swatch};
use crate::route::{NumberKey, Part, Sentence, Step, Tone, caution_text, sentences, step_cautions};
use crate::units::{format_fixed, format_percent};
use leptos::prelude::*;

/// Disc with a tick, triangle, or cross: the verdict by shape.
#[component]
pub(crate) fn Mark(tone: Tone) -> impl IntoView {
    match tone {
        Tone::Holds => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label="holds">
                <circle class="mark-holds" cx="8" cy="8" r="6.5"></circle>
                <path class="mark-cut" d="M4.8 8.2l2.3 2.3 4.2-4.8"></path>
            </svg>
        },
        Tone::Narrow => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label="look closer">
                <path class="mark-narrow" d="M8 1.2L15 14.4H1Z"></path>
                <path class="mark-cut" d="M8 5.6v4.2M8 11.2v1.7"></path>
            </svg>
        },
        Tone::Misses => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label="misses">
                <rect class="mark-misses" x="1.5" y="1.5" width="13" height="13"></rect>
                <path class="mark-cut" d="M4.9 4.9l6.2 6.2M11.1 4.9l-6.2 6.2"></path>
            </svg>
        },
    }
}

/// A number that opens what stands behind it.
pub(super) fn number(text: String, key: NumberKey) -> AnyView {
    let bench = bench();
    view! {
        <button
            type="button"
            class="number"
            title="Where this number comes from"
            on:click=move |_| bench.opened.set(Some(key))
        >
            {text}
        </button>
    }
    .into_any()
}

/// One sentence with its numbers as keys.
#[component]
pub(crate) fn Say(sentence: Sentence) -> impl IntoView {
    let class = match sentence.tone {
        Tone::Holds => "say holds",
        Tone::Narrow => "say narrow",
        Tone::Misses => "say misses",
    };
    let parts = sentence
        .parts
        .into_iter()
        .map(|part| match part {
            Part::Text(text) => text.into_any(),
            Part::Lead(text) => view! { <span class="lead">{text}</span> }.into_any(),
            Part::Number(text, key) => number(text, key),
        })
        .collect_view();
    view! {
        <p class=class>
            <Mark tone=sentence.tone />
            {parts}
        </p>
    }
}

const fn step_word(step: Step) -> &'static str {
    match step {
        Step::Soak => "soak",
        Step::Quench => "quench",
        Step::Cold => "cold",
        Step::Temper(_) => "temper",
    }
}

/// Phase bars after soak, quench, cold and the last temper.
#[component]
fn Phases() -> impl IntoView {
    let bench = bench();
    let bars = move || {
        let outcome = bench.outcome()?;
        let shown: Vec<_> = outcome
            .stages
            .iter()
            .filter(|stage| stage.fractions.is_some() && !matches!(stage.step, Step::Temper(_)))
            .chain(
                outcome
                    .stages
                    .iter()
                    .rev()
                    .find(|stage| matches!(stage.step, Step::Temper(_))),
            )
            .filter_map(|stage| stage.fractions.map(|fractions| (stage.step, fractions)))
            .collect();
        let last = shown.len().saturating_sub(1);
        let is_hot = shown.last().is_some_and(|(step, _)| *step == Step::Soak);
        let rows = shown
            .iter()
            .enumerate()
            .map(|(i, &(step, fractions))| {
                let class = if i == last { "bar last" } else { "bar" };
                view! {
                    <span>{step_word(step)}</span>
                    <Plot class=class scene=move |w, h| Some(phase_bar(&charts::amounts(&fractions), [w, h])) />
                }
            })
            .collect_view();
        let key = shown.last().map(|&(_, fractions)| {
            charts::amounts(&fractions)
                .into_iter()
                .filter(|&(_, fraction)| fraction > 0.0005)
                .map(|(phase, fraction)| {
                    view! {
                        <span>
                            <Plot class="swatch" scene=move |w, h| Some(swatch(phase, w.min(h))) />
                            {phase_word(phase, is_hot)}
                            " "
                            <b>{format_percent(fraction)}</b>
                        </span>
                    }
                })
                .collect_view()
        });
        Some(view! {
            <div class="bars">{rows}</div>
            <div class="key">{key}</div>
        })
    };
    view! {
        <section>
            <h3>"What it is made of"</h3>
            {bars}
        </section>
    }
    .into_any()
}

/// The word of a constituent; austenite is retained only once the piece is cold.
pub(super) const fn phase_word(phase: Constituent, is_hot: bool) -> &'static str {
    match phase {
        Constituent::Austenite if is_hot => "austenite",
        Constituent::Martensite => "martensite",
        Constituent::Austenite => "retained austenite",
        Constituent::Carbide => "carbide",
        Constituent::Pearlite => "pearlite",
        Constituent::Bainite => "bainite",
        Constituent::Ferrite => "ferrite",
    }
}

/// Hardness after each step, with its band.
#[component]
fn Ladder() -> impl IntoView {
    let bench = bench();
    let target = move || {
        bench.route.with(|r| {
            format!(
                "target {} to {}",
                format_fixed(r.target.least_hrc, 0),
                format_fixed(r.target.most_hrc, 0)
            )
        })
    };
    view! {
        <section>
            <h3>"Hardness, HRC" <i>{target}</i></h3>
            <Plot
                class="ladder"
                scene=move |w, _| charts::ladder_scene(bench, w)
                nothing=Signal::stored("No hardness is known.".to_owned())
            />
        </section>
    }
}

/// The sentences, for wherever they are shown.
pub(crate) fn say_all(first_only: Option<usize>) -> impl IntoView {
    let bench = bench();
    move || {
        let outcome = bench.outcome()?;
        let route = bench.route.get();
        let all = sentences(&route, &outcome, bench.scale.get());
        let shown: Vec<_> = match first_only {
            Some(i) => all.into_iter().skip(i).take(1).collect(),
            None => all,
        };
        Some(
            shown
                .into_iter()
                .map(|sentence| view! { <Say sentence=sentence /> })
                .collect_view(),
        )
    }
}

/// The outcome.
#[component]
pub(crate) fn OutcomePanel() -> impl IntoView {
    let bench = bench();
    let is_stale = move || bench.computed.with(|c| c.error.is_some());
    let error = move || {
        let scale = bench.scale.get();
        bench
            .computed
            .with(|c| c.error.as_ref().map(|error| error.words(scale)))
    };
    let cautions = move || {
        let outcome = bench.outcome()?;
        let scale = bench.scale.get();
        let of_steps = bench
            .route
            .with(|route| step_cautions(route, &outcome, scale));
        let later = outcome.cautions.iter().map(|c| caution_text(c, scale));
        Some(
            of_steps
                .into_iter()
                .chain(later)
                .map(|text| {
                    view! {
                        <li>
                            <Mark tone=Tone::Narrow />
                            {text}
                        </li>
                    }
                })
                .collect_view(),
        )
    };
    view! {
        <aside class="out" aria-label="Outcome">
            {move || {
                error()
                    .map(|text| {
                        view! {
                            <p class="say misses" role="alert">
                                <Mark tone=Tone::Misses />
                                {text}
                            </p>
                        }
                    })
            }}
            <div class="sentences" class:stale=is_stale>
                {say_all(None)}
            </div>
            <div class:stale=is_stale>
                <Phases />
            </div>
            <div class:stale=is_stale>
                <Ladder />
                <Opening title="What it means in use" panel=Panel::InUse />
            </div>
            <section>
                <ul class="cautions">{cautions}</ul>
            </section>
        </aside>
    }
    .into_any()
}
