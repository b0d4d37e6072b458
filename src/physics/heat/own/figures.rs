//! The figures that tell the speed of a quenchant, and what they may be.

use super::figure_error::{FigureError, Limit};
use crate::heat::{HeatError, Medium, ProbeFigures, nickel_ball_s, probe};
use crate::units::{TemperatureScale, format_fixed, format_temperature};
use recalesce_texts::heat::own as texts;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Temperature of the probe as it enters the bath, °C.
const PROBE_START_C: f64 = 850.0;
/// Nickel-ball times of oils, s (expert value).
const BALL_OF_OILS_S: [f64; 2] = [5.0, 40.0];
/// How far two figures may contradict each other by rounding and reading, as a factor.
const SLACK: f64 = 1.03;
/// A figure is given back by the fit when it lies within so many of its own reproducibilities.
const AGREES_WITHIN: f64 = 2.0;

/// A figure of the standard tests of a quenchant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Figure {
    /// Time of the nickel ball of ASTM D3520 from 885 to 354 °C, s.
    #[serde(rename = "nickel_ball_s")]
    NickelBall,
    /// Highest cooling rate of the 12.5 mm probe, K/s.
    #[serde(rename = "max_rate_k_per_s")]
    MaxRate,
    /// Temperature of the probe at its highest rate, °C.
    #[serde(rename = "max_rate_at_c")]
    MaxRateAt,
    /// Cooling rate of the probe at 300 °C, K/s.
    #[serde(rename = "rate_at_300c_k_per_s")]
    RateAt300c,
    /// Time of the probe from 850 to 600 °C, s.
    #[serde(rename = "time_to_600c_s")]
    TimeTo600c,
    /// Time of the probe from 850 to 400 °C, s.
    #[serde(rename = "time_to_400c_s")]
    TimeTo400c,
    /// Time of the probe from 850 to 200 °C, s.
    #[serde(rename = "time_to_200c_s")]
    TimeTo200c,
}

impl Figure {
    /// All, in the order in which they are told.
    pub const ALL: [Self; 7] = [
        Self::NickelBall,
        Self::MaxRate,
        Self::MaxRateAt,
        Self::RateAt300c,
        Self::TimeTo600c,
        Self::TimeTo400c,
        Self::TimeTo200c,
    ];

    /// What it is, in the middle of a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::NickelBall => texts::NICKEL_BALL,
            Self::MaxRate => texts::HIGHEST_RATE,
            Self::MaxRateAt => texts::HIGHEST_RATE_AT,
            Self::RateAt300c => texts::RATE_AT_300C,
            Self::TimeTo600c => texts::TIME_TO_600C,
            Self::TimeTo400c => texts::TIME_TO_400C,
            Self::TimeTo200c => texts::TIME_TO_200C,
        }
    }

    /// Unit in which it is held.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::MaxRate | Self::RateAt300c => "K/s",
            Self::MaxRateAt => "°C",
            _ => "s",
        }
    }

    /// A value as it is written, on a scale.
    #[must_use]
    pub fn format(self, value: f64, scale: TemperatureScale) -> String {
        match self {
            Self::MaxRateAt => format_temperature(value, scale),
            Self::MaxRate | Self::RateAt300c => {
                let rate = format_fixed(scale.of_kelvin_difference(value), 1);
                format!("{rate}\u{a0}{}", scale.rate_unit())
            }
            _ => format!("{}\u{a0}{}", format_fixed(value, 1), self.unit()),
        }
    }

    /// The least and the largest that a liquid quenchant has (expert value: the list of media from
    /// brine to the reference oil, with a third to spare on either side).
    #[must_use]
    pub const fn allowed(self) -> [f64; 2] {
        match self {
            Self::NickelBall => [1.3, 40.0],
            Self::MaxRate => [15.0, 350.0],
            Self::MaxRateAt => [350.0, 800.0],
            Self::RateAt300c => [3.0, 150.0],
            Self::TimeTo600c => [1.0, 40.0],
            Self::TimeTo400c => [1.6, 60.0],
            Self::TimeTo200c => [2.4, 150.0],
        }
    }

    /// How far apart two laboratories find it in one bath, as one standard deviation: a share of
    /// the figure, or K for the temperature (expert values).
    pub(super) const fn reproducibility(self) -> f64 {
        match self {
            Self::MaxRateAt => 15.0,
            Self::RateAt300c => 0.08,
            _ => 0.04,
        }
    }

    /// By how many reproducibilities `simulated` lies above `given`.
    pub(super) fn deviation(self, simulated: f64, given: f64) -> f64 {
        let difference = match self {
            Self::MaxRateAt => simulated - given,
            _ => (simulated / given).ln(),
        };
        difference / self.reproducibility()
    }

    /// The range within so many reproducibilities of a value.
    pub(super) fn around(self, value: f64, deviations: f64) -> [f64; 2] {
        let width = deviations * self.reproducibility();
        match self {
            Self::MaxRateAt => [value - width, value + width],
            _ => [value * (-width).exp(), value * width.exp()],
        }
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// Figures of one quenchant in its still bath, those that are known.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct QuenchantFigures {
    /// Nickel-ball time, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nickel_ball_s: Option<f64>,
    /// Highest cooling rate of the 12.5 mm probe, K/s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_rate_k_per_s: Option<f64>,
    /// Temperature of the probe at its highest rate, °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_rate_at_c: Option<f64>,
    /// Cooling rate of the probe at 300 °C, K/s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate_at_300c_k_per_s: Option<f64>,
    /// Time of the probe from 850 to 600 °C, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub time_to_600c_s: Option<f64>,
    /// Time of the probe from 850 to 400 °C, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub time_to_400c_s: Option<f64>,
    /// Time of the probe from 850 to 200 °C, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub time_to_200c_s: Option<f64>,
}

