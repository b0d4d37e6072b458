//! Distributions of what is open.

pub(super) use crate::numeric::quantile::NINE_IN_TEN;
use crate::sources::jcgm_2008;
use serde::Serialize;
use statrs::distribution::{ContinuousCDF, Normal};

/// Where a normal distribution is cut off, in standard deviations either way: a piece further off
/// than that a shop would notice (expert value).
const CUT: f64 = 3.0;

/// How a number is distributed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "law", rename_all = "snake_case")]
pub enum Law {
    /// Anywhere between limits, either way of none: all that is known where only limits are given.
    Uniform {
        /// Half of the width between the limits.
        half_width: f64,
    },
    /// Normal about none, cut off at three standard deviations.
    Normal {
        /// Standard deviation before the cut.
        sd: f64,
    },
    /// A factor whose logarithm is normal about none, cut off likewise.
    LogNormal {
        /// Standard deviation of the natural logarithm before the cut.
        ln_sd: f64,
    },
}

impl Law {
    /// A normal distribution of which nine in ten lie within a band either way.
    pub(super) fn normal_of_band(band: f64) -> Self {
        Self::Normal {
            sd: band / NINE_IN_TEN,
        }
    }

    /// A factor of which nine in ten lie within a band factor either way.
    pub(super) fn of_band_factor(factor: f64) -> Self {
        Self::LogNormal {
            ln_sd: factor.max(1.0).ln() / NINE_IN_TEN,
        }
    }

    /// The same with a part of its width; of a factor of that of its logarithm.
    pub(super) const fn narrowed(self, part: f64) -> Self {
        match self {
            Self::Uniform { half_width } => Self::Uniform {
                half_width: half_width * part,
            },
            Self::Normal { sd } => Self::Normal { sd: sd * part },
            Self::LogNormal { ln_sd } => Self::LogNormal {
                ln_sd: ln_sd * part,
            },
        }
    }

    /// Whether it leaves anything open.
    pub(super) fn is_open(&self) -> bool {
        match *self {
            Self::Uniform { half_width } => half_width > 0.0,
            Self::Normal { sd } => sd > 0.0,
            Self::LogNormal { ln_sd } => ln_sd > 0.0,
        }
    }

    /// The value below which a part of the distribution lies, the part above 0 and below 1.
    pub(super) fn value(&self, part: f64) -> f64 {
        match *self {
            Self::Uniform { half_width } => half_width * (2.0 * part - 1.0),
            Self::Normal { sd } => sd * cut_normal(part, CUT),
            Self::LogNormal { ln_sd } => (ln_sd * cut_normal(part, CUT)).exp(),
        }
    }

    /// Standard deviation; of a factor, that of its logarithm.
    #[must_use]
    pub fn sd(&self) -> f64 {
        match *self {
            Self::Uniform { half_width } => jcgm_2008::sd_between_limits(half_width),
            Self::Normal { sd } | Self::LogNormal { ln_sd: sd } => {
                // Of a normal distribution that is cut at c: 1 - 2 c φ(c) / (2 Φ(c) - 1).
                let density = (-0.5 * CUT * CUT).exp() / (2.0 * std::f64::consts::PI).sqrt();
                let inside = 1.0 - 2.0 * Normal::standard().cdf(-CUT);
                sd * (1.0 - 2.0 * CUT * density / inside).sqrt()
            }
        }
    }
}

/// The value below which a part of a standard normal distribution lies that is cut off at so many
/// standard deviations either way.
pub(super) fn cut_normal(part: f64, cut: f64) -> f64 {
    let normal = Normal::standard();
    let below = normal.cdf(-cut);
    normal
        .inverse_cdf(below + part * (1.0 - 2.0 * below))
        .clamp(-cut, cut)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numeric::quantile::mean_and_sd;

    /// Nine in ten lie within 1.645 standard deviations, 95 % within 1.960 (printed tables of the
    /// normal distribution).
    #[test]
    fn the_normal_distribution_is_that_of_the_tables() {
        for (part, z) in [(0.95, 1.6449), (0.975, 1.9600), (0.5, 0.0), (0.841345, 1.0)] {
            approx::assert_abs_diff_eq!(cut_normal(part, 8.0), z, epsilon = 1e-4);
        }
        approx::assert_abs_diff_eq!(cut_normal(1e-12, 3.0), -3.0, epsilon = 1e-6);
        assert!(cut_normal(1e-12, 8.0) < -6.5);
    }

    #[test]
    fn a_law_has_the_deviation_that_it_tells() {
        for law in [
            Law::Uniform { half_width: 8.0 },
            Law::normal_of_band(2.0),
            Law::of_band_factor(1.5),
        ] {
            let sample: Vec<f64> = (0..4096)
                .map(|i| law.value((f64::from(i) + 0.5) / 4096.0))
                .map(|x| match law {
                    Law::LogNormal { .. } => x.ln(),
                    _ => x,
                })
                .collect();
            let (mean, sd) = mean_and_sd(&sample).unwrap();
            approx::assert_abs_diff_eq!(mean, 0.0, epsilon = 1e-9);
            approx::assert_relative_eq!(sd, law.sd(), max_relative = 1e-3);
        }
    }
}
