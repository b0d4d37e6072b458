//! A range of values that makes sense for a field, and how a value outside of it is told.

use crate::units::TemperatureScale;
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
        let told = |value: String, least: String, most: String, unit: &str| {
            texts::outside(words, &value, &least, &most, unit)
        };
        let scale = TemperatureScale::Fahrenheit;
        let of_number: Option<fn(TemperatureScale, f64) -> f64> = match *unit {
            "°C" => Some(TemperatureScale::of_celsius),
            "K" => Some(TemperatureScale::of_kelvin_difference),
            _ => None,
        };
        Err(RouteFieldError {
            field,
            message: told(value.to_string(), least.to_string(), most.to_string(), unit),
            fahrenheit: of_number.map(|of_number| {
                let [value, least, most] = [value, *least, *most].map(|x| of_number(scale, x));
                let limit = if value < least { least } else { most };
                let told_f = |x: f64| degrees(x, decimals(value, limit));
                told(told_f(value), told_f(least), told_f(most), scale.symbol())
            }),
        })
    }
}

/// Most decimals of a degree.
const MOST_DECIMALS: usize = 6;

/// Decimals that tell a value from the limit that it is outside of; none where whole degrees do.
fn decimals(value: f64, limit: f64) -> usize {
    let reads_alike = |decimals: &usize| degrees(value, *decimals) == degrees(limit, *decimals);
    // Rounding whole degrees may bring even unlike ones to the wrong side of each other.
    if (value - limit).abs() >= 1.0 {
        return 0;
    }
    (1..MOST_DECIMALS)
        .find(|decimals| !reads_alike(decimals))
        .unwrap_or(MOST_DECIMALS)
}

/// Degrees, without zeros behind the point.
fn degrees(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.split_once('.') {
        Some(_) => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        None => text,
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
