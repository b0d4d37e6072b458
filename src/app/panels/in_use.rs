//! What the route means for the use of the piece, against a route that the user picks.

use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::route::{Direction, InUse, Outcome, Route, in_use, run};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// The same route with the handbook's soak for its grade; none where it has no grade.
fn handbook(route: &Route) -> Option<Route> {
    let mut other = route.clone();
    let composition = route.composition;
    other.take_grade(route.listed_grade()?);
    other.composition = composition;
    Some(other)
}

/// The route compared with: of the shelf by its name, else the handbook's.
fn other_route(bench: Bench, name: &str) -> Option<Route> {
    let kept = bench.shelf.with(|shelf| {
        shelf
            .items()
            .iter()
            .find(|item| item.name == name)
            .map(|item| item.route.clone())
    });
    kept.or_else(|| bench.route.with(handbook))
}

/// The direction as a drawing and in words.
const fn arrow(direction: Direction) -> (&'static str, &'static str) {
    match direction {
        Direction::Better => ("M6 1l4 5H7v5H5V6H2z", texts::in_use::BETTER),
        Direction::Worse => ("M6 11l4-5H7V1H5v5H2z", texts::in_use::WORSE),
        Direction::Same => ("M2 3.5h8v1.5H2zM2 7h8v1.5H2z", texts::in_use::NO_DIFFERENCE),
        Direction::Mixed => ("M6 0l3 4H7v4h2l-3 4-3-4h2V4H3z", texts::in_use::MIXED),
    }
}

fn line(found: InUse) -> AnyView {
    let (arrow, words) = arrow(found.direction);
    let reasons: Vec<_> = found
        .reasons
        .into_iter()
        .map(|reason| {
            let sign = if reason.helps { "+ " } else { "\u{2212} " };
            view! { <li>{sign} {reason.words}</li> }
        })
        .collect();
    view! {
        <dt>
            <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
                <path d=arrow></path>
            </svg>
            " "
            {found.property.name()}
            ": "
            {words}
        </dt>
        <dd>
            <ul>{reasons}</ul>
        </dd>
    }
    .into_any()
}

/// The comparison.
#[component]
pub(crate) fn InUseInside() -> impl IntoView {
    let bench = bench();
    let name = RwSignal::new(String::new());
    let other = Memo::new(move |_| name.with(|name| other_route(bench, name)));
    let compared = Memo::new(move |_| {
        let other = bench.as_real(&other.get()?);
        let prepared = bench.prepared.get();
        let outcome = match prepared.as_ref() {
            Some(prepared) => prepared.run(&other),
            None => run(&other),
        };
        let outcome = outcome.ok()?;
        Some((other, Arc::new(outcome)))
    });
    let lines = move || {
        let outcome: Arc<Outcome> = bench.outcome()?;
        compared.with(|compared| {
            let (other, of_other) = compared.as_ref()?;
            let found = bench
                .real
                .with(|route| in_use((route, &outcome), (other, of_other)));
            Some(found.into_iter().map(line).collect_view())
        })
    };
    let names = move || {
        bench.shelf.with(|shelf| {
            let names = shelf.items().iter().map(|item| item.name.clone());
            names
                .map(|name| {
                    view! {
                        <option value=name.clone() translate="no">
                            {name.clone()}
                        </option>
                    }
                })
                .collect_view()
        })
    };
    view! {
        <label class="field">
            {texts::in_use::AGAINST}
            <select on:change:target=move |event| name.set(event.target().value())>
                <option value="">{texts::in_use::HANDBOOK_SOAK}</option>
                {names}
            </select>
        </label>
        <dl class="in-use">{lines}</dl>
        {move || {
            compared
                .with(Option::is_none)
                .then(|| view! { <p class="hint">{texts::in_use::KEEP_TO_COMPARE}</p> })
        }}
        <p class="hint">
            {texts::in_use::BY_COMMON_PRACTICE}
        </p>
    }
}
