//! One step of an experiment: told, predicted, done on the bench, or answered by the model.

use super::lessons::Lessons;
use crate::controls::live;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::route::Outcome;
use recalesce::teach::{Experiment, Goal, Number, Step, text_on_scale};
use recalesce::units::{TemperatureScale, format_fixed, parse_number};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// A text with its temperatures on the scale in use.
pub(super) fn told(bench: Bench, text: &str) -> impl Fn() -> String + Send + 'static {
    let text = text.to_owned();
    move || text_on_scale(&text, bench.scale.get())
}

/// A button that goes on.
fn next(lessons: Lessons) -> AnyView {
    view! {
        <div class="actions">
            <button type="button" class="press go" on:click=move |_| lessons.next()>
                {texts::lessons::GO_ON}
            </button>
        </div>
    }
    .into_any()
}

/// The outcome of the route as it stands; none while it has none.
fn outcome(bench: Bench) -> Option<Arc<Outcome>> {
    bench.computed.with(|computed| {
        let is_of_it = computed.error.is_none();
        computed.outcome.clone().filter(|_| is_of_it)
    })
}

fn now(bench: Bench, number: Number) -> Option<f64> {
    let outcome = outcome(bench)?;
    bench.route.with(|route| number.of(route, &outcome))
}

/// A number on the scale of temperature in use, and the word for its unit.
fn on_scale(number: Number, value: f64, scale: TemperatureScale) -> (f64, &'static str) {
    match number.unit() {
        "°C" => (scale.of_celsius(value), scale.symbol()),
        "K" => (scale.of_kelvin_difference(value), scale.symbol()),
        unit => (value, unit),
    }
}

/// Decimals that a number is told with.
const fn decimals(number: Number) -> usize {
    match number {
        Number::CarbonWt | Number::MarginFactor | Number::FilmUm => 2,
        Number::SoakC | Number::TemperC | Number::MsC | Number::SoakMin => 0,
        _ => 1,
    }
}

fn words(number: Number, value: f64, scale: TemperatureScale) -> String {
    let (value, unit) = on_scale(number, value, scale);
    let figure = format_fixed(value, decimals(number));
    if unit.is_empty() {
        format!("×{figure}")
    } else {
        format!("{figure}\u{a0}{unit}")
    }
}

/// How a goal stands.
fn goal(bench: Bench, goal: Goal) -> String {
    let scale = bench.scale.get();
    let told = |value| words(goal.number, value, scale);
    let wanted = match (goal.least, goal.most) {
        (Some(least), Some(most)) => texts::general::range(&told(least), &told(most)),
        (Some(least), None) => texts::lessons::or_more(&told(least)),
        (None, Some(most)) => texts::lessons::or_less(&told(most)),
        (None, None) => String::new(),
    };
    let stands = now(bench, goal.number).map_or_else(|| texts::lessons::NOT_KNOWN.to_owned(), told);
    texts::lessons::stands_wanted(goal.number.words(), &stands, &wanted)
}

fn predict(
    lessons: Lessons,
    question: &str,
    choices: &[String],
    right: usize,
    because: &str,
) -> AnyView {
    let chosen = lessons.chosen;
    let buttons = choices.iter().enumerate().map(|(place, words)| {
        view! {
            <button
                type="button"
                class="press"
                aria-pressed=move || (chosen.get() == Some(place)).to_string()
                on:click=move |_| chosen.set(Some(place))
            >
                {told(lessons.bench, words)}
            </button>
        }
    });
    let right_words = choices.get(right).cloned().unwrap_or_default();
    let because = because.to_owned();
    let scale = lessons.bench.scale;
    let answer = live(move || {
        let Some(place) = chosen.get() else {
            return view! { <p class="hint">{texts::lessons::VEILED}</p> }.into_any();
        };
        let verdict = if place == right {
            texts::lessons::SO_IT_IS.to_owned()
        } else {
            let right = text_on_scale(&right_words, scale.get());
            texts::lessons::other_way(&right)
        };
        let because = text_on_scale(&because, scale.get());
        view! {
            <p class="told">{verdict} {because}</p>
            {next(lessons)}
        }
        .into_any()
    });
    view! {
        <p>{told(lessons.bench, question)}</p>
        <div class="actions" role="group" aria-label=texts::lessons::WHAT_DO_YOU_EXPECT>
            {buttons.collect_view()}
        </div>
        {answer}
    }
    .into_any()
}

