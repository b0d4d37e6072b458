//! Routes side by side: what differs first, then what is the same.

use super::decide::{Deciding, Working};
use super::decide_find::steps;
use super::piece::{bath_words, size_words};
use crate::controls::live;
use crate::decide::{Question, Told};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::Numbers;
use recalesce::route::Route;
use recalesce::save::ItemId;
use recalesce::steel::find;
use recalesce::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_factor, format_fixed, format_percent,
    format_temperature, format_weight_percent,
};
use std::sync::Arc;

/// Most routes side by side.
const MOST: usize = 6;

/// Routes that were compared, and what comes out of each.
pub(crate) struct Compared {
    routes: Vec<(String, Route)>,
    numbers: Vec<Result<Numbers, String>>,
}

/// A row of the table: what, and each route's.
struct Row {
    what: &'static str,
    cells: Vec<String>,
}

impl Row {
    fn differs(&self) -> bool {
        self.cells.windows(2).any(|pair| pair[0] != pair[1])
    }
}

/// What stands in a plan, row by row.
fn planned(
    route: &Route,
    scale: TemperatureScale,
    length: LengthUnit,
) -> Vec<(&'static str, String)> {
    let (size, shape) = size_words(&route.section, length);
    let tempers = route.tempers.iter().map(|temper| {
        format!(
            "{} for {}",
            format_temperature(temper.temperature_c, scale),
            format_duration_s(60.0 * temper.time_min)
        )
    });
    let tempers: Vec<String> = tempers.collect();
    let none = || "none".to_owned();
    vec![
        (
            "steel",
            route
                .grade
                .clone()
                .unwrap_or_else(|| "own steel".to_owned()),
        ),
        ("section", format!("{size} {shape}")),
        ("soak", format_temperature(route.soak.temperature_c, scale)),
        (
            "at temperature for",
            format_duration_s(60.0 * route.soak.time_min),
        ),
        ("quench", bath_words(&route.quench, scale)),
        (
            "in air before it",
            format_duration_s(route.quench.air_delay_s),
        ),
        (
            "cold",
            route
                .cold
                .as_ref()
                .map_or_else(none, |cold| format_temperature(cold.temperature_c, scale)),
        ),
        (
            "tempers",
            if tempers.is_empty() {
                none()
            } else {
                tempers.join(", then ")
            },
        ),
        ("steps before", route.prior.len().to_string()),
    ]
}

/// What comes out, row by row.
fn computed(numbers: &Numbers) -> Vec<(&'static str, String)> {
    let open = || "not known".to_owned();
    let with = |value: Option<f64>, words: fn(f64) -> String| value.map_or_else(open, words);
    let hrc: fn(f64) -> String = |hrc| format!("{}\u{a0}HRC", format_fixed(hrc, 1));
    vec![
        ("hardness after the last step", with(numbers.final_hrc, hrc)),
        (
            "retained austenite after it",
            with(numbers.final_austenite, format_percent),
        ),
        ("hardness as quenched", with(numbers.quenched_hrc, hrc)),
        (
            "retained austenite as quenched",
            with(numbers.quenched_austenite, format_percent),
        ),
        (
            "carbon in solution",
            with(numbers.carbon_wt, format_weight_percent),
        ),
        ("undissolved carbide", with(numbers.carbide, format_percent)),
        (
            "grain, ASTM number",
            with(numbers.grain_astm, |astm| format_fixed(astm, 1)),
        ),
        (
            "margin of the quench",
            with(numbers.margin_factor, format_factor),
        ),
    ]
}

