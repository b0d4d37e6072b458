//! A quench to be computed, the ranges of its numbers, and what is wrong with one outside of them.

use super::{LaterBath, Leave, Medium, Section, SectionError};
use crate::units::{NumberOutside, TemperatureScale, format_refused};
use recalesce_texts::heat::quench as texts;
use std::fmt;

/// A piece that goes on to cool in air leaves the bath when it is so near to it, K.
pub(super) const LEAVES_BATH_K: f64 = 5.0;
/// Longest time in one medium, s.
pub(super) const LONGEST_S: f64 = 400_000.0;

/// Factors on the heat transfer of a still bath that the heat model covers.
pub const AGITATION: (f64, f64) = (0.05, 20.0);

/// A quench to be computed.
#[derive(Debug, Clone)]
pub struct Quenching<'a> {
    /// Shape and size.
    pub section: Section,
    /// The bath.
    pub medium: &'a Medium,
    /// Factor on the heat transfer of the still bath, 0.05 to 20.
    pub agitation: f64,
    /// Temperature of the piece when it leaves the furnace, °C, 100 to 1300, and above the bath.
    pub start_c: f64,
    /// Time in still air between furnace and bath, s, 0 to 3600.
    pub air_delay_s: f64,
    /// Temperature to which the whole piece is to cool, °C, -200 to 600, and below the start.
    pub end_c: f64,
    /// Baths after the first, in order.
    pub then: &'a [LaterBath],
    /// Ms of the austenite, °C, when the properties and the latent heat of martensite are to
    /// count below it; without it the piece has the properties of austenite throughout.
    pub martensite_start_c: Option<f64>,
}

/// What is wrong with a quench.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum HeatError {
    /// The section.
    Section(#[from] SectionError),
    /// A number is not a number or out of range.
    Number(NumberOutside),
    /// The bath is no colder than the piece.
    BathTooHot {
        /// Temperature of the bath, °C.
        bath_c: f64,
        /// Temperature of the piece, °C.
        start_c: f64,
    },
    /// The result is not finite; the input lies where the model does not hold.
    NotFinite,
}

impl HeatError {
    /// What is wrong, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match self {
            Self::Section(error) => error.to_string(),
            Self::Number(number) => {
                let (told, unit) = number.on_scale(scale);
                texts::number_outside(number.field, &told, unit)
            }
            Self::BathTooHot { bath_c, start_c } => {
                let [bath, piece] = [*bath_c, *start_c].map(|c| format_refused(c, scale));
                texts::bath_too_hot(&bath, &piece)
            }
            Self::NotFinite => texts::NOT_FINITE.to_owned(),
        }
    }
}

impl From<NumberOutside> for HeatError {
    fn from(number: NumberOutside) -> Self {
        Self::Number(number)
    }
}

impl fmt::Display for HeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

impl Quenching<'_> {
    pub(super) fn validate(&self) -> Result<(), HeatError> {
        self.section.validate()?;
        let check = NumberOutside::check;
        let still = texts::TIMES_THE_STILL_BATH;
        check(texts::AGITATION, self.agitation, AGITATION, still)?;
        check(texts::QUENCH_FROM, self.start_c, (100.0, 1300.0), "°C")?;
        check(texts::TIME_IN_AIR, self.air_delay_s, (0.0, 3600.0), "s")?;
        for later in self.then {
            check(texts::AGITATION, later.agitation, AGITATION, still)?;
            match later.leave {
                Leave::AfterS(stay_s) => check(texts::TIME_IN_BATH, stay_s, (0.0, LONGEST_S), "s")?,
                Leave::AtC(leave_c) => {
                    check(texts::OUT_OF_BATH_AT, leave_c, (-200.0, 1300.0), "°C")?;
                }
            }
        }
        let hottest_end_c = 600.0_f64.min(self.start_c - LEAVES_BATH_K);
        let end_c = (-200.0, hottest_end_c);
        check(texts::END_OF_QUENCH, self.end_c, end_c, "°C")?;
        if let Some(start_c) = self.martensite_start_c {
            check(texts::MARTENSITE_START, start_c, (-200.0, 700.0), "°C")?;
        }
        if self.medium.bath_c + LEAVES_BATH_K >= self.start_c {
            return Err(HeatError::BathTooHot {
                bath_c: self.medium.bath_c,
                start_c: self.start_c,
            });
        }
        Ok(())
    }
}
