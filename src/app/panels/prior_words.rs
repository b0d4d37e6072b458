//! One step before hardening as a sentence whose words set it.

use crate::controls::{
    Alternative, Alternatives, Choice, Entry, Quantity, Segment, Typed, Word, quantities,
};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::heat::MediumChoice;
use recalesce::route::{
    PriorStep, SlowCooling, Work, cooling_words, inside_a_sentence, shop_media,
};
use recalesce::units::{format_duration_s, format_temperature};
use recalesce_texts::page as texts;

/// What may be typed.
const TEMPERATURE_C: (f64, f64) = (150.0, 1250.0);
const TIME_MIN: (f64, f64) = (0.0, 6000.0);
const RATE_K_PER_H: (f64, f64) = (1.0, 5000.0);
const HEATS: (f64, f64) = (1.0, 50.0);
/// Furnace cooling as it is first offered.
const LED_DOWN: SlowCooling = SlowCooling::Furnace {
    rate_k_per_h: 20.0,
    until_c: 600.0,
};

/// The kinds of step.
const WORKS: [Alternative<usize>; 6] = [
    Alternative {
        is: 0,
        value: "forge",
        title: texts::steps::FORGE,
        note: texts::steps::FORGE_EFFECT,
    },
    Alternative {
        is: 1,
        value: "normalise",
        title: texts::steps::NORMALISE,
        note: texts::steps::NORMALISE_EFFECT,
    },
    Alternative {
        is: 2,
        value: "refine",
        title: texts::steps::REFINE,
        note: texts::steps::REFINE_EFFECT,
    },
    Alternative {
        is: 3,
        value: "slow_anneal",
        title: texts::steps::SLOW_ANNEAL,
        note: texts::steps::SLOW_ANNEAL_EFFECT,
    },
    Alternative {
        is: 4,
        value: "subcritical_anneal",
        title: texts::steps::ANNEAL_BELOW_A1,
        note: texts::steps::ANNEAL_BELOW_A1_EFFECT,
    },
    Alternative {
        is: 5,
        value: "stress_relief",
        title: texts::steps::STRESS_RELIEF,
        note: texts::steps::STRESS_RELIEF_EFFECT,
    },
];

fn place_of(work: Work) -> usize {
    let same = |other: &Work| std::mem::discriminant(other) == std::mem::discriminant(&work);
    Work::ALL.iter().position(same).unwrap_or_default()
}

/// The list of kinds, as a word that is pressed.
#[component]
pub(super) fn WorkWord(
    /// The word.
    #[prop(into)]
    text: Signal<String>,
    /// What it sets, for screen readers.
    name: &'static str,
    /// The kind now, as the list has it; none of them for a step to be added.
    #[prop(into)]
    chosen: Signal<usize>,
    /// Called with the kind picked.
    #[prop(into)]
    pick: Callback<Work>,
) -> impl IntoView {
    view! {
        <Word text=text name=name>
            <Alternatives
                name=name
                all=&WORKS
                chosen=chosen
                pick=move |i: usize| pick.run(Work::ALL[i.min(Work::ALL.len() - 1)])
            />
        </Word>
    }
    .into_any()
}

/// A typed word of the sentence.
#[component]
fn Number(
    name: &'static str,
    label: &'static str,
    text: Signal<String>,
    quantity: Signal<Quantity>,
    value: Signal<f64>,
    set: Callback<f64>,
    #[prop(optional)] mark: &'static str,
) -> impl IntoView {
    view! {
        <Word text=text name=name mark=mark>
            <Typed label=label quantity=quantity value=value set=set />
        </Word>
    }
    .into_any()
}

