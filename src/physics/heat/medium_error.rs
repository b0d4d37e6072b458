//! What is wrong with the choice of a medium, and how it is told.

use super::choice::{BAND_RANGE, BATH_RANGE, FIGURE_RANGE};
use super::heat_transfer::{H_RANGE, MOST_POINTS, SURFACE_RANGE};
use super::{BathRange, Figure, LONGEST_TITLE, MediumTitle};
use crate::units::{TemperatureScale, format_refused, outside_on_scale};
use recalesce_texts::heat::{media as texts, own};
use std::fmt;

/// What is wrong with the choice of a medium.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MediumError {
    /// No medium of the list has this name.
    Unknown {
        /// The name given, shortened if long.
        name: String,
    },
    /// A curve has too few or too many points.
    Points {
        /// How many it has.
        count: usize,
    },
    /// A heat-transfer coefficient is not a number or out of range.
    HeatTransfer {
        /// Number of the point, from 1.
        point: usize,
        /// The coefficient given, W/m²K.
        h_w_m2k: f64,
    },
    /// A surface temperature is not a number or out of range.
    Surface {
        /// Number of the point, from 1.
        point: usize,
        /// The temperature given, °C.
        temperature_c: f64,
    },
    /// Surface temperatures do not rise from point to point.
    NotRising {
        /// Number of the point, from 1.
        point: usize,
        /// The temperature given, °C.
        temperature_c: f64,
    },
    /// The bath temperature is not a number or out of range.
    Bath {
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The bath of a quenchant of the list is colder or hotter than it may be.
    BathOf {
        /// The quenchant.
        title: MediumTitle,
        /// The temperature given, °C.
        bath_c: f64,
        /// What it may be.
        range: BathRange,
    },
    /// A quenchant of the user's own has its bath in its curve.
    OwnBath,
    /// A name is too long.
    LongTitle {
        /// How many it has.
        length: usize,
    },
    /// The band is not a number or out of range.
    Band {
        /// The factor given.
        factor: f64,
    },
    /// A figure kept with the curve is not a number or out of range.
    Figure {
        /// Which.
        figure: Figure,
        /// The figure given.
        given: f64,
    },
}

impl MediumError {
    /// What is wrong, with temperatures on a scale. One text for all kinds: derived for each by itself,
    /// the page would be heavier.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let bath = |bath_c, least_c, most_c| {
            let (told, unit) = outside_on_scale([bath_c, least_c, most_c], "°C", scale);
            texts::bath_outside(&told, unit)
        };
        match self {
            Self::Unknown { name } => texts::unknown(name),
            Self::Points { count } => texts::points_allowed(*count, MOST_POINTS),
            Self::HeatTransfer { point, h_w_m2k } => {
                texts::heat_transfer_outside(*point, *h_w_m2k, H_RANGE)
            }
            Self::Surface {
                point,
                temperature_c,
            } => {
                let [least, most] = SURFACE_RANGE;
                let (told, unit) = outside_on_scale([*temperature_c, least, most], "°C", scale);
                texts::surface_outside(*point, &told, unit)
            }
            Self::NotRising {
                point,
                temperature_c,
            } => texts::does_not_rise(*point, &format_refused(*temperature_c, scale)),
            Self::Bath { bath_c } => bath(*bath_c, BATH_RANGE[0], BATH_RANGE[1]),
            Self::BathOf {
                title,
                bath_c,
                range,
            } => {
                let outside = bath(*bath_c, range.least_c, range.most_c);
                texts::bath_of_outside(&title.words(scale), &outside, range.reason)
            }
            Self::OwnBath => texts::OWN_HAS_ITS_BATH.to_owned(),
            Self::LongTitle { length } => texts::long_name(*length, LONGEST_TITLE),
            Self::Band { factor } => texts::band_outside(*factor, BAND_RANGE),
            Self::Figure { figure, given } => {
                let [least, most] = FIGURE_RANGE;
                let (told, unit) = outside_on_scale([*given, least, most], figure.unit(), scale);
                own::figure_outside(figure.words(), &told, unit, "")
            }
        }
    }
}

impl fmt::Display for MediumError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

/// Longest part of an unknown name that an error repeats, characters.
const LONGEST_NAME_TOLD: usize = 40;

impl MediumError {
    /// There is no medium of this name.
    pub fn unknown(name: &str) -> Self {
        Self::Unknown {
            name: name.chars().take(LONGEST_NAME_TOLD).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{MediumChoice, OwnMedium, media};

    #[test]
    fn an_unknown_name_is_answered_in_a_line_with_names_of_the_list() {
        let answer = |name: &str| {
            let error = MediumChoice::Named(name.to_owned()).resolve();
            error.unwrap_err().to_string()
        };
        let text = answer("mystery");
        assert!(text.contains("“mystery”"));
        let (_, names) = text.split_once("such as ").unwrap();
        for name in names.split(", ") {
            assert!(media::medium(name).is_some(), "{name}");
        }
        assert!(answer(&"x".repeat(200)).len() < 150);
    }

    #[test]
    fn temperatures_of_a_refusal_follow_the_scale() {
        let told = |error: MediumError| {
            assert_eq!(error.to_string(), error.words(TemperatureScale::Celsius));
            [error.to_string(), error.words(TemperatureScale::Fahrenheit)]
        };
        let listed = |name: &str, bath_c| media::medium(name).unwrap().at_bath(bath_c).unwrap_err();
        assert_eq!(
            told(listed("water20", 90.0)),
            [
                "Water, 25\u{a0}°C: a bath of 90\u{a0}°C is outside 10 to 60\u{a0}°C: hotter, its film of vapour hardly breaks",
                "Water, 77\u{a0}°F: a bath of 194\u{a0}°F is outside 50 to 140\u{a0}°F: hotter, its film of vapour hardly breaks",
            ]
        );
        let own = |bath_c, points: &[[f64; 2]]| {
            let own = OwnMedium {
                h_w_m2k: points.to_vec(),
                bath_c,
                ..OwnMedium::default()
            };
            own.resolve().unwrap_err()
        };
        let [celsius, fahrenheit] = told(own(700.0, &[[70.0, 300.0], [265.0, 485.0]]));
        assert_eq!(
            celsius,
            "a bath of 700\u{a0}°C is outside \u{2212}200 to 600\u{a0}°C"
        );
        assert_eq!(
            fahrenheit,
            "a bath of 1292\u{a0}°F is outside \u{2212}328 to 1112\u{a0}°F"
        );
        let [celsius, fahrenheit] = told(own(50.0, &[[70.0, 300.0], [60.0, 485.0]]));
        assert_eq!(
            celsius,
            "point 2: 60\u{a0}°C does not rise above the point before it"
        );
        assert_eq!(
            fahrenheit,
            "point 2: 140\u{a0}°F does not rise above the point before it"
        );
        let [_, fahrenheit] = told(own(50.0, &[[70.0, 300.0], [1500.0, 485.0]]));
        assert_eq!(
            fahrenheit,
            "point 2: a surface of 2732\u{a0}°F is outside \u{2212}328 to 2552\u{a0}°F"
        );
        // What is no temperature stays.
        let [celsius, fahrenheit] = told(own(50.0, &[[70.0, 300.0], [265.0, 1e9]]));
        assert_eq!(celsius, fahrenheit);
    }
}
