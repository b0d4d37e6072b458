//! The phase map in words, for those who cannot see it or want its numbers.

use super::save_table::SaveTable;
use crate::charts;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::units::format_temperature;
use recalesce_texts::page as texts;

#[component]
fn Table(
    /// What the table is of.
    #[prop(into)]
    caption: Signal<String>,
    /// Titles of its two columns.
    titles: [&'static str; 2],
    /// Its rows.
    rows: Vec<(String, String)>,
    /// What its file is called.
    file: &'static str,
) -> impl IntoView {
    let row = |(head, text): (String, String)| {
        view! {
            <tr>
                <th scope="row">{head}</th>
                <td>{text}</td>
            </tr>
        }
    };
    view! {
        <table>
            <caption>{caption}</caption>
            <thead>
                <tr>{titles.map(|title| view! { <th scope="col">{title}</th> })}</tr>
            </thead>
            <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
        </table>
        <SaveTable file=file />
    }
}

/// Which phases are stable at the steel's own carbon over temperature, and how much of each at the
/// soak.
#[component]
pub(crate) fn PhaseTables() -> impl IntoView {
    let bench = bench();
    let tables = move || {
        let fields = charts::own_fields(bench);
        let soak_c = Memo::new(move |_| bench.real.with(|r| r.soak.temperature_c));
        let carbon = bench
            .route
            .with(|r| recalesce::units::format_fixed(r.composition.c, 2));
        let at_soak = match charts::soak_phases(bench) {
            Ok(rows) => view! {
                <Table
                    caption=Signal::derive(move || {
                        texts::soak::in_the_end_at(&format_temperature(soak_c.get(), bench.scale.get()))
                    })
                    titles=[texts::soak::PHASE, texts::soak::SHARE_OF_MASS]
                    rows
                    file="phases-at-the-soak"
                />
            }
            .into_any(),
            Err(why) => view! { <p>{why}</p> }.into_any(),
        };
        view! {
            <Table
                caption=Signal::stored(texts::soak::stable_phases(&carbon))
                titles=[texts::soak::TEMPERATURE, texts::soak::PHASES]
                rows=fields
                file="stable-phases"
            />
            {at_soak}
        }
    };
    tables.into_any()
}
