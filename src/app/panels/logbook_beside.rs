//! Two runs of the logbook side by side.

use super::logbook_run::button;
use super::save_table::SaveTable;
use crate::controls::live;
use crate::logbook::Log;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::save::logbook::{Run, beside};
use recalesce_texts::page as texts;

/// What is picked for it, and once there are two, what they differ in.
#[component]
pub(super) fn SideBySide(log: Log) -> impl IntoView {
    let bench = bench();
    let inside = live(move || {
        let picked: Vec<Run> = log.book.with(|book| {
            let ids = log.beside.get();
            ids.iter().filter_map(|id| book.get(id).cloned()).collect()
        });
        match picked.as_slice() {
            [] => view! { <p class="hint">{texts::logbook::TICK_TWO}</p> }.into_any(),
            [one, other] => {
                let rows = beside([one, other], bench.scale.get(), bench.length.get());
                let rows = rows
                    .into_iter()
                    .map(|row| {
                        let differs = row.differs();
                        let texts = row.texts.map(|text| view! { <td>{text}</td> });
                        view! {
                            <tr class:differs=differs>
                                <th scope="row">{row.name}</th>
                                {texts}
                            </tr>
                        }
                    })
                    .collect_view();
                let heads = [one, other].map(|run| {
                    view! {
                        <th scope="col" translate="no">
                            {format!("{}, {}", run.route.piece, run.day)}
                        </th>
                    }
                });
                view! {
                    <section class="side-by-side">
                        <h3>{texts::logbook::SIDE_BY_SIDE}</h3>
                        <div
                            class="scrolled"
                            tabindex="0"
                            role="region"
                            aria-label=texts::logbook::SIDE_BY_SIDE
                        >
                            <table>
                                <thead>
                                    <tr>
                                        <td></td>
                                        {heads}
                                    </tr>
                                </thead>
                                <tbody>{rows}</tbody>
                            </table>
                        </div>
                        <SaveTable file="runs-side-by-side" />
                        {button(texts::logbook::PUT_AWAY, move || log.beside.set(Vec::new()))}
                    </section>
                }
                .into_any()
            }
            _ => view! { <p class="hint">{texts::logbook::TICK_ONE_MORE}</p> }.into_any(),
        }
    });
    view! { <div aria-live="polite">{inside}</div> }.into_any()
}
