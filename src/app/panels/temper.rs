//! The temper: hardness against tempering temperature.

use super::temper_target::TemperTarget;
use crate::charts::{self, oxide_css};
use crate::controls::{Grip, Handle, Typed, Word, quantities, stepped};
use crate::parts::panels::{Panel, panel};
use crate::plot::{Plot, Shown, Tag, handle_at};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::chart::Moves;
use recalesce::route::{Route, Step, Temper, place_name};
use recalesce::units::{format_duration_s, format_hrc, format_temperature};
use recalesce_texts::page as texts;

/// Temper temperatures that can be set, °C.
const RANGE_C: (f64, f64) = (100.0, 700.0);
/// Most tempers.
const MOST: usize = 6;

/// Moves all tempers so that the first is at a temperature.
pub(super) fn move_tempers(route: &mut Route, first_c: f64) {
    let Some(shift) = route.tempers.first().map(|t| first_c - t.temperature_c) else {
        return;
    };
    let (least, most) = RANGE_C;
    for temper in &mut route.tempers {
        temper.temperature_c = (temper.temperature_c + shift).clamp(least, most);
    }
}

/// Gives all tempers a time, min.
pub(super) fn time_tempers(route: &mut Route, time_min: f64) {
    for temper in &mut route.tempers {
        temper.time_min = time_min;
    }
}

/// How often, in words.
fn count_words(tempers: &[Temper]) -> String {
    let apart = tempers.windows(2).any(|pair| pair.first() != pair.last());
    match (tempers.len(), apart) {
        (0, _) => texts::temper::NO_TEMPER.to_owned(),
        (1, _) => texts::temper::ONCE.to_owned(),
        (n, false) => texts::temper::times(n),
        (n, true) => texts::temper::each_its_own(n),
    }
}

/// How many tempers, each with its temperature and time.
#[component]
pub(crate) fn CountPanel() -> impl IntoView {
    let bench = bench();
    let count = Memo::new(move |_| bench.route.with(|r| r.tempers.len()));
    let rows = move || {
        (0..count.get())
            .map(|i| {
                let temper = Signal::derive(move || {
                    bench.route.with(|r| r.tempers.get(i).copied().unwrap_or(Temper::FIRST_OFFERED))
                });
                let set = move |change: &dyn Fn(&mut Temper)| {
                    bench.change(|r| {
                        if let Some(temper) = r.tempers.get_mut(i) {
                            change(temper);
                        }
                    });
                };
                view! {
                    <div class="two">
                        <Typed
                            label=[texts::temper::FIRST, texts::temper::SECOND, texts::temper::THIRD, texts::temper::FOURTH, texts::temper::FIFTH, texts::temper::SIXTH][i.min(MOST - 1)]
                            quantity=Signal::derive(move || quantities::temperature(
                                bench.scale.get(),
                                RANGE_C,
                            ))
                            value=Signal::derive(move || temper.get().temperature_c)
                            set=move |c| set(&|t| t.temperature_c = c)
                        />
                        <Typed
                            label=texts::temper::FOR
                            quantity=Signal::stored(quantities::minutes((1.0, 6000.0), 5.0))
                            value=Signal::derive(move || temper.get().time_min)
                            set=move |min| set(&|t| t.time_min = min)
                        />
                    </div>
                }
            })
            .collect_view()
    };
    view! {
        <Typed
            label=texts::temper::HOW_MANY
            quantity=Signal::stored(
                quantities::plain("", 0, (0.0, MOST as f64), 1.0, texts::temper::UP_TO_SIX),
            )
            value=Signal::derive(move || count.get() as f64)
            set=move |n: f64| {
                let n = n.round().max(0.0) as usize;
                bench
                    .change(|r| {
                        let last = r.tempers.last().copied().unwrap_or(Temper::FIRST_OFFERED);
                        r.tempers.resize(n.min(MOST), last);
                    })
            }
        />
        {rows}
    }
    .into_any()
}

/// The first temper, as the panels show it.
fn first_temper(bench: Bench) -> Temper {
    bench
        .route
        .with(|r| r.tempers.first().copied().unwrap_or(Temper::FIRST_OFFERED))
}

/// Temperature of the temper.
#[component]
pub(crate) fn TemperTemperaturePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Typed
            label=texts::temper::TEMPERATURE
            quantity=Signal::derive(move || quantities::temperature(
                bench.scale.get(),
                RANGE_C,
            ))
            value=Signal::derive(move || first_temper(bench).temperature_c)
            set=move |c| bench.change(|r| move_tempers(r, c))
        />
    }
}

/// Time of each temper.
#[component]
pub(crate) fn TemperTimePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Typed
            label=texts::temper::TIME_OF_EACH
            quantity=Signal::stored(quantities::minutes((1.0, 6000.0), 5.0))
            value=Signal::derive(move || first_temper(bench).time_min)
            set=move |min| {
                bench.change(|r| time_tempers(r, min))
            }
        />
    }
}

