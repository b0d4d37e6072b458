//! Which quenchant: one of the list, or the user's own heat-transfer curve.

use super::medium::within;
use super::title::MediumTitle;
use super::{
    ClassFigures, Confidence, Family, Figure, HeatTransfer, Medium, MediumError, QuenchantFigures,
    media,
};
use serde::de::value::MapAccessDeserializer;
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::fmt;

/// Allowed bath temperatures, °C.
const BATH_RANGE: [f64; 2] = [-200.0, 600.0];
/// Longest name of a user's own medium, characters.
pub const LONGEST_TITLE: usize = 60;
/// What it is called where the user has not named it.
const UNNAMED: &str = "Your own quenchant";
/// Band of a user's own curve that tells none, and what may be told.
const BAND_OF_A_CLASS: f64 = 1.3;
const BAND_RANGE: [f64; 2] = [1.0, 10.0];
/// Figures of a test as they are kept with a curve, in their units.
const FIGURE_RANGE: [f64; 2] = [0.0, 10_000.0];

/// A quenchant as a route or a question names it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum MediumChoice {
    /// A medium of the list, by its name.
    Named(String),
    /// The user's own curve.
    Own(OwnMedium),
}

/// By what stands there, a text or an object; so the error is told of a curve that has one, which
/// serde's own way of trying one after the other loses.
impl<'de> Deserialize<'de> for MediumChoice {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Choice;

        impl<'de> Visitor<'de> for Choice {
            type Value = MediumChoice;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("the name of a quenchant or a curve")
            }

            fn visit_str<E: Error>(self, name: &str) -> Result<MediumChoice, E> {
                Ok(MediumChoice::Named(name.to_owned()))
            }

            fn visit_map<A: MapAccess<'de>>(self, curve: A) -> Result<MediumChoice, A::Error> {
                OwnMedium::deserialize(MapAccessDeserializer::new(curve)).map(MediumChoice::Own)
            }
        }

        deserializer.deserialize_any(Choice)
    }
}

/// When a piece is taken out of a bath.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Leave {
    /// After a time in it, s.
    AfterS(f64),
    /// As soon as no place of the piece is hotter than this, °C.
    AtC(f64),
}

/// A bath that follows another.
#[derive(Debug, Clone, PartialEq)]
pub struct LaterBath {
    /// When the bath before is left.
    pub leave: Leave,
    /// This bath.
    pub medium: super::Medium,
    /// Factor on its still heat transfer, 0.05 to 20.
    pub agitation: f64,
}

/// A heat-transfer curve of the user's own.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnMedium {
    /// Pairs of surface temperature, °C, and heat-transfer coefficient, W/m²K, by rising
    /// temperature; the logarithm of the coefficient is linear between them.
    pub h_w_m2k: Vec<[f64; 2]>,
    /// Temperature of the bath, °C.
    pub bath_c: f64,
    /// Whether the surface also radiates to surroundings at bath temperature.
    #[serde(default)]
    pub radiation: bool,
    /// The user's name for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub title: Option<String>,
    /// The true heat transfer lies between the curve divided by this factor and the curve times
    /// it; that of a class, 1.3, where it is not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub h_band_factor: Option<f64>,
    /// The figures that it was found from, or that were read off the measured curve.
    #[serde(default, skip_serializing_if = "QuenchantFigures::is_empty")]
    pub figures: QuenchantFigures,
}

impl OwnMedium {
    /// Checks the curve and makes a medium of it.
    ///
    /// # Errors
    /// As [`HeatTransfer::new`], a bath outside -200 to 600 °C, a band outside 1 to 10, a name or a
    /// figure that makes no sense.
    pub fn resolve(&self) -> Result<Medium, MediumError> {
        if !within(self.bath_c, BATH_RANGE) {
            return Err(MediumError::Bath {
                bath_c: self.bath_c,
            });
        }
        let title = self.title.as_deref().unwrap_or_default().trim();
        let length = title.chars().count();
        if length > LONGEST_TITLE {
            return Err(MediumError::LongTitle { length });
        }
        let factor = self.h_band_factor.unwrap_or(BAND_OF_A_CLASS);
        if !within(factor, BAND_RANGE) {
            return Err(MediumError::Band { factor });
        }
        let absurd = |(_, given): &(Figure, f64)| !within(*given, FIGURE_RANGE);
        if let Some((figure, given)) = self.figures.known().find(absurd) {
            return Err(MediumError::Figure { figure, given });
        }
        Ok(Medium {
            name: "own".to_owned(),
            title: MediumTitle::plain(if title.is_empty() { UNNAMED } else { title }),
            family: Family::Own,
            h_w_m2k: HeatTransfer::new(&self.h_w_m2k)?,
            bath_c: self.bath_c,
            usual_bath_c: None,
            radiation: self.radiation,
            h_band_factor: factor,
            confidence: Confidence::Given,
            grossmann_h: String::new(),
            class: ClassFigures::default(),
            note: String::new(),
        })
    }
}

impl MediumChoice {
    /// The medium chosen.
    ///
    /// # Errors
    /// A name that is not in the list, or a curve of the user's own that is not usable.
    pub fn resolve(&self) -> Result<Medium, MediumError> {
        match self {
            Self::Named(name) => media::medium(name)
                .cloned()
                .ok_or_else(|| MediumError::unknown(name)),
            Self::Own(own) => own.resolve(),
        }
    }
}
