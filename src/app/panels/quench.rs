//! The quench: transformation curves with the cooling curves on top.

use super::along::Along;
use super::piece::medium_words;
use super::quench_speed::{AGITATION_STEP, Speed, take_speed};
use super::second_bath::SecondBath;
use crate::charts::{self, glow_css};
use crate::controls::{Grip, Handle, Segment, Typed, Word, quantities};
use crate::parts::panels::{Panel, panel};
use crate::plot::{Plot, Shown, handle_at};
use crate::state::bench;
use leptos::ev::PointerEvent;
use leptos::prelude::*;
use recalesce::chart::Moves;
use recalesce::route::{AGITATION_RANGE, Cold, Quench, SNAP_C, SNAP_MIN};
use recalesce::units::{
    format_duration_s, format_factor, format_temperature, format_weight_percent,
};
use recalesce_texts::page as texts;

/// Steel at the handle no longer glows, °C.
const COLD_C: f64 = 400.0;

/// Words for the agitation factor of a quench, of a bath by the ratios of severities in still and stirred oil.
pub(crate) fn agitation_words(quench: &Quench) -> &'static str {
    let medium = quench.medium.resolve();
    let is_listed_still = medium.is_ok_and(|medium| medium.family.is_listed_still());
    match quench.agitation {
        f if f < 0.93 => texts::quench::SLOWER_THAN_CURVE,
        f if f < 1.1 && is_listed_still => texts::quench::STILL,
        f if f < 1.1 => texts::quench::AS_ITS_CURVE,
        _ if !is_listed_still => texts::quench::FASTER_THAN_CURVE,
        f if f < 1.28 => texts::quench::GENTLE_STIR,
        f if f < 1.48 => texts::quench::MODERATE_STIR,
        f if f < 1.9 => texts::quench::GOOD_STIR,
        _ => texts::quench::STRONG_STIR,
    }
}

/// Ways to cool below room temperature, with the temperature that each reaches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Chill {
    None,
    Freezer,
    DryIce,
    Nitrogen,
}

impl Chill {
    const fn temperature_c(self) -> Option<f64> {
        match self {
            Self::None => None,
            Self::Freezer => Some(-18.0),
            Self::DryIce => Some(-75.0),
            Self::Nitrogen => Some(-196.0),
        }
    }

    fn of(cold: Option<Cold>) -> Self {
        match cold.map(|c| c.temperature_c) {
            None => Self::None,
            Some(c) if c > -40.0 => Self::Freezer,
            Some(c) if c > -120.0 => Self::DryIce,
            Some(_) => Self::Nitrogen,
        }
    }
}

