//! What an experiment is made of.

use super::number::Number;
use crate::route::{Outcome, Route};
use crate::save::told;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// An experiment: a route to begin with and steps to go through.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Experiment {
    /// What it is called.
    pub title: String,
    /// What it is about, in a sentence.
    pub about: String,
    /// How long it takes, min: 1 to 120.
    pub minutes: u32,
    /// The route that is put on the bench at its start, as a saved file has it.
    pub route: Route,
    /// The steps in their order.
    pub steps: Vec<Step>,
    /// What a smith would see or feel of it: where it ends.
    pub at_the_forge: String,
}

/// A step of an experiment.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Step {
    /// Something told.
    Tell(String),
    /// What do you expect? Any choice leads on; then the right one is told with its reason.
    Predict {
        /// The question.
        question: String,
        /// What can be expected.
        choices: Vec<String>,
        /// Place of the right one, counted from zero.
        right: usize,
        /// Why.
        because: String,
    },
    /// A change of the route, until the model says that its goal is reached.
    Change {
        /// What to do.
        task: String,
        /// When it is done.
        until: Vec<Goal>,
        /// A change that does it, laid over the saved form of the route (RFC 7396): shown on request.
        way: Value,
    },
    /// A question that the model answers from the route on the bench.
    Ask {
        /// The question.
        question: String,
        /// The number that answers it.
        number: Number,
        /// How far an answer may be off, in its unit.
        within: f64,
        /// What it means.
        because: String,
    },
}

/// A range that a number has to be in.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Goal {
    /// The number.
    pub number: Number,
    /// At least this, in its unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<f64>,
    /// At most this, in its unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<f64>,
}

impl Goal {
    /// Whether it is reached; not where the models do not reach.
    #[must_use]
    pub fn is_reached(&self, route: &Route, outcome: &Outcome) -> bool {
        self.number.of(route, outcome).is_some_and(|value| {
            self.least.is_none_or(|least| value >= least)
                && self.most.is_none_or(|most| value <= most)
        })
    }
}

/// Lays a change over the saved form of a route.
///
/// # Errors
/// What is not a route any more, in words.
fn changed(route: &Route, way: &Value) -> Result<Route, String> {
    let mut saved = serde_json::to_value(route).map_err(|e| e.to_string())?;
    merge(&mut saved, way);
    serde_json::from_value(saved).map_err(|e| told(&e))
}

/// The merge patch of RFC 7396.
fn merge(target: &mut Value, patch: &Value) {
    let Value::Object(patch) = patch else {
        *target = patch.clone();
        return;
    };
    if !target.is_object() {
        *target = Value::Object(serde_json::Map::new());
    }
    let Some(fields) = target.as_object_mut() else {
        return;
    };
    for (name, value) in patch {
        if value.is_null() {
            fields.remove(name);
        } else {
            merge(fields.entry(name.clone()).or_insert(Value::Null), value);
        }
    }
}

impl Experiment {
    /// The route as it is once a step was shown: its own, with every way up to that step laid over it.
    ///
    /// # Errors
    /// A way that leaves no route, in words.
    pub fn shown_at(&self, step: usize) -> Result<Route, String> {
        let steps = self.steps.iter().take(step + 1);
        let ways = steps.filter_map(|step| match step {
            Step::Change { way, .. } => Some(way),
            Step::Tell(_) | Step::Predict { .. } | Step::Ask { .. } => None,
        });
        ways.into_iter()
            .try_fold(self.route.clone(), |route, way| changed(&route, way))
    }
}
