//! Four figures at the foot of the window where the outcome is not beside the charts, judged as its sentences
//! judge them; or why there are none.

use super::outcome::{Mark, refusal_words, say_refusal, tone_class};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::route::{self, Sentence, Tone};
use recalesce::units::{format_fixed, format_percent};
use recalesce_texts::page as texts;

/// A figure of the dock.
struct Figure {
    term: &'static str,
    figure: String,
    unit: String,
    /// How its sentence judges it, if it does and the figure is there.
    tone: Option<Tone>,
}

/// The four figures of the dock.
fn figures(bench: Bench) -> Vec<Figure> {
    let Some(outcome) = bench.outcome() else {
        return Vec::new();
    };
    let parted = |words: String| {
        let (figure, unit) = words.split_once('\u{a0}').unwrap_or((&words, ""));
        (figure.to_owned(), unit.to_owned())
    };
    let margin = outcome.quench.transformed.given().map(|t| {
        let sign = if t.margin.seconds < 0.0 {
            "\u{2212}"
        } else {
            ""
        };
        parted(sign.to_owned() + &route::margin_words(t.margin.seconds))
    });
    let last = outcome.judged_stages().last();
    let austenite = last
        .and_then(|stage| stage.fractions)
        .map(|f| parted(format_percent(f.austenite)));
    let hardness = last.and_then(|stage| Some((format_fixed(stage.hrc()?, 1), stage.band_words())));
    let of_hardness = match outcome.judged_edge() {
        Some(_) => texts::charts::EDGE_HARDNESS,
        None => texts::charts::HARDNESS,
    };
    let sentences = route::sentences(&bench.shown_as_real(), &outcome, bench.scale.get());
    let judged = |sentence: Option<&Sentence>| sentence.map(|sentence| sentence.tone);
    let figure = |term, parts: Option<(String, String)>, tone: Option<Tone>| {
        let tone = tone.filter(|_| parts.is_some());
        let (figure, unit) = parts.unwrap_or_else(|| ("–".to_owned(), String::new()));
        Figure {
            term,
            figure,
            unit,
            tone,
        }
    };
    let dissolved = format_fixed(outcome.soak.end.carbon_wt, 2);
    vec![
        figure(
            texts::charts::DISSOLVED,
            Some((dissolved, "%\u{a0}C".to_owned())),
            None,
        ),
        figure(texts::charts::MARGIN, margin, judged(sentences.get(1))),
        figure(texts::charts::AUSTENITE, austenite, None),
        figure(of_hardness, hardness, judged(sentences.last())),
    ]
}

fn row(figure: Figure) -> impl IntoView {
    let mark = figure.tone.map(|tone| view! { <Mark tone=tone /> });
    view! {
        <div class=figure.tone.map(tone_class)>
            <dt>{figure.term} " " {mark}</dt>
            <dd>{figure.figure} " " <small>{figure.unit}</small></dd>
        </div>
    }
}

/// The dock.
#[component]
pub(crate) fn Dock() -> impl IntoView {
    let bench = bench();
    let refused = refusal_words(bench);
    let inside = move || match refused.get() {
        // The rest stands at its stage.
        Some(words) => {
            let first = words.split_inclusive(". ").next().unwrap_or_default();
            say_refusal(first.to_owned())
        }
        None => view! { <dl>{figures(bench).into_iter().map(row).collect_view()}</dl> }.into_any(),
    };
    view! {
        <div class="dock" aria-hidden="true">
            {inside}
        </div>
    }
    .into_any()
}
