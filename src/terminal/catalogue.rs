//! What can be asked: one table serves reading, checking and help.

use super::asked::Asked;
use super::refusal::Refusal;
use super::{coupon, decide, hardness, heat, learn, quenchant, steel, transform, whole_route};
use serde_json::{Map, Value};

/// A kind of question.
pub(super) struct Question {
    /// Value of `question`.
    pub(super) name: &'static str,
    /// What it asks, as a sentence.
    pub(super) asks: &'static str,
    /// Whether it is about a steel: takes `composition` or `grade`.
    pub(super) of_steel: bool,
    /// Its other fields.
    pub(super) fields: &'static [Field],
    /// Fields of the answer: name and meaning.
    pub(super) answers: &'static [(&'static str, &'static str)],
    /// A question as it may be typed.
    pub(super) example: &'static str,
    /// Gives the fields of the answer.
    pub(super) answer: fn(&Asked<'_>) -> Result<Map<String, Value>, Refusal>,
}

/// A field of a question.
pub(super) struct Field {
    pub(super) name: &'static str,
    pub(super) meaning: &'static str,
    /// What is taken when it is left out; none when it must be there.
    pub(super) default: Option<&'static str>,
}

/// A field that must be there.
pub(super) const fn needed(name: &'static str, meaning: &'static str) -> Field {
    Field {
        name,
        meaning,
        default: None,
    }
}

/// A field that may be left out.
pub(super) const fn optional(
    name: &'static str,
    meaning: &'static str,
    default: &'static str,
) -> Field {
    Field {
        name,
        meaning,
        default: Some(default),
    }
}

/// All questions, in the order of the rooms.
pub(super) fn all() -> impl Iterator<Item = &'static Question> {
    [
        whole_route::QUESTIONS,
        decide::QUESTIONS,
        learn::QUESTIONS,
        steel::QUESTIONS,
        transform::QUESTIONS,
        heat::QUESTIONS,
        quenchant::QUESTIONS,
        coupon::QUESTIONS,
        hardness::QUESTIONS,
    ]
    .into_iter()
    .flatten()
}

fn known() -> String {
    let names: Vec<_> = all().map(|question| question.name).collect();
    names.join(", ")
}

/// The question of a name as it stands in a line.
pub(super) fn find(name: Option<&Value>) -> Result<&'static Question, Refusal> {
    let name = name.ok_or_else(|| Refusal::NoQuestion { known: known() })?;
    all()
        .find(|question| name.as_str() == Some(question.name))
        .ok_or_else(|| Refusal::UnknownQuestion {
            asked: name.to_string().chars().take(60).collect(),
            known: known(),
        })
}

impl Question {
    /// All fields it takes, for a message: `composition or grade, temperature_c, start?`.
    pub(super) fn takes(&self) -> String {
        let steel = self.of_steel.then(|| "composition or grade".to_owned());
        let fields = self.fields.iter().map(|field| {
            let mark = if field.default.is_some() { "?" } else { "" };
            format!("{}{mark}", field.name)
        });
        steel
            .into_iter()
            .chain(fields)
            .collect::<Vec<_>>()
            .join(", ")
    }
}
