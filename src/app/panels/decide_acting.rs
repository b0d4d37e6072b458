//! What the logbook has taught, at work: on the bench, in the search and where it is told how sure a
//! route is, each time with what is shifted. Switched on in the place where it is decided.

use super::decide::Deciding;
use crate::browser::storage;
use crate::state::{Bench, Teach, bench};
use leptos::prelude::*;
use recalesce::advise::Correction;
use recalesce::route::Route;
use recalesce::save;
use std::sync::Arc;

/// A route as its pieces go through it, by what was learnt of it.
fn real(learnt: &Correction, route: &Route) -> Route {
    let route = Route {
        taught: learnt.taught(route),
        ..route.clone()
    };
    route.as_taught().into_owned()
}

impl Deciding {
    /// Keeps what the logbook has taught with the shop, and switches it on or off on the bench.
    pub(super) fn set_learnt(self, learnt: Correction) {
        self.learnt.set(learnt);
        self.keep_shop();
        self.teach();
    }

    /// Switches it on or off.
    pub(super) fn use_learnt(self, is_on: bool) {
        let learnt = self.learnt.get_untracked();
        self.set_learnt(Correction { is_on, ..learnt });
    }

    /// What a search or a sample counts with: nothing while it is switched off.
    pub(super) fn counted_with(self) -> Correction {
        self.learnt
            .with(|learnt| learnt.is_on.then(|| learnt.clone()))
            .unwrap_or_default()
    }

    /// Hands to the bench what is switched on.
    pub(super) fn teach(self) {
        let learnt = self.learnt.get_untracked();
        let teach = learnt.is_on.then(|| Teach {
            learnt: Arc::new(learnt),
            real,
            words: Correction::words,
            say: acting_on_bench,
        });
        self.bench.teach.set(teach);
    }

    /// Keeps the shop in this browser.
    pub(super) fn keep_shop(self) {
        let learnt = self.learnt.get_untracked();
        let learnt = (!learnt.learnt.is_empty()).then_some(&learnt);
        let written = self
            .shop
            .with_untracked(|shop| save::write_shop(shop, learnt));
        let kept = written
            .map_err(|e| e.to_string())
            .and_then(|text| storage::write(storage::SHOP, &text).map_err(str::to_owned));
        if let Err(reason) = kept {
            self.bench.warn(reason);
        }
    }
}

/// What acts, as a list; that nothing does, where none of it is of the route.
pub(super) fn acting(words: &[String]) -> AnyView {
    if words.is_empty() {
        return view! {
            <p class="hint">
                "What the logbook has taught is on, and tells nothing of the furnace, the quenchant or the heat here."
            </p>
        }
        .into_any();
    }
    let rows = words.iter().map(|words| view! { <li>{words.clone()}</li> });
    view! {
        <p class="hint">"Counted with what the logbook has taught:"</p>
        <ul class="taught">{rows.collect_view()}</ul>
    }
    .into_any()
}

/// The same of the route on the bench, with the way to switch it off.
fn acting_on_bench(bench: Bench) -> AnyView {
    let words = Memo::new(move |_| bench.taught_words());
    let off = move |_| {
        let deciding = bench.deciding(|| Deciding::open(bench));
        deciding.use_learnt(false);
    };
    view! {
        <section class="acting" aria-label="What the logbook has taught">
            {move || words.with(|words| acting(words))}
            <button type="button" class="press" on:click=off>
                "Leave it out"
            </button>
        </section>
    }
    .into_any()
}

/// What acts on some routes, each thing once; nothing while it is switched off.
pub(super) fn acting_on<'a>(
    deciding: Deciding,
    routes: impl Iterator<Item = &'a Route>,
) -> Option<AnyView> {
    let scale = deciding.bench.scale.get();
    deciding.learnt.with(|learnt| {
        let mut told: Vec<String> = Vec::new();
        for words in routes.flat_map(|route| learnt.words(route, scale)) {
            if !told.contains(&words) {
                told.push(words);
            }
        }
        learnt.is_on.then(|| acting(&told))
    })
}

/// The same of the route on the bench.
#[component]
pub(super) fn Acting(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    move || {
        bench
            .route
            .with(|route| acting_on(deciding, std::iter::once(route)))
    }
}
