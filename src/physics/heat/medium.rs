//! One quench medium: heat transfer against the temperature of the surface, bath, band.

use super::choice::{BAND_RANGE, BATH_RANGE, FIGURE_RANGE};
use super::hazard::Hazard;
use super::title::MediumTitle;
use super::{BathRange, Family, Figure, LONGEST_TITLE};
use crate::units::{TemperatureScale, format_temperature};
use recalesce_texts::heat::{media as texts, own};
use std::fmt;

/// Stefan-Boltzmann constant, W/m²K⁴.
const STEFAN_BOLTZMANN: f64 = 5.670374419e-8;
/// Emissivity of scaled steel (0.6 to 0.8 read in tables for oxidised steel; 0.8 customary).
pub const EMISSIVITY: f64 = 0.8;
const ZERO_C_IN_K: f64 = 273.15;

/// Allowed heat-transfer coefficients, W/m²K.
const H_RANGE: [f64; 2] = [1.0, 200_000.0];
/// Allowed surface temperatures of a curve, °C.
const SURFACE_RANGE: [f64; 2] = [-200.0, 1400.0];
/// Most points of a curve.
const MOST_POINTS: usize = 500;

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

/// Heat-transfer coefficient against the temperature of the surface: its logarithm is linear
/// between the points and constant beyond them.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatTransfer {
    /// By rising temperature; the last has slope zero.
    knots: Vec<Knot>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Knot {
    temperature_c: f64,
    ln_h: f64,
    /// Slope of the logarithm towards the next knot, 1/K.
    slope: f64,
}

impl HeatTransfer {
    /// A curve through points of surface temperature, °C, and coefficient, W/m²K.
    ///
    /// # Errors
    /// Fewer than 2 or more than 500 points, temperatures that do not rise or lie outside -200 to
    /// 1400 °C, coefficients outside 1 to 200000 W/m²K.
    pub fn new(points: &[[f64; 2]]) -> Result<Self, MediumError> {
        if !(2..=MOST_POINTS).contains(&points.len()) {
            return Err(MediumError::Points {
                count: points.len(),
            });
        }
        let mut knots: Vec<Knot> = Vec::with_capacity(points.len());
        for (i, &[temperature_c, h_w_m2k]) in points.iter().enumerate() {
            let point = i + 1;
            if !within(temperature_c, SURFACE_RANGE) {
                return Err(MediumError::Surface {
                    point,
                    temperature_c,
                });
            }
            if !within(h_w_m2k, H_RANGE) {
                return Err(MediumError::HeatTransfer { point, h_w_m2k });
            }
            let ln_h = h_w_m2k.ln();
            if let Some(before) = knots.last_mut() {
                let width = temperature_c - before.temperature_c;
                // A step closer than this would make the slope meaningless.
                if width < 1e-3 {
                    return Err(MediumError::NotRising {
                        point,
                        temperature_c,
                    });
                }
                before.slope = (ln_h - before.ln_h) / width;
            }
            knots.push(Knot {
                temperature_c,
                ln_h,
                slope: 0.0,
            });
        }
        Ok(Self { knots })
    }

    /// The same coefficient at every temperature, W/m²K.
    fn constant(h_w_m2k: f64) -> Self {
        Self {
            knots: vec![Knot {
                temperature_c: 0.0,
                ln_h: h_w_m2k.ln(),
                slope: 0.0,
            }],
        }
    }

    /// The curve times a factor.
    pub(super) fn times(&self, factor: f64) -> Self {
        let mut knots = self.knots.clone();
        for knot in &mut knots {
            knot.ln_h += factor.ln();
        }
        Self { knots }
    }

    /// The curve between this one and another, a share of the way by logarithms.
    pub(super) fn between(&self, other: &Self, share: f64) -> Self {
        let mut at_c: Vec<f64> = [self, other]
            .iter()
            .flat_map(|curve| curve.knots.iter().map(|knot| knot.temperature_c))
            .collect();
        at_c.sort_by(f64::total_cmp);
        at_c.dedup();
        let mut knots: Vec<Knot> = Vec::with_capacity(at_c.len());
        for temperature_c in at_c {
            let [here, there] = [self, other].map(|curve| curve.at(temperature_c).ln());
            let ln_h = (1.0 - share) * here + share * there;
            if let Some(before) = knots.last_mut() {
                before.slope = (ln_h - before.ln_h) / (temperature_c - before.temperature_c);
            }
            knots.push(Knot {
                temperature_c,
                ln_h,
                slope: 0.0,
            });
        }
        Self { knots }
    }

    /// Coefficient at a temperature of the surface, W/m²K.
    #[must_use]
    pub fn at(&self, surface_c: f64) -> f64 {
        self.with_slope(surface_c).0
    }

    /// The points of the curve: surface temperature, °C, and coefficient, W/m²K.
    pub fn points(&self) -> impl Iterator<Item = [f64; 2]> + '_ {
        self.knots.iter().map(|k| [k.temperature_c, k.ln_h.exp()])
    }

    /// Coefficient and its derivative, W/m²K and W/m²K².
    #[inline(always)]
    pub(super) fn with_slope(&self, surface_c: f64) -> (f64, f64) {
        let mut last: Option<&Knot> = None;
        for knot in &self.knots {
            if knot.temperature_c > surface_c {
                break;
            }
            last = Some(knot);
        }
        match (last, self.knots.first()) {
            (Some(knot), _) => {
                let h = (knot.ln_h + knot.slope * (surface_c - knot.temperature_c)).exp();
                (h, h * knot.slope)
            }
            (None, Some(first)) => (first.ln_h.exp(), 0.0),
            (None, None) => (0.0, 0.0),
        }
    }
}

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
    /// it. 1.3 for oils of a class; more where the curve is less well known (own judgement).
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

    /// The usual cautions.
    #[must_use]
    pub fn cautions(&self) -> &'static [Hazard] {
        self.family.cautions()
    }

    /// The bath and the class figures in one line: `50 °C, nickel ball 11 to 14 s`.
    #[must_use]
    pub fn describe(&self, scale: TemperatureScale) -> String {
        let bath = format_temperature(self.bath_c, scale);
        let class = &self.class;
        match (class.nickel_ball_s, class.max_rate_k_per_s) {
            (Some([from, to]), _) => texts::with_nickel_ball(&bath, from, to),
            (None, Some([from, to])) => texts::with_highest_rate(&bath, from, to),
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

pub(super) fn within(value: f64, [least, most]: [f64; 2]) -> bool {
    (least..=most).contains(&value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{MediumChoice, OwnMedium, media};

    fn own(points: &[[f64; 2]], bath_c: f64) -> Result<Medium, MediumError> {
        OwnMedium {
            h_w_m2k: points.to_vec(),
            bath_c,
            ..OwnMedium::default()
        }
        .resolve()
    }

    #[test]
    fn the_logarithm_is_linear_between_points_and_constant_beyond() {
        let curve = HeatTransfer::new(&[[100.0, 200.0], [300.0, 800.0]]).unwrap();
        approx::assert_relative_eq!(curve.at(200.0), 400.0, max_relative = 1e-12);
        approx::assert_relative_eq!(curve.at(-50.0), 200.0, max_relative = 1e-12);
        approx::assert_relative_eq!(curve.at(900.0), 800.0, max_relative = 1e-12);
        let points: Vec<[f64; 2]> = curve.points().collect();
        approx::assert_relative_eq!(points[1][1], 800.0, max_relative = 1e-12);
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
