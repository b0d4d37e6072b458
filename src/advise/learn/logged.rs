//! Runs as this room takes them, and what of them can be learnt from.

use super::plan::{Computed, Measurable};
use super::read_at::{ReadAt, is_faster};
use crate::hardness::{Hardness, Scale, convert};
use crate::route::{Route, Step};
use recalesce_texts::advise::RETAINED_AUSTENITE;
use recalesce_texts::advise::learn::logged as texts;
use serde::{Deserialize, Serialize};

/// Error of the model's retained austenite, vol %: what the project's score allows it in the mean.
const AUSTENITE_MODEL_VOL_PERCENT: f64 = 3.0;
/// Error of a measurement of retained austenite, vol %, as a standard deviation (expert value).
const AUSTENITE_MEASURED_VOL_PERCENT: f64 = 2.0;
/// A run of a route: what was planned, and what was measured.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LoggedRun {
    /// What it is called in the answer.
    pub name: String,
    /// The route as planned.
    pub route: Route,
    /// Hardness as read.
    pub readings: Vec<LoggedReading>,
    /// Retained austenite after the last step, vol %.
    pub austenite_vol_percent: Option<f64>,
    /// Grain by the fracture of a coupon, ASTM number.
    pub fracture_grain_astm: Option<f64>,
    /// Whether something was done otherwise than planned, as told in words.
    pub is_told_otherwise: bool,
}

/// A hardness reading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LoggedReading {
    /// Number on the scale.
    pub value: f64,
    /// The scale.
    pub scale: Scale,
    /// Where on the piece, in the user's words.
    pub place: String,
    /// After which step.
    pub after: Step,
}

/// Why a measurement teaches nothing.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Unusable {
    /// It has no number on the C scale.
    #[error("{}", texts::no_hrc(*value, scale))]
    Scale {
        /// As read.
        value: f64,
        /// The scale.
        scale: &'static str,
    },
    /// The route has no such step.
    #[error("{}", texts::NO_STEP)]
    Step,
    /// A place that cools faster than the one that the models tell of.
    #[error("{}", texts::read_elsewhere(place))]
    Place {
        /// Where.
        place: String,
    },
    /// The models do not reach the route.
    #[error("{}", texts::route_not_told(reason))]
    Models {
        /// Why.
        reason: String,
    },
    /// The models do not reach this step of it.
    #[error("{}", texts::STEP_NOT_TOLD)]
    StepNotTold,
    /// Grain by fracture.
    #[error("{}", texts::GRAIN_NOT_COMPARED)]
    Grain,
    /// No part of a volume.
    #[error("{}", texts::no_part_of_volume(*value))]
    Austenite {
        /// As told.
        value: f64,
    },
}

/// What was measured or planned that teaches nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unused {
    /// A reading, by its place in the list.
    Reading(usize),
    /// Retained austenite.
    Austenite,
    /// Grain by fracture.
    FractureGrain,
    /// The soak of the route.
    Soak,
}

impl Unused {
    /// Its field, as a file names it: `readings[2]`.
    #[must_use]
    pub fn field(self) -> String {
        match self {
            Self::Reading(place) => format!("readings[{place}]"),
            Self::Austenite => "austenite_vol_percent".to_owned(),
            Self::FractureGrain => "fracture_grain_astm".to_owned(),
            Self::Soak => "route.soak".to_owned(),
        }
    }

    /// What it is called, inside a sentence.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Reading(place) => texts::reading(place + 1),
            Self::Austenite => RETAINED_AUSTENITE.to_owned(),
            Self::FractureGrain => texts::FRACTURE_GRAIN.to_owned(),
            Self::Soak => texts::SOAK.to_owned(),
        }
    }
}

/// A measurement that teaches nothing, with the reason.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NotUsed {
    /// The run, by its place in the list.
    pub run: usize,
    /// Name of the run.
    pub name: String,
    /// Which measurement.
    #[serde(rename = "field", serialize_with = "as_field")]
    pub unused: Unused,
    /// Why.
    #[serde(serialize_with = "as_text")]
    pub reason: Unusable,
}

fn as_field<S: serde::Serializer>(unused: &Unused, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(&unused.field())
}

fn as_text<S: serde::Serializer>(reason: &Unusable, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_str(reason)
}

