//! Why a coupon tells nothing of its quench.

use crate::advise::error::number_outside;
use crate::heat::{HeatError, MediumError};
use crate::route::RouteError;
use crate::soak::SoakError;
use crate::steel::OutOfRange;
use crate::units::{NumberOutside, TemperatureScale};
use recalesce_texts::advise::coupon as texts;

/// Why a coupon gives no quenchant.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CouponError {
    /// A number is not a number or out of range.
    #[error("{}", number_outside(_0, TemperatureScale::Celsius))]
    Number(NumberOutside),
    /// Neither centre nor surface was measured.
    #[error("{}", texts::NO_READING)]
    NoReading,
    /// A coupon is a plate or a round.
    #[error("{}", texts::NO_COUPON_SHAPE)]
    Shape,
    /// Harder than this steel comes out of any quench.
    #[error("{}", texts::too_hard(*given_hrc, place, *most_hrc))]
    TooHard {
        /// Where, in words.
        place: &'static str,
        /// As measured, HRC.
        given_hrc: f64,
        /// The hardest that the reading may be and still be explained, HRC.
        most_hrc: f64,
    },
    /// Softer than this steel comes out of a quench ten times slower than the one assumed.
    #[error("{}", texts::too_soft(*given_hrc, place, *least_hrc))]
    TooSoft {
        /// Where, in words.
        place: &'static str,
        /// As measured, HRC.
        given_hrc: f64,
        /// The softest that the reading may be and still be explained, HRC.
        least_hrc: f64,
    },
    /// The hardness fits every quench.
    #[error("{}", texts::tells_nothing(*least_hrc, *most_hrc))]
    TellsNothing {
        /// Softest that a reading comes out, HRC.
        least_hrc: f64,
        /// Hardest, HRC.
        most_hrc: f64,
    },
    /// One place asks for a slower quench, the other for a faster one, and neither says by how much.
    #[error("{}", texts::NOTHING_FITS_BOTH)]
    AtOdds,
    /// The quenchant whose shape is assumed.
    #[error(transparent)]
    Medium(#[from] MediumError),
    /// The soak.
    #[error(transparent)]
    Soak(#[from] SoakError),
    /// A model does not cover the steel.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// The cooling.
    #[error(transparent)]
    Heat(#[from] HeatError),
}

impl From<NumberOutside> for CouponError {
    fn from(number: NumberOutside) -> Self {
        Self::Number(number)
    }
}

impl CouponError {
    /// What is wrong, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match self {
            Self::Number(number) => number_outside(number, scale),
            Self::Medium(error) => error.words(scale),
            Self::Soak(error) => RouteError::from(error.clone()).words(scale),
            Self::OutOfRange(refusal) => refusal.words(scale),
            Self::Heat(error) => error.words(scale),
            other => other.to_string(),
        }
    }
}
