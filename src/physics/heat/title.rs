//! The name of a medium on the page.

use crate::units::{TemperatureScale, format_temperature};
use recalesce_texts::heat::media as texts;
use serde::{Serialize, Serializer};
use std::fmt;

/// Stands in the list for the temperature of the bath.
const BATH: &str = "{bath}";

/// The name of a medium, sentence case, with the temperature of its bath where that tells it from
/// another. As plain text, and in the terminal's answers, the temperature is in °C.
#[derive(Debug, Clone, PartialEq)]
pub struct MediumTitle {
    text: String,
    bath_c: Option<f64>,
}

impl MediumTitle {
    /// Reads a title of the list: `{bath}` in it stands for the temperature of the bath.
    pub(super) fn new(text: &str, bath_c: f64) -> Self {
        Self {
            text: text.to_owned(),
            bath_c: text.contains(BATH).then_some(bath_c),
        }
    }

    /// The title with its bath at another temperature, °C: told behind it where it was not told.
    pub(super) fn at_bath(&self, bath_c: f64) -> Self {
        let text = if self.names_bath() {
            self.text.clone()
        } else {
            texts::title_with_bath(&self.text, BATH)
        };
        Self {
            text,
            bath_c: Some(bath_c),
        }
    }

    /// The user's own words, whatever they are.
    pub(super) fn plain(text: &str) -> Self {
        Self {
            text: text.to_owned(),
            bath_c: None,
        }
    }

    /// The title with its temperature on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        self.bath_c.map_or_else(
            || self.text.clone(),
            |c| self.text.replacen(BATH, &format_temperature(c, scale), 1),
        )
    }

    /// Whether the title says how warm the bath is.
    #[must_use]
    pub const fn names_bath(&self) -> bool {
        self.bath_c.is_some()
    }
}

impl fmt::Display for MediumTitle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

impl Serialize for MediumTitle {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bath_is_told_on_the_scale_asked_where_the_title_names_it() {
        let hot = MediumTitle::new("Salt bath, {bath}, still", 200.0);
        assert_eq!(
            hot.words(TemperatureScale::Fahrenheit),
            "Salt bath, 392\u{a0}°F, still"
        );
        assert_eq!(hot.to_string(), "Salt bath, 200\u{a0}°C, still");
        let oil = MediumTitle::new("Fast oil", 50.0);
        assert_eq!(oil.words(TemperatureScale::Fahrenheit), "Fast oil");
        assert!(hot.names_bath() && !oil.names_bath());
    }
}
