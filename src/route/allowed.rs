//! A range of values that makes sense for a field, and how a value outside of it is told.

use crate::heat::MediumError;
use crate::units::{TemperatureScale, outside_on_scale};
use recalesce_texts::route::fields as texts;

/// The first thing in a route that makes no sense.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{message}")]
pub struct RouteFieldError {
    /// The field concerned, as the saved route names it: `soak.temperature_c`.
    pub field: &'static str,
    /// What is wrong with it and what is allowed, in words, with temperatures in °C.
    pub message: String,
    /// The same in °F, where it tells of temperatures.
    fahrenheit: Option<String>,
}

impl RouteFieldError {
    /// What is wrong and what is allowed, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> &str {
        match (scale, &self.fahrenheit) {
            (TemperatureScale::Fahrenheit, Some(words)) => words,
            _ => &self.message,
        }
    }

    /// A fault of a field whose words tell of temperatures.
    fn on_scales(field: &'static str, words: impl Fn(TemperatureScale) -> String) -> Self {
        Self {
            field,
            message: words(TemperatureScale::Celsius),
            fahrenheit: Some(words(TemperatureScale::Fahrenheit)),
        }
    }

    /// The same of one of several steps, which is named first.
    pub(super) fn of_step(self, step: &str) -> Self {
        let of_step = |words: String| texts::of_step(step, &words);
        Self {
            field: self.field,
            message: of_step(self.message),
            fahrenheit: self.fahrenheit.map(of_step),
        }
    }
}

pub(super) fn fault(field: &'static str, message: impl ToString) -> RouteFieldError {
    RouteFieldError {
        field,
        message: message.to_string(),
        fahrenheit: None,
    }
}

/// A fault of the choice of a quenchant.
pub(super) fn fault_of_medium(field: &'static str, error: &MediumError) -> RouteFieldError {
    RouteFieldError::on_scales(field, |scale| error.words(scale))
}

/// A fault that tells of two temperatures, °C, written with their unit.
pub(super) fn fault_in_degrees(
    field: &'static str,
    temperatures_c: [f64; 2],
    write: fn([f64; 2], &str) -> String,
) -> RouteFieldError {
    let temperatures_f = temperatures_c.map(|c| TemperatureScale::Fahrenheit.of_celsius(c).round());
    RouteFieldError {
        field,
        message: write(temperatures_c, "°C"),
        fahrenheit: Some(write(temperatures_f, "°F")),
    }
}

/// A range of values that makes sense for a field.
pub(super) struct Allowed {
    field: &'static str,
    /// The quantity in words.
    words: &'static str,
    least: f64,
    most: f64,
    unit: &'static str,
}

pub(super) const fn allowed(
    field: &'static str,
    words: &'static str,
    (least, most): (f64, f64),
    unit: &'static str,
) -> Allowed {
    Allowed {
        field,
        words,
        least,
        most,
        unit,
    }
}

impl Allowed {
    pub(super) fn check(&self, value: f64) -> Result<(), RouteFieldError> {
        if (self.least..=self.most).contains(&value) {
            return Ok(());
        }
        let Self {
            field,
            words,
            least,
            most,
            unit,
        } = self;
        let told = |scale| {
            let ([value, least, most], unit) =
                outside_on_scale([value, *least, *most], unit, scale);
            texts::outside(words, &value, &least, &most, unit)
        };
        Err(RouteFieldError::on_scales(field, told))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::validate::SOAK_C;

    #[test]
    fn a_value_just_outside_does_not_read_like_the_limit() {
        let soak = allowed("soak.temperature_c", "soak temperature", SOAK_C, "°C");
        let told = |value_c: f64| {
            let error = soak.check(value_c).unwrap_err();
            error.words(TemperatureScale::Fahrenheit).to_owned()
        };
        assert_eq!(
            told(1300.1),
            "soak temperature 2372.2 °F is outside 932 to 2372 °F"
        );
        assert_eq!(
            told(499.9),
            "soak temperature 931.8 °F is outside 932 to 2372 °F"
        );
        assert_eq!(
            told(1300.001),
            "soak temperature 2372.002 °F is outside 932 to 2372 °F"
        );
        assert_eq!(
            told(5000.0),
            "soak temperature 9032 °F is outside 932 to 2372 °F"
        );
    }
}
