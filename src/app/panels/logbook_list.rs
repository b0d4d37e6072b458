//! The list of the logbook: what is asked for, the runs in a table, measured against predicted.

use super::logbook::signed;
use super::logbook_beside::SideBySide;
use crate::controls::live;
use crate::logbook::Log;
use crate::plot::Plot;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::chart::{LoggedHardness, logbook_chart};
use recalesce::route::place_name;
use recalesce::save::logbook::{
    Agreement, Day, Filter, Id, Listed, Order, PredictedAt, agreement, list,
};
use recalesce::units::{TemperatureScale, format_fixed, format_temperature};
use recalesce_texts::page as texts;

/// Rows shown at first, and how many more each time.
const ROWS: usize = 100;

/// The columns of the table; those with a class are left out where there is no room.
const COLUMNS: [(&str, &str); 9] = [
    (texts::logbook::DAY, ""),
    (texts::logbook::PIECE, ""),
    (texts::logbook::GRADE, ""),
    (texts::general::SOAK, "roomy"),
    (texts::general::QUENCH, "roomy"),
    (texts::general::TEMPER, "roomy"),
    (texts::logbook::PREDICTED, "figure"),
    (texts::logbook::MEASURED, "figure"),
    (texts::logbook::DIFFERENCE, "figure"),
];

/// The place of the piece among them.
const PIECE: usize = 1;

/// Looks at the runs that are asked for.
pub(super) fn with_list<T>(log: Log, look: impl FnOnce(&[Listed]) -> T) -> T {
    log.book.with(|book| {
        log.filter
            .with(|filter| look(&list(book, filter, log.order.get())))
    })
}

/// A field of the filter.
fn asked(
    log: Log,
    label: &'static str,
    kind: &'static str,
    value: String,
    set: fn(&mut Filter, &str),
) -> AnyView {
    view! {
        <label>
            <span>{label}</span>
            <input
                class="text"
                type=kind
                value=value
                on:input:target=move |event| {
                    log.filter.update(|filter| set(filter, &event.target().value()));
                }
            />
        </label>
    }
    .into_any()
}

#[component]
fn Asked(log: Log) -> impl IntoView {
    let now = log.filter.get_untracked();
    let day = |day: Option<Day>| day.map_or_else(String::new, |day| day.to_string());
    let grades = Memo::new(move |_| log.book.with(|book| book.grades()));
    let options = live(move || {
        let chosen = log.filter.with_untracked(|filter| filter.grade.clone());
        let options = grades.get().into_iter().map(|grade| {
            let is_chosen = chosen.as_ref() == Some(&grade);
            view! {
                <option value=grade.clone() selected=is_chosen>
                    {grade.clone()}
                </option>
            }
        });
        options.collect_view().into_any()
    });
    let orders = [
        (Order::Day, "day", texts::logbook::NEWEST_FIRST),
        (Order::Piece, "piece", texts::logbook::BY_PIECE),
        (Order::Grade, "grade", texts::logbook::BY_GRADE),
        (Order::Difference, "difference", texts::logbook::FARTHEST),
    ];
    let order = log.order.get_untracked();
    let order_options = orders.map(|(of, key, words)| {
        view! {
            <option value=key selected=of == order>
                {words}
            </option>
        }
    });
    view! {
        <div class="asked" role="search" aria-label=texts::logbook::RUNS>
            <label>
                <span>{texts::logbook::GRADE}</span>
                <select
                    class="text"
                    aria-label=texts::logbook::GRADE
                    on:change:target=move |event| {
                        let grade = Some(event.target().value()).filter(|grade| !grade.is_empty());
                        log.filter.update(|filter| filter.grade = grade);
                    }
                >
                    <option value="">{texts::logbook::ALL_GRADES}</option>
                    {options}
                </select>
            </label>
            {asked(log, texts::logbook::PIECE, "search", now.piece, |filter, text| text.clone_into(&mut filter.piece))}
            {asked(log, texts::logbook::FROM, "date", day(now.from), |f, text| f.from = Day::parse(text).ok())}
            {asked(log, texts::logbook::TO, "date", day(now.to), |f, text| f.to = Day::parse(text).ok())}
            <label>
                <span>{texts::logbook::ORDER}</span>
                <select
                    class="text"
                    aria-label=texts::logbook::ORDER
                    on:change:target=move |event| {
                        let picked = event.target().value();
                        if let Some((order, ..)) = orders.iter().find(|(_, key, _)| *key == picked) {
                            log.order.set(*order);
                        }
                    }
                >
                    {order_options}
                </select>
            </label>
            <label class="tick">
                <input
                    type="checkbox"
                    prop:checked=now.is_measured
                    on:change:target=move |event| {
                        log.filter.update(|f| f.is_measured = event.target().checked());
                    }
                />
                <span>{texts::logbook::MEASURED_ONLY}</span>
            </label>
        </div>
    }
    .into_any()
}

/// A row of the table: its run and the text of each column.
#[derive(Clone, PartialEq)]
struct Row {
    id: Id,
    cells: [String; COLUMNS.len()],
    is_outside: bool,
}