/// Whether the places of a piece harden alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Alike {
    /// However much is off.
    Surely,
    /// As planned, or as far as that is known.
    AsPlanned,
    /// As planned the place that decides is softer than what is reached from outside.
    Not,
}

/// One measurement on a piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Observed {
    pub(super) what: Measurable,
    /// HRC or vol %.
    pub(super) value: f64,
}

impl Observed {
    /// Variance of the measurement by itself, where that of the tester from reading to reading is
    /// known.
    pub(super) fn variance(&self, reading_variance: f64) -> f64 {
        match self.what {
            Measurable::Austenite => {
                AUSTENITE_MODEL_VOL_PERCENT.powi(2) + AUSTENITE_MEASURED_VOL_PERCENT.powi(2)
            }
            Measurable::Quenched | Measurable::Chilled | Measurable::Tempered => reading_variance,
        }
    }
}

impl LoggedReading {
    /// On the C scale, below 20 as older tables carry it on.
    fn hrc(&self) -> Result<f64, Unusable> {
        let (least, most) = Scale::Hrc.limits();
        let of_scale = match self.scale {
            Scale::Hrc => (least..=most).contains(&self.value).then_some(self.value),
            other => convert(other, self.value, Scale::Hv)
                .ok()
                .map(|hv| Hardness { hv }.hrc_carried()),
        };
        of_scale.ok_or(Unusable::Scale {
            value: self.value,
            scale: self.scale.symbol(),
        })
    }

    /// Which hardness it is of.
    fn what(&self, route: &Route) -> Result<Measurable, Unusable> {
        match self.after {
            Step::Quench => Ok(Measurable::Quenched),
            Step::Cold if route.cold.is_some() => Ok(Measurable::Chilled),
            Step::Temper(count) if count > 0 && count == route.tempers.len() => {
                Ok(Measurable::Tempered)
            }
            Step::Soak | Step::Snap | Step::Cold | Step::Temper(_) => Err(Unusable::Step),
        }
    }
}

impl LoggedRun {
    /// What of it can be learnt from, and what not. `computed` is what the models say of it as
    /// planned; `alike` whether every place of it hardens alike.
    pub(super) fn observed(
        &self,
        computed: &Computed,
        alike: Alike,
    ) -> (Vec<Observed>, Vec<(Unused, Unusable)>) {
        let mut found: Vec<Observed> = Vec::new();
        let mut not_used = Vec::new();
        let told = |what: Measurable| {
            let is_told = computed[what as usize].is_some();
            is_told.then_some(what).ok_or(Unusable::StepNotTold)
        };
        for (place, reading) in self.readings.iter().enumerate() {
            let used = reading.what(&self.route).and_then(told).and_then(|what| {
                let is_of_deciding = match alike {
                    Alike::Surely => true,
                    Alike::AsPlanned => !is_faster(&reading.place),
                    Alike::Not => {
                        ReadAt::of(&reading.place, self.route.section) == ReadAt::Deciding
                    }
                };
                if !is_of_deciding {
                    return Err(Unusable::Place {
                        place: reading.place.trim().to_owned(),
                    });
                }
                Ok((what, reading.hrc()?))
            });
            match used {
                Ok((what, value)) => found.push(Observed { what, value }),
                Err(reason) => not_used.push((Unused::Reading(place), reason)),
            }
        }
        if let Some(value) = self.austenite_vol_percent {
            let used = told(Measurable::Austenite).and_then(|what| {
                let is_part = (0.0..=100.0).contains(&value);
                is_part.then_some(what).ok_or(Unusable::Austenite { value })
            });
            match used {
                Ok(what) => found.push(Observed { what, value }),
                Err(reason) => not_used.push((Unused::Austenite, reason)),
            }
        }
        if self.fracture_grain_astm.is_some() {
            not_used.push((Unused::FractureGrain, Unusable::Grain));
        }
        (found, not_used)
    }

    /// Everything measured on it, none of which can be used for one reason.
    pub(super) fn none_used(&self, reason: &Unusable) -> Vec<(Unused, Unusable)> {
        let readings = (0..self.readings.len()).map(Unused::Reading);
        let austenite = self.austenite_vol_percent.map(|_| Unused::Austenite);
        let grain = self.fracture_grain_astm.map(|_| Unused::FractureGrain);
        readings
            .chain(austenite)
            .chain(grain)
            .map(|unused| (unused, reason.clone()))
            .collect()
    }
}
