//! The hardness of a coupon in a quench of which only the speed is open.

use super::{Coupon, CouponError, Reading};
use crate::heat::{Cooled, Medium, Place, Quenching, Section, cool_turning};
use crate::route::Hardening;
use crate::soak::Stock;

/// Temperature to which a coupon cools before it is measured, °C.
const MEASURED_C: f64 = 20.0;

/// One thing for each place.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct CentreAndSurface<T> {
    pub(super) centre: T,
    pub(super) surface: T,
}

impl<T: Copy> CentreAndSurface<T> {
    pub(super) const fn at(&self, place: Reading) -> T {
        match place {
            Reading::Centre => self.centre,
            Reading::Surface => self.surface,
        }
    }
}

/// A coupon out of the furnace, before its quench.
pub(super) struct Model {
    medium: Medium,
    section: Section,
    start_c: f64,
    air_delay_s: f64,
    hardening: Hardening,
}

impl Model {
    /// Soaks a coupon for a quench in a medium.
    pub(super) fn of(coupon: &Coupon, medium: Medium) -> Result<Self, CouponError> {
        let stock = Stock::new(&coupon.composition, coupon.start)?;
        let soaked = stock
            .at(coupon.soak.temperature_c)?
            .end(60.0 * coupon.soak.time_min)?;
        Ok(Self {
            medium,
            section: coupon.section,
            start_c: coupon.soak.temperature_c,
            air_delay_s: coupon.air_delay_s,
            hardening: Hardening::of(&soaked.point, &soaked.dissolved, MEASURED_C)?,
        })
    }

    /// Cools it with the heat transfer times a factor.
    fn cooled(&self, ln_factor: f64) -> Result<Cooled, CouponError> {
        let quenching = Quenching {
            section: self.section,
            medium: &self.medium,
            agitation: ln_factor.exp(),
            start_c: self.start_c,
            air_delay_s: self.air_delay_s,
            end_c: MEASURED_C,
            then: &[],
            martensite_start_c: None,
        };
        Ok(cool_turning(&quenching, &mut self.hardening.turning())?)
    }

    /// Hardness, HRC, for each of several factors on the times of the nose.
    pub(super) fn with_noses<const N: usize>(
        &self,
        ln_factor: f64,
        nose_factors: &[f64; N],
    ) -> Result<CentreAndSurface<[f64; N]>, CouponError> {
        let cooled = self.cooled(ln_factor)?;
        let mut found = CentreAndSurface {
            centre: [0.0; N],
            surface: [0.0; N],
        };
        for (place, hrc) in [
            (Place::Centre, &mut found.centre),
            (Place::Surface, &mut found.surface),
        ] {
            let Some(curve) = cooled.at(place) else {
                return Err(CouponError::Shape);
            };
            for (hrc, nose_factor) in hrc.iter_mut().zip(nose_factors) {
                // Noses that come later are a cooling that is quicker by as much.
                let mut curve = curve.clone();
                for time_s in &mut curve.time_s {
                    *time_s /= nose_factor;
                }
                *hrc = self.hardening.quench(&curve)?.hardness.hrc_carried();
            }
        }
        Ok(found)
    }

    /// Hardness, HRC, with the noses where the model has them.
    pub(super) fn at(&self, ln_factor: f64) -> Result<CentreAndSurface<f64>, CouponError> {
        let CentreAndSurface {
            centre: [centre],
            surface: [surface],
        } = self.with_noses(ln_factor, &[1.0])?;
        Ok(CentreAndSurface { centre, surface })
    }
}
