//! Why figures give no curve, and how it is told.

use super::bath_outside;
use super::figures::Figure;
use crate::heat::HeatError;
use crate::units::{TemperatureScale, format_refused, outside_on_scale};
use recalesce_texts::heat::own as texts;
use std::fmt;

/// Why figures give no curve.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FigureError {
    /// No figure tells how fast the quenchant is.
    None,
    /// A figure is not a number or outside what a liquid quenchant has.
    Outside {
        /// Which.
        figure: Figure,
        /// The figure given.
        given: f64,
        /// The smallest allowed, to three digits.
        least: f64,
        /// The largest allowed, to three digits.
        most: f64,
        /// What sets the limits.
        why: Limit,
    },
    /// The bath is not a number or outside of -20 to 250 °C.
    Bath {
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The probe does not cool to 200 °C in this bath, or only over hours.
    BathTooWarm {
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The tests could not be computed.
    Heat(#[from] HeatError),
    /// No curve was found that gives figures near these.
    NotFound,
}

impl FigureError {
    /// What is wrong, with temperatures on a scale. The figures are called as they always are: their
    /// temperatures are those of the standard.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match self {
            Self::None => texts::NO_FIGURE.to_owned(),
            Self::Outside {
                figure,
                given,
                least,
                most,
                why,
            } => {
                let (told, unit) = outside_on_scale([*given, *least, *most], figure.unit(), scale);
                texts::figure_outside(figure.words(), &told, unit, &why.to_string())
            }
            Self::Bath { bath_c } => bath_outside(*bath_c, scale),
            Self::BathTooWarm { bath_c } => texts::bath_too_warm(&format_refused(*bath_c, scale)),
            Self::Heat(error) => error.words(scale),
            Self::NotFound => texts::NO_CURVE_FOUND.to_owned(),
        }
    }
}

impl fmt::Display for FigureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

/// What sets the limits of a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limit {
    /// What liquid quenchants have.
    Quenchants,
    /// What oils have; a faster quenchant is told by more than the ball.
    Oils,
    /// Another figure, which no cooling curve has together with this one.
    With(Figure),
    /// All the other figures together, with which no ordinary boiling curve gives it.
    WithTheOthers,
}

impl fmt::Display for Limit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Quenchants => f.write_str(texts::AS_QUENCHANTS),
            Self::Oils => f.write_str(texts::AS_OILS),
            Self::With(other) => f.write_str(&texts::with_another(other.words())),
            Self::WithTheOthers => f.write_str(texts::WITH_THE_OTHERS),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{QuenchantFigures, fit_figures};

    #[test]
    fn a_refusal_in_fahrenheit_keeps_times() {
        let refused = |figure: Figure, given: f64, bath_c: f64| {
            let figures = QuenchantFigures::default().with(figure, Some(given));
            let figures = match figure {
                Figure::MaxRateAt => figures.with(Figure::MaxRate, Some(80.0)),
                _ => figures,
            };
            let error = fit_figures(&figures, bath_c).unwrap_err();
            assert_eq!(error.to_string(), error.words(TemperatureScale::Celsius));
            [error.to_string(), error.words(TemperatureScale::Fahrenheit)]
        };
        assert_eq!(
            refused(Figure::MaxRateAt, 900.0, 50.0),
            [
                "temperature of the highest rate: 900\u{a0}°C is outside 350 to 800\u{a0}°C, what liquid quenchants have",
                "temperature of the highest rate: 1652\u{a0}°F is outside 662 to 1472\u{a0}°F, what liquid quenchants have",
            ]
        );
        assert_eq!(
            refused(Figure::MaxRate, 80.0, 400.0),
            [
                "a bath of 400\u{a0}°C is outside \u{2212}20 to 250\u{a0}°C",
                "a bath of 752\u{a0}°F is outside \u{2212}4 to 482\u{a0}°F",
            ]
        );
        let [celsius, fahrenheit] = refused(Figure::TimeTo200c, 40.0, 210.0);
        assert!(celsius.starts_with("a bath of 210\u{a0}°C is too warm"));
        assert!(fahrenheit.starts_with("a bath of 410\u{a0}°F is too warm"));
        let [celsius, fahrenheit] = refused(Figure::MaxRate, 400.0, 50.0);
        assert!(
            celsius.contains("400\u{a0}K/s is outside 15 to 350\u{a0}K/s"),
            "{celsius}"
        );
        assert!(
            fahrenheit.contains("720\u{a0}°F/s is outside 27 to 630\u{a0}°F/s"),
            "{fahrenheit}"
        );
        let [celsius, fahrenheit] = refused(Figure::NickelBall, 90.0, 50.0);
        assert_eq!(celsius, fahrenheit);
    }
}