/// The rows of all, in their order.
fn rows(compared: &Compared, scale: TemperatureScale, length: LengthUnit) -> Vec<Row> {
    let columns: Vec<Vec<(&'static str, String)>> = compared
        .routes
        .iter()
        .zip(&compared.numbers)
        .map(|((_, route), numbers)| {
            let numbers = numbers.as_ref().copied().unwrap_or_default();
            let mut column = planned(route, scale, length);
            column.extend(computed(&numbers));
            column
        })
        .collect();
    let first = columns.first().map(Vec::as_slice).unwrap_or_default();
    first
        .iter()
        .enumerate()
        .map(|(place, (what, _))| Row {
            what,
            cells: columns
                .iter()
                .filter_map(|column| column.get(place).map(|(_, text)| text.clone()))
                .collect(),
        })
        .collect()
}

fn table(bench: Bench, compared: &Compared) -> AnyView {
    let (scale, length) = (bench.scale.get(), bench.length.get());
    let (differing, same): (Vec<Row>, Vec<Row>) = rows(compared, scale, length)
        .into_iter()
        .partition(Row::differs);
    let row = |row: Row| {
        let cells = row.cells.into_iter().map(|text| view! { <td>{text}</td> });
        view! {
            <tr>
                <th scope="row">{row.what}</th>
                {cells.collect_view()}
            </tr>
        }
    };
    let heads = compared.routes.iter().map(|(name, route)| {
        view! {
            <th scope="col" title=steps(route, scale)>
                {name.clone()}
            </th>
        }
    });
    let refused =
        compared
            .routes
            .iter()
            .zip(&compared.numbers)
            .filter_map(|((name, _), numbers)| {
                let why = numbers.as_ref().err()?;
                Some(view! { <p class="wrong">{format!("{name}: {why}")}</p> })
            });
    let same_count = same.len();
    view! {
        {refused.collect_view()}
        <div class="scrolled" tabindex="0" role="region" aria-label="Routes side by side">
            <table>
                <thead>
                    <tr>
                        <td></td>
                        {heads.collect_view()}
                    </tr>
                </thead>
                <tbody>{differing.into_iter().map(row).collect_view()}</tbody>
                {(same_count > 0)
                    .then(|| {
                        view! {
                            <tbody class="same">{same.into_iter().map(row).collect_view()}</tbody>
                        }
                    })}
            </table>
        </div>
    }
    .into_any()
}

/// The panel.
#[component]
pub(super) fn Comparing(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let chosen = RwSignal::new(Vec::<ItemId>::new());
    let with_handbook = RwSignal::new(true);
    let items = Memo::new(move |_| {
        bench.shelf.with(|shelf| {
            let items = shelf.items().iter();
            items
                .map(|item| (item.id, item.name.clone()))
                .collect::<Vec<_>>()
        })
    });
    let handbook = move || {
        bench.route.with(|route| {
            let grade = route.grade.as_deref().and_then(|name| find(name).ok())?;
            let mut route = route.clone();
            route.take_handbook(grade);
            Some(route)
        })
    };
    let has_handbook = Memo::new(move |_| {
        bench.route.with(|route| {
            let grade = route.grade.as_deref();
            grade.is_some_and(|name| find(name).is_ok())
        })
    });
    // The bench, the handbook, and what is picked of the shelf.
    let room = move || {
        let taken = 1 + usize::from(has_handbook.get() && with_handbook.get());
        MOST.saturating_sub(taken + chosen.with(Vec::len))
    };
    let start = move |()| {
        let mut routes = vec![("on the bench".to_owned(), bench.route.get_untracked())];
        if with_handbook.get_untracked()
            && let Some(route) = untrack(handbook)
        {
            routes.push(("by the handbook".to_owned(), route));
        }
        bench.shelf.with_untracked(|shelf| {
            let of_shelf = chosen.get_untracked().into_iter();
            let of_shelf = of_shelf.filter_map(|id| shelf.get(id));
            routes.extend(of_shelf.map(|item| (item.name.clone(), item.route.clone())));
        });
        routes.truncate(MOST);
        let question = Question::Compare(routes.iter().map(|(_, route)| route.clone()).collect());
        deciding.comparing.ask(&question, move |told| match told {
            Told::Compared(numbers) => {
                let routes = routes.clone();
                deciding
                    .compared
                    .try_set(Some(Arc::new(Compared { routes, numbers })));
                true
            }
            _ => false,
        });
    };
    let boxes = live(move || {
        let of_shelf = items.get().into_iter().map(|(id, name)| {
            let is_in = move || chosen.with(|all| all.contains(&id));
            view! {
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=is_in
                        disabled=move || !is_in() && room() == 0
                        on:change=move |_| {
                            chosen
                                .update(|all| {
                                    if all.contains(&id) {
                                        all.retain(|one| *one != id);
                                    } else {
                                        all.push(id);
                                    }
                                });
                        }
                    />
                    {name}
                </label>
            }
        });
        of_shelf.collect_view().into_any()
    });
    view! {
        <h3>"Side by side"</h3>
        <p class="hint">
            "The route on the bench with its handbook’s and with routes of the shelf, up to six: what differs first."
        </p>
        <div class="ticks" role="group" aria-label="Routes to compare">
            <Show when=move || has_handbook.get()>
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=with_handbook
                        on:change=move |_| with_handbook.update(|is| *is = !*is)
                    />
                    "by the handbook"
                </label>
            </Show>
            {boxes}
        </div>
        <Working task=deciding.comparing words="Compare" start=start />
        {live(move || {
            deciding
                .compared
                .get()
                .map_or_else(|| ().into_any(), |compared| table(bench, &compared))
        })}
    }
    .into_any()
}
