//! A run: a route as planned, what was really done, and what came out.

use super::predicted::Predicted;
use super::{Day, Id};
use crate::hardness::{Scale, convert};
use crate::route::{Outcome, Route};
use recalesce_texts::save::run as texts;
use serde::{Deserialize, Serialize};

/// HRC below which the scale is not defined.
const LEAST_HRC: f64 = 20.0;

/// One piece, or one batch, that went through a route.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Run {
    /// Its identity.
    pub id: Id,
    /// The day of the quench.
    pub day: Day,
    /// The route as planned, with the piece and its steel.
    pub route: Route,
    /// What the model said then; none where it gave no number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub predicted: Option<Predicted>,
    /// What was really done.
    #[serde(default, skip_serializing_if = "is_default")]
    pub done: Done,
    /// Hardness as read.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<Reading>,
    /// Grain by the fracture of a coupon, number of the ASTM or Shepherd scale, which run alike.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fracture_grain_astm: Option<f64>,
    /// Retained austenite as measured, vol %.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub austenite_vol_percent: Option<f64>,
    /// What a coupon of the same steel quenched beside the piece showed: hardness, fracture.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub coupon: String,
    /// How it does in use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub use_tests: Vec<UseTest>,
    /// Whatever else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
    /// Its photos, kept apart from it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<Id>,
}

/// What was really done, in the user's words, by step.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Done {
    /// Before hardening.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub before: String,
    /// Soak.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub soak: String,
    /// Quench.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub quench: String,
    /// Cold treatment.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub cold: String,
    /// Temper.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub temper: String,
}

/// The step after which a hardness was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum After {
    /// The quench.
    Quench,
    /// The cold treatment.
    Cold,
    /// The last temper.
    Temper,
}

impl After {
    /// All, in the order of a route.
    pub const ALL: [Self; 3] = [Self::Quench, Self::Cold, Self::Temper];

    /// The step in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Quench => texts::AS_QUENCHED,
            Self::Cold => texts::AFTER_COLD,
            Self::Temper => texts::AS_TEMPERED,
        }
    }

    /// The last of these that a route has.
    #[must_use]
    pub const fn last_of(route: &Route) -> Self {
        if !route.tempers.is_empty() {
            Self::Temper
        } else if route.cold.is_some() {
            Self::Cold
        } else {
            Self::Quench
        }
    }
}

/// One hardness reading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// Number on the scale.
    pub value: f64,
    /// The scale.
    pub scale: Scale,
    /// Where on the piece, in the user's words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub place: String,
    /// After which step.
    pub after: After,
}

impl Reading {
    /// The reading on the C scale: converted where it was read on another, none where that scale
    /// is not defined.
    #[must_use]
    pub fn hrc(&self) -> Option<f64> {
        if self.scale == Scale::Hrc {
            return (self.value >= LEAST_HRC).then_some(self.value);
        }
        convert(self.scale, self.value, Scale::Hrc).ok()
    }
}

/// One test in use: `cuts until it no longer shaves`, 120, `cuts`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UseTest {
    /// What was tested, in the user's words.
    pub name: String,
    /// What came out.
    pub value: f64,
    /// Its unit; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub unit: String,
}

impl Run {
    /// A run of a route, with nothing measured yet. Of a route with what runs have taught it keeps the
    /// plan alone, and of the prediction that it counts with it.
    #[must_use]
    pub fn of(id: Id, day: Day, route: Route, outcome: Option<&Outcome>) -> Self {
        Self {
            id,
            day,
            predicted: outcome.and_then(|outcome| Predicted::of(&route, outcome)),
            route: Route {
                taught: None,
                ..route
            },
            done: Done::default(),
            readings: Vec::new(),
            fracture_grain_astm: None,
            austenite_vol_percent: None,
            coupon: String::new(),
            use_tests: Vec::new(),
            notes: String::new(),
            photos: Vec::new(),
        }
    }

    /// Its grade in words.
    #[must_use]
    pub fn grade(&self) -> &str {
        self.route.grade.as_deref().unwrap_or(texts::OWN_STEEL)
    }
}

pub(super) fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}
