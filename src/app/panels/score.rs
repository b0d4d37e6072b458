//! How near the models come to values from outside the project, and every value that they miss.

use super::save_table::SaveTable;
use leptos::prelude::*;
use recalesce::sources::score::{Against, Outside, QuantityScore, measured};
use recalesce_texts::page as texts;

/// Columns of the table.
const TITLES: [&str; 5] = [
    texts::sources::QUANTITY,
    texts::sources::VALUES,
    texts::sources::MEAN_ERROR,
    texts::sources::INSIDE_TOLERANCE,
    texts::sources::TOLERANCE,
];

fn aim(score: &QuantityScore) -> Option<String> {
    let (words, is_reached) = score.aim.as_ref()?;
    let reached = if *is_reached {
        texts::sources::REACHED
    } else {
        texts::sources::NOT_REACHED
    };
    Some(texts::sources::aim(words, reached))
}

fn row(score: &QuantityScore) -> AnyView {
    let error = score.mean_error_words().unwrap_or_else(|| "–".to_owned());
    view! {
        <tr>
            <th scope="row">{score.quantity.clone()} <small>{aim(score)}</small></th>
            <td>{score.rows}</td>
            <td>{error}</td>
            <td>{score.inside}</td>
            <td>{score.tolerance_words()}</td>
        </tr>
    }
    .into_any()
}

fn missed(row: &Outside) -> AnyView {
    let words = texts::sources::case_outside(
        &row.case,
        &row.quantity,
        &row.predicted_words(),
        &row.value_words(),
    );
    view! {
        <li>
            {words} " "
            <small>{row.source.clone()}</small>
        </li>
    }
    .into_any()
}

fn missed_of(score: &QuantityScore) -> Option<AnyView> {
    let rows = score.outside.iter().map(missed).collect_view();
    (!score.outside.is_empty()).then(|| {
        view! {
            <h5>{score.quantity.clone()}</h5>
            <ul>{rows}</ul>
        }
        .into_any()
    })
}

/// How many values of some quantities there are, and how many lie inside their tolerance.
fn counted<'a>(scores: impl Iterator<Item = &'a QuantityScore>) -> (usize, usize) {
    scores.fold((0, 0), |(rows, inside), score| {
        (rows + score.rows, inside + score.inside)
    })
}

/// The quantities of one kind of values with their sum, then the values that are missed.
fn kind(against: Against, scores: &[QuantityScore]) -> AnyView {
    let of = || scores.iter().filter(|score| score.against == against);
    let (rows, inside) = counted(of());
    let file = match against {
        Against::Published => "score-published",
        Against::OwnData => "score-own-data",
        Against::Computed | Against::FaultyReference => "score-computed",
    };
    let misses = (rows > inside).then(|| {
        view! {
            <h4>{texts::sources::values_outside(rows - inside)}</h4>
            {of().map(missed_of).collect_view()}
        }
        .into_any()
    });
    view! {
        <h3>{against.heading()}</h3>
        <div class="scrolled" tabindex="0" role="region" aria-label=against.heading()>
            <table>
                <thead>
                    <tr>{TITLES.map(|title| view! { <th scope="col">{title}</th> })}</tr>
                </thead>
                <tbody>
                    {of().map(row).collect_view()} <tr>
                        <th scope="row">{texts::sources::TOGETHER}</th>
                        <td>{rows}</td>
                        <td>"–"</td>
                        <td>{inside}</td>
                        <td>"–"</td>
                    </tr>
                </tbody>
            </table>
        </div>
        <SaveTable file=file />
        {misses}
    }
    .into_any()
}

/// The tables of all quantities, each with the values outside their tolerance.
#[component]
pub(super) fn ScoreView() -> impl IntoView {
    let scores = match measured() {
        Ok(scores) => scores,
        Err(why) => {
            return view! { <p class="wrong">{texts::sources::score_not_shown(&why)}</p> }
                .into_any();
        }
    };
    let at_fault = |score: &&QuantityScore| score.against == Against::FaultyReference;
    let (left_out, _) = counted(scores.iter().filter(at_fault));
    view! {
        <h2>{texts::sources::HOW_NEAR}</h2>
        <p>
            {texts::sources::ABOUT_SCORE}
        </p>
        {Against::COUNTED.map(|against| kind(against, &scores))}
        <p class="hint">
            {texts::sources::equilibria_left_out(left_out)}
        </p>
    }
    .into_any()
}
