//! Which quench still does it: all quenchants against sizes, each cell a route to load.

use crate::app::errand::{Brought, Errand, kept_up};
use crate::app::state::{Bench, bench};
use crate::heat::{Medium, MediumChoice, Section, medium};
use crate::route::{Quench, QuenchTable, TableCell, TableRow, Verdict, margin_words};
use crate::units::format_length;
use leptos::prelude::*;

/// Disc, half disc or cross: the verdict by shape.
fn mark(verdict: Verdict) -> AnyView {
    match verdict {
        Verdict::Holds => view! {
            <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
                <circle cx="6" cy="6" r="4.5"></circle>
            </svg>
        }
        .into_any(),
        Verdict::Narrow => view! {
            <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
                <path d="M6 1.5a4.5 4.5 0 0 0 0 9z"></path>
                <circle class="rim" cx="6" cy="6" r="4"></circle>
            </svg>
        }
        .into_any(),
        Verdict::Misses => view! {
            <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
                <path class="rim" d="M2.5 2.5l7 7M9.5 2.5l-7 7"></path>
            </svg>
        }
        .into_any(),
    }
}

const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "cell holds",
        Verdict::Narrow => "cell narrow",
        Verdict::Misses => "cell misses",
    }
}

const fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "fast enough",
        Verdict::Narrow => "at the edge",
        Verdict::Misses => "too slow",
    }
}

fn signed(seconds: f64) -> String {
    let sign = if seconds < 0.0 { '\u{2212}' } else { '+' };
    format!("{sign}{}", margin_words(seconds))
}

/// Size that the table's columns stand for, mm.
const fn size_mm(section: Section) -> f64 {
    match section {
        Section::Plate { thickness_mm } => thickness_mm,
        Section::Round { diameter_mm } => diameter_mm,
        Section::Square { side_mm } => side_mm,
        Section::Blade { spine_mm, .. } => spine_mm,
    }
}

/// The piece of another size: of a blade, the spine.
fn resized(section: Section, size_mm: f64) -> Section {
    match section {
        Section::Plate { .. } => Section::Plate {
            thickness_mm: size_mm,
        },
        Section::Round { .. } => Section::Round {
            diameter_mm: size_mm,
        },
        Section::Square { .. } => Section::Square { side_mm: size_mm },
        Section::Blade {
            edge_mm,
            height_mm,
            grind,
            ..
        } => Section::Blade {
            edge_mm: edge_mm.min(size_mm),
            spine_mm: size_mm,
            height_mm,
            grind,
        },
    }
}

/// Loads a cell: its quenchant, still, and its size.
fn load(bench: Bench, name: &str, size_mm: f64) {
    bench.change(|route| {
        route.quench.medium = MediumChoice::Named(name.to_owned());
        route.quench.agitation = 1.0;
        route.quench.then.clear();
        route.section = resized(route.section, size_mm);
    });
}

fn cell(
    bench: Bench,
    known: &'static Medium,
    size: f64,
    is_here: bool,
    cell: Option<TableCell>,
) -> AnyView {
    let Some(cell) = cell else {
        return view! { <td class="unknown">"–"</td> }.into_any();
    };
    let label = format!(
        "{}, {}: {}, {}",
        known.title.words(bench.scale.get_untracked()),
        format_length(size, bench.length.get_untracked()),
        word(cell.verdict),
        signed(cell.seconds)
    );
    view! {
        <td>
            <button
                type="button"
                class=class(cell.verdict)
                aria-label=label
                aria-current=is_here.then_some("true")
                on:click=move |_| load(bench, &known.name, size)
            >
                {mark(cell.verdict)}
                {signed(cell.seconds)}
            </button>
        </td>
    }
    .into_any()
}

fn row(
    bench: Bench,
    sizes_mm: &[f64],
    row: TableRow,
    here: &(Option<String>, f64),
) -> Option<AnyView> {
    let known = medium(&row.medium)?;
    let scale = bench.scale.get();
    let crack = row.may_crack.then_some(", may crack this steel");
    let is_here = here.0.as_ref() == Some(&row.medium);
    let cells = sizes_mm
        .iter()
        .zip(row.cells)
        .map(|(&size, found)| {
            let here = is_here && (size - here.1).abs() < 1e-9;
            cell(bench, known, size, here, found)
        })
        .collect_view();
    Some(
        view! {
            <tr class:here=is_here>
                <th scope="row">
                    {known.title.words(scale)} <small>{known.describe(scale)} {crack}</small>
                </th>
                {cells}
            </tr>
        }
        .into_any(),
    )
}

fn table(bench: Bench, table: QuenchTable) -> AnyView {
    let here = bench.route.with(|route| {
        let name = match &route.quench.medium {
            MediumChoice::Named(name) => Some(name.clone()),
            MediumChoice::Own(_) => None,
        };
        (name, size_mm(route.section))
    });
    let length = bench.length.get();
    let head = table
        .sizes_mm
        .iter()
        .map(|size| view! { <th scope="col">{format_length(*size, length)}</th> })
        .collect_view();
    let rows = table
        .rows
        .into_iter()
        .filter_map(|one| row(bench, &table.sizes_mm, one, &here))
        .collect_view();
    view! {
        <table>
            <thead>
                <tr>
                    <td></td>
                    {head}
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}

/// All quenchants of the list against sizes of the piece.
#[component]
pub(crate) fn QuenchTablePanel() -> impl IntoView {
    let bench = bench();
    let errand = Memo::new(move |_| {
        let mut route = bench.route.get();
        // What follows the quench, and the quench itself, change nothing in the table.
        route.quench = Quench {
            then: Vec::new(),
            medium: MediumChoice::Named("air_still".to_owned()),
            agitation: 1.0,
            ..route.quench
        };
        route.cold = None;
        route.tempers.clear();
        Errand::QuenchTable(Box::new(route), bench.scale.get())
    });
    let brought = kept_up(bench.runner, errand);
    let what = move || match bench.route.with(|route| route.section) {
        Section::Round { .. } => "a round",
        Section::Square { .. } => "a square bar",
        Section::Plate { .. } | Section::Blade { .. } => "a flat piece",
    };
    let shown = move || match brought.get() {
        Some(Brought::QuenchTable(found)) => table(bench, found),
        Some(Brought::Nothing(why)) => view! { <p class="hint">{why}</p> }.into_any(),
        _ => view! { <p class="hint">"Working it out."</p> }.into_any(),
    };
    view! {
        <section class="quenches" aria-label="Which quench still does it">
            <h2>"Which quench still does it"</h2>
            <p>
                "The same soaked steel in every quenchant of the list, not stirred: seconds to spare at the nose for the centre of "
                {what} ". Press a cell to try it."
            </p>
            <div class="scroll" role="region" aria-label="Quenchants and sizes" tabindex="0">
                {shown}
            </div>
        </section>
    }
    .into_any()
}
