//! What the logbook has taught, in the place where it is decided: kept with the shop, and said where a
//! search or a sample counts with it.

use super::acting::{acting, keep_shop, kept_shop, learnt, take_over_learnt, teach};
use super::decide::Deciding;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::advise::{Correction, Shop};
use recalesce::route::Route;
use recalesce::save::KeptShop;

impl Deciding {
    /// Keeps what the logbook has taught with the shop, and puts it to the bench.
    pub(super) fn set_learnt(self, learnt: Correction) {
        teach(self.bench, learnt);
        self.keep_shop();
    }

    /// Whether it is switched on.
    pub(super) fn is_used(self) -> bool {
        learnt(self.bench).is_some_and(|learnt| learnt.is_on)
    }

    /// Switches it on or off.
    pub(super) fn use_learnt(self, is_on: bool) {
        if let Some(learnt) = untrack(|| learnt(self.bench)) {
            self.set_learnt(Correction {
                is_on,
                ..(*learnt).clone()
            });
        }
    }

    /// What a search or a sample counts with: nothing where it does not act.
    pub(super) fn counted_with(self) -> Correction {
        learnt(self.bench)
            .filter(|learnt| learnt.acts())
            .map_or_else(Correction::default, |learnt| (*learnt).clone())
    }

    /// Keeps the shop in this browser.
    pub(super) fn keep_shop(self) {
        let learnt = untrack(|| learnt(self.bench));
        self.shop
            .with_untracked(|shop| keep_shop(self.bench, shop, learnt.as_deref()));
    }
}

/// Takes over the shop that another window has changed, so that neither writes an older one over it.
pub(super) fn take_over(bench: Bench, shop: RwSignal<Shop>) {
    let Some(Ok(kept)) = kept_shop(bench) else {
        return;
    };
    let KeptShop {
        shop: now, learnt, ..
    } = kept;
    if shop.with_untracked(|shop| *shop != now) {
        shop.set(now);
    }
    take_over_learnt(bench, learnt);
}

/// What of a correction acts on some routes, each thing once; nothing where it is switched off.
pub(super) fn acting_on<'a>(
    deciding: Deciding,
    learnt: &Correction,
    routes: impl Iterator<Item = &'a Route>,
) -> Option<AnyView> {
    let scale = deciding.bench.scale.get();
    learnt.is_on.then(|| {
        let routes: Vec<&Route> = routes.collect();
        let left_out = learnt.left_out_of(routes.iter().copied(), scale);
        acting(&learnt.words_of(routes.into_iter(), scale), left_out)
    })
}

/// What acts now on the route on the bench.
#[component]
pub(super) fn ActingHere(deciding: Deciding) -> impl IntoView {
    move || {
        deciding
            .bench
            .route
            .with(|route| acting_on(deciding, &deciding.counted_with(), std::iter::once(route)))
    }
}
