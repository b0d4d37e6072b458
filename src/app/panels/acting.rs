//! What the logbook has taught, at work: on the bench it is said with what is shifted, and left out with
//! one press. Switched on in the place where it is decided.

use crate::browser::storage;
use crate::state::{Bench, Place, Teach, bench};
use leptos::prelude::*;
use recalesce::advise::{Correction, Shop};
use recalesce::route::Route;
use recalesce::save::{self, KeptShop, ReadError};
use recalesce::units::format_temperature;
use recalesce_texts::page as texts;
use std::sync::Arc;

/// A route as its pieces go through it, by what was learnt of it.
fn real(learnt: &Correction, route: &Route) -> Route {
    let route = Route {
        taught: learnt.taught(route),
        ..route.clone()
    };
    route.as_taught().into_owned()
}

/// Puts what a logbook has taught to the bench, where it acts if it is switched on.
pub(super) fn teach(bench: Bench, learnt: Correction) {
    bench.teach.set(Some(Teach {
        is_on: learnt.acts(),
        learnt: Arc::new(learnt),
        real,
        words: Correction::words,
    }));
}

/// The shop that this browser has kept. What its logbook has taught is set aside where it cannot be read,
/// and said; the shop stays.
pub(super) fn kept_shop(bench: Bench) -> Option<Result<KeptShop, ReadError>> {
    let text = storage::read(storage::SHOP)?;
    let kept = save::read_shop(&text);
    if let Ok(KeptShop {
        shop,
        fault: Some(fault),
        ..
    }) = &kept
    {
        let is_aside = storage::set_aside_or_hold(storage::SHOP, &text);
        if is_aside {
            keep_shop(bench, shop, None);
        }
        bench.warn(texts::outcome::learnt_unread(fault, is_aside));
    }
    Some(kept)
}

/// Keeps a shop in this browser, with what its logbook has taught.
pub(super) fn keep_shop(bench: Bench, shop: &Shop, learnt: Option<&Correction>) {
    let written = save::write_shop(shop, learnt).map_err(|e| e.to_string());
    let kept = written.and_then(|text| storage::write(storage::SHOP, &text).map_err(str::to_owned));
    if let Err(reason) = kept {
        bench.warn(reason);
    }
}

/// What the shop's logbook has taught, if anything was read or learnt yet.
pub(super) fn learnt(bench: Bench) -> Option<Arc<Correction>> {
    bench.teach.get().map(|teach| teach.learnt)
}

/// What acts, as a list, and what is left out with the reason; that nothing acts, where none of it is of
/// the route.
pub(super) fn acting(words: &[String], left_out: Vec<String>) -> AnyView {
    let left_out = left_out
        .into_iter()
        .map(|words| view! { <p class="hint">{words}</p> })
        .collect_view();
    if words.is_empty() {
        return view! {
            <p class="hint">
                {texts::outcome::LEARNT_TELLS_NOTHING}
            </p>
            {left_out}
        }
        .into_any();
    }
    let rows = words.iter().map(|words| view! { <li>{words.clone()}</li> });
    view! {
        <p class="hint">{texts::outcome::COUNTED_WITH_LEARNT}</p>
        <ul class="taught">{rows.collect_view()}</ul>
        {left_out}
    }
    .into_any()
}

/// Says that it was learnt with another version of the models, where it would act otherwise.
pub(super) fn of_other_models(bench: Bench) -> Option<AnyView> {
    let learnt = learnt(bench).filter(|learnt| learnt.is_on && !learnt.is_of_these_models());
    learnt.map(|_| {
        view! {
            <p class="hint">
                {texts::outcome::LEARNT_WITH_OTHER_MODELS}
            </p>
        }
        .into_any()
    })
}

