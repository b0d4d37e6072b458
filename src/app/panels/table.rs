//! Which quench still does it: all quenchants against sizes, each cell a route to load.

use super::save_table::SaveTable;
use crate::browser::rest::at_rest;
use crate::errand::{Errand, TableOf, kept_up};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::Correction;
use recalesce::heat::{Medium, MediumChoice, Section};
use recalesce::route::{Quench, QuenchTable, TableCell, TableRow, Verdict, margin_words};
use recalesce::units::{format_factor, format_fixed, format_given_length};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Disc, half disc or cross: the verdict by shape.
pub(super) fn mark(verdict: Verdict) -> AnyView {
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

pub(super) const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "holds",
        Verdict::Narrow => "narrow",
        Verdict::Misses => "misses",
    }
}

pub(super) const fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => texts::media::FAST_ENOUGH,
        Verdict::Narrow => texts::media::BORDERLINE,
        Verdict::Misses => texts::media::TOO_SLOW,
    }
}

pub(super) fn signed(seconds: f64) -> String {
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
fn load(bench: Bench, choice: &MediumChoice, size_mm: f64) {
    bench.change(|route| {
        route.quench.medium = choice.clone();
        route.quench.agitation = 1.0;
        route.quench.then.clear();
        route.section = resized(route.section, size_mm);
    });
}

/// What is in a cell: its verdict, its seconds and its factor.
type Told = Option<(Verdict, String, String)>;

/// A quenchant of the table.
#[derive(Clone)]
struct Known {
    choice: MediumChoice,
    medium: Arc<Medium>,
}

impl Known {
    fn of(choice: MediumChoice) -> Option<Self> {
        let medium = Arc::new(choice.resolve().ok()?);
        Some(Self { choice, medium })
    }
}

/// A cell. Its parts are changed and never made anew, since all of them move while a handle is dragged.
fn cell(
    bench: Bench,
    found: Memo<Option<QuenchTable>>,
    known: Known,
    [row, column]: [usize; 2],
    size: f64,
) -> AnyView {
    let told = Memo::new(move |_| -> Told {
        found.with(|table| {
            let row = table.as_ref()?.rows.get(row)?;
            let cell: TableCell = (*row.cells.get(column)?)?;
            let factor = format_factor(cell.factor);
            Some((cell.verdict, signed(cell.seconds), factor))
        })
    });
    let verdict = Memo::new(move |_| told.with(|told| told.as_ref().map(|told| told.0)));
    let words = move || told.with(|told| told.as_ref().map(|told| told.1.clone()));
    let factor = move || told.with(|told| told.as_ref().map(|told| told.2.clone()));
    let medium = known.medium.clone();
    let label = Memo::new(move |_| {
        Some(texts::media::cell(
            &medium.title.words(bench.scale.get()),
            &format_given_length(size, bench.length.get()),
            word(verdict.get()?),
            &factor()?,
            &words()?,
        ))
    });
    let choice = known.choice.clone();
    let is_here = Memo::new(move |_| {
        bench.route.with(|route| {
            let is_size = (size - size_mm(route.section)).abs() < 1e-9;
            is_size && route.quench.medium == choice
        })
    });
    let button = move || {
        let choice = known.choice.clone();
        view! {
            <button
                type="button"
                class=move || verdict.get().map(|verdict| format!("cell {}", class(verdict)))
                aria-label=label
                title=label
                aria-current=move || is_here.get().then_some("true")
                on:click=move |_| load(bench, &choice, size)
            >
                {move || verdict.get().map(mark)}
                {factor}
                " "
                <small>{words}</small>
            </button>
        }
        .into_any()
    };
    let is_known = Memo::new(move |_| verdict.with(Option::is_some));
    let shown = move || match is_known.get() {
        true => button(),
        false => "–".into_any(),
    };
    view! { <td class:unknown=move || !is_known.get()>{shown}</td> }.into_any()
}

fn row(
    bench: Bench,
    found: Memo<Option<QuenchTable>>,
    sizes_mm: &[f64],
    place: usize,
    known: &Known,
) -> AnyView {
    let scale = bench.scale;
    let may_crack = Memo::new(move |_| {
        found.with(|table| table.as_ref()?.rows.get(place).map(|row| row.may_crack))
    });
    let crack = move || (may_crack.get() == Some(true)).then_some(texts::media::MAY_CRACK);
    let choice = known.choice.clone();
    let is_here = move || bench.route.with(|route| route.quench.medium == choice);
    let cells = sizes_mm
        .iter()
        .enumerate()
        .map(|(column, &size)| cell(bench, found, known.clone(), [place, column], size))
        .collect_view();
    let (titled, described) = (known.medium.clone(), known.medium.clone());
    let own = matches!(known.choice, MediumChoice::Own(_)).then_some(texts::media::YOUR_OWN);
    view! {
        <tr class:here=is_here>
            <th scope="row">
                <span translate=own.map(|_| "no")>{move || titled.title.words(scale.get())}</span> " "
                <small>{own} {move || described.describe(scale.get())} {crack}</small>
            </th>
            {cells}
        </tr>
    }
    .into_any()
}

/// Sizes and quenchants: while they stay, so do the cells.
type Shape = (Vec<f64>, Vec<MediumChoice>);

fn table(
    bench: Bench,
    found: Memo<Option<QuenchTable>>,
    is_there: Memo<bool>,
    (sizes_mm, choices): Shape,
) -> AnyView {
    let length = bench.length;
    let head = sizes_mm
        .iter()
        .map(|&size| view! { <th scope="col">{move || format_given_length(size, length.get())}</th> })
        .collect_view();
    let rows = choices
        .into_iter()
        .enumerate()
        .filter_map(|(place, choice)| {
            Some(row(bench, found, &sizes_mm, place, &Known::of(choice)?))
        })
        .collect_view();
    view! {
        <table hidden=move || !is_there.get()>
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

/// The table for a spreadsheet: of each size the seconds and the factor, without the words beside.
fn sheet(bench: Bench, found: &QuenchTable) -> Vec<Vec<String>> {
    let (scale, length) = (bench.scale.get_untracked(), bench.length.get_untracked());
    let sizes = found.sizes_mm.iter().flat_map(|&size| {
        let size = format_given_length(size, length);
        [
            texts::media::size_to_spare(&size),
            texts::media::size_margin(&size),
        ]
    });
    let titles = std::iter::once(texts::media::QUENCHANT.to_owned()).chain(sizes);
    let row = |row: &TableRow| {
        let title = row.medium.resolve().ok()?.title.words(scale);
        let cells = row.cells.iter().flat_map(|cell| match cell {
            Some(cell) => [format_fixed(cell.seconds, 2), format_factor(cell.factor)],
            None => [String::new(), String::new()],
        });
        Some(std::iter::once(title).chain(cells).collect())
    };
    std::iter::once(titles.collect())
        .chain(found.rows.iter().filter_map(row))
        .collect()
}

/// All quenchants of the list against sizes of the piece.
#[component]
pub(crate) fn QuenchTablePanel() -> impl IntoView {
    let bench = bench();
    let asked = Memo::new(move |_| {
        let mut route = bench.route.get();
        // What follows the quench changes nothing in the table, and nor does the quench itself but by
        // a quenchant that is not in the list.
        let is_listed = |medium: &MediumChoice| matches!(medium, MediumChoice::Named(_));
        let later = route.quench.then.iter().map(|next| &next.medium);
        if is_listed(&route.quench.medium) && later.into_iter().all(is_listed) {
            route.quench = Quench {
                then: Vec::new(),
                medium: MediumChoice::Named("air_still".to_owned()),
                ..route.quench
            };
        }
        route.quench.agitation = 1.0;
        route.cold = None;
        route.tempers.clear();
        route
    });
    // A table for every move of a drag would keep both threads from the charts.
    let rested = at_rest(asked);
    let errand = Memo::new(move |_| {
        let teach = bench.teach.get().filter(|_| bench.is_taught());
        let learnt = teach.map_or_else(Correction::default, |teach| (*teach.learnt).clone());
        let of: TableOf = (rested.get(), learnt);
        let of = serde_json::to_string(&of).unwrap_or_default();
        Errand::QuenchTable(of, bench.scale.get())
    });
    let (brought, is_earlier) = kept_up::<Result<QuenchTable, String>>(bench.runner, errand);
    let is_of_before = Memo::new(move |_| {
        is_earlier.get() || asked.with(|asked| rested.with(|rested| asked != rested))
    });
    let of_blade = move || match bench.route.with(|route| route.section) {
        Section::Blade { .. } => texts::media::BLADES_IN_TABLE,
        _ => texts::media::PRESSED_CELL,
    };
    let taught = move || {
        bench
            .is_taught()
            .then_some(texts::media::COUNTED_WITH_LEARNT)
    };
    let what = move || match bench.route.with(|route| route.section) {
        Section::Round { .. } => texts::media::A_ROUND,
        Section::Square { .. } => texts::media::A_SQUARE_BAR,
        Section::Plate { .. } | Section::Blade { .. } => texts::media::A_FLAT_PIECE,
    };
    let newest = move || brought.get()?.and_then(|found| found).ok();
    // The last one stays, out of sight, where the route has none: all of it made anew each time that a
    // drag comes back costs time, and memory that what outlives it does not give back.
    let found = Memo::new(move |before: Option<&Option<QuenchTable>>| {
        newest().or_else(|| before.cloned().flatten())
    });
    let is_there = Memo::new(move |_| brought.with(|brought| matches!(brought, Some(Ok(Ok(_))))));
    let shape = Memo::new(move |_| {
        found.with(|table| {
            let table = table.as_ref()?;
            let choices = table.rows.iter().map(|row| row.medium.clone());
            Some((table.sizes_mm.clone(), choices.collect()))
        })
    });
    let is_refused = Memo::new(move |_| brought.with(|b| b.is_some()) && !is_there.get());
    let without = move || match brought.get().map(|brought| brought.and_then(|found| found)) {
        Some(Ok(_)) => None,
        Some(Err(why)) => Some(why),
        None => Some(texts::general::WORKING_IT_OUT.to_owned()),
    };
    let shown = move || {
        shape
            .get()
            .map(|shape| table(bench, found, is_there, shape))
    };
    view! {
        <section
            class="quenches"
            aria-label=texts::media::WHICH_STILL_DOES
            aria-busy=move || is_of_before.get().to_string()
        >
            <h2>{texts::media::WHICH_STILL_DOES}</h2>
            <p hidden=is_refused>
                {move || texts::media::about_table(what())} " " {of_blade} {taught}
            </p>
            <div class="scrolled" role="region" aria-label=texts::media::MEDIA_AND_SIZES tabindex="0">
                {shown}
                {move || without().map(|why| view! { <p class="hint">{why}</p> })}
            </div>
            {move || {
                (!is_refused.get()).then(|| view! {
                    <SaveTable
                        file="quenchants"
                        rows=move || {
                            let found = untrack(newest)?;
                            Some(sheet(bench, &found))
                        }
                    />
                })
            }}
        </section>
    }
    .into_any()
}
