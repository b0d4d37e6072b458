//! Routes side by side: what differs first, then what is the same.

use super::decide::{Deciding, Working};
use super::decide_acting::acting_on;
use super::save_table::SaveTable;
use crate::controls::{Segment, live};
use crate::decide::{Question, Told};
use crate::plot::Plot;
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::{Correction, Courses, Numbers};
use recalesce::chart::{MOST_LINES, OverlayData, OverlayLine, overlay_chart};
use recalesce::route::{Route, route_lines};
use recalesce::save::ItemId;
use recalesce::steel::find;
use recalesce::units::{
    LengthUnit, TemperatureScale, format_factor, format_fixed, format_percent,
    format_weight_percent,
};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Most routes side by side.
const MOST: usize = MOST_LINES;

/// What is picked for it.
#[derive(Clone, Copy)]
pub(crate) struct Picked {
    /// Routes of the shelf.
    of_shelf: RwSignal<Vec<ItemId>>,
    /// Whether the handbook's is one.
    with_handbook: RwSignal<bool>,
    /// What is laid over one another.
    course: RwSignal<Course>,
}

impl Default for Picked {
    fn default() -> Self {
        Self {
            of_shelf: RwSignal::default(),
            with_handbook: RwSignal::new(true),
            course: RwSignal::new(Course::Cooling),
        }
    }
}

/// What several routes do, on the same axes.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Course {
    Carbon,
    Cooling,
    Temper,
}

/// Routes that were compared, and what comes out of each.
pub(crate) struct Compared {
    routes: Vec<(String, Route)>,
    come_out: Vec<Result<(Numbers, Courses), String>>,
    /// What they were counted with.
    with: Correction,
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

fn table(bench: Bench, compared: &Compared) -> AnyView {
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

impl Course {
    const fn title(self) -> &'static str {
        match self {
            Self::Carbon => texts::decide::COURSE_OF_CARBON,
            Self::Cooling => texts::decide::COURSE_OF_COOLING,
            Self::Temper => texts::decide::COURSE_OF_TEMPER,
        }
    }

    /// Abscissa and ordinate with their units.
    fn axes(self, scale: TemperatureScale) -> [String; 2] {
        let degrees = scale.symbol();
        match self {
            Self::Carbon => [
                texts::decide::TIME_AT_TEMPERATURE_MIN,
                texts::decide::CARBON_PERCENT,
            ]
            .map(str::to_owned),
            Self::Cooling => [
                texts::decide::TIME_FROM_FURNACE_S.to_owned(),
                texts::decide::temperature_in(degrees),
            ],
            Self::Temper => [
                texts::decide::temper_in(degrees),
                texts::decide::HARDNESS_HRC.to_owned(),
            ],
        }
    }

    const fn of(self, courses: &Courses) -> &Vec<[f64; 2]> {
        match self {
            Self::Carbon => &courses.carbon,
            Self::Cooling => &courses.cooling,
            Self::Temper => &courses.temper,
        }
    }

    fn data(self, compared: &Compared, scale: TemperatureScale) -> OverlayData {
        let degrees = |[x, y]: [f64; 2]| match self {
            Self::Carbon => [x, y],
            Self::Cooling => [x, scale.of_celsius(y)],
            Self::Temper => [scale.of_celsius(x), y],
        };
        let routes = compared.routes.iter().zip(&compared.come_out).zip(1..);
        OverlayData {
            title: self.title().to_owned(),
            axes: self.axes(scale),
            is_log: self == Self::Cooling,
            lines: routes
                .filter_map(|(((name, _), come_out), number)| {
                    let (_, courses) = come_out.as_ref().ok()?;
                    let points: Vec<[f64; 2]> =
                        self.of(courses).iter().copied().map(degrees).collect();
                    (!points.is_empty()).then(|| OverlayLine {
                        number,
                        name: name.clone(),
                        points,
                    })
                })
                .collect(),
        }
    }
}

/// What the routes do, over one another.
fn overlay(bench: Bench, compared: Arc<Compared>, course: RwSignal<Course>) -> AnyView {
    let scene = move |width, height| {
        overlay_chart(
            &course.get().data(&compared, bench.scale.get()),
            [width, height],
        )
    };
    view! {
        <Segment
            name=texts::decide::LAID_OVER
            entries=vec![
                (Course::Carbon, texts::outcome::SOAK),
                (Course::Cooling, texts::outcome::QUENCH),
                (Course::Temper, texts::outcome::TEMPER),
            ]
            chosen=course
            pick=move |one| course.set(one)
        />
        <p class="hint">
            {move || course.get().title()}
            {texts::decide::LINE_NUMBERS}
        </p>
        <Plot class="trade" file="routes-compared" scene=scene nothing=texts::decide::NOTHING_FOR_ROUTES />
    }
    .into_any()
}

/// The panel.
#[component]
pub(super) fn Comparing(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let Picked {
        of_shelf: chosen,
        with_handbook,
        course,
    } = deciding.picked;
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
    let routes = move || {
        let mut routes = vec![(texts::decide::ON_THE_BENCH.to_owned(), bench.route.get())];
        if with_handbook.get()
            && let Some(route) = handbook()
        {
            routes.push((texts::decide::BY_THE_HANDBOOK.to_owned(), route));
        }
        bench.shelf.with(|shelf| {
            let of_shelf = chosen.get().into_iter();
            let of_shelf = of_shelf.filter_map(|id| shelf.get(id));
            routes.extend(of_shelf.map(|item| (item.name.clone(), item.route.clone())));
        });
        routes.truncate(MOST);
        routes
    };
    let question = move || {
        let routes = routes().into_iter();
        let routes = routes.map(|(_, route)| route).collect();
        Question::Compare(routes, deciding.counted_with())
    };
    let start = move |()| {
        let (routes, question) = untrack(|| (routes(), question()));
        let with = untrack(|| deciding.counted_with());
        deciding.comparing.ask(&question, move |told| match told {
            Told::Compared(come_out) => {
                let compared = Compared {
                    routes: routes.clone(),
                    come_out,
                    with: with.clone(),
                };
                deciding.compared.try_set(Some(Arc::new(compared)));
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
                    <span translate="no">{name}</span>
                </label>
            }
        });
        of_shelf.collect_view().into_any()
    });
    view! {
        <h3>{texts::decide::SIDE_BY_SIDE}</h3>
        <p class="hint">
            {texts::decide::ABOUT_SIDE_BY_SIDE}
        </p>
        <div class="ticks" role="group" aria-label=texts::decide::ROUTES_TO_COMPARE>
            <Show when=move || has_handbook.get()>
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=with_handbook
                        on:change=move |_| with_handbook.update(|is| *is = !*is)
                    />
                    {texts::decide::BY_THE_HANDBOOK}
                </label>
            </Show>
            {boxes}
        </div>
        <Working
            task=deciding.comparing
            words=texts::decide::COMPARE
            start=start
            is_stale=Signal::derive(move || deciding.comparing.is_stale(&question()))
        />
        {live(move || {
            deciding
                .compared
                .get()
                .map_or_else(
                    || ().into_any(),
                    |compared| {
                        let routes = compared.routes.iter().map(|(_, route)| route);
                        view! {
                            {acting_on(deciding, &compared.with, routes)}
                            {table(bench, &compared)}
                            {overlay(bench, compared, course)}
                        }
                            .into_any()
                    },
                )
        })}
    }
    .into_any()
}