/// Switches it on or off, and keeps that with the shop.
pub(super) fn switch(bench: Bench, is_on: bool) {
    let Some(now) = bench.teach.get_untracked() else {
        return;
    };
    // Another window may have learnt since.
    let mut learnt = (*now.learnt).clone();
    let kept = kept_shop(bench).and_then(Result::ok);
    if let Some(newer) = kept.as_ref().and_then(|kept| kept.learnt.clone()) {
        learnt = newer;
    }
    learnt.is_on = is_on;
    if let Some(kept) = kept {
        keep_shop(bench, &kept.shop, Some(&learnt));
    }
    teach(bench, learnt);
}

/// Puts to the bench what this browser keeps, where it is not what the bench has.
pub(super) fn take_over_learnt(bench: Bench, kept: Option<Correction>) {
    let known = bench.teach.get_untracked();
    let is_new = |learnt: &Correction| known.is_none_or(|known| *known.learnt != *learnt);
    if let Some(learnt) = kept.filter(is_new) {
        teach(bench, learnt);
    }
}

/// Takes over what was learnt before. A shop that cannot be read at all is told of where it is shown.
fn hear(bench: Bench) {
    let kept = kept_shop(bench).and_then(Result::ok);
    take_over_learnt(bench, kept.and_then(|kept| kept.learnt));
}

/// Takes over what another window has learnt or switched on or off since. What it keeps and this one cannot
/// read is that window's: nothing is written.
fn hear_other(bench: Bench, known: StoredValue<Option<String>>) {
    let text = storage::read(storage::SHOP);
    if known.with_value(|known| *known == text) {
        return;
    }
    let kept = text.as_deref().map(save::read_shop).transpose();
    known.set_value(text);
    if let Ok(kept) = kept
        && kept.as_ref().is_none_or(|kept| kept.fault.is_none())
    {
        take_over_learnt(bench, kept.and_then(|kept| kept.learnt));
    }
}

/// The line on the bench; nothing while it is switched off. What was learnt with another version of the
/// models is learnt again where it is decided. A shop that was left switched on is read
/// for it.
#[component]
pub(crate) fn Acting() -> impl IntoView {
    let bench = bench();
    hear(bench);
    let known = StoredValue::new(storage::read(storage::SHOP));
    let elsewhere = window_event_listener_untyped("storage", move |_| hear_other(bench, known));
    on_cleanup(move || elsewhere.remove());
    let words = Memo::new(move |_| bench.taught_words());
    let left_out = Memo::new(move |_| {
        let scale = bench.scale.get();
        let learnt = learnt(bench);
        learnt.map_or_else(Vec::new, |learnt| {
            bench
                .route
                .with(|route| learnt.left_out_of(std::iter::once(route), scale))
        })
    });
    let set_so = move || {
        let set = bench.teach.get()?.learnt.set_point(&bench.route.get())?;
        (set.is_reached() && !set.is_planned()).then(|| {
            view! {
                <button
                    type="button"
                    class="press"
                    on:click=move |_| bench.change(|route| route.furnace_offset_k = set.offset_k)
                >
                    {texts::outcome::set_to(&format_temperature(set.set_c, bench.scale.get()))}
                </button>
            }
            .into_any()
        })
    };
    let line = move |said: AnyView, again: Option<AnyView>| {
        view! {
            <section class="acting" aria-label=texts::outcome::LEARNT>
                {said}
                <div class="actions">
                    {again}
                    <button type="button" class="press" on:click=move |_| switch(bench, false)>
                        {texts::outcome::LEAVE_IT_OUT}
                    </button>
                </div>
            </section>
        }
        .into_any()
    };
    let again = move || {
        view! {
            <button type="button" class="press" on:click=move |_| bench.place.set(Place::Decide)>
                {texts::outcome::LEARN_AGAIN}
            </button>
        }
        .into_any()
    };
    move || {
        if bench.is_guided.get() {
            return ().into_any();
        }
        if let Some(said) = of_other_models(bench) {
            return line(said, Some(again()));
        }
        if bench.is_taught() {
            let said = move || {
                let left_out = left_out.get();
                words.with(|words| acting(words, left_out))
            };
            return line(said.into_any(), Some(set_so.into_any()));
        }
        ().into_any()
    }
}