/// Cold treatment.
#[component]
pub(crate) fn ColdPanel() -> impl IntoView {
    let bench = bench();
    let cold = Memo::new(move |_| bench.route.with(|r| r.cold));
    let has_snap = Memo::new(move |_| cold.get().is_some_and(|cold| cold.snap.is_some()));
    let typed = move |label, quantity, get: fn(&Cold) -> f64, set: fn(&mut Cold, f64)| {
        view! {
            <Typed
                label=label
                quantity=quantity
                value=Signal::derive(move || cold.get().as_ref().map_or(0.0, get))
                set=move |value| {
                    bench
                        .change(|r| {
                            if let Some(cold) = &mut r.cold {
                                set(cold, value);
                            }
                        })
                }
            />
        }
    };
    let fields = move || {
        cold.with(Option::is_some).then(|| {
            (
                typed(
                    texts::quench::BATH_TEMPERATURE,
                    Signal::derive(move || {
                        quantities::temperature(bench.scale.get(), (-200.0, 20.0))
                    }),
                    |c| c.temperature_c,
                    |c, value| c.temperature_c = value,
                ),
                typed(
                    texts::quench::TIME_IN_BATH,
                    Signal::stored(quantities::minutes((1.0, 6000.0), 5.0)),
                    |c| c.time_min,
                    |c, value| c.time_min = value,
                ),
                typed(
                    texts::quench::WAITING_BEFORE_BATH,
                    Signal::stored(quantities::minutes((0.0, 6000.0), 5.0)),
                    |c| c.delay_min,
                    |c, value| c.delay_min = value,
                ),
                view! {
                    <div class="field">
                        <Segment
                            name=texts::quench::SNAP_TEMPER
                            entries=vec![(false, texts::quench::NO_SNAP_TEMPER), (true, texts::quench::SNAP_TEMPER_FIRST)]
                            chosen=has_snap
                            pick=move |is_on: bool| {
                                bench
                                    .change(|r| {
                                        if let Some(cold) = &mut r.cold {
                                            cold.snap = is_on.then_some(Cold::SNAP_FIRST_OFFERED);
                                        }
                                    })
                            }
                        />
                    </div>
                },
            )
        })
    };
    let snap_fields = move || {
        has_snap.get().then(|| {
            (
                typed(
                    texts::quench::SNAP_TEMPER_AT,
                    Signal::derive(move || quantities::temperature(bench.scale.get(), SNAP_C)),
                    |c| c.snap.map_or(0.0, |snap| snap.temperature_c),
                    |c, value| {
                        if let Some(snap) = &mut c.snap {
                            snap.temperature_c = value;
                        }
                    },
                ),
                typed(
                    texts::quench::SNAP_TEMPER_TIME,
                    Signal::stored(quantities::minutes(SNAP_MIN, 5.0)),
                    |c| c.snap.map_or(0.0, |snap| snap.time_min),
                    |c, value| {
                        if let Some(snap) = &mut c.snap {
                            snap.time_min = value;
                        }
                    },
                ),
                view! {
                    <p class="hint">
                        {texts::quench::SNAP_TEMPER_EFFECT}
                    </p>
                },
            )
        })
    };
    view! {
        <div class="field">
            <Segment
                name=texts::quench::COLD_TREATMENT
                entries=vec![
                    (Chill::None, texts::quench::NO_CHILL),
                    (Chill::Freezer, texts::quench::FREEZER),
                    (Chill::DryIce, texts::quench::DRY_ICE),
                    (Chill::Nitrogen, texts::quench::NITROGEN),
                ]
                chosen=Signal::derive(move || Chill::of(cold.get()))
                pick=move |chill: Chill| {
                    bench
                        .change(|r| {
                            r.cold = chill
                                .temperature_c()
                                .map(|temperature_c| Cold {
                                    temperature_c,
                                    ..r.cold.unwrap_or(Cold::FIRST_OFFERED)
                                });
                        })
                }
            />
        </div>
        {fields}
        {snap_fields}
    }
    .into_any()
}

/// Movement of the bath.
#[component]
pub(crate) fn AgitationPanel() -> impl IntoView {
    let bench = bench();
    let medium = bench.route.with_untracked(|r| r.quench.medium.resolve());
    let (label, hint) = if medium.is_ok_and(|medium| medium.family.is_listed_still()) {
        (texts::quench::BESIDE_STILL_BATH, texts::quench::HOW_STIRRED)
    } else {
        (texts::quench::BESIDE_ITS_CURVE, texts::quench::HOW_FAST)
    };
    view! {
        <Typed
            label=label
            quantity=Signal::stored(
                quantities::plain(
                    "",
                    2,
                    AGITATION_RANGE,
                    AGITATION_STEP,
                    texts::quench::WRITE_A_FACTOR,
                ),
            )
            value=Signal::derive(move || bench.route.with(|r| r.quench.agitation))
            set=move |factor| bench.change(|r| r.quench.agitation = factor)
        />
        <p class="hint">
            {hint}
        </p>
    }
}

/// Between furnace and bath.
#[component]
pub(crate) fn OnTheWayPanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Typed
            label=texts::quench::BETWEEN_FURNACE_AND_BATH
            quantity=Signal::stored(quantities::seconds((0.0, 60.0), 0.5))
            value=Signal::derive(move || bench.route.with(|r| r.quench.air_delay_s))
            set=move |s| bench.change(|r| r.quench.air_delay_s = s)
        />
        <Typed
            label=texts::quench::LEFT_TO_COOL_TO
            quantity=Signal::derive(move || quantities::temperature(
                bench.scale.get(),
                (0.0, 200.0),
            ))
            value=Signal::derive(move || bench.route.with(|r| r.quench.end_c))
            set=move |c| bench.change(|r| r.quench.end_c = c)
        />
    }
}

