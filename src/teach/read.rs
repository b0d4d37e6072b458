//! Reading experiments: untrusted, also those that come with the project.

use super::experiment::{Experiment, Goal, Step};
use super::worded::worded;
use crate::route::{RouteError, validate};
use crate::save::told;
use crate::units::TemperatureScale;
use recalesce_texts::teach::experiment as texts;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

/// Value of `format` in the file of an experiment.
pub const EXPERIMENT_FORMAT: &str = "recalesce-experiment";
/// Version of that format.
pub const EXPERIMENT_VERSION: u64 = 1;

/// Largest text of an experiment, bytes.
pub const LARGEST_EXPERIMENT_BYTES: usize = 100_000;
/// Longest of its texts, letters, and most steps.
const LONGEST_TEXT: usize = 2_000;
const MOST_STEPS: usize = 40;
const MINUTES: std::ops::RangeInclusive<u32> = 1..=120;
const CHOICES: std::ops::RangeInclusive<usize> = 2..=6;

/// Why a text is no experiment.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ExperimentError {
    /// It is too large.
    #[error("{}", texts::too_large(*bytes, LARGEST_EXPERIMENT_BYTES))]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// It is not what the format asks for.
    #[error("{}", texts::not_read(.0))]
    Format(String),
    /// It says that it is something else.
    #[error("{}", texts::no_experiment(EXPERIMENT_FORMAT))]
    NoExperiment,
    /// It is of a version that is not known here.
    #[error("{}", texts::version(found, EXPERIMENT_VERSION))]
    Version {
        /// What it says, as text.
        found: String,
    },
    /// Its route makes no sense.
    #[error("{}", texts::bad_route(&.0.to_string()))]
    Route(RouteError),
    /// A field is not as it may be.
    #[error("{field}: {fault}.")]
    Field {
        /// Which: `steps[2].way`.
        field: String,
        /// What is wrong, and what is allowed.
        fault: String,
    },
}

/// Reads an experiment and checks all of it.
///
/// # Errors
/// The first thing that is wrong, with what is allowed.
pub fn read_experiment(text: &str) -> Result<Experiment, ExperimentError> {
    if text.len() > LARGEST_EXPERIMENT_BYTES {
        return Err(ExperimentError::TooLarge { bytes: text.len() });
    }
    let value: Value = serde_json::from_str(text).map_err(|e| ExperimentError::Format(told(&e)))?;
    let Value::Object(mut fields) = value else {
        return Err(ExperimentError::NoExperiment);
    };
    check_head(&mut fields)?;
    let experiment = Experiment {
        title: take(&mut fields, "title")?,
        about: take(&mut fields, "about")?,
        minutes: take(&mut fields, "minutes")?,
        route: take(&mut fields, "route")?,
        steps: take_steps(&mut fields)?,
        at_the_forge: take(&mut fields, "at_the_forge")?,
    };
    if let Some(unknown) = fields.keys().next() {
        return Err(fault(&told(unknown), texts::UNKNOWN_FIELD));
    }
    experiment.check()?;
    Ok(experiment)
}

/// Takes format and version off. Experiments that were written before there was either have neither,
/// and are of the first version.
fn check_head(fields: &mut Map<String, Value>) -> Result<(), ExperimentError> {
    let (format, version) = (fields.remove("format"), fields.remove("version"));
    if format.is_none() && version.is_none() {
        return Ok(());
    }
    if format.is_none_or(|format| format != EXPERIMENT_FORMAT) {
        return Err(ExperimentError::NoExperiment);
    }
    match version {
        Some(version) if version == EXPERIMENT_VERSION => Ok(()),
        other => Err(ExperimentError::Version {
            found: other.map_or_else(|| texts::NO_VERSION.to_owned(), |found| told(&found)),
        }),
    }
}

