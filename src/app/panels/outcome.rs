//! The outcome, always in view: sentences, what the piece is made of, hardness, cautions.

use super::opening::Opening;
use crate::charts;
use crate::parts::panels::{Panel, panel};
use crate::plot::Plot;
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::chart::{Constituent, ladder_height_px, phase_bar, swatch};
use recalesce::route::{
    NumberKey, Outcome, Part, Sentence, Step, Tone, caution_text, departure_lines, place_name,
    sentences, step_cautions,
};
use recalesce::transform::Fractions;
use recalesce::units::{format_fixed, format_percent};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Disc with a tick, triangle, or cross: the verdict by shape; a dot where there is none.
#[component]
pub(crate) fn Mark(tone: Tone) -> impl IntoView {
    match tone {
        Tone::Plain => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
                <circle cx="8" cy="8" r="2.5" fill="currentColor"></circle>
            </svg>
        }
        .into_any(),
        Tone::Holds => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label=texts::outcome::HOLDS>
                <circle class="mark-holds" cx="8" cy="8" r="6.5"></circle>
                <path class="mark-cut" d="M4.8 8.2l2.3 2.3 4.2-4.8"></path>
            </svg>
        }
        .into_any(),
        Tone::Narrow => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label=texts::outcome::LOOK_CLOSER>
                <path class="mark-narrow" d="M8 1.2L15 14.4H1Z"></path>
                <path class="mark-cut" d="M8 5.6v4.2M8 11.2v1.7"></path>
            </svg>
        }
        .into_any(),
        Tone::Misses => view! {
            <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label=texts::outcome::MISSES>
                <rect class="mark-misses" x="1.5" y="1.5" width="13" height="13"></rect>
                <path class="mark-cut" d="M4.9 4.9l6.2 6.2M11.1 4.9l-6.2 6.2"></path>
            </svg>
        }
        .into_any(),
    }
}

/// A number that opens what stands behind it.
pub(super) fn number(text: String, key: NumberKey) -> AnyView {
    let bench = bench();
    view! {
        <button
            type="button"
            class="number"
            title=texts::why::WHERE_FROM
            on:click=move |_| bench.opened.set(Some(key))
        >
            {text}
        </button>
    }
    .into_any()
}

/// The class of what is judged, for its ink.
pub(crate) const fn tone_class(tone: Tone) -> &'static str {
    match tone {
        Tone::Plain => "",
        Tone::Holds => "holds",
        Tone::Narrow => "narrow",
        Tone::Misses => "misses",
    }
}

/// One sentence with its numbers as keys.
#[component]
pub(crate) fn Say(sentence: Sentence) -> impl IntoView {
    let class = format!("say {}", tone_class(sentence.tone));
    let mut rest = sentence.parts.into_iter().peekable();
    let mut parts = Vec::new();
    while let Some(part) = rest.next() {
        parts.push(match part {
            Part::Text(text) => text.into_any(),
            Part::Lead(text) => view! { <span class="lead">{text}</span> }.into_any(),
            Part::Number(text, key) => match rest.peek_mut() {
                // A mark after a number never begins a line.
                Some(Part::Text(next)) if next.starts_with(['.', ',', ';', ':', ')']) => {
                    let mark = next.remove(0);
                    view! { <span class="whole">{number(text, key)} {mark.to_string()}</span> }
                        .into_any()
                }
                _ => number(text, key),
            },
        });
    }
    view! {
        <p class=class>
            <Mark tone=sentence.tone />
            {parts}
        </p>
    }
}

/// The steps after which it is told what the piece is made of: a snap temper changes next to nothing of it,
/// and of the tempers it is the last.
const TOLD_AFTER: [&str; 4] = [
    texts::outcome::SOAK,
    texts::outcome::QUENCH,
    texts::outcome::COLD,
    texts::outcome::TEMPER,
];

/// What the piece is made of after each of these, as far as it is known.
fn made_of(outcome: &Outcome) -> [Option<Fractions>; 4] {
    let mut after = [None; 4];
    // Of the place that is judged; the soak is told of the whole.
    for stage in outcome.stages.iter().take(1).chain(outcome.judged_stages()) {
        let row = match stage.step {
            Step::Soak => 0,
            Step::Quench => 1,
            Step::Snap => continue,
            Step::Cold => 2,
            Step::Temper(_) => 3,
        };
        after[row] = stage.fractions.or(after[row]);
    }
    after
}

