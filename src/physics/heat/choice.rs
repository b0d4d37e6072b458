//! Which quenchant: one of the list, in its bath or another, or the user's own heat-transfer curve.

use super::heat_transfer::within;
use super::title::MediumTitle;
use super::{
    ClassFigures, Confidence, Family, Figure, HeatTransfer, Medium, MediumError, QuenchantFigures,
    media,
};
use recalesce_texts::heat::media as texts;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::fmt;

/// Allowed bath temperatures, °C.
pub(super) const BATH_RANGE: [f64; 2] = [-200.0, 600.0];
/// Longest name of a user's own medium, characters.
pub const LONGEST_TITLE: usize = 60;
/// Band of a user's own curve that tells none, and what may be told.
const BAND_OF_A_CLASS: f64 = 1.3;
pub(super) const BAND_RANGE: [f64; 2] = [1.0, 10.0];
/// Figures of a test as they are kept with a curve, in their units.
pub(super) const FIGURE_RANGE: [f64; 2] = [0.0, 10_000.0];

/// A quenchant as a route or a question names it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum MediumChoice {
    /// A medium of the list, by its name.
    Named(String),
    /// A medium of the list with its bath at another temperature.
    At(ListedAt),
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
                f.write_str(texts::NAME_OR_CURVE)
            }

            fn visit_str<E: Error>(self, name: &str) -> Result<MediumChoice, E> {
                Ok(MediumChoice::Named(name.to_owned()))
            }

            fn visit_map<A: MapAccess<'de>>(self, fields: A) -> Result<MediumChoice, A::Error> {
                Given::deserialize(MapAccessDeserializer::new(fields))?
                    .choice()
                    .map_err(A::Error::custom)
            }
        }

        deserializer.deserialize_any(Choice)
    }
}

/// The fields of both objects, read once.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Given {
    listed: Option<String>,
    h_w_m2k: Option<Vec<[f64; 2]>>,
    bath_c: f64,
    radiation: Option<bool>,
    title: Option<String>,
    h_band_factor: Option<f64>,
    #[serde(default)]
    figures: QuenchantFigures,
}

impl Given {
    fn choice(self) -> Result<MediumChoice, &'static str> {
        let of_a_curve = self.h_w_m2k.is_some()
            || self.radiation.is_some()
            || self.title.is_some()
            || self.h_band_factor.is_some()
            || !self.figures.is_empty();
        match (self.listed, self.h_w_m2k) {
            (Some(_), _) if of_a_curve => Err(texts::LISTED_WITH_MORE),
            (Some(listed), _) => Ok(MediumChoice::At(ListedAt {
                listed,
                bath_c: self.bath_c,
            })),
            (None, Some(h_w_m2k)) => Ok(MediumChoice::Own(OwnMedium {
                h_w_m2k,
                bath_c: self.bath_c,
                radiation: self.radiation.unwrap_or_default(),
                title: self.title,
                h_band_factor: self.h_band_factor,
                figures: self.figures,
            })),
            (None, None) => Err(texts::NO_CURVE),
        }
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

/// A quenchant of the list with its bath at another temperature than the listed one.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ListedAt {
    /// Its name in the list.
    pub listed: String,
    /// Temperature of the bath, °C; see [`Medium::bath_range`].
    pub bath_c: f64,
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
    /// it, nine times in ten; that of a class, 1.3, where it is not told.
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
            title: MediumTitle::plain(if title.is_empty() { texts::OWN } else { title }),
            family: Family::Own,
            h_w_m2k: HeatTransfer::new(&self.h_w_m2k)?,
            bath_c: self.bath_c,
            moves: false,
            usual_bath_c: None,
            radiation: self.radiation,
            h_band_factor: factor,
            confidence: Confidence::Given,
            class: ClassFigures::default(),
        })
    }
}

impl MediumChoice {
    /// The medium chosen.
    ///
    /// # Errors
    /// A name that is not in the list, a bath that the quenchant cannot have, or a curve of the
    /// user's own that is not usable.
    pub fn resolve(&self) -> Result<Medium, MediumError> {
        let listed = |name: &str| media::medium(name).ok_or_else(|| MediumError::unknown(name));
        match self {
            Self::Named(name) => listed(name).cloned(),
            Self::At(at) => listed(&at.listed)?.at_bath(at.bath_c),
            Self::Own(own) => own.resolve(),
        }
    }

    /// The name in the list; none for a quenchant of the user's own.
    #[must_use]
    pub fn listed(&self) -> Option<&str> {
        match self {
            Self::Named(name) => Some(name),
            Self::At(at) => Some(&at.listed),
            Self::Own(_) => None,
        }
    }

    /// The same quenchant with its bath at a temperature, °C: by its name alone where the list has
    /// it so. One of the user's own stays as it is.
    #[must_use]
    pub fn with_bath(&self, bath_c: f64) -> Self {
        let Some(name) = self.listed() else {
            return self.clone();
        };
        if media::medium(name).is_some_and(|listed| listed.bath_c == bath_c) {
            return Self::Named(name.to_owned());
        }
        Self::At(ListedAt {
            listed: name.to_owned(),
            bath_c,
        })
    }
}
