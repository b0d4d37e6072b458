//! Which factors explain the readings of a coupon, and how well.
//!
//! Each reading by itself gives a range; the two share the nose and its error, so the ranges are
//! cut, not averaged.

use super::model::{CentreAndSurface, Model};
use super::{Coupon, CouponError, FARTHEST, FactorRange, Reading, ReadingFit};
use crate::advise::law::NINE_IN_TEN;
use crate::route::NOSE_BAND;

/// Factors that are looked at.
const FACTORS: (f64, f64) = (0.1, 10.0);
/// Steps between them.
const STEPS: usize = 36;
/// Places of the nose's time that are looked at, in its standard deviations.
const NOSES: usize = 9;
const NOSES_SD: f64 = 2.4;
/// The place where the model has it.
const MODELLED: usize = NOSES / 2;

/// Error of the computed hardness, HRC: root mean square of end-quench curves on the check rows.
const MODEL_HRC: f64 = 2.0;
/// Fall of the logarithm of the likelihood that bounds 95 %: half of chi-square for one number.
const BOUND_95: f64 = 0.5 * 3.841;
/// Readings so many standard deviations beyond what the coupon can have are no readings of it.
const BEYOND_SD: f64 = 2.0;
/// Golden sections of the search for the best factor between two steps.
const SECTIONS: usize = 14;

/// The hardness computed over factors and noses, beside the readings.
pub(super) struct Explained<'a> {
    model: &'a Model,
    given: CentreAndSurface<Option<f64>>,
    sd_hrc: f64,
    /// Of each factor, of each nose.
    computed: Vec<CentreAndSurface<[f64; NOSES]>>,
}

/// What all readings together allow.
pub(super) struct Together {
    pub(super) factor: FactorRange,
    /// As if the nose were known.
    pub(super) same_steel: FactorRange,
    pub(super) is_at_odds: bool,
    /// What each reading allows by itself.
    alone: Vec<(Reading, f64, FactorRange)>,
}

fn ln_factor(step: usize) -> f64 {
    let (least, most) = FACTORS;
    least.ln() + (most / least).ln() * step as f64 / STEPS as f64
}

/// A place of the nose's time, in standard deviations.
fn nose_sd(nose: usize) -> f64 {
    NOSES_SD * (2.0 * nose as f64 / (NOSES - 1) as f64 - 1.0)
}

impl<'a> Explained<'a> {
    /// Computes a coupon over all factors and noses.
    pub(super) fn of(model: &'a Model, coupon: &Coupon) -> Result<Self, CouponError> {
        let sd = NOSE_BAND.ln() / NINE_IN_TEN;
        let noses: [f64; NOSES] = std::array::from_fn(|nose| (sd * nose_sd(nose)).exp());
        let computed: Result<Vec<_>, _> = (0..=STEPS)
            .map(|step| model.with_noses(ln_factor(step), &noses))
            .collect();
        Ok(Self {
            model,
            given: coupon.given(),
            sd_hrc: (coupon.tester_hrc / NINE_IN_TEN).hypot(MODEL_HRC),
            computed: computed?,
        })
    }

    fn places(&self) -> impl Iterator<Item = (Reading, f64)> {
        let given = self.given;
        [Reading::Centre, Reading::Surface]
            .into_iter()
            .filter_map(move |place| Some((place, given.at(place)?)))
    }

