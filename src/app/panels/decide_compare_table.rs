//! Routes side by side as a table: what differs first, then what is the same.

use super::decide_compare::Compared;
use super::save_table::SaveTable;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::advise::Numbers;
use recalesce::route::route_lines;
use recalesce::units::{
    LengthUnit, TemperatureScale, format_factor, format_fixed, format_percent,
    format_weight_percent,
};
use recalesce_texts::page as texts;

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

/// What comes out, row by row.
fn computed(numbers: &Numbers) -> Vec<(&'static str, String)> {
    let open = || texts::decide::NOT_KNOWN.to_owned();
    let with = |value: Option<f64>, words: fn(f64) -> String| value.map_or_else(open, words);
    let hrc: fn(f64) -> String = |hrc| format!("{}\u{a0}HRC", format_fixed(hrc, 1));
    vec![
        (
            texts::decide::HARDNESS_IN_THE_END,
            with(numbers.final_hrc, hrc),
        ),
        (
            texts::decide::AUSTENITE_IN_THE_END,
            with(numbers.final_austenite, format_percent),
        ),
        (
            texts::decide::HARDNESS_QUENCHED,
            with(numbers.quenched_hrc, hrc),
        ),
        (
            texts::decide::AUSTENITE_QUENCHED,
            with(numbers.quenched_austenite, format_percent),
        ),
        (
            texts::decide::CARBON,
            with(numbers.carbon_wt, format_weight_percent),
        ),
        (
            texts::decide::CARBIDE,
            with(numbers.carbide, format_percent),
        ),
        (
            texts::decide::GRAIN,
            with(numbers.grain_astm, |astm| format_fixed(astm, 1)),
        ),
        (
            texts::decide::MARGIN,
            with(numbers.margin_factor, format_factor),
        ),
    ]
}

/// The rows of all, in their order.
fn rows(compared: &Compared, scale: TemperatureScale, length: LengthUnit) -> Vec<Row> {
    let columns: Vec<Vec<(&'static str, String)>> = compared
        .routes
        .iter()
        .zip(&compared.come_out)
        .map(|((_, route), numbers)| {
            let numbers = numbers
                .as_ref()
                .map_or_else(|_| Numbers::default(), |both| both.0);
            let mut column = computed(&numbers);
            column.extend(route_lines(route, scale, length));
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

pub(super) fn table(bench: Bench, compared: &Compared) -> AnyView {
    let (scale, length) = (bench.scale.get(), bench.length.get());
    let told = |row: &Row| row.cells.iter().any(|text| !text.is_empty());
    let (differing, same): (Vec<Row>, Vec<Row>) = rows(compared, scale, length)
        .into_iter()
        .filter(told)
        .partition(Row::differs);
    let row = |row: Row| {
        let words = |text: String| {
            if text.is_empty() {
                texts::decide::HAS_NONE.to_owned()
            } else {
                text
            }
        };
        let cells = row
            .cells
            .into_iter()
            .map(|text| view! { <td>{words(text)}</td> });
        view! {
            <tr>
                <th scope="row">{row.what}</th>
                {cells.collect_view()}
            </tr>
        }
    };
    let heads = compared.routes.iter().zip(1..).map(|((name, _), number)| {
        // Its own name stays as it was written.
        view! {
            <th scope="col" translate="no">
                {format!("{number}: {name}")}
            </th>
        }
    });
    let refused =
        compared
            .routes
            .iter()
            .zip(&compared.come_out)
            .filter_map(|((name, _), numbers)| {
                let why = numbers.as_ref().err()?;
                Some(view! { <p class="wrong">{format!("“{name}”: {why}")}</p> })
            });
    let same_count = same.len();
    view! {
        {refused.collect_view()}
        <div class="scrolled compared" tabindex="0" role="region" aria-label=texts::decide::ROUTES_SIDE_BY_SIDE>
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
        <SaveTable file="routes-side-by-side" />
    }
    .into_any()
}
