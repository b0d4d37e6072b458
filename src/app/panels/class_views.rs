//! The routes of a class on one chart, and in a table.

use super::class::Class;
use super::piece::bath_words;
use crate::controls::live;
use crate::plot::{Plot, Shown};
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::chart::class_chart;
use recalesce::teach::{CLASS_NUMBERS, ClassOrder, ClassRow, Number};
use recalesce::units::{LengthUnit, TemperatureScale, format_fixed};
use recalesce_texts::page as texts;
use std::sync::Arc;
use web_sys::MouseEvent;

/// A press on the chart takes the nearest point within this, px.
const REACH_PX: f64 = 24.0;

/// A number as the user wants it shown, and its unit.
fn shown(number: Number, value: f64, bench: Bench) -> (f64, &'static str) {
    match (number.unit(), bench.scale.get(), bench.length.get()) {
        ("°C", TemperatureScale::Fahrenheit, _) => {
            (TemperatureScale::Fahrenheit.of_celsius(value), "°F")
        }
        ("mm", _, LengthUnit::Inch) => (LengthUnit::Inch.of_mm(value), "in"),
        (unit, ..) => (value, unit),
    }
}

/// Decimals that a number is shown with.
fn decimals(number: Number, unit: &str) -> usize {
    match (number, unit) {
        (_, "°C" | "°F") => 0,
        (_, "in") => 3,
        (Number::CarbonWt | Number::MarginFactor, _) => 2,
        _ => 1,
    }
}

/// Its name with its unit.
fn title(number: Number, bench: Bench) -> String {
    match shown(number, 0.0, bench).1 {
        "" => number.words().to_owned(),
        unit => format!("{}, {unit}", number.words()),
    }
}

/// A choice of the number on an axis.
fn axis(class: Class, name: &'static str, chosen: RwSignal<usize>) -> AnyView {
    let options = CLASS_NUMBERS.into_iter().enumerate().map(|(at, number)| {
        view! {
            <option value=at.to_string() selected=move || chosen.get() == at>
                {move || title(number, class.bench)}
            </option>
        }
    });
    view! {
        <div class="field">
            <label>
                {name}
                <select
                    class="text"
                    on:change:target=move |event| {
                        if let Ok(at) = event.target().value().parse() {
                            chosen.set(at);
                        }
                    }
                >
                    {options.collect_view()}
                </select>
            </label>
        </div>
    }
    .into_any()
}

/// Two numbers of every route against each other.
#[component]
pub(super) fn ClassChart(class: Class) -> impl IntoView {
    let bench = class.bench;
    // The places of the rows that have both numbers, with these, in the order of the points.
    let drawn = Memo::new(move |_| {
        let (across, upwards) = (class.across.get(), class.upwards.get());
        let both = |row: &ClassRow| Some([row.number(across)?, row.number(upwards)?]);
        class.rows.with(|rows| {
            let rows = rows.iter().enumerate();
            rows.filter_map(|(place, row)| Some((place, both(row)?)))
                .filter(|(_, point)| point.iter().all(|value| value.is_finite()))
                .collect::<Vec<_>>()
        })
    });
    let number = |at: usize| CLASS_NUMBERS.get(at).copied().unwrap_or(Number::FinalHrc);
    let scene = move |width: f64, height: f64| {
        let [across, upwards] = [class.across, class.upwards].map(|chosen| number(chosen.get()));
        let points: Vec<[f64; 2]> = drawn.with(|drawn| {
            let at = |[x, y]: [f64; 2]| [shown(across, x, bench).0, shown(upwards, y, bench).0];
            drawn.iter().map(|(_, point)| at(*point)).collect()
        });
        let [across, upwards] = [across, upwards].map(|number| title(number, bench));
        class_chart(&points, [&across, &upwards], [width, height])
    };
    let pressed = move |press: &MouseEvent, shown: Shown| {
        let at_px = [f64::from(press.offset_x()), f64::from(press.offset_y())];
        let scene = shown.get_untracked()?;
        let distances_px = scene.handles.iter().map(|handle| {
            let [x, y] = handle.at_px;
            (x - at_px[0]).hypot(y - at_px[1])
        });
        let (nearest, _) = distances_px
            .enumerate()
            .filter(|(_, distance_px)| *distance_px <= REACH_PX)
            .min_by(|a, b| a.1.total_cmp(&b.1))?;
        let (place, _) = drawn.with_untracked(|drawn| drawn.get(nearest).copied())?;
        class.rows.with_untracked(|rows| rows.get(place).cloned())
    };
    let points = move |shown: Shown| {
        let press = move |event: MouseEvent| {
            if let Some(row) = pressed(&event, shown) {
                class.put(&row);
            }
        };
        view! { <div class="points" aria-hidden="true" on:click=press></div> }.into_any()
    };
    view! {
        <div class="asked-for">
            {axis(class, texts::class::ACROSS, class.across)} {axis(class, texts::class::UPWARDS, class.upwards)}
        </div>
        <Plot
            class="trade" file="class"
            scene=scene
            handles=Box::new(points)
            nothing=Signal::stored(texts::class::NO_ROUTE_HAS_BOTH.to_owned())
        />
        <p class="hint">{texts::class::PRESSED_GOES_TO_BENCH}</p>
    }
    .into_any()
}

