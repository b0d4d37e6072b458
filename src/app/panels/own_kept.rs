//! What was typed of a quenchant of the user's own, kept in this browser between visits.

use super::own_work::{Own, Way};
use crate::browser::storage;
use crate::own::Found;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::advise::Coupon;
use recalesce::heat::{OwnMedium, QuenchantFigures};
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Longest curve that is kept, bytes: the store is small and the shelf needs it.
const LONGEST_CURVE: usize = 300_000;

/// What is kept.
#[derive(Serialize, Deserialize)]
struct Kept {
    way: Way,
    figures: QuenchantFigures,
    bath_c: f64,
    scale: Option<TemperatureScale>,
    curve: String,
    coupon: Coupon,
    coupon_steel: String,
    title: String,
    found: Option<OwnMedium>,
}

/// The quenchant of the user's own that was found last, by the name that it has now, if any was.
pub(super) fn last_found() -> Option<OwnMedium> {
    let kept: Kept = serde_json::from_str(&storage::read(storage::OWN)?).ok()?;
    Some(titled(kept.found?, &kept.title))
}

/// A quenchant by the name that the user gives.
pub(super) fn titled(medium: OwnMedium, title: &str) -> OwnMedium {
    let title = Some(title.trim().to_owned()).filter(|title| !title.is_empty());
    OwnMedium { title, ..medium }
}

impl Own {
    /// Takes over what was typed at the last visit, if anything was.
    pub(super) fn restore(self, bench: Bench) {
        let Some(text) = storage::read(storage::OWN) else {
            return;
        };
        let Ok(kept) = serde_json::from_str::<Kept>(&text) else {
            // A later version may read it.
            if !storage::set_aside_or_hold(storage::OWN, &text) {
                bench.warn(texts::own::LAST_NOT_ASIDE.to_owned());
            }
            return;
        };
        self.way.set(kept.way);
        self.figures.set(kept.figures);
        self.bath_c.set(kept.bath_c);
        self.scale.set(kept.scale);
        self.kept_curve.set_value(kept.curve);
        self.coupon.set(kept.coupon);
        self.coupon_steel.set(kept.coupon_steel);
        self.title.set(kept.title);
        let found = kept.found.as_ref().and_then(Found::kept);
        self.found.set(found.map(Arc::new));
        self.is_restored.set_value(true);
    }

    /// Keeps what is typed. What the store has no room for is typed again next time.
    pub(super) fn keep(self) {
        let curve = match self.text.get_untracked() {
            Some(area) => area.value(),
            None => self.kept_curve.get_value(),
        };
        let is_long = curve.len() > LONGEST_CURVE;
        if self.is_long.get_untracked() != is_long {
            self.is_long.set(is_long);
        }
        let kept = Kept {
            way: self.way.get_untracked(),
            figures: self.figures.get_untracked(),
            bath_c: self.bath_c.get_untracked(),
            scale: self.scale.get_untracked(),
            curve: if is_long { String::new() } else { curve },
            coupon: self.coupon.get_untracked(),
            coupon_steel: self.coupon_steel.get_untracked(),
            title: self.title.get_untracked(),
            found: self
                .found
                .with_untracked(|found| found.as_ref().map(|found| found.medium.clone())),
        };
        if let Ok(text) = serde_json::to_string(&kept) {
            // The page has said already where nothing can be kept, and where what could not be read stays.
            let _ = storage::write(storage::OWN, &text);
        }
    }

    /// Keeps each change from now on but those of the curve, which tells them itself.
    pub(super) fn keep_changes(self) {
        Effect::new(move |before: Option<()>| {
            self.way.track();
            self.figures.track();
            self.bath_c.track();
            self.scale.track();
            self.coupon.track();
            self.coupon_steel.track();
            self.title.track();
            self.found.track();
            if before.is_some() {
                self.keep();
            }
        });
    }
}
