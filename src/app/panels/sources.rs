//! The publications behind the numbers.

use super::score::ScoreView;
use leptos::html::Section;
use leptos::prelude::*;
use recalesce::sources::{ALL, FITS, Source, Standing};
use recalesce_texts::page as texts;

const fn standing_words(standing: Standing) -> &'static str {
    match standing {
        Standing::Read => texts::sources::READ_IN_SOURCE,
        Standing::FromMemory => texts::sources::FROM_MEMORY,
        Standing::FittedHere => texts::sources::FITTED_HERE,
        Standing::CommonPractice => texts::sources::COMMON_PRACTICE,
    }
}

/// Each quantity that a fit of this project predicts, with the error on what was left out of it.
fn fits(source: &Source) -> impl Iterator<Item = String> {
    let own = FITS.iter().filter(|(of, ..)| of.key == source.key);
    own.map(|(_, quantity, error)| format!("{quantity}: {}", error.words()))
}

/// The list.
#[component]
pub(crate) fn Sources() -> impl IntoView {
    let rows = ALL
        .iter()
        .map(|source| {
            let line = format!(
                "{} ({}). {}. {}.",
                source.authors, source.year, source.title, source.venue
            );
            view! {
                <div class="source">
                    <span translate="no">{line}</span> <small>{source.used_for}</small>
                    <small class="standing">{standing_words(source.standing)}</small>
                    {fits(source)
                        .map(|line| view! { <small>{line}</small> })
                        .collect_view()}
                    {source.link.map(|link| view! { <small translate="no">{link}</small> })}
                </div>
            }
        })
        .collect_view();
    let score = NodeRef::<Section>::new();
    let show_score = move |_| {
        if let Some(section) = score.get_untracked() {
            section.scroll_into_view();
            // One that cannot take the focus leaves it on the button.
            let _ = section.focus();
        }
    };
    view! {
        <main class="leaf">
            <h2>{texts::sources::SOURCES}</h2>
            <p>
                {texts::sources::ABOUT}
            </p>
            <p class="actions">
                <button type="button" class="press" on:click=show_score>
                    {texts::sources::HOW_NEAR}
                </button>
            </p>
            <div class="source-list">{rows}</div>
            <section
                class="score"
                node_ref=score
                tabindex="-1"
                aria-label=texts::sources::HOW_NEAR
            >
                <ScoreView />
            </section>
        </main>
    }
    .into_any()
}
