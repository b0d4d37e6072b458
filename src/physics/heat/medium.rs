//! One quench medium: its bath, how well its heat transfer is known, and the heat that it takes.

use super::hazard::Hazard;
use super::title::MediumTitle;
use super::{Family, HeatTransfer};
use crate::units::{TemperatureScale, format_fixed, format_temperature};
use recalesce_texts::heat::media as texts;

/// Stefan-Boltzmann constant, W/m²K⁴.
const STEFAN_BOLTZMANN: f64 = 5.670374419e-8;
/// Emissivity of scaled steel (0.6 to 0.8 read in tables for oxidised steel; 0.8 customary).
pub const EMISSIVITY: f64 = 0.8;
const ZERO_C_IN_K: f64 = 273.15;
/// Fall of the logarithm of the heat transfer with the temperature of the surface, 1/K, above which wetting is
/// taken to run as a front: water of 40 °C falls by 0.009 and of 60 °C by 0.016, oils by 0.005.
const FRONT_PER_K: f64 = 0.007;
/// Heat transfer above which a quenchant of the user's own is harsh where martensite forms, W/m²K, and the
/// temperature of the surface, °C: water and brine of the list have 9000 and more there, all else below 2000.
const HARSH_W_M2K: f64 = 4000.0;
const HARSH_AT_C: f64 = 200.0;

/// How well the curve of a medium is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Confidence {
    /// Fitted to class figures that agree with each other.
    Medium,
    /// Fitted to few or doubtful figures.
    Low,
    /// An estimate of the level only.
    Estimate,
    /// Given by the user.
    Given,
}

impl Confidence {
    /// The confidence with this name in the list of media.
    pub(super) fn named(name: &str) -> Option<Self> {
        Some(match name {
            "medium" => Self::Medium,
            "low" => Self::Low,
            "estimate" => Self::Estimate,
            _ => return None,
        })
    }
}

/// Usual figures of the class that a medium belongs to, as least and largest.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ClassFigures {
    /// Nickel-ball time, s.
    pub nickel_ball_s: Option<[f64; 2]>,
    /// Highest cooling rate of the 12.5 mm probe, K/s.
    pub max_rate_k_per_s: Option<[f64; 2]>,
    /// Temperature of the probe at its highest rate, °C.
    pub max_rate_at_c: Option<[f64; 2]>,
    /// Cooling rate of the probe at 300 °C, K/s.
    pub rate_at_300c_k_per_s: Option<[f64; 2]>,
}

/// A quench medium.
#[derive(Debug, Clone, PartialEq)]
pub struct Medium {
    /// Name in files and questions.
    pub name: String,
    /// Name on the page.
    pub title: MediumTitle,
    /// What it is made of.
    pub family: Family,
    /// Whether its curve is of a bath that is stirred, or a gas that is blown.
    pub moves: bool,
    /// Heat transfer in the still bath.
    pub h_w_m2k: HeatTransfer,
    /// Temperature of the bath, °C.
    pub bath_c: f64,
    /// Usual range of the bath temperature, °C.
    pub usual_bath_c: Option<[f64; 2]>,
    /// Whether radiation to surroundings at bath temperature comes on top of the curve. The
    /// curves of air and gas in the list have it in them already.
    pub radiation: bool,
    /// The true heat transfer lies between the curve divided by this factor and the curve times
    /// it, nine times in ten. 1.3 for oils of a class; more where the curve is less well known (own judgement).
    pub h_band_factor: f64,
    /// How well the curve is known.
    pub confidence: Confidence,
    /// Usual figures of its class.
    pub class: ClassFigures,
}

impl Medium {
    /// The chamber of a furnace at one temperature, °C: its walls radiate, its air moves by itself
    /// with a coefficient in W/m²K.
    pub(super) fn furnace(chamber_c: f64, air_w_m2k: f64) -> Self {
        Self {
            name: "furnace".to_owned(),
            title: MediumTitle::new(texts::FURNACE, chamber_c),
            family: Family::Air,
            moves: false,
            h_w_m2k: HeatTransfer::constant(air_w_m2k),
            bath_c: chamber_c,
            usual_bath_c: None,
            radiation: true,
            h_band_factor: 1.4,
            confidence: Confidence::Estimate,
            class: ClassFigures::default(),
        }
    }

    /// Whether its film of vapour may collapse so suddenly that wetting runs over a piece as a front: water of
    /// all temperatures, and curves that fall as steeply as those of warm water do.
    pub(super) fn wets_in_a_front(&self) -> bool {
        self.family == Family::Water || self.h_w_m2k.steepest_fall_per_k() > FRONT_PER_K
    }

    /// Whether it cools hard where martensite forms: water and brine, and a quenchant of the user's own
    /// that takes up heat there as they do.
    #[must_use]
    pub fn is_harsh(&self) -> bool {
        match self.family {
            Family::Water | Family::Brine => true,
            Family::Own => self.h_w_m2k.at(HARSH_AT_C) > HARSH_W_M2K,
            _ => false,
        }
    }

