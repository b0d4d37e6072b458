//! Below the cooling curves: where the section hardens, how every place of it stands, and what speaks
//! for another quench.

use super::opening::Opening;
use super::outcome::Say;
use super::save_table::SaveTable;
use super::table::{class, mark, signed, word};
use crate::charts;
use crate::parts::panels::Panel;
use crate::plot::Plot;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::heat::Place;
use recalesce::route::{PlaceOutcome, place_name, quench_notes};
use recalesce::units::{format_factor, format_percent};
use recalesce_texts::page as texts;

/// What took the rest of a place, in words.
fn rest(told: &PlaceOutcome) -> String {
    let Some(product) = told.cost else {
        return "–".to_owned();
    };
    let part = told.fractions.of(product);
    format!("{} {}", format_percent(part), product.name())
}

/// The row of a place. It is made once and reads its own words.
fn row(told: Memo<Vec<PlaceOutcome>>, number: usize, place: Place) -> AnyView {
    let here = move || told.with(|told| told.get(number).copied());
    let verdict = Memo::new(move |_| here().map(|told| told.margin.verdict));
    let verdict_cell = move || {
        verdict
            .get()
            .map(|verdict| (mark(verdict), "\u{a0}", word(verdict)).into_any())
    };
    view! {
        <tr>
            <th scope="row">{place_name(place)}</th>
            <td class=move || verdict.get().map(class)>{verdict_cell}</td>
            <td>{move || here().map(|told| format_factor(told.margin.factor))}</td>
            <td>{move || here().map(|told| signed(told.margin.seconds))}</td>
            <td>{move || here().map(|told| rest(&told))}</td>
        </tr>
    }
    .into_any()
}

/// Every place of the section.
#[component]
fn Places() -> impl IntoView {
    let bench = bench();
    let told = Memo::new(move |_| {
        let outcome = bench.outcome();
        let quenched = outcome.as_ref().and_then(|o| o.quench.transformed.given());
        quenched.map_or_else(Vec::new, |quenched| quenched.places.clone())
    });
    let places = Memo::new(move |_| {
        told.with(|told| told.iter().map(|told| told.place).collect::<Vec<_>>())
    });
    let rows = move || {
        let rows = places.get().into_iter().enumerate();
        rows.map(|(number, place)| row(told, number, place))
            .collect_view()
    };
    view! {
        <div class="table-view each" hidden=move || places.with(Vec::is_empty)>
            <table aria-label=texts::quench::EACH_PLACE>
                <thead>
                    <tr>
                        <th scope="col">{texts::quench::PLACE}</th>
                        <th scope="col">{texts::quench::THIS_QUENCH_IS}</th>
                        <th scope="col" title=texts::quench::MARGIN_IS>
                            {texts::quench::MARGIN}
                        </th>
                        <th scope="col" title=texts::quench::TO_SPARE_IS>
                            {texts::quench::TO_SPARE}
                        </th>
                        <th scope="col">{texts::quench::LOST_TO}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
            <SaveTable file="places" />
        </div>
    }
    .into_any()
}

/// All that stands below the curves.
#[component]
pub(crate) fn QuenchBelow() -> impl IntoView {
    let bench = bench();
    let reasons = move || {
        let outcome = bench.outcome()?;
        let scale = bench.scale.get();
        let sentence = bench
            .route
            .with(|route| quench_notes(route, &outcome, scale))?;
        Some(view! { <Say sentence=sentence /> })
    };
    view! {
        <div class="sub">
            <h3>{texts::quench::WHERE_IT_HARDENS}</h3>
            <Plot
                class="history" file="section"
                scene=move |w, h| charts::section_scene(bench, w, h)
                nothing=Signal::stored(texts::charts::NOT_KNOWN.to_owned())
            />
            <Places />
            <p class="hint">{move || charts::still_does(bench)}</p>
            <div class="notes">{reasons}</div>
            <Opening title=texts::quench::OTHER_RATES panel=Panel::Continuous />
            <Opening title=texts::quench::HOW_DEEP panel=Panel::EndQuench />
        </div>
    }
    .into_any()
}
