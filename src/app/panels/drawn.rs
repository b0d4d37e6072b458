//! How sure the route on the bench is by a sample: pieces drawn by the second thread once the bench has
//! been left alone for a moment. Nothing is drawn while something is dragged, or while this is shut.

use super::acting::kept_shop;
use crate::decide::{Question, Sure, Told, Varies};
use crate::errand::{Errand, Runner, read};
use crate::state::bench;
use leptos::leptos_dom::helpers::TimeoutHandle;
use leptos::prelude::*;
use recalesce::advise::{Quantiles, Shop, Tester, counted_words};
use recalesce::units::{format_fixed, format_percent};
use recalesce_texts::page as texts;
use std::time::Duration;

/// How long the bench has to be left alone.
const PAUSE: Duration = Duration::from_millis(900);

/// The numbers that are told, with how they are written.
fn figure(varies: Varies, quantiles: &Quantiles) -> Option<(&'static str, String)> {
    let between = |write: &dyn Fn(f64) -> String, unit: &str| {
        let [least, most] = [quantiles.p05, quantiles.p95].map(write);
        texts::general::range(&least, &format!("{most}{unit}"))
    };
    let hrc = |value: f64| format_fixed(value, 1);
    Some(match varies {
        Varies::FinalHrc => (
            texts::outcome::HARDNESS_IN_THE_END,
            between(&hrc, "\u{a0}HRC"),
        ),
        Varies::QuenchedMartensite => (
            texts::decide::MARTENSITE_QUENCHED,
            between(&|part| format_percent(part), ""),
        ),
        Varies::FinalAustenite => (
            texts::outcome::AUSTENITE_IN_THE_END,
            between(&|part| format_percent(part), ""),
        ),
        _ => return None,
    })
}

/// What a shop's tester reads of the finished pieces.
fn as_read(sure: &Sure, tester: Tester) -> Option<(&'static str, String)> {
    let mut numbers = sure.numbers.iter();
    let (_, hardness) = numbers.find(|(varies, _)| *varies == Varies::FinalHrc)?;
    let [least, most] = hardness
        .as_read(tester.error_hrc)
        .map(|hrc| format_fixed(hrc, 1));
    Some((
        texts::outcome::AS_YOUR_TESTER_READS,
        texts::outcome::hardness_range(&least, &most),
    ))
}

fn shown(sure: &Sure, tester: Option<Tester>) -> AnyView {
    let mut rows: Vec<_> = sure
        .numbers
        .iter()
        .filter_map(|(varies, quantiles)| figure(*varies, quantiles))
        .collect();
    if let Some(read) = tester.and_then(|tester| as_read(sure, tester)) {
        rows.insert(1.min(rows.len()), read);
    }
    let rows = rows
        .into_iter()
        .map(|(name, between)| view! { <dt>{name}</dt><dd>{between}</dd> })
        .collect_view();
    let refused = (sure.refused > 0).then(|| texts::outcome::more_refused(sure.refused));
    view! {
        <dl class="in-use">{rows}</dl>
        <p class="hint">{texts::outcome::nine_in_ten(sure.cases)} {refused}</p>
    }
    .into_any()
}

/// The panel.
#[component]
pub(crate) fn Drawn() -> impl IntoView {
    let bench = bench();
    let told = RwSignal::new(None::<Result<Sure, String>>);
    // As it is kept, once the user has filled it in; asked for again after it may have changed.
    let shop = RwSignal::new(None::<Shop>);
    let unread = RwSignal::new(None::<String>);
    let is_out = RwSignal::new(true);
    let runner = StoredValue::new_local(None::<Runner>);
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    let stop = move || {
        if let Some(waiting) = waiting.try_update_value(Option::take).flatten() {
            waiting.clear();
        }
        // The thread is in the middle of an older sample.
        let _ = runner.try_update_value(Option::take);
    };
    let start = move |question: Question| {
        let Ok(text) = serde_json::to_string(&question) else {
            return;
        };
        let scale = bench.scale.get_untracked();
        let hired = Runner::of_its_own(move |brought| {
            let found = match read::<Told>(brought) {
                Ok(Told::Sure(sure)) => Ok(*sure),
                Ok(Told::Refused(why)) | Err(why) => Err(why),
                Ok(_) => return,
            };
            told.try_set(Some(found));
            is_out.try_set(false);
        });
        hired.send(Errand::Decide(text, scale));
        let _ = runner.try_set_value(Some(hired));
    };
    Effect::new(move || {
        let route = bench.route.get();
        let teach = bench.teach.get().filter(|_| bench.is_taught());
        let learnt = teach.map(|teach| (*teach.learnt).clone());
        stop();
        is_out.set(true);
        let kept = bench.place.with(|_| kept_shop(bench));
        let (kept, fault) = match kept.transpose() {
            Ok(kept) => (kept.map(|kept| kept.shop), None),
            Err(fault) => (None, Some(texts::outcome::shop_unread(fault))),
        };
        unread.set(fault);
        let tolerances = kept.as_ref().map(|shop| shop.tolerances(&route));
        shop.set(kept);
        let question = Question::Drawn(
            Box::new(route),
            tolerances.unwrap_or_default(),
            learnt.unwrap_or_default(),
        );
        let begin = move || start(question);
        let handle = set_timeout_with_handle(begin, PAUSE).ok();
        let _ = waiting.try_set_value(handle);
    });
    on_cleanup(stop);
    view! {
        <p class="hint">
            {texts::outcome::ABOUT_DRAWN}
        </p>
        <p class="hint">
            {move || {
                let (scale, length) = (bench.scale.get(), bench.length.get());
                shop.with(|shop| {
                    bench.route.with(|route| counted_words(route, shop.as_ref(), scale, length))
                })
            }}
            {move || {
                if let Some(fault) = unread.get() {
                    return Some(fault);
                }
                shop.with(Option::is_none).then(|| texts::outcome::SHOP_COUNTS_ONCE.to_owned())
            }}
        </p>
        <div class="drawn" class:stale=move || is_out.get()>
            {move || {
                told.with(|told| match told {
                    Some(Ok(sure)) => {
                        let tester = shop.with(|shop| shop.as_ref().and_then(|shop| shop.tester));
                        Some(shown(sure, tester))
                    }
                    Some(Err(why)) => Some(view! { <p class="hint">{why.clone()}</p> }.into_any()),
                    None => None,
                })
            }}
        </div>
        <p class="hint" role="status">
            {move || if is_out.get() { texts::outcome::DRAWN_ONCE_ALONE } else { "" }}
        </p>
    }
}
