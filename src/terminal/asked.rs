//! A question as it was asked: its fields, read strictly.

use super::catalogue::Question;
use super::refusal::Refusal;
use crate::steel::{self, Composition};
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

/// Fields that every question may have.
const COMMON: [&str; 2] = ["question", "id"];
/// Fields of every question about a steel.
const STEEL: [&str; 2] = ["composition", "grade"];

/// The fields of one question. A field that is `null` counts as left out.
pub(super) struct Asked<'a> {
    question: &'static Question,
    fields: &'a Map<String, Value>,
    steel: Option<Composition>,
}

impl<'a> Asked<'a> {
    /// Checks the names of the fields, and the steel where there is one.
    pub(super) fn new(
        question: &'static Question,
        fields: &'a Map<String, Value>,
    ) -> Result<Self, Refusal> {
        let known = |name: &str| {
            COMMON.contains(&name)
                || (question.of_steel && STEEL.contains(&name))
                || question.fields.iter().any(|field| field.name == name)
        };
        if let Some(unknown) = fields.keys().find(|name| !known(name)) {
            return Err(Refusal::UnknownField {
                field: unknown.chars().take(60).collect(),
                question: question.name,
                takes: question.takes(),
            });
        }
        let mut asked = Self {
            question,
            fields,
            steel: None,
        };
        let missing = question
            .fields
            .iter()
            .find(|field| field.default.is_none() && !asked.has(field.name));
        if let Some(field) = missing {
            return Err(asked.missing(field.name));
        }
        if question.of_steel {
            asked.steel = Some(asked.read_steel()?);
        }
        Ok(asked)
    }

    fn read_steel(&self) -> Result<Composition, Refusal> {
        if self.has("composition") {
            let composition: Composition = self.value("composition")?;
            composition.validate()?;
            return Ok(composition);
        }
        if self.has("grade") {
            let designation: String = self.value("grade")?;
            return Ok(steel::find(&designation)?.nominal);
        }
        Err(self.missing("composition` or `grade"))
    }

    fn missing(&self, field: &str) -> Refusal {
        Refusal::Missing {
            field: field.to_owned(),
            question: self.question.name,
            takes: self.question.takes(),
        }
    }

    /// Whether a field is there.
    pub(super) fn has(&self, name: &str) -> bool {
        self.fields.get(name).is_some_and(|value| !value.is_null())
    }

    /// The steel of the question.
    pub(super) fn steel(&self) -> Result<Composition, Refusal> {
        self.steel
            .ok_or_else(|| self.missing("composition` or `grade"))
    }

    /// The composition that a grade stands for; none where the composition itself was given.
    pub(super) fn steel_of_grade(&self) -> Option<Composition> {
        self.steel.filter(|_| !self.has("composition"))
    }

    /// A field of any type.
    pub(super) fn value<T: DeserializeOwned>(&self, name: &'static str) -> Result<T, Refusal> {
        self.optional(name)?.ok_or_else(|| self.missing(name))
    }

    /// A field of any type that may be left out.
    pub(super) fn optional<T: DeserializeOwned>(
        &self,
        name: &'static str,
    ) -> Result<Option<T>, Refusal> {
        let Some(value) = self.fields.get(name).filter(|value| !value.is_null()) else {
            return Ok(None);
        };
        T::deserialize(value).map(Some).map_err(|e| Refusal::Field {
            field: name.to_owned(),
            fault: e.to_string(),
        })
    }

    /// A number within limits.
    pub(super) fn number(
        &self,
        name: &'static str,
        range: (f64, f64),
        unit: &'static str,
    ) -> Result<f64, Refusal> {
        within(name, self.value(name)?, range, unit)
    }

    /// A number within limits that may be left out.
    pub(super) fn optional_number(
        &self,
        name: &'static str,
        range: (f64, f64),
        unit: &'static str,
    ) -> Result<Option<f64>, Refusal> {
        self.optional(name)?
            .map(|value| within(name, value, range, unit))
            .transpose()
    }
}

/// A value if it lies in a range.
pub(super) fn within(
    field: &'static str,
    value: f64,
    (least, most): (f64, f64),
    unit: &'static str,
) -> Result<f64, Refusal> {
    if (least..=most).contains(&value) {
        return Ok(value);
    }
    Err(Refusal::Outside {
        field,
        value,
        least,
        most,
        unit,
    })
}

/// The fields of an answer, by name and value.
pub(super) fn fields<const N: usize>(pairs: [(&str, Value); N]) -> Map<String, Value> {
    pairs
        .into_iter()
        .map(|(name, value)| (name.to_owned(), value))
        .collect()
}