/// The sentence of a step.
#[component]
pub(super) fn PriorWords(
    /// Which step, counted from zero.
    at: usize,
) -> impl IntoView {
    let bench = bench();
    let step = Memo::new(move |before: Option<&PriorStep>| {
        bench
            .route
            .with(|r| r.prior.get(at).or(before).cloned())
            .unwrap_or_else(|| PriorStep::first_offered(Work::Normalise, 727.0))
    });
    let change = move |set: &dyn Fn(&mut PriorStep)| {
        bench.change(|r| {
            if let Some(step) = r.prior.get_mut(at) {
                set(step);
                step.keep_in_order();
            }
        });
    };
    let temperature =
        Signal::derive(move || quantities::temperature(bench.scale.get(), TEMPERATURE_C));
    let degrees = move |c: f64| format_temperature(c, bench.scale.get());
    let work = Memo::new(move |_| step.with(|s| s.work));
    let kind = Signal::derive(move || place_of(work.get()));
    let word = Signal::derive(move || WORKS[kind.get()].title.to_owned());
    let forging = move || match work.get() {
        Work::Forge { finish_c, heats } => Some((finish_c, heats)),
        _ => None,
    };
    let finish = move |set: &dyn Fn(&mut f64, &mut u8)| {
        change(&|step| {
            if let Work::Forge { finish_c, heats } = &mut step.work {
                set(finish_c, heats);
            }
        });
    };
    let forge_words = move || {
        forging().is_some().then(|| {
            view! {
                {texts::steps::DOWN_TO}
                <Number
                    name=texts::steps::FINISHING_TEMPERATURE
                    label=texts::steps::HAMMER_STOPS_AT
                    text=Signal::derive(move || degrees(forging().map_or(0.0, |f| f.0)))
                    quantity=temperature
                    value=Signal::derive(move || forging().map_or(0.0, |f| f.0))
                    set=Callback::new(move |c| finish(&|finish_c, _| *finish_c = c))
                    mark=","
                />
                " "
                <Number
                    name=texts::steps::HEATS
                    label=texts::steps::TIMES_IN_FIRE
                    text=Signal::derive(move || match forging().map_or(1, |f| f.1) {
                        1 => texts::steps::ONE_HEAT.to_owned(),
                        n => texts::steps::heats(n),
                    })
                    quantity=Signal::stored(
                        quantities::plain("", 0, HEATS, 1.0, texts::steps::WRITE_HEATS),
                    )
                    value=Signal::derive(move || forging().map_or(1.0, |f| f64::from(f.1)))
                    set=Callback::new(move |n: f64| {
                        finish(&|_, heats| *heats = n.round().clamp(HEATS.0, HEATS.1) as u8);
                    })
                />
            }
        })
    };
    view! {
        <p class="set">
            <WorkWord
                text=word
                name=texts::steps::KIND_OF_STEP
                chosen=kind
                pick=move |work| change(&|step| step.work = work)
            />
            {move || if forging().is_some() { texts::steps::FROM } else { texts::steps::AT }}
            <Number
                name=texts::steps::TEMPERATURE_OF_STEP
                label=texts::soak::TEMPERATURE_OF_PIECE
                text=Signal::derive(move || degrees(step.with(|s| s.temperature_c)))
                quantity=temperature
                value=Signal::derive(move || step.with(|s| s.temperature_c))
                set=Callback::new(move |c| change(&|step| step.temperature_c = c))
            />
            {forge_words}
            {move || if forging().is_some() { texts::steps::OF } else { texts::steps::FOR }}
            <Number
                name=texts::steps::TIME_OF_STEP
                label=texts::soak::TIME_AT_TEMPERATURE
                text=Signal::derive(move || format_duration_s(60.0 * step.with(|s| s.time_min)))
                quantity=Signal::stored(quantities::minutes(TIME_MIN, 1.0))
                value=Signal::derive(move || step.with(|s| s.time_min))
                set=Callback::new(move |min| change(&|step| step.time_min = min))
                mark=","
            />
            {texts::steps::THEN}
            <CoolingWord at=at />
        </p>
    }
    .into_any()
}

fn cooling_of(bench: Bench, at: usize) -> SlowCooling {
    bench.route.with(|r| {
        r.prior
            .get(at)
            .map_or_else(SlowCooling::still_air, |step| step.cooling.clone())
    })
}

/// How the step cools.
#[component]
fn CoolingWord(at: usize) -> impl IntoView {
    let bench = bench();
    let cooling = Memo::new(move |_| cooling_of(bench, at));
    let set = move |to: SlowCooling| {
        bench.change(|r| {
            if let Some(step) = r.prior.get_mut(at) {
                step.cooling = to;
                step.keep_in_order();
            }
        });
    };
    let is_led = Signal::derive(move || cooling.with(|c| matches!(c, SlowCooling::Furnace { .. })));
    let led = move || match cooling.get() {
        SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        } => (rate_k_per_h, until_c),
        SlowCooling::Medium { .. } => (20.0, 600.0),
    };
    let entries = Signal::derive(move || {
        let scale = bench.scale.get();
        let media: Vec<_> = shop_media().collect();
        media
            .into_iter()
            .rev()
            .map(|medium| Entry {
                value: medium.name.clone(),
                title: inside_a_sentence(&medium.title.words(scale)),
                note: String::new(),
            })
            .collect::<Vec<_>>()
    });
    let chosen = Signal::derive(move || match cooling.get() {
        SlowCooling::Medium { medium } => medium.listed().unwrap_or_default().to_owned(),
        SlowCooling::Furnace { .. } => String::new(),
    });
    let fields = move || {
        if is_led.get() {
            view! {
                <Typed
                    label=texts::steps::LED_DOWN_BY
                    quantity=Signal::derive(move || quantities::band(bench.scale.get(), RATE_K_PER_H))
                    value=Signal::derive(move || led().0)
                    set=move |rate_k_per_h| {
                        set(SlowCooling::Furnace { rate_k_per_h, until_c: led().1 });
                    }
                />
                <Typed
                    label=texts::steps::DOWN_TO_THEN_AIR
                    quantity=Signal::derive(move || quantities::temperature(
                        bench.scale.get(),
                        (20.0, 1200.0),
                    ))
                    value=Signal::derive(move || led().1)
                    set=move |until_c| set(SlowCooling::Furnace { rate_k_per_h: led().0, until_c })
                />
            }
            .into_any()
        } else {
            view! {
                <Choice
                    name=texts::steps::MEDIUM
                    entries=entries
                    chosen=chosen
                    pick=move |name: String| {
                        set(SlowCooling::Medium { medium: MediumChoice::Named(name) });
                    }
                />
            }
            .into_any()
        }
    };
    view! {
        <Word
            text=Signal::derive(move || cooling.with(|c| cooling_words(c, bench.scale.get())))
            name=texts::steps::COOLING_OF_STEP
        >
            <Segment
                name=texts::steps::WAY_OF_COOLING
                entries=vec![(false, texts::steps::IN_A_MEDIUM), (true, texts::steps::IN_THE_FURNACE)]
                chosen=is_led
                pick=move |led: bool| {
                    set(if led { LED_DOWN } else { SlowCooling::still_air() });
                }
            />
            {fields}
        </Word>
    }
    .into_any()
}
