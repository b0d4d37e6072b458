//! What the user prefers to see: kept apart from routes, since it changes nothing in them.

use super::file::{FORMAT, ReadError, VERSION, WriteError, open};
use super::told::told;
use crate::units::{LengthUnit, TemperatureScale};
use recalesce_texts::save::file as texts;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Value of `kind` in a file of preferences.
const KIND: &str = "preferences";

/// Light or dark page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Theme {
    /// As the system asks.
    #[default]
    System,
    /// Always light.
    Light,
    /// Always dark.
    Dark,
}

/// What the user prefers to see.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Preferences {
    /// Scale of temperatures.
    pub temperature_scale: TemperatureScale,
    /// Unit of lengths.
    pub length_unit: LengthUnit,
    /// Whether numbers have a decimal comma; where it is not kept, as the browser's language has it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub decimal_comma: Option<bool>,
    /// Light or dark.
    pub theme: Theme,
}

#[derive(Serialize)]
struct File {
    format: &'static str,
    version: u64,
    kind: &'static str,
    #[serde(flatten)]
    preferences: Preferences,
}

/// Reads preferences.
///
/// # Errors
/// A text that is no file of preferences, or one of a newer version.
pub fn read_preferences(text: &str) -> Result<Preferences, ReadError> {
    let (_, mut fields) = open(text)?;
    match fields.take("kind")? {
        Value::String(kind) if kind == KIND => {}
        other => return Err(ReadError::kind(&other, "\"preferences\"")),
    }
    serde_json::from_value(fields.rest()).map_err(|e| ReadError::Field {
        field: KIND,
        fault: texts::not_read(&told(&e)),
    })
}

/// Writes preferences.
///
/// # Errors
/// None that can be met; the text is made by the same library as all others.
pub fn write_preferences(preferences: Preferences) -> Result<String, WriteError> {
    let file = File {
        format: FORMAT,
        version: VERSION,
        kind: KIND,
        preferences,
    };
    serde_json::to_string(&file).map_err(|e| WriteError::Text(e.to_string()))
}