/// A figure as given or measured beside the computed one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Compared {
    /// Which.
    pub figure: Figure,
    /// As given or measured, in its unit.
    pub given: f64,
    /// As computed with the curve found.
    pub simulated: f64,
    /// Whether they are as near as two laboratories come (95 %).
    pub agrees: bool,
}

impl QuenchantFigures {
    /// One figure, if known.
    #[must_use]
    pub const fn get(&self, figure: Figure) -> Option<f64> {
        match figure {
            Figure::NickelBall => self.nickel_ball_s,
            Figure::MaxRate => self.max_rate_k_per_s,
            Figure::MaxRateAt => self.max_rate_at_c,
            Figure::RateAt300c => self.rate_at_300c_k_per_s,
            Figure::TimeTo600c => self.time_to_600c_s,
            Figure::TimeTo400c => self.time_to_400c_s,
            Figure::TimeTo200c => self.time_to_200c_s,
        }
    }

    /// The figures that are known.
    pub fn known(&self) -> impl Iterator<Item = (Figure, f64)> + '_ {
        Figure::ALL
            .into_iter()
            .filter_map(|figure| Some((figure, self.get(figure)?)))
    }

    /// Each that is known beside the same of another list, where that has it.
    #[must_use]
    pub fn beside(&self, simulated: &Self) -> Vec<Compared> {
        self.known()
            .filter_map(|(figure, given)| {
                let simulated = simulated.get(figure)?;
                Some(Compared {
                    figure,
                    given,
                    simulated,
                    agrees: figure.deviation(simulated, given).abs() <= AGREES_WITHIN,
                })
            })
            .collect()
    }

    /// Whether none is known.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.known().next().is_none()
    }

    /// Whether nothing but the nickel-ball time is known.
    pub(super) fn is_ball_alone(&self) -> bool {
        self.known().all(|(figure, _)| figure == Figure::NickelBall)
    }

    /// The same with one figure otherwise.
    #[must_use]
    pub const fn with(mut self, figure: Figure, value: Option<f64>) -> Self {
        *match figure {
            Figure::NickelBall => &mut self.nickel_ball_s,
            Figure::MaxRate => &mut self.max_rate_k_per_s,
            Figure::MaxRateAt => &mut self.max_rate_at_c,
            Figure::RateAt300c => &mut self.rate_at_300c_k_per_s,
            Figure::TimeTo600c => &mut self.time_to_600c_s,
            Figure::TimeTo400c => &mut self.time_to_400c_s,
            Figure::TimeTo200c => &mut self.time_to_200c_s,
        } = value;
        self
    }

    /// The figures of a medium, by the computed tests. A figure is missing when the bath is too
    /// warm for it.
    ///
    /// # Errors
    /// A bath that cools neither probe nor ball.
    pub fn of(medium: &Medium) -> Result<Self, HeatError> {
        Ok(Self {
            nickel_ball_s: nickel_ball_s(medium)?,
            ..Self::from(&probe(medium)?)
        })
    }

    /// Checks each figure by itself and every pair that no cooling curve has together.
    ///
    /// # Errors
    /// The first figure that cannot be, with what is allowed.
    pub fn check(&self) -> Result<(), FigureError> {
        let speaks_of_speed = |figure| !matches!(figure, Figure::MaxRateAt | Figure::RateAt300c);
        if !self.known().any(|(figure, _)| speaks_of_speed(figure)) {
            return Err(FigureError::None);
        }
        for (figure, given) in self.known() {
            within(figure, given, figure.allowed(), Limit::Quenchants)?;
        }
        if let Some(ball_s) = self.nickel_ball_s.filter(|_| self.is_ball_alone()) {
            within(Figure::NickelBall, ball_s, BALL_OF_OILS_S, Limit::Oils)?;
        }
        let times = [
            (Figure::TimeTo600c, 600.0),
            (Figure::TimeTo400c, 400.0),
            (Figure::TimeTo200c, 200.0),
        ];
        if let Some(most_k_per_s) = self.max_rate_k_per_s {
            if let Some(rate) = self.rate_at_300c_k_per_s {
                let limits = [0.0, most_k_per_s * SLACK];
                let with = Limit::With(Figure::MaxRate);
                within(Figure::RateAt300c, rate, limits, with)?;
            }
            for (figure, to_c) in times {
                if let Some(time_s) = self.get(figure) {
                    let least_s = (PROBE_START_C - to_c) / (most_k_per_s * SLACK);
                    let with = Limit::With(Figure::MaxRate);
                    within(figure, time_s, [least_s, figure.allowed()[1]], with)?;
                }
            }
        }
        for (i, (earlier, hotter_c)) in times.into_iter().enumerate() {
            for (later, colder_c) in times.into_iter().skip(i + 1) {
                let (Some(before_s), Some(after_s)) = (self.get(earlier), self.get(later)) else {
                    continue;
                };
                // At the highest rate all the way, where it is known.
                let least_s = self
                    .max_rate_k_per_s
                    .map_or(0.0, |rate| (hotter_c - colder_c) / (rate * SLACK));
                let limits = [before_s + least_s, later.allowed()[1]];
                within(later, after_s, limits, Limit::With(earlier))?;
            }
        }
        Ok(())
    }
}

impl From<&ProbeFigures> for QuenchantFigures {
    fn from(figures: &ProbeFigures) -> Self {
        Self {
            nickel_ball_s: None,
            max_rate_k_per_s: Some(figures.max_rate_k_per_s),
            max_rate_at_c: Some(figures.max_rate_at_c),
            rate_at_300c_k_per_s: figures.rate_at_300c_k_per_s,
            time_to_600c_s: figures.time_to_600c_s,
            time_to_400c_s: figures.time_to_400c_s,
            time_to_200c_s: figures.time_to_200c_s,
        }
    }
}

pub(super) fn within(
    figure: Figure,
    given: f64,
    [least, most]: [f64; 2],
    why: Limit,
) -> Result<(), FigureError> {
    if (least..=most).contains(&given) {
        return Ok(());
    }
    Err(FigureError::Outside {
        figure,
        given,
        least: three_digits(least),
        most: three_digits(most),
        why,
    })
}

/// Limits are told as they are remembered.
fn three_digits(value: f64) -> f64 {
    if value == 0.0 {
        return value;
    }
    let scale = 10_f64.powf(2.0 - value.abs().log10().floor());
    (value * scale).round() / scale
}
