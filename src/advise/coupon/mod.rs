//! A test coupon: what its hardness tells of the quench that it had.
//!
//! A coupon of known steel, size and soak is quenched, cut and measured. Its hardness says how far
//! the place stayed on the right side of the nose, and nothing of the cooling below it. So one
//! number is asked of it, the factor on the heat transfer of a quenchant of the list whose shape
//! over the temperature of the surface is taken as given, and told.
//!
//! The factor is found where the computed hardness is the measured one. Its band is that of all
//! factors that explain the reading as well as chance allows (likelihood ratio, 95 %), with the
//! errors of the tester, of the hardness model and of the nose's time. Where a coupon is as hard
//! or as soft as it can get, the band is open on one side.

mod error;
mod likelihood;
mod model;
mod words;

pub use error::CouponError;
pub use words::CouponNote;

use crate::heat::{Medium, MediumError, OwnMedium, QuenchantFigures, Section, band_factor, medium};
use crate::route::Soak;
use crate::soak::StartingStructure;
use crate::steel::Composition;
use crate::units::NumberOutside;
use likelihood::Explained;
use model::{CentreAndSurface, Model};
use recalesce_texts::advise::coupon as texts;
use serde::{Deserialize, Serialize};

/// Usual error of a hardness tester, HRC either way, nine in ten (expert value).
pub const USUAL_TESTER_HRC: f64 = 1.0;
/// A factor that the coupon limits on one side only is taken this far inside the limit, and known
/// this well: between a still bath and a strongly stirred one lies a factor 2.2 (Grossmann's table).
const ONE_SIDED_BAND: f64 = 2.0;
/// A limit farther from the best factor than the one-sided band is wide limits nothing.
const FARTHEST: f64 = ONE_SIDED_BAND * ONE_SIDED_BAND;

/// A coupon with its quench and its readings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Coupon {
    /// Composition of the heat, wt %.
    pub composition: Composition,
    /// Structure before hardening.
    pub start: StartingStructure,
    /// A plate or a round.
    pub section: Section,
    /// The soak that it had.
    pub soak: Soak,
    /// Time in air between furnace and bath, s.
    pub air_delay_s: f64,
    /// Name in the list of the quenchant whose shape is taken.
    pub like: String,
    /// Temperature of the bath, °C.
    pub bath_c: f64,
    /// As quenched, at the centre of the cut, HRC.
    pub centre_hrc: Option<f64>,
    /// As quenched, at the surface, HRC.
    pub surface_hrc: Option<f64>,
    /// Error of the tester, HRC either way (nine in ten); see [`USUAL_TESTER_HRC`].
    pub tester_hrc: f64,
}

/// Factors on the heat transfer assumed that explain a coupon. A side without a limit is none.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct FactorRange {
    /// The least (95 %).
    pub least: Option<f64>,
    /// The one that gives the readings; none where a side is open.
    pub best: Option<f64>,
    /// The largest (95 %).
    pub most: Option<f64>,
}

/// A place of a coupon that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reading {
    /// The centre of the cut.
    Centre,
    /// The surface.
    Surface,
}

impl Reading {
    /// In the middle of a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Centre => texts::CENTRE,
            Self::Surface => texts::SURFACE,
        }
    }
}

/// A reading beside what the quenchant found makes of its place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ReadingFit {
    /// Where.
    pub place: Reading,
    /// As measured, HRC.
    pub given_hrc: f64,
    /// As computed with the quenchant found, HRC; below 20 as older tables carry the scale on.
    pub computed_hrc: f64,
    /// What this reading alone allows.
    pub alone: FactorRange,
}

/// The quenchant that explains a coupon.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CouponFit {
    /// The curve and its bath, with its band.
    pub medium: OwnMedium,
    /// Factors on the quenchant assumed that explain the coupon.
    pub factor: FactorRange,
    /// The factor that the curve has.
    pub taken: f64,
    /// Figures of the standard tests as computed with the curve, to lay beside others.
    pub figures: QuenchantFigures,
    /// The heat transfer lies between the curve divided by this factor and the curve times it.
    pub h_band_factor: f64,
    /// The same for another piece of this very steel, where the error of its nose drops out; none
    /// where a side is open.
    pub same_steel_band_factor: Option<f64>,
    /// Each reading beside the computed hardness.
    pub readings: Vec<ReadingFit>,
    /// What was assumed and what is left open.
    pub notes: Vec<CouponNote>,
}

