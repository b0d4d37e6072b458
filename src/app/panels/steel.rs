//! The steel: a grade found by any of its designations, or contents typed from a certificate.

use crate::controls::{Choice, Entry, Typed, quantities};
use crate::state::bench;
use leptos::html::Div;
use leptos::prelude::*;
use recalesce::route::Route;
use recalesce::steel::{Element, Grade, find, search};
use recalesce::units::format_fixed;
use recalesce_texts::page as texts;

/// The designations of a grade beside its own name, for the end of the sentence.
pub(super) fn other_designations(grade: &Grade) -> String {
    [
        (!grade.uns.is_empty()).then(|| format!("UNS {}", grade.uns)),
        (!grade.en_name.is_empty()).then(|| format!("EN {}", grade.en_name)),
        (!grade.en_number.is_empty()).then(|| grade.en_number.clone()),
    ]
    .into_iter()
    .flatten()
    .collect::<Vec<_>>()
    .join(", ")
}

/// Contents as one line: `1.00 C, 1.45 Cr`.
fn contents(grade: &Grade) -> String {
    Element::ALL
        .into_iter()
        .map(|element| (element, grade.nominal.get(element)))
        .filter(|&(element, wt)| {
            wt >= 0.1 && !matches!(element, Element::P | Element::S) || element == Element::C
        })
        .map(|(element, wt)| format!("{} {}", format_fixed(wt, 2), element.symbol()))
        .collect::<Vec<_>>()
        .join(", ")
}

/// Grade list and contents.
#[component]
pub(crate) fn SteelPanel() -> impl IntoView {
    let bench = bench();
    let typed = RwSignal::new(String::new());
    let entries = Signal::derive(move || {
        typed
            .with(|words| search(words))
            .into_iter()
            .map(|grade| Entry {
                value: grade.designation.clone(),
                title: grade.designation.clone(),
                note: format!("{} · {}", contents(grade), other_designations(grade)),
            })
            .collect::<Vec<_>>()
    });
    let chosen = Signal::derive(move || bench.route.with(|r| r.grade.clone().unwrap_or_default()));
    // The grade in use is in view when its list opens: the list is scrolled, not the page.
    let list = NodeRef::<Div>::new();
    list.on_load(|list| {
        request_animation_frame(move || {
            if let Ok(Some(row)) = list.query_selector("[aria-selected=true]") {
                let (seen, row) = (
                    list.get_bounding_client_rect(),
                    row.get_bounding_client_rect(),
                );
                let to_middle = row.top() - seen.top() - 0.5 * (seen.height() - row.height());
                list.set_scroll_top(list.scroll_top() + to_middle as i32);
            }
        });
    });
    // The route as it was before the practice of the grade picked last.
    let own = RwSignal::new(None::<Route>);
    let pick = move |name: String| {
        if let Ok(grade) = find(&name) {
            own.set(Some(bench.route.get_untracked()));
            bench.change(|r| r.take_handbook(grade));
        }
    };
    let keep_own = move |_| {
        let grade = bench.route.with_untracked(Route::listed_grade);
        if let (Some(mut route), Some(grade)) = (own.get_untracked(), grade) {
            route.take_contents(grade);
            bench.route.set(route);
        }
        own.set(None);
    };
    let taken = move || {
        own.with(Option::is_some).then(|| {
            view! {
                <p class="hint">
                    {texts::steel::BY_HANDBOOK} " "
                    <button type="button" class="press" on:click=keep_own>
                        {texts::steel::KEEP_OWN}
                    </button>
                </p>
            }
        })
    };
    let fields = Element::ALL
        .into_iter()
        .map(|element| {
            view! {
                <Typed
                    label=element.symbol()
                    quantity=Signal::stored(
                        quantities::plain(
                            "\u{a0}%",
                            3,
                            (0.0, element.largest_wt()),
                            0.01,
                            texts::steel::WRITE_A_CONTENT,
                        ),
                    )
                    value=Signal::derive(move || {
                        bench.route.with(|r| r.composition.get(element))
                    })
                    set=move |wt| {
                        bench
                            .change(|r| {
                                r.composition.set(element, wt);
                                r.grade = None;
                            })
                    }
                />
            }
        })
        .collect_view();
    view! {
        <div class="field">
            <input
                class="text"
                type="search"
                aria-label=texts::steel::FIND_A_GRADE
                placeholder=texts::steel::DESIGNATIONS
                prop:value=typed
                on:input:target=move |event| typed.set(event.target().value())
            />
        </div>
        <div role="status">{taken}</div>
        <div class="grade-list" node_ref=list>
            <Choice name=texts::steel::GRADES entries=entries chosen=chosen pick=pick />
            {move || {
                entries
                    .with(Vec::is_empty)
                    .then(|| view! { <p class="hint">{texts::steel::NO_GRADE}</p> })
            }}
        </div>
        <details class="contents-view">
            <summary>{texts::steel::FROM_CERTIFICATE}</summary>
            <div class="two">{fields}</div>
        </details>
    }
    .into_any()
}