/// Phase bars after soak, quench, cold and the last temper, with their words. Each is made once and only
/// hidden where there is none: a picture is dear to make, and what it listens to keeps some of it.
#[component]
fn Phases() -> impl IntoView {
    let bench = bench();
    let shown = Memo::new(move |_| bench.outcome().map_or([None; 4], |o| made_of(&o)));
    let last_row = Memo::new(move |_| shown.with(|s| s.iter().rposition(Option::is_some)));
    let last = move || shown.with(|s| s[last_row.get()?].as_ref().map(charts::amounts));
    let display = |is_there: bool| if is_there { "contents" } else { "none" };
    let bars = TOLD_AFTER.into_iter().enumerate().map(|(i, after)| {
        let fractions = move || shown.with(|s| s[i]);
        let scene = move |w, h| Some(phase_bar(&charts::amounts(&fractions()?), [w, h]));
        view! {
            <div
                class:last=move || last_row.get() == Some(i)
                style:display=move || display(fractions().is_some())
            >
                <span>{after}</span>
                <Plot class="bar" scene=scene />
            </div>
        }
    });
    let key = Constituent::ALL.map(|phase| {
        let share = Memo::new(move |_| {
            let amount = last()?.into_iter().find(|(other, _)| *other == phase)?;
            (amount.1 > 0.0005).then(|| format_percent(amount.1))
        });
        let word = move || phase_word(phase, last_row.get() == Some(0));
        view! {
            <span style:display=move || if share.with(Option::is_some) { "flex" } else { "none" }>
                <Plot class="swatch" scene=move |w, h| Some(swatch(phase, w.min(h))) />
                {word}
                " "
                <b>{share}</b>
            </span>
        }
    });
    let title = move || match judged_place(bench) {
        Some(place) => texts::outcome::made_of_at(place),
        None => texts::outcome::MADE_OF.to_owned(),
    };
    view! {
        <section>
            <h3>{title}</h3>
            <div style:display=move || display(last_row.get().is_some())>
                <div class="bars">{bars.collect_view()}</div>
                <div class="key">{key.into_iter().collect_view()}</div>
            </div>
        </section>
    }
    .into_any()
}

/// The word of a constituent; austenite is retained only once the piece is cold.
pub(super) const fn phase_word(phase: Constituent, is_hot: bool) -> &'static str {
    match phase {
        Constituent::Austenite if is_hot => texts::outcome::AUSTENITE,
        Constituent::Martensite => texts::outcome::MARTENSITE,
        Constituent::Austenite => texts::outcome::RETAINED_AUSTENITE,
        Constituent::Carbide => texts::outcome::CARBIDE,
        Constituent::Pearlite => texts::outcome::PEARLITE,
        Constituent::Bainite => texts::outcome::BAINITE,
        Constituent::Ferrite => texts::outcome::FERRITE,
    }
}

/// The place that is judged, where places differ.
fn judged_place(bench: Bench) -> Option<&'static str> {
    bench.outcome()?.judged_place().map(place_name)
}

/// Steps for which the ladder has room at least.
const FEWEST_STEPS: usize = 4;

/// Hardness after each step, with its band.
#[component]
fn Ladder() -> impl IntoView {
    let bench = bench();
    let target = move || {
        let target = bench.shown().target;
        texts::outcome::target_range(
            &format_fixed(target.least_hrc, 0),
            &format_fixed(target.most_hrc, 0),
        )
    };
    let title = move || {
        judged_place(bench).map_or_else(
            || texts::outcome::HARDNESS_HRC.to_owned(),
            texts::outcome::hardness_at,
        )
    };
    let nothing = move || {
        let is_known = |o: Arc<Outcome>| o.stages.iter().any(|stage| stage.hardness.is_some());
        if bench.outcome().is_some_and(is_known) {
            texts::outcome::OFF_THE_SCALE.to_owned()
        } else {
            texts::outcome::NO_HARDNESS.to_owned()
        }
    };
    let height = move || {
        let steps = bench.outcome().map_or(0, |o| o.stages.len());
        format!("{}px", ladder_height_px(steps.max(FEWEST_STEPS)))
    };
    view! {
        <section>
            <h3>{title} <i>{target}</i></h3>
            <div style:height=height>
                <Plot
                    class="ladder" file="hardness-by-step"
                    scene=move |w, _| charts::ladder_scene(bench, w)
                    nothing=Signal::derive(nothing)
                />
            </div>
        </section>
    }
}

