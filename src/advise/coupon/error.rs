//! Why a coupon tells nothing of its quench.

use crate::heat::{HeatError, MediumError};
use crate::soak::SoakError;
use crate::steel::OutOfRange;

/// Why a coupon gives no quenchant.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CouponError {
    /// A number is not a number or out of range.
    #[error("{field}: {value} is outside {least} to {most} {unit}")]
    Number {
        /// What the number is.
        field: &'static str,
        /// The number given.
        value: f64,
        /// The smallest allowed.
        least: f64,
        /// The largest allowed.
        most: f64,
        /// Unit of all three.
        unit: &'static str,
    },
    /// Neither centre nor surface was measured.
    #[error("no hardness is given; measure the centre of the cut coupon, its surface, or both")]
    NoReading,
    /// A coupon is a plate or a round.
    #[error("a coupon is a plate or a round bar")]
    Shape,
    /// Harder than this steel comes out of any quench.
    #[error(
        "{given_hrc:.1} HRC at the {place} is harder than this steel gets after this soak: at \
         most {most_hrc:.1} HRC"
    )]
    TooHard {
        /// Where, in words.
        place: &'static str,
        /// As measured, HRC.
        given_hrc: f64,
        /// The hardest that the reading may be and still be explained, HRC.
        most_hrc: f64,
    },
    /// Softer than this steel comes out of a quench ten times slower than the one assumed.
    #[error(
        "{given_hrc:.1} HRC at the {place} is softer than this steel gets in a quench ten times \
         slower: at least {least_hrc:.1} HRC"
    )]
    TooSoft {
        /// Where, in words.
        place: &'static str,
        /// As measured, HRC.
        given_hrc: f64,
        /// The softest that the reading may be and still be explained, HRC.
        least_hrc: f64,
    },
    /// The hardness fits every quench.
    #[error(
        "this coupon tells nothing of the quench: it comes out at {least_hrc:.0} to {most_hrc:.0} \
         HRC in every one from ten times slower to ten times faster; a steel that hardens less \
         deep, or another size, tells more"
    )]
    TellsNothing {
        /// Softest that a reading comes out, HRC.
        least_hrc: f64,
        /// Hardest, HRC.
        most_hrc: f64,
    },
    /// One place asks for a slower quench, the other for a faster one, and neither says by how much.
    #[error(
        "centre and surface are at odds: one is as soft, the other as hard as this coupon gets; a \
         surface that has lost carbon reads soft, so does a cut that grew warm"
    )]
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