/// Finds the factor on the heat transfer of a quenchant of the list that gives a coupon's hardness.
///
/// Plates and rounds as the heat model covers them; readings of 0 to 70 HRC, below 20 as older
/// tables carry the scale on; a tester good to 0.2 to 5 HRC; baths as the quenchant may have them;
/// up to two minutes in air. Factors from a tenth to ten are looked at.
///
/// # Errors
/// A number out of its range, no reading, readings that this steel cannot have after this soak, or
/// that every quench gives; a steel that the models do not cover.
pub fn fit_coupon(coupon: &Coupon) -> Result<CouponFit, CouponError> {
    coupon.check()?;
    let listed = medium(&coupon.like).ok_or_else(|| MediumError::unknown(&coupon.like))?;
    let like = listed.at_bath(coupon.bath_c)?;
    let model = Model::of(coupon, like.clone())?;
    let explained = Explained::of(&model, coupon)?;
    explained.check()?;
    let together = explained.together()?;
    let taken = together.factor.taken();
    let h_band_factor = together.factor.band_factor().unwrap_or(ONE_SIDED_BAND);
    let medium = OwnMedium {
        h_band_factor: Some(h_band_factor),
        ..scaled(&like, taken)
    };
    Ok(CouponFit {
        factor: together.factor,
        taken,
        figures: QuenchantFigures::of(&medium.resolve()?)?,
        medium,
        h_band_factor,
        same_steel_band_factor: together.same_steel.band_factor(),
        readings: together.readings(&model, taken)?,
        notes: together.notes(listed, taken, h_band_factor),
    })
}

impl Coupon {
    fn check(&self) -> Result<(), CouponError> {
        let check = NumberOutside::check;
        if !matches!(self.section, Section::Plate { .. } | Section::Round { .. }) {
            return Err(CouponError::Shape);
        }
        check(texts::TIME_IN_AIR, self.air_delay_s, (0.0, 120.0), "s")?;
        check(texts::BATH, self.bath_c, (-20.0, 250.0), "°C")?;
        check(texts::TESTER_ERROR, self.tester_hrc, (0.2, 5.0), "HRC")?;
        let given = self.given();
        for (field, value) in [
            (texts::CENTRE_HARDNESS, given.centre),
            (texts::SURFACE_HARDNESS, given.surface),
        ] {
            if let Some(value) = value {
                check(field, value, (0.0, 70.0), "HRC")?;
            }
        }
        if given.centre.is_none() && given.surface.is_none() {
            return Err(CouponError::NoReading);
        }
        Ok(())
    }

    const fn given(&self) -> CentreAndSurface<Option<f64>> {
        CentreAndSurface {
            centre: self.centre_hrc,
            surface: self.surface_hrc,
        }
    }
}

impl FactorRange {
    /// The factor that a curve is given: the best, or inside the one limit, and then that of the
    /// quenchant assumed where the limit lets it be.
    fn taken(&self) -> f64 {
        match *self {
            Self {
                best: Some(best), ..
            } => best,
            Self {
                least: Some(least), ..
            } => (least * ONE_SIDED_BAND).max(1.0),
            Self {
                most: Some(most), ..
            } => (most / ONE_SIDED_BAND).min(1.0),
            Self { .. } => 1.0,
        }
    }

    /// Band either way of a quenchant with the best factor, nine times in ten; none where a side is open.
    fn band_factor(&self) -> Option<f64> {
        let (least, best, most) = (self.least?, self.best?, self.most?);
        let sd = 0.5 * (most / best).max(best / least).ln();
        Some(band_factor(sd * sd))
    }
}

/// The curve of a quenchant times a factor.
fn scaled(like: &Medium, factor: f64) -> OwnMedium {
    let points = like.h_w_m2k.points();
    OwnMedium {
        h_w_m2k: points.map(|[c, h]| [c, h * factor]).collect(),
        bath_c: like.bath_c,
        radiation: like.radiation,
        ..OwnMedium::default()
    }
}
