//! What is wrong with the choice of a medium, and how it is told.

use super::choice::{BAND_RANGE, BATH_RANGE, FIGURE_RANGE};
use super::heat_transfer::{H_RANGE, MOST_POINTS, SURFACE_RANGE};
use super::{BathRange, Figure, LONGEST_TITLE};
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
        title: String,
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
    /// What is wrong. One text for all kinds: derived for each by itself, the page would be heavier.
    fn said(&self) -> String {
        match self {
            Self::Unknown { name } => texts::unknown(name),
            Self::Points { count } => texts::points_allowed(*count, MOST_POINTS),
            Self::HeatTransfer { point, h_w_m2k } => {
                texts::heat_transfer_outside(*point, *h_w_m2k, H_RANGE)
            }
            Self::Surface {
                point,
                temperature_c,
            } => texts::surface_outside(*point, *temperature_c, SURFACE_RANGE),
            Self::NotRising {
                point,
                temperature_c,
            } => texts::does_not_rise(*point, *temperature_c),
            Self::Bath { bath_c } => texts::bath_outside(*bath_c, BATH_RANGE),
            Self::BathOf {
                title,
                bath_c,
                range,
            } => {
                texts::bath_of_outside(title, *bath_c, [range.least_c, range.most_c], range.reason)
            }
            Self::OwnBath => texts::OWN_HAS_ITS_BATH.to_owned(),
            Self::LongTitle { length } => texts::long_name(*length, LONGEST_TITLE),
            Self::Band { factor } => texts::band_outside(*factor, BAND_RANGE),
            Self::Figure { figure, given } => {
                own::figure_outside(figure.words(), *given, FIGURE_RANGE, figure.unit(), "")
            }
        }
    }
}

impl fmt::Display for MediumError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said())
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
    use crate::heat::{MediumChoice, media};

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
}