fn change(
    lessons: Lessons,
    of: &Arc<Experiment>,
    step: usize,
    task: &str,
    until: &[Goal],
) -> AnyView {
    let bench = lessons.bench;
    let goals = until.to_vec();
    let of_effect = goals.clone();
    // Once it was reached the step is done, whatever is tried after that.
    Effect::new(move |_| {
        let is_reached = outcome(bench).is_some_and(|outcome| {
            bench.route.with(|route| {
                of_effect
                    .iter()
                    .all(|goal| goal.is_reached(route, &outcome))
            })
        });
        if is_reached {
            lessons.is_reached.try_set(true);
        }
    });
    let of = of.clone();
    let show = move |_| {
        if let Ok(route) = of.shown_at(step) {
            bench.route.set(route);
        }
        // Whatever else was changed on the bench, what was shown leads on.
        lessons.is_reached.set(true);
    };
    let stands = live(move || {
        let rows = goals
            .iter()
            .map(|one| view! { <li>{goal(bench, *one)}</li> });
        rows.collect_view().into_any()
    });
    view! {
        <p>{told(bench, task)}</p>
        <ul class="goals">{stands}</ul>
        {live(move || {
            if lessons.is_reached.get() {
                view! {
                    <p class="told">{texts::lessons::DONE}</p>
                    {next(lessons)}
                }
                    .into_any()
            } else {
                ().into_any()
            }
        })}
        <button type="button" class="press" on:click=show>
            {texts::lessons::SHOW_ME}
        </button>
    }
    .into_any()
}

fn ask(lessons: Lessons, question: &str, number: Number, within: f64, because: &str) -> AnyView {
    let bench = lessons.bench;
    let wrong = RwSignal::new(None::<String>);
    let take =
        move |text: String| match parse_number(&text, bench.has_decimal_comma.get_untracked()) {
            Ok(value) => {
                wrong.set(None);
                lessons.answered.set(Some(value));
            }
            Err(doubt) => wrong.set(Some(doubt.map_or_else(
                || texts::lessons::WRITE_A_NUMBER.to_owned(),
                |doubt| doubt.to_string(),
            ))),
        };
    let because = because.to_owned();
    let verdict = live(move || {
        let Some(answer) = lessons.answered.get() else {
            return ().into_any();
        };
        let Some(value) = now(bench, number) else {
            return view! {
                <p class="told">{texts::lessons::NOT_TOLD}</p>
                {next(lessons)}
            }
            .into_any();
        };
        // In the unit that the question asks in, whatever the page shows.
        let scale = TemperatureScale::Celsius;
        let verdict = if (answer - value).abs() <= within {
            texts::lessons::RIGHT_SAYS
        } else {
            texts::lessons::NOT_QUITE_SAYS
        };
        let because = text_on_scale(&because, bench.scale.get());
        view! {
            <p class="told">
                {verdict} <b class="answer">{words(number, value, scale)}</b> ". " {because}
            </p>
            {next(lessons)}
        }
        .into_any()
    });
    view! {
        <label class="field answer-field">
            <span class="label">{told(bench, question)}</span>
            <input
                class="text"
                type="text"
                inputmode="decimal"
                autocomplete="off"
                placeholder=number.unit()
                on:change:target=move |event| take(event.target().value())
            />
        </label>
        <p class="wrong" role="alert">
            {move || wrong.get()}
        </p>
        {verdict}
    }
    .into_any()
}

/// A step.
pub(super) fn step_view(
    lessons: Lessons,
    of: &Arc<Experiment>,
    place: usize,
    step: &Step,
) -> AnyView {
    match step {
        Step::Tell(text) => view! {
            <p>{told(lessons.bench, text)}</p>
            {next(lessons)}
        }
        .into_any(),
        Step::Predict {
            question,
            choices,
            right,
            because,
        } => predict(lessons, question, choices, *right, because),
        Step::Change { task, until, .. } => change(lessons, of, place, task, until),
        Step::Ask {
            question,
            number,
            within,
            because,
        } => ask(lessons, question, *number, *within, because),
    }
}