    /// Softest and hardest that a place comes out, HRC.
    fn extremes(&self, place: Reading) -> (f64, f64) {
        let all = self.computed.iter().flat_map(|at| at.at(place));
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), hrc| {
            (least.min(hrc), most.max(hrc))
        })
    }

    /// Checks that the coupon can have the readings.
    pub(super) fn check(&self) -> Result<(), CouponError> {
        let beyond_hrc = BEYOND_SD * self.sd_hrc;
        for (place, given_hrc) in self.places() {
            let (softest, hardest) = self.extremes(place);
            let (least_hrc, most_hrc) = (softest - beyond_hrc, hardest + beyond_hrc);
            let place = place.words();
            if given_hrc > most_hrc {
                return Err(CouponError::TooHard {
                    place,
                    given_hrc,
                    most_hrc,
                });
            }
            if given_hrc < least_hrc {
                return Err(CouponError::TooSoft {
                    place,
                    given_hrc,
                    least_hrc,
                });
            }
        }
        Ok(())
    }

    /// Deviations of a reading from computed hardness, squared, in standard deviations.
    fn misfit(&self, given_hrc: f64, computed_hrc: f64) -> f64 {
        ((given_hrc - computed_hrc) / self.sd_hrc).powi(2)
    }

    /// Logarithm of the likelihood of each factor: with the nose as modelled, or over its places.
    fn ln_likelihood(&self, place: Reading, given_hrc: f64, is_nose_known: bool) -> Vec<f64> {
        let of_noses = |noses: [f64; NOSES]| {
            let off = |nose: usize, hrc: f64| {
                let sd = if is_nose_known { 0.0 } else { nose_sd(nose) };
                -0.5 * (sd * sd + self.misfit(given_hrc, hrc))
            };
            let all = noses.into_iter().enumerate();
            let likelihood: f64 = all
                .filter(|(nose, _)| !is_nose_known || *nose == MODELLED)
                .map(|(nose, hrc)| off(nose, hrc).exp())
                .sum();
            likelihood.max(f64::MIN_POSITIVE).ln()
        };
        let factors = self.computed.iter();
        factors.map(|hrc| of_noses(hrc.at(place))).collect()
    }

    /// The factors that explain a reading; their best is that with the nose as modelled.
    fn alone(
        &self,
        place: Reading,
        given_hrc: f64,
        is_nose_known: bool,
    ) -> Result<FactorRange, CouponError> {
        let (least, most) = bounds(&self.ln_likelihood(place, given_hrc, is_nose_known));
        let (Some(least), Some(most)) = (least, most) else {
            let best = None;
            return Ok(FactorRange { least, best, most });
        };
        let best = self.best_ln_factor(place, given_hrc)?.exp();
        let near = |limit: f64| (limit / best).ln().abs() <= FARTHEST.ln();
        let (is_least, is_most) = (near(least), near(most));
        Ok(FactorRange {
            least: Some(least).filter(|_| is_least),
            best: Some(best).filter(|_| is_least && is_most),
            most: Some(most).filter(|_| is_most),
        })
    }

    /// The factor of the least misfit, by golden sections between the steps beside the best.
    fn best_ln_factor(&self, place: Reading, given_hrc: f64) -> Result<f64, CouponError> {
        let misfits = self.computed.iter().map(|hrc| {
            let modelled = hrc.at(place).get(MODELLED).copied();
            modelled.map_or(f64::INFINITY, |hrc| self.misfit(given_hrc, hrc))
        });
        let best = misfits
            .enumerate()
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .map_or(0, |(step, _)| step);
        let at = |x: f64| {
            let hrc = self.model.at(x)?.at(place);
            Ok::<f64, CouponError>(self.misfit(given_hrc, hrc))
        };
        let part = 0.5 * (5.0_f64.sqrt() - 1.0);
        let mut low = ln_factor(best.saturating_sub(1));
        let mut high = ln_factor((best + 1).min(STEPS));
        let (mut left, mut right) = (high - part * (high - low), low + part * (high - low));
        let (mut at_left, mut at_right) = (at(left)?, at(right)?);
        for _ in 0..SECTIONS {
            if at_left < at_right {
                high = right;
                (right, at_right) = (left, at_left);
                left = high - part * (high - low);
                at_left = at(left)?;
            } else {
                low = left;
                (left, at_left) = (right, at_right);
                right = low + part * (high - low);
                at_right = at(right)?;
            }
        }
        Ok(0.5 * (low + high))
    }

    /// What the readings allow together: what each does; where they are at odds, what either does.
    /// They are when no factor explains both, whatever the nose.
    pub(super) fn together(&self) -> Result<Together, CouponError> {
        let mut factor = FactorRange::default();
        let mut same_steel = FactorRange::default();
        let mut is_at_odds = false;
        let mut alone = Vec::new();
        for (i, (place, given_hrc)) in self.places().enumerate() {
            let here = self.alone(place, given_hrc, false)?;
            let here_same = self.alone(place, given_hrc, true)?;
            alone.push((place, given_hrc, here));
            if i == 0 {
                (factor, same_steel) = (here, here_same);
                continue;
            }
            is_at_odds = same_steel.and(&here_same).is_empty();
            if is_at_odds {
                factor = factor.or(&here);
                same_steel = FactorRange::default();
            } else {
                factor = factor.and(&here);
                same_steel = same_steel.and(&here_same);
            }
        }
        if factor.least.is_none() && factor.most.is_none() {
            return Err(if is_at_odds {
                CouponError::AtOdds
            } else {
                self.tells_nothing()
            });
        }
        Ok(Together {
            factor,
            same_steel,
            is_at_odds,
            alone,
        })
    }

    fn tells_nothing(&self) -> CouponError {
        let (least_hrc, most_hrc) = self
            .places()
            .map(|(place, _)| self.extremes(place))
            .fold((f64::INFINITY, f64::NEG_INFINITY), |all, one| {
                (all.0.min(one.0), all.1.max(one.1))
            });
        CouponError::TellsNothing {
            least_hrc,
            most_hrc,
        }
    }
}