/// The sentences of the outcome, for wherever they are shown.
pub(crate) fn say_all(first_only: Option<usize>) -> impl IntoView {
    let bench = bench();
    let all = Memo::new(move |_| {
        let outcome = bench.outcome()?;
        let scale = bench.scale.get();
        let all = sentences(&bench.shown_as_real(), &outcome, scale);
        Some(match first_only {
            Some(i) => all.into_iter().skip(i).take(1).collect(),
            None => all,
        })
    });
    say_each(all)
}

/// Sentences, one under the other. One that stays as it is is not made anew.
pub(crate) fn say_each(all: Memo<Option<Vec<Sentence>>>) -> impl IntoView {
    let count = Memo::new(move |_| all.with(|all| all.as_ref().map_or(0, Vec::len)));
    move || {
        (0..count.get())
            .map(|i| {
                let one = Memo::new(move |_| all.with(|all| all.as_ref()?.get(i).cloned()));
                move || {
                    one.get()
                        .map(|sentence| view! { <Say sentence=sentence /> })
                }
            })
            .collect_view()
    }
}

/// Why the route has no outcome of its own, if it has none.
pub(crate) fn refusal_words(bench: Bench) -> Memo<Option<String>> {
    Memo::new(move |_| {
        let scale = bench.scale.get();
        bench
            .computed
            .with(|c| c.error.as_ref().map(|error| error.words(scale)))
    })
}

/// A refusal as a line.
pub(crate) fn say_refusal(words: String) -> AnyView {
    view! {
        <p class="say misses">
            <Mark tone=Tone::Misses />
            {words}
        </p>
    }
    .into_any()
}

/// The line of why the route has no outcome of its own, if it has none.
pub(crate) fn refusal(bench: Bench) -> AnyView {
    let words = refusal_words(bench);
    (move || words.get().map(say_refusal)).into_any()
}

/// The outcome.
#[component]
pub(crate) fn OutcomePanel() -> impl IntoView {
    let bench = bench();
    let is_stale = move || bench.is_of_before();
    let texts = Memo::new(move |_| {
        let Some(outcome) = bench.outcome() else {
            return Vec::new();
        };
        let scale = bench.scale.get();
        let route = bench.shown();
        let of_steps = step_cautions(&route, &outcome, scale);
        // What departs from the handbook in an experiment does so on purpose.
        let departs = if bench.is_guided.get() {
            Vec::new()
        } else {
            departure_lines(&route, scale)
        };
        let length = bench.length.get();
        let cautions = outcome.cautions.iter();
        let later = cautions.map(|caution| caution_text(caution, scale, length));
        let told = of_steps.into_iter().chain(later).chain(departs);
        told.collect::<Vec<_>>()
    });
    let cautions = move || {
        let texts = texts.get().into_iter();
        texts
            .map(|text| {
                view! {
                    <li>
                        <Mark tone=Tone::Narrow />
                        {text}
                    </li>
                }
            })
            .collect_view()
    };
    view! {
        <aside class="out" aria-label=texts::outcome::OUTCOME>
            <div role="alert">{refusal(bench)}</div>
            {panel(Panel::Acting)}
            <div class="sentences" class:stale=is_stale>
                {say_all(None)}
            </div>
            <div class:stale=is_stale>
                <Phases />
            </div>
            <div class:stale=is_stale>
                <Ladder />
                <Opening title=texts::outcome::HOW_SURE_BY_PIECES panel=Panel::Drawn />
                <Opening title=texts::outcome::IN_USE panel=Panel::InUse />
            </div>
            <section>
                <ul class="cautions">{cautions}</ul>
            </section>
        </aside>
    }
    .into_any()
}