/// The head of a column: a press orders by it, another turns the order.
fn heading(class: Class, by: ClassOrder, words: Signal<String>) -> AnyView {
    let sorted = move || {
        let (now, is_falling) = class.order.get();
        (now == by).then_some(if is_falling {
            "descending"
        } else {
            "ascending"
        })
    };
    let turn = move |_| {
        class.order.update(|(now, is_falling)| {
            *is_falling = *now == by && !*is_falling;
            *now = by;
        });
    };
    view! {
        <th scope="col" aria-sort=sorted>
            <button type="button" on:click=turn>
                {words}
            </button>
        </th>
    }
    .into_any()
}

/// The table.
#[component]
pub(super) fn ClassTable(class: Class) -> impl IntoView {
    let numbers = CLASS_NUMBERS.into_iter().enumerate().map(|(at, number)| {
        let words = Signal::derive(move || title(number, class.bench));
        heading(class, ClassOrder::Number(at), words)
    });
    let named = |by, name: &str| heading(class, by, Signal::stored(name.to_owned()));
    let rows = live(move || {
        let rows = class.ordered();
        let rows = rows.iter().map(|row| line(class, row));
        rows.collect_view().into_any()
    });
    view! {
        <div class="scrolled" tabindex="0" role="region" aria-label=texts::class::ROUTES_OF_CLASS>
            <table>
                <thead>
                    <tr>
                        {named(ClassOrder::Name, texts::class::NAME)} {named(ClassOrder::Grade, texts::class::GRADE)}
                        <th scope="col">{texts::class::QUENCH}</th> {numbers.collect_view()}
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}

fn line(class: Class, row: &Arc<ClassRow>) -> AnyView {
    let bench = class.bench;
    let cells = CLASS_NUMBERS.into_iter().enumerate().map(|(at, number)| {
        let text = row.number(at).map_or_else(
            || "–".to_owned(),
            |value| {
                let (value, unit) = shown(number, value, bench);
                format_fixed(value, decimals(number, unit))
            },
        );
        view! { <td>{text}</td> }
    });
    let cells = cells.collect_view();
    let name = row.handed.name.clone();
    let put = row.clone();
    view! {
        <tr>
            <th scope="row" translate="no">
                <button
                    type="button"
                    aria-label=texts::class::put_on_bench(&name)
                    on:click=move |_| class.put(&put)
                >
                    {name.clone()}
                </button>
            </th>
            <td>{row.grade().to_owned()}</td>
            <td>{bath_words(&row.handed.route.quench, bench.scale.get())}</td>
            {cells}
        </tr>
    }
    .into_any()
}
