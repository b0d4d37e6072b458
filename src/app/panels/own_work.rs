//! The state of the panel of a user's own quenchant: what is given, what is under way, what was found.

use super::own_coupon;
use crate::browser::files;
use crate::errand::{Errand, OnScales, Runner, on_scales, read};
use crate::own::{Fitted, Found};
use leptos::html::Textarea;
use leptos::prelude::*;
use recalesce::advise::Coupon;
use recalesce::heat::{CurveFitProgress, Figure, MediumChoice, OwnMedium, QuenchantFigures};
use recalesce::route::Route;
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Baths that a quenchant may be tested in, °C.
pub(super) const BATH_RANGE_C: (f64, f64) = (-20.0, 250.0);
/// Largest file that is read, bytes: half a million rows.
const LARGEST_FILE: f64 = 2e7;

/// From what it is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) enum Way {
    Figures,
    Curve,
    Coupon,
}

/// How the work stands.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Work {
    Still,
    Out(Option<CurveFitProgress>),
    Stopped,
    Done,
    Refused(Option<Figure>, OnScales),
}

impl Work {
    /// Why there is no fit to begin with.
    fn refused(why: &str) -> Self {
        Self::Refused(None, on_scales(|_| why.to_owned()))
    }
}

/// What the panel holds; copied into its parts.
#[derive(Clone, Copy)]
pub(super) struct Own {
    /// From what it is found.
    pub(super) way: RwSignal<Way>,
    /// Those that are given.
    pub(super) figures: RwSignal<QuenchantFigures>,
    /// Bath in the test, °C.
    pub(super) bath_c: RwSignal<f64>,
    /// Scale of the curve, where it is told.
    pub(super) scale: RwSignal<Option<TemperatureScale>>,
    /// The curve as text.
    pub(super) text: NodeRef<Textarea>,
    /// The coupon; its steel and its bath are told apart from it.
    pub(super) coupon: RwSignal<Coupon>,
    /// Grade of the coupon; empty for the steel on the bench.
    pub(super) coupon_steel: RwSignal<String>,
    /// How the work stands.
    pub(super) work: RwSignal<Work>,
    runner: StoredValue<Option<Runner>, LocalStorage>,
    /// The user's name for it.
    pub(super) title: RwSignal<String>,
    /// What was found last.
    pub(super) found: RwSignal<Option<Arc<Found>>>,
    /// The curve of the last visit.
    pub(super) kept_curve: StoredValue<String>,
    /// Whether the curve is too long to be kept.
    pub(super) is_long: RwSignal<bool>,
    /// Whether what is typed comes from the last visit.
    pub(super) is_restored: StoredValue<bool>,
}

impl Own {
    pub(super) fn new(route: &Route) -> Self {
        Self {
            way: RwSignal::new(Way::Figures),
            figures: RwSignal::default(),
            bath_c: RwSignal::new(50.0),
            scale: RwSignal::new(None),
            text: NodeRef::new(),
            coupon: RwSignal::new(own_coupon::of_route(route)),
            coupon_steel: RwSignal::default(),
            work: RwSignal::new(Work::Still),
            runner: StoredValue::new_local(None),
            title: RwSignal::default(),
            found: RwSignal::new(None),
            kept_curve: StoredValue::default(),
            is_long: RwSignal::new(false),
            is_restored: StoredValue::new(false),
        }
    }

    pub(super) fn is_out(self) -> bool {
        self.work.with(|work| matches!(work, Work::Out(_)))
    }

    /// Sends the fit to a thread of its own.
    pub(super) fn find(self, route: &Route) {
        let bath_c = self.bath_c.get_untracked();
        let errand = match self.way.get_untracked() {
            Way::Figures => Errand::Figures(self.figures.get_untracked(), bath_c),
            Way::Curve => {
                let area = self.text.get_untracked();
                let text = area.map(|area| area.value()).unwrap_or_default();
                Errand::Curve(text, self.scale.get_untracked(), bath_c)
            }
            Way::Coupon => Errand::Coupon(Box::new(own_coupon::complete(self, route))),
        };
        self.work.set(Work::Out(None));
        self.runner.update_value(|runner| {
            runner
                .get_or_insert_with(|| Runner::of_its_own(move |brought| self.take(read(brought))))
                .send(errand);
        });
    }

    fn take(self, fitted: Result<Fitted, String>) {
        let work = match fitted {
            Ok(Fitted::Progress(far)) => Work::Out(Some(far)),
            Ok(Fitted::Quenchant(found)) => {
                self.found.set(Some(Arc::new(*found)));
                Work::Done
            }
            Ok(Fitted::Refused { figure, why }) => Work::Refused(figure, why),
            Err(why) => Work::refused(&why),
        };
        self.work.set(work);
    }

    /// Ends the thread: it is in the middle of a step.
    pub(super) fn stop(self) {
        self.runner.set_value(None);
        self.work.set(Work::Stopped);
    }

    /// Takes a file's text for the curve.
    pub(super) fn read(self, file: &web_sys::File) {
        if file.size() > LARGEST_FILE {
            return self.work.set(Work::refused(texts::own::CURVE_TOO_LARGE));
        }
        self.way.set(Way::Curve);
        files::read_text(file, move |text| match (text, self.text.get_untracked()) {
            (Some(text), Some(area)) => {
                area.set_value(&text);
                self.work.set(Work::Still);
                self.keep();
            }
            _ => self
                .work
                .set(Work::refused(texts::general::FILE_UNREADABLE)),
        });
    }

    /// Shows a quenchant that came with a route; not one that is shown in full already.
    pub(super) fn show(self, medium: &OwnMedium) {
        let is_shown = self.found.with_untracked(|found| {
            let found = found.as_ref().map(|found| &found.medium);
            found.is_some_and(|shown| {
                shown.h_w_m2k == medium.h_w_m2k && shown.bath_c == medium.bath_c
            })
        });
        if is_shown {
            return;
        }
        // A fit that is out belongs to what was shown before.
        self.runner.set_value(None);
        self.figures.set(medium.figures);
        self.bath_c.set(medium.bath_c);
        self.title.set(medium.title.clone().unwrap_or_default());
        self.found.set(Found::kept(medium).map(Arc::new));
        self.way.set(Way::Figures);
        self.work.set(Work::Still);
    }

    /// The bath in use is the likeliest to have been tested.
    pub(super) fn expect_bath(self, choice: &MediumChoice) {
        let (least, most) = BATH_RANGE_C;
        if let Ok(used) = choice.resolve()
            && self.work.with_untracked(|work| *work == Work::Still)
        {
            self.bath_c.set(used.bath_c.clamp(least, most));
        }
    }
}