fn row(listed: &Listed, scale: TemperatureScale) -> Row {
    let run = listed.run;
    let route = &run.route;
    let hrc = |hrc: Option<f64>| hrc.map_or_else(|| "–".to_owned(), |hrc| format_fixed(hrc, 1));
    let tempers = route.tempers.iter();
    let tempers: Vec<_> = tempers
        .map(|t| format_temperature(t.temperature_c, scale))
        .collect();
    let taught = match &run.predicted {
        Some(predicted) if predicted.is_taught => texts::logbook::AS_TAUGHT,
        _ => "",
    };
    Row {
        id: run.id.clone(),
        cells: [
            run.day.to_string(),
            route.piece.clone(),
            run.grade().to_owned(),
            format_temperature(route.soak.temperature_c, scale),
            super::piece::bath_words(&route.quench, scale),
            tempers.join(", "),
            listed
                .compared
                .map_or_else(|| "–".to_owned(), |at| told(at.predicted) + taught),
            hrc(listed.measured_hrc),
            listed
                .difference_hrc()
                .map_or_else(|| "–".to_owned(), signed),
        ],
        is_outside: listed.compared.and_then(|at| at.is_inside()) == Some(false),
    }
}

/// What is predicted, and of which place where places differ.
fn told(predicted: PredictedAt) -> String {
    let figure = predicted.words();
    match predicted.place {
        Some(place) => format!("{figure}, {}", place_name(place)),
        None => figure,
    }
}

/// What a list comes to: how many, the rows in view, the dots of the chart, how they agree.
#[derive(Clone, PartialEq)]
struct Came {
    count: usize,
    rows: Vec<Row>,
    dots: Vec<LoggedHardness>,
    agreement: Option<Agreement>,
}

fn agreement_words(all: Agreement, grade: Option<&str>) -> String {
    texts::logbook::on_average(
        all.runs,
        grade,
        &signed(all.mean_hrc),
        &signed(all.least_hrc),
        &signed(all.most_hrc),
        all.inside_band,
    )
}

/// The list.
#[component]
pub(super) fn List(log: Log) -> impl IntoView {
    let bench = bench();
    let most = RwSignal::new(ROWS);
    let came = Memo::new(move |_| {
        let scale = bench.scale.get();
        with_list(log, |listed| Came {
            count: listed.len(),
            rows: listed
                .iter()
                .take(most.get())
                .map(|l| row(l, scale))
                .collect(),
            dots: listed
                .iter()
                .filter_map(|listed| {
                    let compared = listed.compared?;
                    Some(LoggedHardness {
                        predicted_hrc: compared.predicted.hrc,
                        range_hrc: compared.predicted.range_hrc(),
                        measured_hrc: compared.measured_hrc?,
                    })
                })
                .collect(),
            agreement: agreement(listed),
        })
    });
    let counted = Signal::derive(move || {
        let (shown, all) = (came.with(|came| came.count), log.book.with(|b| b.len()));
        texts::logbook::runs_of(shown, all)
    });
    let told = move || {
        let all = came.with(|came| came.agreement)?;
        Some(
            log.filter
                .with(|f| agreement_words(all, f.grade.as_deref())),
        )
    };
    let heads = COLUMNS.map(|(name, class)| view! { <th scope="col" class=class>{name}</th> });
    let rows = live(move || {
        let rows = came.with(|came| came.rows.clone());
        rows.into_iter()
            .map(|row| row_view(log, row))
            .collect_view()
            .into_any()
    });
    let more = live(move || {
        let left = came.with(|came| came.count).saturating_sub(most.get());
        let button = (left > 0).then(|| {
            view! {
                <button type="button" class="press" on:click=move |_| most.update(|n| *n += ROWS)>
                    {texts::logbook::show_more(left)}
                </button>
            }
        });
        button.into_any()
    });
    view! {
        <Asked log=log />
        <p role="status">{counted}</p>
        <SideBySide log=log />
        <div class="beside">
            <div class="runs">
                <table>
                    <thead>
                        <tr>{heads}</tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
                {more}
            </div>
            <figure>
                <Plot
                    class="agreement" file="logbook"
                    scene=move |w, h| came.with(|came| logbook_chart(&came.dots, [w, h]))
                    nothing=Signal::stored(
                        texts::logbook::NO_CHART_YET
                            .to_owned(),
                    )
                />
                <figcaption>{told}</figcaption>
            </figure>
        </div>
    }
    .into_any()
}

fn row_view(log: Log, row: Row) -> AnyView {
    let id = row.id;
    let (picked, to_pick) = (id.clone(), id.clone());
    let is_beside = move || log.beside.with(|beside| beside.contains(&picked));
    let pick = move |_| {
        log.beside.update(|beside| {
            let before = beside.len();
            beside.retain(|of| *of != to_pick);
            if beside.len() == before {
                // A third takes the place of the first.
                if before > 1 {
                    beside.remove(0);
                }
                beside.push(to_pick.clone());
            }
        });
    };
    let open = move |_| {
        if let Some(run) = log.book.with_untracked(|book| book.get(&id).cloned()) {
            log.open(&run);
        }
    };
    let mut cells = row.cells.into_iter().zip(COLUMNS);
    let day = cells.next().map(|(text, _)| text);
    let cells: Vec<_> = cells
        .zip(1..)
        .map(|((text, (name, class)), place)| {
            // The user's own words, also where they look like numbers.
            let own = (place == PIECE).then_some("no");
            view! {
                <td class=class data-name=name translate=own>
                    {text}
                </td>
            }
        })
        .collect();
    view! {
        <tr class:outside=row.is_outside>
            <th scope="row">
                <input
                    type="checkbox"
                    aria-label=texts::logbook::side_by_side(&day.clone().unwrap_or_default())
                    prop:checked=is_beside
                    on:change=pick
                />
                <button type="button" on:click=open>
                    {day.clone()}
                </button>
            </th>
            {cells}
        </tr>
    }
    .into_any()
}
