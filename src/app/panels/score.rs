//! How near the models come to values from outside the project, and every value that they miss.

use super::save_table::SaveTable;
use leptos::prelude::*;
use recalesce::sources::score::{Outside, QuantityScore, measured};

/// Columns of the table.
const TITLES: [&str; 5] = [
    "Quantity",
    "Values",
    "Mean error",
    "Inside tolerance",
    "Tolerance",
];

fn aim(score: &QuantityScore) -> Option<String> {
    let (words, is_reached) = score.aim.as_ref()?;
    let reached = if *is_reached {
        "reached"
    } else {
        "not reached"
    };
    Some(format!("aim: {words}, {reached}"))
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

fn missed(row: &Outside, is_factor: bool) -> AnyView {
    let words = format!(
        "{}, {}: models {}, value {}",
        row.case,
        row.quantity,
        row.predicted_words(),
        row.value_words(is_factor)
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
    let is_factor = score.is_factor();
    let rows = score
        .outside
        .iter()
        .map(|row| missed(row, is_factor))
        .collect_view();
    (!score.outside.is_empty()).then(|| {
        view! {
            <h4>{score.quantity.clone()}</h4>
            <ul>{rows}</ul>
        }
        .into_any()
    })
}

/// The table of all quantities, then the values outside their tolerance.
#[component]
pub(super) fn ScoreView() -> impl IntoView {
    let scores = match measured() {
        Ok(scores) => scores,
        Err(why) => {
            return view! { <p class="wrong">{format!("The score is not shown: {why}.")}</p> }
                .into_any();
        }
    };
    let rows: usize = scores.iter().map(|score| score.rows).sum();
    let inside: usize = scores.iter().map(|score| score.inside).sum();
    view! {
        <h2>"How near the models come"</h2>
        <p>
            "Values from outside this project, "{rows}
            " of them, against what this version of the models gives; "{inside}
            " lie inside the tolerance of their check. An error told as a factor says how many times too long or too short; where unlike quantities are counted together there is no mean."
        </p>
        <table>
            <thead>
                <tr>{TITLES.map(|title| view! { <th scope="col">{title}</th> })}</tr>
            </thead>
            <tbody>{scores.iter().map(row).collect_view()}</tbody>
        </table>
<SaveTable file="score" />
        <h3>{format!("The {} values outside their tolerance", rows - inside)}</h3>
        {scores.iter().map(missed_of).collect_view()}
    }
    .into_any()
}