#[component]
fn TemperWords() -> impl IntoView {
    let bench = bench();
    let tempers = Memo::new(move |_| bench.route.with(|r| r.tempers.clone()));
    let first = Memo::new(move |_| tempers.with(|t| t.first().copied()));
    let heat = move || {
        first.with(Option::is_some).then(|| {
            view! {
                <Word
                    text=Signal::derive(move || format_temperature(
                        first.get().unwrap_or(Temper::FIRST_OFFERED).temperature_c,
                        bench.scale.get(),
                    ))
                    name=texts::temper::TEMPER_TEMPERATURE
                    mark=","
                >
                    {panel(Panel::TemperTemperature)}
                </Word>
                " "
            }
        })
    };
    let time = move || {
        first.with(Option::is_some).then(|| {
            view! {
                " "
                <Word
                    text=Signal::derive(move || format_duration_s(
                        60.0 * first.get().unwrap_or(Temper::FIRST_OFFERED).time_min,
                    ))
                    name=texts::temper::TEMPER_TIME
                >
                    {panel(Panel::TemperTime)}
                </Word>
            }
        })
    };
    view! {
        <p class="set">
            {heat}
            <Word
                text=Signal::derive(move || tempers.with(|t| count_words(t)))
                name=texts::temper::NUMBER_OF_TEMPERS
            >
                {panel(Panel::TemperCount)}
            </Word> {time}
        </p>
    }
    .into_any()
}

/// What the temper received from the quench.
pub(crate) fn received() -> impl Fn() -> String {
    let bench = bench();
    move || {
        bench
            .outcome()
            .and_then(|outcome| {
                // A chart out of the table of a grade begins with its first temper.
                let mut stages = outcome.judged_stages().iter();
                stages.find(|stage| stage.step == Step::Quench)?.hardness?;
                let start = format_hrc(outcome.temper.given()?.start_hrc);
                let is_chilled = outcome.stages.iter().any(|stage| stage.step == Step::Cold);
                Some(if is_chilled {
                    texts::temper::chilled_to(&start)
                } else {
                    texts::temper::quenched_to(&start)
                })
            })
            .unwrap_or_default()
    }
}

/// The temper.
#[component]
pub(crate) fn TemperStage() -> impl IntoView {
    let bench = bench();
    let first_c = Memo::new(move |_| {
        bench
            .route
            .with(|r| r.tempers.first().map(|t| t.temperature_c))
    });
    let handle = move |shown: Shown| {
        let at = handle_at(shown);
        let value =
            Signal::derive(move || first_c.get().unwrap_or(Temper::FIRST_OFFERED.temperature_c));
        let step = move |(c, steps): (f64, f64)| {
            let degree_k = bench.scale.get_untracked().to_kelvin_difference(1.0);
            stepped(c, steps, RANGE_C, degree_k)
        };
        let text = Signal::derive(move || format_temperature(value.get(), bench.scale.get()));
        let grip = Grip {
            value_at: Callback::new(move |(x, _): (f64, f64)| {
                shown
                    .get_untracked()
                    .map_or(value.get_untracked(), |scene| {
                        let plane = &scene.plane;
                        step((plane.to_data([x, plane.rect.bottom])[0], 0.0))
                    })
            }),
            set: Callback::new(move |c: f64| bench.change(|r| move_tempers(r, c))),
            stepped: Callback::new(step),
            range: Signal::stored(RANGE_C),
            grows_rightward: true,
        };
        view! {
            <Tag shown=shown text=text />
            <Handle
                key="temper"
                name=texts::temper::TEMPER_TEMPERATURE
                at=at
                value=value
                text=text
                grip=grip
                moves=Moves::Across
                core=Signal::derive(move || oxide_css(value.get()))
            />
        }
        .into_any()
    };
    view! {
        <TemperWords />
        <Plot
            class="tall" file="temper"
            scene=move |w, h| charts::temper_scene(bench, w, h)
            nothing=Signal::derive(move || charts::no_temper(bench))
            handles=Box::new(handle)
        />
        <TemperTarget />
        {panel(Panel::TemperBelow)}
    }
    .into_any()
}

/// Below the curve: what the final hardness hangs on.
#[component]
pub(crate) fn TemperBelow() -> impl IntoView {
    let bench = bench();
    let title = move || {
        let place = bench.outcome().and_then(|outcome| outcome.judged_place());
        place.map_or_else(
            || texts::temper::WHAT_MOVES_HARDNESS.to_owned(),
            |place| texts::temper::what_moves_hardness_at(place_name(place)),
        )
    };
    view! {
        <div class="sub">
            <h3>{title}</h3>
            <Plot
                class="history" file="what-moves-hardness"
                scene=move |w, h| charts::influences_scene(bench, w, h)
                nothing=Signal::stored(texts::charts::NOT_KNOWN.to_owned())
            />
        </div>
    }
    .into_any()
}