/// Takes a field off and reads it; what is wrong is told with its name.
fn take<T: DeserializeOwned>(
    fields: &mut Map<String, Value>,
    name: &str,
) -> Result<T, ExperimentError> {
    let value = fields.remove(name);
    let value = value.ok_or_else(|| fault(name, texts::MISSING))?;
    serde_json::from_value(value).map_err(|e| fault(name, told(&e)))
}

fn take_steps(fields: &mut Map<String, Value>) -> Result<Vec<Step>, ExperimentError> {
    let steps: Vec<Value> = take(fields, "steps")?;
    let each = steps.into_iter().enumerate().map(|(place, step)| {
        serde_json::from_value(step).map_err(|e| fault(&format!("steps[{place}]"), told(&e)))
    });
    each.collect()
}

fn fault(field: &str, fault: impl Into<String>) -> ExperimentError {
    ExperimentError::Field {
        field: field.to_owned(),
        fault: fault.into(),
    }
}

fn text(field: &str, text: &str) -> Result<(), ExperimentError> {
    let letters = text.chars().count();
    if !(1..=LONGEST_TEXT).contains(&letters) {
        return Err(fault(field, texts::letters(letters, LONGEST_TEXT)));
    }
    worded(text, TemperatureScale::Celsius).map_err(|why| fault(field, why))?;
    Ok(())
}

impl Experiment {
    fn check(&self) -> Result<(), ExperimentError> {
        text("title", &self.title)?;
        text("about", &self.about)?;
        text("at_the_forge", &self.at_the_forge)?;
        if !MINUTES.contains(&self.minutes) {
            return Err(fault("minutes", texts::MINUTES));
        }
        validate(&self.route).map_err(|error| ExperimentError::Route(error.into()))?;
        if !(1..=MOST_STEPS).contains(&self.steps.len()) {
            let found = self.steps.len();
            return Err(fault("steps", texts::steps(found, MOST_STEPS)));
        }
        for (place, step) in self.steps.iter().enumerate() {
            self.check_step(place, step)?;
        }
        Ok(())
    }

    fn check_step(&self, place: usize, step: &Step) -> Result<(), ExperimentError> {
        let at = &format!("steps[{place}]");
        let field = |name: &str| format!("{at}.{name}");
        match step {
            Step::Tell(told) => text(at, told),
            Step::Predict {
                question,
                choices,
                right,
                because,
            } => {
                text(&field("question"), question)?;
                text(&field("because"), because)?;
                if !CHOICES.contains(&choices.len()) {
                    return Err(fault(&field("choices"), texts::CHOICES));
                }
                for choice in choices {
                    text(&field("choices"), choice)?;
                }
                if *right >= choices.len() {
                    let told = texts::no_choice(*right, choices.len());
                    return Err(fault(&field("right"), told));
                }
                Ok(())
            }
            Step::Change { task, until, .. } => {
                text(&field("task"), task)?;
                if until.is_empty() {
                    return Err(fault(&field("until"), texts::NO_GOAL));
                }
                for goal in until {
                    check_goal(&field("until"), goal)?;
                }
                let route = self
                    .shown_at(place)
                    .map_err(|why| fault(&field("way"), why))?;
                validate(&route).map_err(|why| fault(&field("way"), why.to_string()))
            }
            Step::Ask {
                question,
                within,
                because,
                ..
            } => {
                text(&field("question"), question)?;
                text(&field("because"), because)?;
                if !(within.is_finite() && *within > 0.0) {
                    return Err(fault(&field("within"), texts::NOT_ABOVE_ZERO));
                }
                Ok(())
            }
        }
    }
}

fn check_goal(at: &str, goal: &Goal) -> Result<(), ExperimentError> {
    let ends = [goal.least, goal.most];
    if ends.iter().flatten().any(|end| !end.is_finite()) {
        return Err(fault(at, texts::ENDS_NO_NUMBERS));
    }
    match ends {
        [None, None] => Err(fault(at, texts::NO_END)),
        [Some(least), Some(most)] if least > most => {
            Err(fault(at, texts::ends_crossed(least, most)))
        }
        _ => Ok(()),
    }
}
