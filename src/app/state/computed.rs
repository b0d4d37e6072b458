//! What is computed from the route on the bench, each as far as it changes.

use crate::browser::clock::now_ms;
use crate::errand::{Errand, MapOf, Runner, kept_up};
use leptos::prelude::*;
use recalesce::phases::PhaseMap;
use recalesce::route::{HardenedRoute, Outcome, Prepared, Route, RouteError, validate};
use recalesce::soak::GrainAt;
use recalesce::steel::Composition;
use std::sync::Arc;

/// The outcome of the route as it stands, and the last good one while the route has none.
#[derive(Clone)]
pub(crate) struct Computed {
    /// The outcome to show.
    pub(crate) outcome: Option<Arc<Outcome>>,
    /// The route that it is of.
    of: Option<Arc<Route>>,
    /// What is wrong with the route, when the outcome is an earlier one.
    pub(crate) error: Option<RouteError>,
    /// Time the computation took, ms: shown to the page benchmark only.
    pub(crate) took_ms: f64,
    /// What it was computed from.
    pub(super) hardened: Arc<Hardened>,
}

impl Computed {
    /// The route of an outcome of before, which stays where the present one has none.
    pub(super) fn before(&self) -> Option<Arc<Route>> {
        self.error.as_ref().and(self.of.clone())
    }
}

/// The phase map that the second thread has brought last.
#[derive(Clone, Default)]
pub(crate) struct Mapped {
    /// The map, if there is one.
    pub(crate) map: Option<Arc<PhaseMap>>,
    /// Why there is none, on every scale.
    pub(crate) refusal: Option<[String; 2]>,
    pub(super) of: Option<Composition>,
}

pub(super) type Kept = Arc<Option<Prepared>>;

/// What the steel alone decides; none where there is none, which its outcome then says.
pub(super) fn prepared(route: Memo<Route>) -> Memo<Kept> {
    Memo::new_with_compare(
        move |before: Option<&Kept>| {
            route.with(|route| {
                let is_of = |kept: &&Kept| kept.as_ref().as_ref().is_some_and(|p| p.is_of(route));
                before
                    .filter(is_of)
                    .cloned()
                    .unwrap_or_else(|| Arc::new(Prepared::of(route).ok()))
            })
        },
        |before, now| match (before, now) {
            (Some(before), Some(now)) => !Arc::ptr_eq(before, now),
            _ => true,
        },
    )
}

/// The route as far as its quench, or why there is none.
pub(super) struct Hardened {
    pub(super) result: Result<HardenedRoute, RouteError>,
    /// Time the computation took, ms.
    took_ms: f64,
}

/// The route as far as its quench: not computed anew while the temper is dragged.
pub(super) fn hardened(quenched: Memo<Route>, prepared: Memo<Kept>) -> Memo<Arc<Hardened>> {
    Memo::new_with_compare(
        move |_| {
            let started_ms = now_ms();
            let result = quenched.with(|route| match prepared.get().as_ref() {
                Some(prepared) => prepared.harden(route),
                None => {
                    validate(route)?;
                    Prepared::of(route)?.harden(route)
                }
            });
            Arc::new(Hardened {
                result,
                took_ms: now_ms() - started_ms,
            })
        },
        |_, _| true,
    )
}

pub(super) fn computed(route: Memo<Route>, hardened: Memo<Arc<Hardened>>) -> Memo<Arc<Computed>> {
    Memo::new_with_compare(
        move |before: Option<&Arc<Computed>>| {
            let hardened = hardened.get();
            let started_ms = now_ms();
            let result = route.with(|route| match &hardened.result {
                Ok(hardened) => hardened.run(route),
                Err(error) => Err(error.clone()),
            });
            let is_kept = before.is_some_and(|before| Arc::ptr_eq(&before.hardened, &hardened));
            let hardened_ms = if is_kept { 0.0 } else { hardened.took_ms };
            let took_ms = now_ms() - started_ms + hardened_ms;
            Arc::new(match result {
                Ok(outcome) => Computed {
                    outcome: Some(Arc::new(outcome)),
                    of: Some(Arc::new(route.get())),
                    error: None,
                    took_ms,
                    hardened,
                },
                Err(error) => Computed {
                    outcome: before.and_then(|b| b.outcome.clone()),
                    of: before.and_then(|b| b.of.clone()),
                    error: Some(error),
                    took_ms,
                    hardened,
                },
            })
        },
        |before, now| match (before, now) {
            (Some(before), Some(now)) => !Arc::ptr_eq(before, now),
            _ => true,
        },
    )
}

pub(super) fn mapped(
    runner: StoredValue<Runner, LocalStorage>,
    steel: Memo<Composition>,
) -> Memo<Mapped> {
    let errand = Memo::new(move |_| Errand::PhaseMap(steel.get()));
    let (brought, _) = kept_up::<MapOf>(runner, errand);
    Memo::new_with_compare(
        move |before: Option<&Mapped>| {
            brought.with(|brought| match brought {
                Some(Ok((of, Ok(numbers)))) => Mapped {
                    map: PhaseMap::from_numbers(numbers).map(Arc::new),
                    refusal: None,
                    of: Some(*of),
                },
                Some(Ok((of, Err(words)))) => Mapped {
                    map: None,
                    refusal: Some(words.clone()),
                    of: Some(*of),
                },
                Some(Err(why)) => Mapped {
                    map: None,
                    refusal: Some([why.clone(), why.clone()]),
                    of: Some(steel.get_untracked()),
                },
                None => before.cloned().unwrap_or_default(),
            })
        },
        |_, _| true,
    )
}

pub(super) fn overheating(route: Memo<Route>, prepared: Memo<Kept>) -> Memo<Option<[GrainAt; 3]>> {
    // Not computed anew while the quench or the temper is dragged.
    let soaked = Memo::new(move |_| route.with(|r| r.soak));
    Memo::new(move |_| {
        soaked.track();
        let kept = prepared.get();
        let prepared = kept.as_ref().as_ref()?;
        route
            .with_untracked(|route| prepared.overheating(route))
            .ok()
    })
}
