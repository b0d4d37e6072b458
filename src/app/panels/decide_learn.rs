//! What the logbook teaches of furnace, quenchants, heats and tester, and of the next piece.

use super::acting::{learnt, of_other_models};
use super::decide::{Deciding, Working};
use super::decide_acting::ActingHere;
use crate::controls::{Segment, live};
use crate::decide::{Question, Taught, Told};
use crate::logbook::Reading;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::advise::{Band, Correction};
use recalesce::save::logbook::Run;
use recalesce::units::format_fixed;
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Part by which a band has to be narrower for it to count as learnt.
const TELLS: f64 = 0.05;

fn hrc(band: &Band) -> String {
    let [mean, least, most] = [band.mean, band.least, band.most].map(|hrc| format_fixed(hrc, 1));
    texts::decide::mean_and_range(&mean, &least, &most)
}

fn listed(title: &'static str, words: &[String]) -> Option<AnyView> {
    (!words.is_empty()).then(|| {
        let rows = words.iter().map(|words| view! { <li>{words.clone()}</li> });
        view! {
            <h4>{title}</h4>
            <ul class="taught">{rows.collect_view()}</ul>
        }
        .into_any()
    })
}

fn results(taught: &Taught, is_used: bool) -> AnyView {
    let (told, untold): (Vec<_>, Vec<_>) = taught
        .learnt
        .iter()
        .cloned()
        .partition(|(_, narrower)| *narrower >= TELLS);
    let learnt: Vec<String> = told.into_iter().map(|(words, _)| words).collect();
    let nothing = (!untold.is_empty()).then(|| {
        let count = untold.len();
        view! {
            <details>
                <summary>{texts::decide::says_nothing(count)}</summary>
                <ul class="taught">
                    {untold.into_iter().map(|(words, _)| view! { <li>{words}</li> }).collect_view()}
                </ul>
            </details>
        }
    });
    let next_piece = taught.prediction.as_ref().map(|prediction| {
        let shown = if is_used {
            &prediction.after
        } else {
            &prediction.before
        };
        let other = if is_used {
            &prediction.before
        } else {
            &prediction.after
        };
        let [shown, other] = [shown, other].map(hrc);
        let also = if is_used {
            texts::decide::WITHOUT_IT
        } else {
            texts::decide::WITH_IT
        };
        view! {
            <p class="says">
                {texts::decide::NEXT_PIECE} <b>{shown}</b> ". " {also} {other} "."
            </p>
        }
    });
    let outliers: Vec<String> = taught
        .outliers
        .iter()
        .map(|name| texts::decide::reading_far_off(name))
        .collect();
    view! {
        <p role="status">{texts::decide::readings_counted(taught.used)}</p>
        {next_piece}
        {listed(texts::decide::LEARNT, &learnt)}
        {nothing}
        {listed(texts::decide::NOT_TOLD_APART, &taught.entangled)}
        {listed(texts::decide::FAR_OFF, &outliers)}
        {listed(texts::decide::LEFT_OUT, &taught.not_used)}
        {listed(texts::decide::TEACHES_MOST, &taught.next)}
    }
    .into_any()
}

/// The panel.
#[component]
pub(super) fn Learning(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let log = bench.log;
    log.read();
    let runs = Memo::new(move |_| log.book.with(|book| book.len()));
    let start = move |()| {
        let mut kept: Vec<Run> = log
            .book
            .with_untracked(|book| book.runs().cloned().collect());
        kept.sort_by_key(|run| run.day);
        let logged = kept.iter().map(Run::logged).collect();
        let question = Question::Learn(
            logged,
            Box::new(deciding.shop.get_untracked()),
            Box::new(bench.route.get_untracked()),
            bench.length.get_untracked(),
        );
        deciding.learning.ask(&question, move |told| match told {
            Told::Taught(taught) => {
                // What was switched on before stays so, with what is told now.
                let is_on = untrack(|| deciding.is_used());
                deciding.set_learnt(Correction {
                    is_on,
                    ..taught.correction.clone()
                });
                deciding.taught.try_set(Some(Arc::new(*taught)));
                true
            }
            _ => false,
        });
    };
    let is_used = Signal::derive(move || deciding.is_used());
    let has_learnt = move || learnt(bench).is_some();
    let hint = move || match (log.reading.get(), runs.get()) {
        (Reading::Unasked | Reading::Out, _) => texts::decide::LOGBOOK_BEING_READ.to_owned(),
        (Reading::Done, 0) => texts::decide::NOTHING_LOGGED.to_owned(),
        (Reading::Done, count) => texts::decide::from_runs(count),
    };
    view! {
        <h3>{texts::decide::WHAT_IT_TEACHES}</h3>
        <p class="hint">{hint}</p>
        <Show when=move || runs.get() != 0>
            <Working task=deciding.learning words=texts::decide::READ_LOGBOOK start=start />
        </Show>
        <Show when=has_learnt>
            <div class="actions">
                <span class="hint">{texts::decide::USED_FOR}</span>
                <Segment
                    name=texts::decide::WHAT_IT_TEACHES
                    entries=vec![(false, texts::decide::OFF), (true, texts::decide::ON)]
                    chosen=is_used
                    pick=move |is_on| deciding.use_learnt(is_on)
                />
            </div>
        </Show>
        {move || of_other_models(bench)}
        <ActingHere deciding=deciding />
        {live(move || {
            deciding
                .taught
                .get()
                .map_or_else(|| ().into_any(), |taught| results(&taught, is_used.get()))
        })}
    }
    .into_any()
}
