//! One input of the route on the bench through a range, and any number that comes out.

use super::decide::{Deciding, Work, Working};
use super::decide_acting::acting_on;
use crate::browser::files;
use crate::controls::{Quantity, Typed, live, quantities};
use crate::decide::{Question, Told};
use crate::plot::Plot;
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::{Correction, Numbers, SweepBand, SweepPoint, SweptInput, sweep_csv};
use recalesce::chart::{SweepData, sweep_chart};
use recalesce::route::Route;
use recalesce::units::{LengthUnit, TemperatureScale};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Name of the file of numbers.
const FILE_NAME: &str = "recalesce-sweep.csv";
/// From which to which part of its value an input is first taken, and to what at least.
const ABOUT: (f64, f64) = (0.25, 3.0);
const AT_LEAST_TO: f64 = 10.0;

/// What was swept.
pub(crate) struct Swept {
    input: SweptInput,
    now: f64,
    points: Vec<SweepPoint>,
    bands: Vec<SweepBand>,
    /// The route that was swept, and what it was counted with.
    of: (Route, Correction),
}

/// What is taken through a range, and what is looked at.
#[derive(Clone, Copy)]
pub(crate) struct Through {
    input: RwSignal<SweptInput>,
    range: RwSignal<[f64; 2]>,
    output: RwSignal<usize>,
    has_band: RwSignal<bool>,
}

impl Through {
    /// The soak, about what the route on the bench has.
    pub(super) fn about(bench: Bench) -> Self {
        let input = SweptInput::SoakC;
        Self {
            input: RwSignal::new(input),
            range: RwSignal::new(about(bench, input)),
            output: RwSignal::new(0),
            has_band: RwSignal::new(false),
        }
    }
}

/// A number that comes out.
#[derive(Clone, Copy)]
struct Output {
    words: &'static str,
    unit: &'static str,
    /// From the number to what is shown.
    scale: f64,
    of: fn(&Numbers) -> Option<f64>,
}

const OUTPUTS: [Output; 8] = [
    Output {
        words: texts::decide::HARDNESS_IN_THE_END,
        unit: "HRC",
        scale: 1.0,
        of: |n| n.final_hrc,
    },
    Output {
        words: texts::decide::HARDNESS_QUENCHED,
        unit: "HRC",
        scale: 1.0,
        of: |n| n.quenched_hrc,
    },
    Output {
        words: texts::decide::AUSTENITE_IN_THE_END,
        unit: "%",
        scale: 100.0,
        of: |n| n.final_austenite,
    },
    Output {
        words: texts::decide::AUSTENITE_QUENCHED,
        unit: "%",
        scale: 100.0,
        of: |n| n.quenched_austenite,
    },
    Output {
        words: texts::decide::CARBON,
        unit: "%",
        scale: 1.0,
        of: |n| n.carbon_wt,
    },
    Output {
        words: texts::decide::CARBIDE,
        unit: "%",
        scale: 100.0,
        of: |n| n.carbide,
    },
    Output {
        words: texts::decide::GRAIN_SIZE,
        unit: "ASTM",
        scale: 1.0,
        of: |n| n.grain_astm,
    },
    Output {
        words: texts::decide::MARGIN,
        unit: texts::decide::TIMES,
        scale: 1.0,
        of: |n| n.margin_factor,
    },
];

const fn words(input: SweptInput) -> &'static str {
    match input {
        SweptInput::SoakC => texts::decide::SOAK_TEMPERATURE,
        SweptInput::SoakMin => texts::decide::SOAK_TIME,
        SweptInput::ThicknessMm => texts::decide::THICKNESS,
        SweptInput::Agitation => texts::decide::AGITATION,
        SweptInput::AirDelayS => texts::decide::AIR_DELAY,
        SweptInput::TemperC => texts::decide::TEMPER_TEMPERATURE,
        SweptInput::TemperMin => texts::decide::TEMPER_TIME,
    }
}

