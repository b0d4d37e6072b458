//! The state of the piece as it flows along the steps before hardening, as a table.

use super::outcome::number;
use super::save_table::SaveTable;
use super::strip::pick;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::route::{NumberKey, PieceState, PriorOutcome, StepRef, soft_hardness_words};
use recalesce::soak::Network;
use recalesce::units::{format_fixed, format_temperature};
use recalesce_texts::page as texts;

/// What stands in a row beside its name, with what opens it.
struct Cells([(String, Option<NumberKey>); 4]);

fn network_word(network: Network) -> &'static str {
    match network {
        Network::None => texts::steps::NONE,
        Network::Broken => texts::steps::BROKEN_FILMS,
        Network::Continuous => texts::steps::NETWORK,
    }
}

fn carbide_words(state: &PieceState) -> String {
    let structure = state.structure;
    let left = structure.left_over_part;
    let um = if left > 0.5 {
        structure.left_over_radius_um
    } else {
        structure.carbide_radius_um
    };
    format!("{}\u{a0}µm", format_fixed(2.0 * um, 2))
}

fn cells(state: &PieceState, grain_astm: Option<f64>, step: Option<usize>) -> Cells {
    let none = || "–".to_owned();
    let grain = grain_astm.map(|g| format!("ASTM\u{a0}{}", format_fixed(g, 0)));
    let hardness = soft_hardness_words(state);
    let key = |of: fn(usize) -> NumberKey, is_known: bool| step.filter(|_| is_known).map(of);
    Cells([
        (
            grain.clone().unwrap_or_else(none),
            key(NumberKey::StepGrain, grain.is_some()),
        ),
        (carbide_words(state), key(NumberKey::StepCarbide, true)),
        (network_word(state.network).to_owned(), None),
        (
            hardness.clone().unwrap_or_else(none),
            key(NumberKey::StepHardness, hardness.is_some()),
        ),
    ])
}

fn step_cells(step: usize, outcome: &PriorOutcome) -> Option<Cells> {
    let state = outcome.state.given()?;
    let grain_astm = outcome.heated.map(|heat| heat.grain_astm);
    Some(cells(state, grain_astm, Some(step)))
}

/// The piece after each step.
#[component]
pub(super) fn PriorStates(
    /// The step that is open.
    #[prop(into)]
    open: Signal<usize>,
) -> impl IntoView {
    let bench = bench();
    let rows = move || {
        let outcome = bench.outcome()?;
        let stock = outcome.stock.as_ref()?;
        let scale = bench.scale.get();
        let route = bench.route.get();
        let first = row(
            texts::steps::AS_BOUGHT.to_owned(),
            None,
            false,
            Some(cells(stock, None, None)),
        );
        let steps = route
            .prior
            .iter()
            .zip(&outcome.prior)
            .enumerate()
            .map(|(i, (step, done))| {
                let name = format!(
                    "{} {}",
                    step.work.title(),
                    format_temperature(step.temperature_c, scale)
                );
                row(
                    name,
                    Some(StepRef::Prior(i)),
                    open.get() == i,
                    step_cells(i, done),
                )
            })
            .collect_view();
        Some(view! {
            {first}
            {steps}
        })
    };
    view! {
        <div
            class="scrolled"
            tabindex="0"
            role="region"
            aria-label=texts::steps::AFTER_EACH_STEP
        >
            <table class="states">
                <caption>{texts::steps::AFTER_EACH_STEP}</caption>
                <thead>
                    <tr>
                        <th scope="col">{texts::steps::AFTER}</th>
                        <th scope="col">{texts::steps::GRAIN}</th>
                        <th scope="col">{texts::steps::CARBIDE}</th>
                        <th scope="col">{texts::steps::BOUNDARIES}</th>
                        <th scope="col">{texts::steps::HARDNESS}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        <SaveTable file="piece-after-each-step" />
    }
    .into_any()
}

fn row(name: String, step: Option<StepRef>, is_open: bool, cells: Option<Cells>) -> AnyView {
    let bench = bench();
    let head = match step {
        Some(step) => view! {
            <button type="button" on:click=move |_| pick(bench, step)>
                {name}
            </button>
        }
        .into_any(),
        None => name.into_any(),
    };
    let cells = match cells {
        Some(Cells(texts)) => texts
            .into_iter()
            .map(|(text, key)| {
                let inside = match key {
                    Some(key) => number(text, key),
                    None => text.into_any(),
                };
                view! { <td>{inside}</td> }
            })
            .collect_view()
            .into_any(),
        None => view! { <td colspan="4">{texts::steps::NOT_KNOWN}</td> }.into_any(),
    };
    view! {
        <tr class:open=is_open aria-current=is_open.then_some("step")>
            <th scope="row">{head}</th>
            {cells}
        </tr>
    }
    .into_any()
}
