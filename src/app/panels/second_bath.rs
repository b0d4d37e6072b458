//! A second bath: when the piece goes into it, and which.

use super::bath::BathField;
use super::opening::Opening;
use super::piece::as_used;
use crate::controls::{Choice, Entry, Segment, Typed, Word, quantities};
use crate::parts::panels::{Panel, panel};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::heat::{Leave, MediumChoice};
use recalesce::route::{NextBath, Route, inside_a_sentence, shop_media};
use recalesce::units::{TemperatureScale, format_duration_s, format_temperature};
use recalesce_texts::page as texts;

/// When a piece leaves the first bath, as it is first offered.
const OUT_AT_C: f64 = 200.0;
const OUT_AFTER_S: f64 = 1.0;
const ABOVE_BATH_K: f64 = 20.0;
/// What may be typed.
const AT_C: (f64, f64) = (20.0, 800.0);
const AFTER_S: (f64, f64) = (0.1, 86_400.0);

/// Ways to leave the first bath.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    Stays,
    At,
    After,
}

fn way(route: &Route) -> Way {
    match route.quench.then.first().map(|next| next.leave) {
        None => Way::Stays,
        Some(Leave::AtC(_)) => Way::At,
        Some(Leave::AfterS(_)) => Way::After,
    }
}

/// The second bath in the sentence of the quench.
fn words(route: &Route, scale: TemperatureScale) -> String {
    let Some(next) = route.quench.then.first() else {
        return texts::quench::NO_SECOND_BATH.to_owned();
    };
    let when = match next.leave {
        Leave::AtC(c) => texts::quench::at(&format_temperature(c, scale)),
        Leave::AfterS(s) => texts::quench::after(&format_duration_s(s)),
    };
    let into = next.medium.resolve().map_or_else(
        |error| error.words(scale),
        |medium| inside_a_sentence(&medium.title.words(scale)),
    );
    match route.quench.then.len() {
        1 => texts::quench::then_into(&when, &into),
        all => texts::quench::then_more(&when, &into, all - 1),
    }
}

/// Changes the second bath; air follows the first one when there was none.
fn change(bench: Bench, set: impl FnOnce(&mut NextBath)) {
    bench.change(|route| {
        let mut next = route.quench.then.first().cloned().unwrap_or(NextBath {
            leave: Leave::AtC(OUT_AT_C),
            medium: MediumChoice::Named("air_still".to_owned()),
            agitation: 1.0,
        });
        set(&mut next);
        match route.quench.then.first_mut() {
            Some(first) => *first = next,
            None => route.quench.then.push(next),
        }
    });
}

/// Temperature of leaving the first bath as it is first offered: above the bath.
fn out_at_c(bench: Bench) -> f64 {
    let medium = bench
        .route
        .with_untracked(|route| route.quench.medium.resolve());
    medium.map_or(OUT_AT_C, |medium| {
        OUT_AT_C.max(medium.bath_c + ABOVE_BATH_K)
    })
}

fn fields(bench: Bench, way: Way) -> Option<AnyView> {
    let leave = move || {
        bench
            .route
            .with(|route| route.quench.then.first().map(|next| next.leave))
    };
    let typed = match way {
        Way::Stays => return None,
        Way::At => view! {
            <Typed
                label=texts::quench::OUT_AT_CORE
                quantity=Signal::derive(move || quantities::temperature(bench.scale.get(), AT_C))
                value=Signal::derive(move || match leave() {
                    Some(Leave::AtC(c)) => c,
                    _ => OUT_AT_C,
                })
                set=move |c| change(bench, |next| next.leave = Leave::AtC(c))
            />
        }
        .into_any(),
        Way::After => view! {
            <Typed
                label=texts::quench::TIME_IN_FIRST_BATH
                quantity=Signal::stored(quantities::seconds(AFTER_S, 0.5))
                value=Signal::derive(move || match leave() {
                    Some(Leave::AfterS(s)) => s,
                    _ => OUT_AFTER_S,
                })
                set=move |s| change(bench, |next| next.leave = Leave::AfterS(s))
            />
        }
        .into_any(),
    };
    let entries = Signal::derive(move || {
        let scale = bench.scale.get();
        // The mildest first: most pieces go on in air.
        let before = bench.route.with(|route| route.quench.medium.resolve().ok());
        let used = bench.route.with(|route| {
            let next = route.quench.then.first()?;
            next.medium.resolve().ok()
        });
        let media: Vec<_> = shop_media().collect();
        media
            .into_iter()
            .rev()
            .filter(|medium| {
                before
                    .as_ref()
                    .is_none_or(|before| medium.family.may_follow(before.family))
            })
            .map(|listed| {
                let medium = as_used(listed, used.as_ref());
                Entry {
                    value: medium.name.clone(),
                    title: medium.title.words(scale),
                    note: String::new(),
                }
            })
            .collect::<Vec<_>>()
    });
    let chosen = Signal::derive(move || {
        let medium = bench
            .route
            .with(|route| route.quench.then.first().map(|next| next.medium.clone()));
        medium
            .and_then(|medium| medium.listed().map(str::to_owned))
            .unwrap_or_default()
    });
    let used = Memo::new(move |_| {
        bench
            .route
            .with(|r| r.quench.then.first().map(|next| next.medium.clone()))
    });
    let list = view! {
        <BathField
            chosen=used
            set=Callback::new(move |choice| change(bench, |next| next.medium = choice))
        />
        <Opening title=texts::piece::KNOWN_OF_QUENCHANT panel=Panel::MediumFacts(used) />
        <Choice
            name=texts::quench::SECOND_BATH
            entries=entries
            chosen=chosen
            pick=move |name: String| {
                change(bench, |next| next.take_quenchant(MediumChoice::Named(name)));
            }
        />
    };
    Some((typed, list).into_any())
}

/// When the piece goes into the second bath, and which.
#[component]
pub(crate) fn SecondBathPanel() -> impl IntoView {
    let bench = bench();
    let now = Memo::new(move |_| bench.route.with(way));
    view! {
        <div class="field">
            <Segment
                name=texts::quench::WHEN_IT_GOES
                entries=vec![
                    (Way::Stays, texts::quench::NO_SECOND),
                    (Way::At, texts::quench::BY_TEMPERATURE),
                    (Way::After, texts::quench::BY_TIME),
                ]
                chosen=now
                pick=move |picked: Way| match picked {
                    _ if picked == now.get_untracked() => {}
                    Way::Stays => bench.change(|route| route.quench.then.clear()),
                    Way::At => {
                        let leave_c = out_at_c(bench);
                        change(bench, |next| next.leave = Leave::AtC(leave_c));
                    }
                    Way::After => change(bench, |next| next.leave = Leave::AfterS(OUT_AFTER_S)),
                }
            />
        </div>
        {move || fields(bench, now.get())}
        <p class="hint">
            {texts::quench::JUST_ABOVE_MS}
        </p>
    }
}

/// The second bath as a word that opens.
#[component]
pub(super) fn SecondBath() -> impl IntoView {
    let bench = bench();
    view! {
        <Word
            text=Signal::derive(move || {
                let scale = bench.scale.get();
                bench.route.with(|route| words(route, scale))
            })
            name=texts::quench::SECOND_BATH
            mark=","
        >
            {panel(Panel::SecondBath)}
        </Word>
    }
    .into_any()
}