#[component]
fn QuenchWords() -> impl IntoView {
    let bench = bench();
    let quench = Memo::new(move |_| bench.route.with(|r| r.quench.clone()));
    let cold = Memo::new(move |_| bench.route.with(|r| r.cold));
    let medium = Memo::new(move |_| quench.with(|q| q.medium.resolve().ok()));
    let names_bath = move || medium.with(|m| m.as_ref().is_none_or(|m| m.title.names_bath()));
    let bath = move || {
        let bath_c = medium.with(|m| m.as_ref().map(|m| m.bath_c));
        bath_c
            .filter(|_| !names_bath())
            .map(|c| texts::quench::at_then(&format_temperature(c, bench.scale.get())))
    };
    view! {
        <p class="set">
            <Word
                text=Signal::derive(move || {
                    let scale = bench.scale.get();
                    quench.with(|q| medium_words(&q.medium, scale))
                })
                name=texts::piece::QUENCHANT
                mark=Signal::derive(move || if names_bath() { "," } else { "" })
            >
                {panel(Panel::Media)}
            </Word> {bath} " "
            <Word
                text=Signal::derive(move || quench.with(agitation_words).to_owned())
                name=texts::quench::AGITATION
                mark=","
            >
                {panel(Panel::Agitation)}
            </Word> " "
            <Word
                text=Signal::derive(move || texts::quench::in_air(&format_duration_s(quench.get().air_delay_s)))
                name=texts::quench::ON_THE_WAY
                mark=","
            >
                {panel(Panel::OnTheWay)}
            </Word> " " <SecondBath /> {texts::quench::THEN}
            <Word
                text=Signal::derive(move || {
                    cold.get()
                        .map_or_else(
                            || texts::quench::NO_COLD_BATH.to_owned(),
                            |c| {
                                let scale = bench.scale.get();
                                let bath = format_temperature(c.temperature_c, scale);
                                match c.snap {
                                    Some(snap) => {
                                        let snap = format_temperature(snap.temperature_c, scale);
                                        texts::quench::snap_temper_then(&snap, &bath)
                                    }
                                    None => bath,
                                }
                            },
                        )
                })
                name=texts::quench::COLD_TREATMENT
            >
                {panel(Panel::Cold)}
            </Word>
        </p>
    }
    .into_any()
}

/// What the quench received from the soak.
pub(crate) fn received() -> impl Fn() -> String {
    let bench = bench();
    move || {
        bench.outcome().map_or_else(String::new, |outcome| {
            texts::quench::austenite_received(
                &format_weight_percent(outcome.soak.end.carbon_wt),
                outcome.soak.end.grain_astm,
            )
        })
    }
}

/// The quench.
#[component]
pub(crate) fn QuenchStage() -> impl IntoView {
    let bench = bench();
    let speed = Memo::new(move |_| bench.route.with(|r| Speed::of(&r.quench)));
    let along = Along::new(bench);
    let handle = move |shown: Shown| {
        along.stand_on(shown);
        let at = handle_at(shown);
        let text = Signal::derive(move || {
            let scale = bench.scale.get();
            bench.route.with(|r| {
                let medium = medium_words(&r.quench.medium, scale);
                let factor = format_factor(r.quench.agitation);
                format!("{medium} {factor}, {}", agitation_words(&r.quench))
            })
        });
        // By which quenchant and stir the curve passes a column sooner by a factor: once the part that
        // tells it is there.
        let pass = move |column: Option<f64>, sooner: f64| {
            let part = bench.parts.panels.now();
            part.and_then(|part| part.pass(bench, shown, column, sooner))
                .unwrap_or_else(|| speed.get_untracked().value())
        };
        let grip = Grip {
            value_at: Callback::new(move |(x, _): (f64, f64)| pass(Some(x), 1.0)),
            set: Callback::new(move |value: f64| {
                bench.change(|r| take_speed(&mut r.quench, value))
            }),
            stepped: Callback::new(move |(_, steps): (f64, f64)| {
                let now = speed.get_untracked();
                now.stepped(steps)
                    .unwrap_or_else(|sooner| pass(None, sooner))
            }),
            range: Signal::derive(move || speed.get().range()),
            grows_rightward: false,
        };
        view! {
            {move || bench.parts.panels.is_there().then(|| panel(Panel::AlongRing(along)))}
            <Handle
                key="quench"
                name=texts::quench::QUENCH_SPEED
                at=at
                value=Signal::derive(move || speed.get().value())
                text=text
                grip=grip
                moves=Moves::Across
                core=Signal::derive(|| glow_css(COLD_C))
            />
        }
        .into_any()
    };
    let point = move |event: PointerEvent| {
        if let Some(part) = bench.parts.panels.now() {
            part.point(along, &event);
        }
    };
    view! {
        <QuenchWords />
        <div on:pointermove=point on:pointerdown=point>
            <Plot
                class="tall" file="quench"
                scene=move |w, h| charts::quench_scene(bench, w, h)
                handles=Box::new(handle)
            />
        </div>
        {panel(Panel::Along(along))}
        {panel(Panel::QuenchBelow)}
    }
    .into_any()
}