fn quantity(input: SweptInput, scale: TemperatureScale, length: LengthUnit) -> Quantity {
    let range = input.allowed();
    match input {
        SweptInput::SoakC | SweptInput::TemperC => quantities::temperature(scale, range),
        SweptInput::SoakMin | SweptInput::TemperMin => quantities::minutes(range, 1.0),
        SweptInput::ThicknessMm => quantities::length(length, range, 0.5),
        SweptInput::Agitation => quantities::plain("", 2, range, 0.1, texts::decide::WRITE_A_STIR),
        SweptInput::AirDelayS => quantities::seconds(range, 1.0),
    }
}

/// A range about what the route has.
fn about(bench: Bench, input: SweptInput) -> [f64; 2] {
    let now = bench
        .route
        .with_untracked(|route| input.of(route))
        .unwrap_or(0.0);
    let (least, most) = input.allowed();
    let [from, to] = match input {
        SweptInput::SoakC => [now - 50.0, now + 70.0],
        SweptInput::TemperC => [150.0, 400.0],
        SweptInput::AirDelayS => [0.0, 20.0],
        SweptInput::Agitation => [0.3, 3.0],
        _ => [now * ABOUT.0, (now * ABOUT.1).max(AT_LEAST_TO)],
    };
    [from.clamp(least, most), to.clamp(least, most)]
}

/// What is told of it on a scale of temperature and in a unit of length.
fn shown(input: SweptInput, value: f64, scale: TemperatureScale, length: LengthUnit) -> f64 {
    match input {
        SweptInput::SoakC | SweptInput::TemperC => scale.of_celsius(value),
        SweptInput::ThicknessMm => length.of_mm(value),
        _ => value,
    }
}

const fn unit(input: SweptInput, scale: TemperatureScale, length: LengthUnit) -> &'static str {
    match input {
        SweptInput::SoakC | SweptInput::TemperC => scale.symbol(),
        SweptInput::SoakMin | SweptInput::TemperMin => "min",
        SweptInput::ThicknessMm => length.symbol(),
        SweptInput::Agitation => texts::decide::TIMES_STILL,
        SweptInput::AirDelayS => "s",
    }
}

fn data(bench: Bench, swept: &Swept, output: Output) -> SweepData {
    let (scale, length) = (bench.scale.get(), bench.length.get());
    let at = |value| shown(swept.input, value, scale, length);
    SweepData {
        input: format!(
            "{}, {}",
            words(swept.input),
            unit(swept.input, scale, length)
        ),
        output: format!("{}, {}", output.words, output.unit),
        now: at(swept.now),
        points: swept
            .points
            .iter()
            .map(|point| {
                let value = (output.of)(&point.numbers).map(|value| output.scale * value);
                [at(point.input), value.unwrap_or(f64::NAN)]
            })
            .collect(),
        band: swept
            .bands
            .iter()
            .filter_map(|band| {
                let [low, high] = [band.low, band.high].map(|end| (output.of)(&end));
                Some([at(band.input), output.scale * low?, output.scale * high?])
            })
            .collect(),
    }
}

fn results(deciding: Deciding, swept: &Arc<Swept>, output: RwSignal<usize>) -> AnyView {
    let bench = deciding.bench;
    let (route, learnt) = &swept.of;
    // What was learnt reaches one soak or temper of the sweep and not another.
    let routes: Vec<Route> = match swept.input {
        SweptInput::SoakC | SweptInput::TemperC => {
            let points = swept.points.iter();
            points
                .map(|point| swept.input.put(route, point.input))
                .collect()
        }
        _ => vec![route.clone()],
    };
    let acting = acting_on(deciding, learnt, routes.iter());
    let of_chart = swept.clone();
    let scene = move |width, height| {
        let output = OUTPUTS.get(output.get()).copied()?;
        sweep_chart(&data(bench, &of_chart, output), [width, height])
    };
    let refused = swept.points.iter().filter(|point| point.refused.is_some());
    let why = refused
        .clone()
        .next()
        .and_then(|point| point.refused.clone());
    let refused = refused.count();
    let refused = why.map(|why| {
        view! { <p class="hint">{texts::decide::steps_refused(refused, swept.points.len(), &why)}</p> }
    });
    let has_band = !swept.bands.is_empty();
    let swept = swept.clone();
    let offer = move |_| {
        let offered = sweep_csv(swept.input, &swept.points)
            .ok()
            .and_then(|text| files::offer_table(FILE_NAME, &text));
        if offered.is_none() {
            bench.warn(texts::general::NO_FILE_OFFERED.to_owned());
        }
    };
    view! {
        <Plot class="trade" file="sweep" scene=scene nothing=texts::decide::NOTHING_IN_RANGE />
        {has_band
            .then(|| view! { <p class="hint">{texts::decide::GREY_BAND}</p> })}
        {refused}
        {acting}
        <div class="actions">
            <button type="button" class="press" on:click=offer>
                {texts::decide::SAVE_NUMBERS}
            </button>
        </div>
    }
    .into_any()
}