impl Together {
    /// Each reading beside the hardness computed with a factor.
    pub(super) fn readings(
        &self,
        model: &Model,
        factor: f64,
    ) -> Result<Vec<ReadingFit>, CouponError> {
        let computed = model.at(factor.ln())?;
        let fit = |&(place, given_hrc, alone): &(Reading, f64, FactorRange)| ReadingFit {
            place,
            given_hrc,
            computed_hrc: computed.at(place),
            alone,
        };
        Ok(self.alone.iter().map(fit).collect())
    }
}

impl FactorRange {
    /// What both ranges allow; the best between theirs, or between the limits.
    fn and(&self, other: &Self) -> Self {
        let tighter = |a: Option<f64>, b: Option<f64>, pick: fn(f64, f64) -> f64| match (a, b) {
            (Some(a), Some(b)) => Some(pick(a, b)),
            (a, b) => a.or(b),
        };
        let least = tighter(self.least, other.least, f64::max);
        let most = tighter(self.most, other.most, f64::min);
        let best = tighter(self.best, other.best, |a, b| (a * b).sqrt());
        let best = least.zip(most).map(|(least, most)| {
            let inside = |best: f64| best.max(least).min(most);
            best.map_or((least * most).sqrt(), inside)
        });
        Self { least, best, most }
    }

    /// What either range allows.
    fn or(&self, other: &Self) -> Self {
        let least = self.least.zip(other.least).map(|(a, b)| a.min(b));
        let most = self.most.zip(other.most).map(|(a, b)| a.max(b));
        let best = least.zip(most).map(|(least, most)| (least * most).sqrt());
        Self { least, best, most }
    }

    /// Whether no factor is in it.
    fn is_empty(&self) -> bool {
        self.least
            .zip(self.most)
            .is_some_and(|(least, most)| least > most)
    }
}

/// The factors between which a likelihood stays within its bound, straight between steps; none on
/// the side where it does so to the end.
fn bounds(ln_likelihood: &[f64]) -> (Option<f64>, Option<f64>) {
    let best = ln_likelihood.iter().copied().fold(f64::MIN, f64::max);
    let least_allowed = best - BOUND_95;
    let is_allowed = |value: &f64| *value >= least_allowed;
    let edge = |inside: usize, outside: usize| {
        let (a, b) = (ln_likelihood.get(inside)?, ln_likelihood.get(outside)?);
        let part = (a - least_allowed) / (a - b);
        let (from, to) = (ln_factor(inside), ln_factor(outside));
        Some((from + part * (to - from)).exp())
    };
    let first = ln_likelihood.iter().position(is_allowed).unwrap_or(0);
    let last = ln_likelihood.iter().rposition(is_allowed).unwrap_or(0);
    let least = first.checked_sub(1).and_then(|before| edge(first, before));
    (least, edge(last, last + 1))
}
