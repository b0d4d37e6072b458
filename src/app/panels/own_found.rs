//! What was found of a quenchant of the user's own, and the way into the route.

use super::own_kept::titled;
use super::own_work::Own;
use super::save_table::SaveTable;
use crate::charts;
use crate::errand::place_of;
use crate::own::Found;
use crate::plot::Plot;
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::ReadingFit;
use recalesce::heat::{Compared, FittedKnot, LONGEST_TITLE, MediumChoice};
use recalesce::units::{format_fixed, format_temperature};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// A row of the table: what, as given, as computed, and what that says.
type Row = [String; 4];

fn of_figure(bench: Bench, one: &Compared) -> Row {
    [
        one.figure.words().to_owned(),
        one.figure.format(one.given, bench.scale.get()),
        one.figure.format(one.simulated, bench.scale.get()),
        if one.agrees {
            texts::own::AGREES
        } else {
            texts::own::APART
        }
        .to_owned(),
    ]
}

fn of_reading(one: &ReadingFit) -> Row {
    let hrc = |value| format!("{}\u{a0}HRC", format_fixed(value, 1));
    let times = |factor: f64| format!("×{}", format_fixed(factor, 2));
    let alone = match (one.alone.least, one.alone.most) {
        (Some(least), Some(most)) => texts::general::range(&times(least), &times(most)),
        (Some(least), None) => texts::own::or_more(&times(least)),
        (None, Some(most)) => texts::own::or_less(&times(most)),
        (None, None) => texts::own::ANY.to_owned(),
    };
    [
        texts::own::hardness_at(one.place.words()),
        hrc(one.given_hrc),
        hrc(one.computed_hrc),
        alone,
    ]
}

/// What was given beside what is computed.
fn table(bench: Bench, found: &Found) -> AnyView {
    let figures = found.compared.iter().map(|one| of_figure(bench, one));
    let rows = figures
        .chain(found.readings.iter().map(of_reading))
        .map(|[what, given, computed, says]| {
            view! {
                <tr>
                    <th scope="row">{what}</th>
                    <td>{given}</td>
                    <td>{computed}</td>
                    <td>{says}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <table>
            <thead>
                <tr>
                    <td></td>
                    <th scope="col">{texts::own::GIVEN}</th>
                    <th scope="col">{texts::own::COMPUTED}</th>
                    <td></td>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
        <SaveTable file="own-quenchant" />
    }
    .into_any()
}

/// Where the curve is not the readings' own; nothing without readings.
fn weak_words(bench: Bench, knots: &[FittedKnot]) -> Option<String> {
    let scale = bench.scale.get();
    let degrees = |knot: &FittedKnot| format_temperature(knot.surface_c, scale);
    let below = degrees(knots.first()?);
    let parts: Vec<String> = knots
        .chunk_by(|a, b| a.from_neighbours == b.from_neighbours)
        .filter(|part| part.iter().all(|knot| knot.from_neighbours))
        .filter_map(|part| {
            let (first, last) = (degrees(part.first()?), degrees(part.last()?));
            Some(if first == last {
                texts::own::at(&first)
            } else {
                texts::own::from_to(&first, &last)
            })
        })
        .collect();
    Some(if parts.is_empty() {
        texts::own::readings_say_nothing(&below)
    } else {
        texts::own::readings_say_little(&parts, &below)
    })
}

fn notes(bench: Bench, found: &Found) -> AnyView {
    let weak = weak_words(bench, &found.knots);
    let place = place_of(bench.scale.get());
    let notes = found.notes.iter().map(|note| note[place].clone());
    let notes = notes.chain(weak);
    view! { <ul>{notes.map(|note| view! { <li>{note}</li> }).collect_view()}</ul> }.into_any()
}

/// The name that the user gives, and the button that puts it into the route.
#[component]
fn Use(own: Own) -> impl IntoView {
    let bench = bench();
    let named = move |found: &Found| own.title.with(|title| titled(found.medium.clone(), title));
    let is_used = Memo::new(move |_| {
        own.found.with(|found| {
            found.as_ref().is_some_and(|found| {
                let choice = MediumChoice::Own(named(found));
                bench.route.with(|route| route.quench.medium == choice)
            })
        })
    });
    let take = move |_| {
        if let Some(found) = own.found.get_untracked() {
            let medium = untrack(|| named(&found));
            bench.change(|route| route.quench.take_quenchant(MediumChoice::Own(medium)));
        }
    };
    view! {
        <div class="field">
            <label for="own-title">{texts::own::ITS_NAME}</label>
            <input
                id="own-title"
                class="text"
                type="text"
                autocomplete="off"
                maxlength=LONGEST_TITLE
                placeholder=texts::piece::OWN_QUENCHANT
                prop:value=own.title
                on:input:target=move |event| own.title.set(event.target().value())
            />
        </div>
        <div class="actions">
            <button type="button" class="press go" on:click=take>
                {texts::own::USE_IT}
            </button>
            <span role="status">{move || is_used.get().then_some(texts::own::IN_THE_ROUTE)}</span>
        </div>
    }
    .into_any()
}

/// What was found.
#[component]
pub(super) fn FoundView(own: Own) -> impl IntoView {
    let bench = bench();
    let found = own.found;
    let has = |of: fn(&Found) -> bool| {
        Memo::new(move |_| found.with(|found| found.as_deref().is_some_and(of)))
    };
    let is_found = has(|_| true);
    let is_measured = has(|found| !found.points.is_empty());
    let of_found = move |view: fn(Bench, &Found) -> AnyView| {
        move || found.with(|found: &Option<Arc<Found>>| found.as_deref().map(|f| view(bench, f)))
    };
    let probe = move || {
        is_measured.get().then(|| {
            view! {
                <div class="probe">
                    <h3>{texts::own::THE_PROBE}</h3>
                    <Plot
                        class="tall" file="probe-curve"
                        scene=move |w, h| {
                            found.with(|found| charts::probe_scene(bench, found.as_deref()?, w, h))
                        }
                    />
                </div>
            }
        })
    };
    move || {
        is_found.get().then(|| {
            view! {
                {probe}
                <div>
                    <h3>{texts::own::ITS_HEAT_TRANSFER}</h3>
                    <Plot
                        class="tall" file="heat-transfer"
                        scene=move |w, h| {
                            found
                                .with(|found| Some(
                                    charts::transfer_scene(bench, found.as_deref()?, w, h),
                                ))
                        }
                    />
                </div>
                <div class="result">
                    {of_found(table)}
                    <div>{of_found(notes)} <Use own=own /></div>
                </div>
            }
            .into_any()
        })
    }
}