/// The panel.
#[component]
pub(super) fn Sweeping(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let Through {
        input,
        range,
        output,
        has_band,
    } = deciding.through;
    let end = move |label: &'static str, end: usize| {
        view! {
            <Typed
                label=label
                quantity=Signal::derive(move || {
                    quantity(input.get(), bench.scale.get(), bench.length.get())
                })
                value=Signal::derive(move || range.get()[end])
                set=move |value: f64| range.update(|range| range[end] = value)
            />
        }
    };
    let question = move || {
        let route = bench.route.get();
        let tolerances = has_band.get().then(|| deciding.tolerances(&route));
        let learnt = deciding.counted_with();
        Question::Sweep(
            Box::new(route),
            input.get(),
            range.get(),
            tolerances,
            learnt,
        )
    };
    let start = move |()| {
        let route = bench.route.get_untracked();
        let swept = input.get_untracked();
        let Some(now) = swept.of(&route) else {
            let why = texts::decide::route_has_no(words(swept));
            return deciding.sweeping.work.set(Work::Refused(why));
        };
        let question = untrack(question);
        let of = (route, untrack(|| deciding.counted_with()));
        deciding.sweeping.ask(&question, move |told| match told {
            Told::Swept(points, bands) => {
                let swept = Swept {
                    input: swept,
                    now,
                    points,
                    bands,
                    of: of.clone(),
                };
                deciding.swept.try_set(Some(Arc::new(swept)));
                true
            }
            _ => false,
        });
    };
    let inputs = SweptInput::ALL.map(|one| {
        view! {
            <option value=one.column() selected=one == input.get_untracked()>
                {words(one)}
            </option>
        }
    });
    let outputs = OUTPUTS.into_iter().zip(0..).map(|(one, place)| {
        view! {
            <option value=place.to_string() selected=place == output.get_untracked()>
                {one.words}
            </option>
        }
    });
    view! {
        <h3>{texts::decide::ONE_THING}</h3>
        <div class="asked-for">
            <label class="field">
                <span class="label">{texts::decide::TAKE}</span>
                <select
                    class="text"
                    on:change:target=move |event| {
                        let picked = event.target().value();
                        let found = SweptInput::ALL.into_iter().find(|one| one.column() == picked);
                        if let Some(found) = found {
                            input.set(found);
                            range.set(about(bench, found));
                        }
                    }
                >
                    {inputs.collect_view()}
                </select>
            </label>
            {end(texts::decide::FROM, 0)}
            {end(texts::decide::THROUGH_TO, 1)}
            <label class="field">
                <span class="label">{texts::decide::LOOK_AT}</span>
                <select
                    class="text"
                    on:change:target=move |event| {
                        output.set(event.target().value().parse().unwrap_or_default());
                    }
                >
                    {outputs.collect_view()}
                </select>
            </label>
            <label class="tick">
                <input
                    type="checkbox"
                    prop:checked=has_band
                    on:change=move |_| has_band.update(|is| *is = !*is)
                />
                {texts::decide::WITH_BAND}
            </label>
        </div>
        <Working
            task=deciding.sweeping
            words=texts::decide::TAKE_THROUGH
            start=start
            is_stale=Signal::derive(move || deciding.sweeping.is_stale(&question()))
        />
        {live(move || {
            deciding
                .swept
                .get()
                .map_or_else(|| ().into_any(), |swept| results(deciding, &swept, output))
        })}
    }
    .into_any()
}
