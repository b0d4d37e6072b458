//! Any table as a file for a spreadsheet.

use super::save_chart::arrow;
use crate::browser::{decimals, files};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::save::write_table;
use recalesce_texts::page as texts;
use wasm_bindgen::JsCast;
use web_sys::{Element, MouseEvent};

/// Rows of a table, its titles first.
type Rows = Vec<Vec<String>>;

fn children(of: &Element) -> impl Iterator<Item = Element> + use<> {
    std::iter::successors(of.first_element_child(), Element::next_element_sibling)
}

/// What a cell shows, in one line.
fn shown(cell: &Element) -> Option<String> {
    let text = decimals::written(cell)?;
    Some(text.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// What a table shows; a cell over several columns stands in the first of them.
fn read(table: &Element) -> Rows {
    let row = |row: Element| {
        children(&row)
            .flat_map(|cell| {
                let over = cell.get_attribute("colspan");
                let over = over.and_then(|over| over.parse().ok()).unwrap_or(1);
                let text = shown(&cell).unwrap_or_default();
                let rest = std::iter::repeat_n(String::new(), usize::saturating_sub(over, 1));
                std::iter::once(text).chain(rest)
            })
            .collect()
    };
    // A caption holds no rows.
    let rows = children(table).flat_map(|part| children(&part));
    rows.map(row).collect()
}

/// The table that a control stands behind.
fn table_of(press: &MouseEvent) -> Option<Element> {
    let button: Element = press.current_target()?.dyn_into().ok()?;
    let before = button.parent_element()?.previous_element_sibling()?;
    match before.query_selector("table").ok()? {
        Some(table) => Some(table),
        None => Some(before),
    }
}

/// A small control behind a table, or behind what it scrolls in, that offers it as a file.
#[component]
pub(super) fn SaveTable(
    /// What it is called in the name of its file, words parted by hyphens.
    file: &'static str,
    /// Its rows where cells show more or less than a spreadsheet needs; else they are as shown.
    #[prop(optional, into)]
    rows: Option<Callback<(), Option<Rows>>>,
) -> impl IntoView {
    let bench = bench();
    let save = move |press: MouseEvent| {
        let rows = match rows {
            Some(rows) => rows.run(()),
            None => table_of(&press).map(|table| read(&table)),
        };
        let offered = rows.and_then(|rows| {
            let name = format!("recalesce-{file}.csv");
            files::offer_table(&name, &write_table(&rows))
        });
        if offered.is_none() {
            bench.warn(texts::charts::NO_TABLE_OFFERED.to_owned());
        }
    };
    view! {
        <p class="save-table">
            <button
                type="button"
                aria-label=texts::charts::save_table_named(texts::saved::title(file))
                title=texts::charts::SAVE_TABLE
                on:click=save
            >
                {arrow()}
                "CSV"
            </button>
        </p>
    }
    .into_any()
}