    /// The usual cautions.
    #[must_use]
    pub fn cautions(&self) -> &'static [Hazard] {
        self.family.cautions(self.bath_c)
    }

    /// The bath and the class figures in one line: `50 °C, nickel ball 11 to 14 s`.
    #[must_use]
    pub fn describe(&self, scale: TemperatureScale) -> String {
        let bath = format_temperature(self.bath_c, scale);
        let class = &self.class;
        match (class.nickel_ball_s, class.max_rate_k_per_s) {
            (Some([from, to]), _) => texts::with_nickel_ball(&bath, from, to),
            (None, Some(range)) => {
                let [from, to] = range.map(|k| format_fixed(scale.of_kelvin_difference(k), 0));
                texts::with_highest_rate(&bath, &from, &to, scale.rate_unit())
            }
            (None, None) => bath,
        }
    }

    /// Heat flux out of the surface and its derivative with the temperature of the surface, W/m²
    /// and W/m²K, with the heat transfer of the still bath times `agitation`.
    #[inline(always)]
    pub(super) fn flux(&self, surface_c: f64, agitation: f64) -> (f64, f64) {
        let (h, slope) = self.h_w_m2k.with_slope(surface_c);
        let excess = surface_c - self.bath_c;
        let mut flux = agitation * h * excess;
        let mut derivative = agitation * (h + slope * excess);
        if self.radiation {
            let surface = surface_c + ZERO_C_IN_K;
            let bath = self.bath_c + ZERO_C_IN_K;
            let cube = surface * surface * surface;
            flux += EMISSIVITY * STEFAN_BOLTZMANN * (cube * surface - bath * bath * bath * bath);
            derivative += 4.0 * EMISSIVITY * STEFAN_BOLTZMANN * cube;
        }
        (flux, derivative)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{MediumError, OwnMedium};

    fn own(points: &[[f64; 2]], bath_c: f64) -> Result<Medium, MediumError> {
        OwnMedium {
            h_w_m2k: points.to_vec(),
            bath_c,
            ..OwnMedium::default()
        }
        .resolve()
    }

    #[test]
    fn the_derivative_is_that_of_the_flux() {
        let mut medium = own(&[[100.0, 200.0], [300.0, 4000.0], [700.0, 900.0]], 40.0).unwrap();
        medium.radiation = true;
        for t in [60.0, 150.0, 299.0, 450.0, 800.0] {
            let step = 1e-4;
            let numeric =
                (medium.flux(t + step, 1.4).0 - medium.flux(t - step, 1.4).0) / (2.0 * step);
            approx::assert_relative_eq!(medium.flux(t, 1.4).1, numeric, max_relative = 1e-6);
        }
    }

    /// What it is made of is not known, so it goes by its curve; what it may be goes by its bath.
    #[test]
    fn an_own_quenchant_is_as_harsh_as_its_curve_and_is_warned_of_as_what_it_may_be() {
        for listed in crate::heat::media() {
            let curve: Vec<[f64; 2]> = listed.h_w_m2k.points().collect();
            let alike = own(&curve, listed.bath_c).unwrap();
            assert_eq!(alike.is_harsh(), listed.is_harsh(), "{}", listed.name);
        }
        let told = |bath_c: f64| {
            let own = own(&[[20.0, 300.0], [90.0, 9.0]], bath_c).unwrap();
            own.cautions()
                .iter()
                .map(ToString::to_string)
                .collect::<Vec<_>>()
                .join(" ")
        };
        let [cold, hot] = [40.0, 180.0].map(told);
        for told in [&cold, &hot] {
            assert!(
                told.contains("made of is not known") && told.contains("If it is oil"),
                "{told}"
            );
        }
        assert!(
            cold.contains("water, brine") && !cold.contains("salt"),
            "{cold}"
        );
        assert!(
            hot.contains("molten salt") && hot.contains("made for hot baths"),
            "{hot}"
        );
        assert!(!hot.contains("brine"), "{hot}");
    }

    #[test]
    fn unusable_curves_are_refused_with_the_point() {
        let refused = |points: &[[f64; 2]]| own(points, 40.0).unwrap_err().to_string();
        assert!(refused(&[[20.0, 300.0]]).contains("curve: 1; 2 to"));
        assert!(
            refused(&[[20.0, 300.0], [20.0, 400.0]]).contains("point 2: 20\u{a0}°C does not rise")
        );
        assert!(refused(&[[20.0, 300.0], [90.0, 0.0]]).contains("point 2: 0\u{a0}W/m²K"));
        assert!(refused(&[[20.0, 300.0], [90.0, f64::NAN]]).contains("NaN"));
        assert!(refused(&[[f64::INFINITY, 300.0], [90.0, 9.0]]).contains("point 1: a surface"));
        assert!(own(&[[20.0, 300.0], [90.0, 9.0]], 700.0).is_err());
    }
}
