//! What a logbook has taught, as a question may bring it along: the answer of `learn` goes in as it
//! came out.

use super::asked::Asked;
use super::catalogue::{Field, optional};
use super::refusal::Refusal;
use super::whole_route::route_of;
use crate::advise::{Correction, Learned};
use crate::route::Route;
use crate::units::TemperatureScale;
use serde_json::{Map, Value, json};

/// Name of the field, in questions and answers.
const NAME: &str = "learnt";

/// The field of a question that counts with what was learnt.
pub(super) const FIELD: Field = optional(
    NAME,
    "what a logbook has taught, as `learn` answers it under `learnt`: acts where furnace, quenchant or \
     heat are those of the route and the models those it was learnt with, and the answer says so",
    "nothing is shifted",
);

/// The field of an answer that says what was counted with.
pub(super) const ANSWER: (&str, &str) = (
    NAME,
    "where the question has `learnt`: what of it acts, and what was learnt and is left out, with the \
     reason, in sentences",
);

/// What an answer says where none of it acts.
const OF_OTHER_MODELS: &str =
    "It was learnt with another version of the models, and does not act: ask `learn` again.";

/// What a question brings along, switched on by that; else nothing, switched off.
pub(super) fn correction_of(asked: &Asked<'_>) -> Result<Correction, Refusal> {
    let Some(mut correction) = asked.optional::<Correction>(NAME)? else {
        return Ok(Correction::default());
    };
    correction.check()?;
    correction.is_on = true;
    Ok(correction)
}

/// The route of a question with what was learnt of it.
pub(super) fn taught_route(asked: &Asked<'_>) -> Result<Route, Refusal> {
    let route = route_of(asked)?;
    Ok(Route {
        taught: correction_of(asked)?.taught(&route),
        ..route
    })
}

/// Says in an answer what of it acts on its routes and what is left out, each thing once.
pub(super) fn say<'a>(
    asked: &Asked<'_>,
    routes: impl Iterator<Item = &'a Route>,
    reply: &mut Map<String, Value>,
) -> Result<(), Refusal> {
    if !asked.has(NAME) {
        return Ok(());
    }
    let correction = correction_of(asked)?;
    let told = if correction.is_of_these_models() {
        let (routes, scale) = (routes.collect::<Vec<_>>(), TemperatureScale::Celsius);
        let mut told = correction.words_of(routes.iter().copied(), scale);
        told.extend(correction.left_out_of(routes.into_iter(), scale));
        told
    } else {
        vec![OF_OTHER_MODELS.to_owned()]
    };
    reply.insert(NAME.to_owned(), json!(told));
    Ok(())
}

/// What was learnt as a further question takes it.
pub(super) fn as_field(learned: &Learned) -> Result<(String, Value), Refusal> {
    let mut correction = serde_json::to_value(learned.correction())?;
    // To bring it along is to switch it on.
    if let Value::Object(fields) = &mut correction {
        fields.remove("is_on");
    }
    Ok((NAME.to_owned(), correction))
}
