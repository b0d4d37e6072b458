//! From a measured curve of the probe to the heat transfer of its quenchant.
//!
//! The logarithm of the coefficient is sought at knots over the temperature of the surface, so
//! that the computed centre of the probe runs through the readings. A couple in the centre sees
//! the surface late and blurred, so readings alone would leave it ragged: least squares with a
//! penalty on second differences (`sources::beck_1985`), whose weight is chosen by generalised
//! cross-validation (`sources::golub_1979`): readings that are left out have to be told by the
//! others. The fit goes in steps, so that a page can show the progress and stop.

use super::BATH_RANGE_C;
use super::curve_error::CurveFitError;
use super::forward::{Forward, Run};
use super::measured;
use super::probe_curve::ProbeCurve;
use super::shape::H_RANGE;
use super::thin::Point;
use crate::heat::OwnMedium;
use crate::heat::probe::probe_piece;
use crate::numeric::least_squares::Normal;
use crate::sources::beck_1985::SECOND_DIFFERENCE;
use crate::sources::golub_1979;
use serde::{Deserialize, Serialize};

/// Number of knots, and of unknowns: the knots and the time of entry.
pub(super) const KNOTS: usize = 24;
pub(super) const UNKNOWNS: usize = KNOTS + 1;

/// Readings nearer to the bath than this say nothing, K; one further below it contradicts it.
const NEAR_BATH_K: f64 = 8.0;
const BELOW_BATH_K: f64 = 6.0;
/// Where the rate at the end of the curve is read off, above its last reading, K.
const END_RATE_ABOVE_K: f64 = 25.0;
/// The coldest knot is so far above the bath at least, K.
const KNOT_ABOVE_BATH_K: f64 = 2.0;
/// Error of the computed curve itself, K, and of the clock of the readings, s (expert values):
/// added to the scatter of the readings.
const MODEL_K: f64 = 0.1;
const CLOCK_S: f64 = 1e-3;
/// Standard deviation of the time of entry, s: known or found.
const ENTRY_KNOWN_S: f64 = 0.002;
const ENTRY_FOUND_S: f64 = 0.1;

/// Standard deviations of the second difference of neighbouring knots that the penalty may have:
/// from nearly straight curves to the sharp corners that boiling has.
pub(super) const ROUGHNESS: [f64; 12] = [
    0.02, 0.03, 0.04, 0.06, 0.08, 0.11, 0.15, 0.2, 0.27, 0.36, 0.48, 0.64,
];
/// The first step may be as rough as this number of the list, each further one by so many more:
/// far from the readings the linearised problem asks for more than they will.
const FIRST_ROUGHNESS: usize = 5;
const ROUGHER_BY: usize = 2;
/// Spacing of differences in the logarithm of the coefficient.
const SPACING: f64 = 0.02;
/// Most change of the logarithm in one step.
const MOST_CHANGE: f64 = 1.0;
/// Damping that is tried in one step, in this order, over the diagonal of the normal matrix.
const DAMPINGS: [f64; 6] = [0.0, 0.03, 0.3, 3.0, 30.0, 300.0];
/// The fit has settled when a step takes less than this share off the sum of squares.
const SETTLED: f64 = 3e-3;
/// Most steps; five to twenty are usual.
const MOST_STEPS: usize = 40;

/// How far a fit has come.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CurveFitProgress {
    /// Steps taken.
    pub steps: usize,
    /// Root mean square of computed less measured temperature, K.
    pub rms_k: f64,
    /// Whether further steps change next to nothing, or enough have been taken.
    pub is_done: bool,
}

/// A fit that is under way.
#[derive(Debug, Clone)]
pub struct CurveFit {
    pub(super) points: Vec<Point>,
    /// Standard deviation of each point, K.
    scatter_k: Vec<f64>,
    pub(super) start_c: f64,
    pub(super) noise_k: f64,
    bath_c: f64,
    entry_sd_s: f64,
    pub(super) knots_c: [f64; KNOTS],
    forward: Forward,
    /// Logarithms of the coefficient at the knots, then how late the clock of the curve is, s.
    pub(super) at: [f64; UNKNOWNS],
    pub(super) run: Run,
    /// Which roughness of the list is used, and the largest that may be.
    roughness: usize,
    roughest: usize,
    /// Whether the roughness is chosen for good.
    is_settling: bool,
    steps: usize,
    is_done: bool,
}

impl CurveFit {
    /// Begins with the coefficient of a probe of one temperature, in a bath, °C, -20 to 250.
    ///
    /// # Errors
    /// A bath out of range or warmer than the coldest reading; hardly any readings above it.
    pub fn new(curve: &ProbeCurve, bath_c: f64) -> Result<Self, CurveFitError> {
        if !(BATH_RANGE_C[0]..=BATH_RANGE_C[1]).contains(&bath_c) {
            return Err(CurveFitError::Bath { bath_c });
        }
        let coldest_c = curve
            .points
            .iter()
            .fold(f64::MAX, |m, p| m.min(p.temperature_c));
        if coldest_c < bath_c - BELOW_BATH_K - 3.0 * curve.noise_k {
            return Err(CurveFitError::ColderThanBath { coldest_c, bath_c });
        }
        let clear = |p: &&Point| p.temperature_c > bath_c + NEAR_BATH_K;
        let points: Vec<Point> = curve.points.iter().take_while(clear).copied().collect();
        let Some(last) = points.last().filter(|_| points.len() >= 20) else {
            return Err(CurveFitError::FewReadings {
                count: points.len(),
            });
        };
        let coldest_c = last_surface_c(&points, last).max(bath_c + KNOT_ABOVE_BATH_K);
        let spacing = (curve.start_c - coldest_c) / (KNOTS - 1) as f64;
        let knots_c = std::array::from_fn(|i| coldest_c + spacing * i as f64);
        let forward = Forward::new(curve.start_c, last.time_s + 1.0);
        let at = start(&points, &knots_c, bath_c);
        let run = Run::default();
        let mut fit = Self {
            scatter_k: scatter_k(&points, curve.noise_k),
            points,
            start_c: curve.start_c,
            noise_k: curve.noise_k,
            bath_c,
            entry_sd_s: if curve.entry_known {
                ENTRY_KNOWN_S
            } else {
                ENTRY_FOUND_S
            },
            knots_c,
            forward,
            at,
            run,
            roughness: FIRST_ROUGHNESS,
            roughest: FIRST_ROUGHNESS,
            is_settling: false,
            steps: 0,
            is_done: false,
        };
        if let Some(run) = fit.run_at(&at) {
            fit.run = run;
        }
        Ok(fit)
    }

    /// Takes one step: about as many computations of the probe as there are knots.
    pub fn step(&mut self) -> CurveFitProgress {
        if !self.is_done {
            self.steps += 1;
            self.is_done = !self.advance() || self.steps >= MOST_STEPS;
        }
        CurveFitProgress {
            steps: self.steps,
            rms_k: self.rms_k(),
            is_done: self.is_done,
        }
    }

    /// Whether there is more to be had.
    fn advance(&mut self) -> bool {
        let readings = self.linearise();
        let misfit = self.misfit(&self.run, &self.at);
        if !self.is_settling {
            self.choose_roughness(&readings, misfit);
        }
        let roughness = ROUGHNESS[self.roughness];
        let normal = self.with_prior(&readings, roughness);
        let before = misfit + self.penalty(&self.at, roughness);
        let mut after = before;
        for damping in DAMPINGS {
            let Ok(change) = normal.step(damping) else {
                continue;
            };
            let next = self.moved(&change);
            let Some(run) = self.run_at(&next) else {
                continue;
            };
            let there = self.misfit(&run, &next) + self.penalty(&next, roughness);
            if there < before {
                (self.at, self.run, after) = (next, run, there);
                break;
            }
        }
        let is_small = before - after <= SETTLED * before;
        let may_be_rough = self.roughest == ROUGHNESS.len() - 1;
        self.roughest = (self.roughest + ROUGHER_BY).min(ROUGHNESS.len() - 1);
        let is_done = is_small && self.is_settling;
        self.is_settling |= is_small && may_be_rough;
        !is_done
    }

    /// Takes the roughness with which readings that are left out would be told best by the
    /// others, on the linearised problem, among those that may be.
    fn choose_roughness(&mut self, readings: &Normal<UNKNOWNS>, misfit: f64) {
        let count = self.points.len() as f64;
        let score = |roughness: f64| {
            let normal = self.with_prior(readings, roughness);
            let change = normal.step(0.0).ok()?;
            let covariance = normal.covariance().ok()?;
            let determined = determined_unknowns(readings, &covariance);
            let squares = misfit + readings.change_of_squares(&change);
            Some(golub_1979::criterion(squares, count, determined))
        };
        let allowed = ROUGHNESS.into_iter().enumerate().take(self.roughest + 1);
        let best = allowed
            .filter_map(|(i, roughness)| Some((i, score(roughness)?)))
            .min_by(|a, b| a.1.total_cmp(&b.1));
        if let Some((i, _)) = best {
            self.roughness = i;
        }
    }

    /// Sum of squares of the readings, in units of their scatter.
    pub(super) fn misfit(&self, run: &Run, at: &[f64; UNKNOWNS]) -> f64 {
        let spots = run.spots(&self.points, at[KNOTS]);
        let residual = |((spot, point), scatter): ((_, &Point), &f64)| {
            (run.at(spot)[0] - point.temperature_c) / scatter
        };
        let sum: f64 = spots
            .into_iter()
            .zip(&self.points)
            .zip(&self.scatter_k)
            .map(|all| residual(all).powi(2))
            .sum();
        if sum.is_nan() { f64::INFINITY } else { sum }
    }

    /// Root mean square that the scatter of the readings makes, K.
    pub(super) fn expected_rms_k(&self) -> f64 {
        let (mut sum, mut weight) = (0.0, 0.0);
        for (scatter, point) in self.scatter_k.iter().zip(&self.points) {
            sum += point.readings * scatter * scatter;
            weight += point.readings;
        }
        (sum / weight).sqrt()
    }

    /// Root mean square of computed less measured temperature, K.
    pub(super) fn rms_k(&self) -> f64 {
        let spots = self.run.spots(&self.points, self.at[KNOTS]);
        let (mut sum, mut weight) = (0.0, 0.0);
        for (spot, point) in spots.into_iter().zip(&self.points) {
            sum += point.readings * (self.run.at(spot)[0] - point.temperature_c).powi(2);
            weight += point.readings;
        }
        (sum / weight).sqrt()
    }

    /// Sum of squares of the prior.
    fn penalty(&self, at: &[f64; UNKNOWNS], roughness: f64) -> f64 {
        let bends: f64 = at[..KNOTS]
            .windows(3)
            .map(|near| (bend(near) / roughness).powi(2))
            .sum();
        bends + (at[KNOTS] / self.entry_sd_s).powi(2)
    }

    /// Equations of the readings together with those of the prior.
    pub(super) fn with_prior(
        &self,
        readings: &Normal<UNKNOWNS>,
        roughness: f64,
    ) -> Normal<UNKNOWNS> {
        let mut normal = readings.clone();
        for (i, near) in self.at[..KNOTS].windows(3).enumerate() {
            let mut row = [0.0; UNKNOWNS];
            for (entry, weight) in row[i..].iter_mut().zip(SECOND_DIFFERENCE) {
                *entry = weight / roughness;
            }
            normal.add(&row, bend(near) / roughness);
        }
        let mut row = [0.0; UNKNOWNS];
        row[KNOTS] = 1.0 / self.entry_sd_s;
        normal.add(&row, self.at[KNOTS] / self.entry_sd_s);
        normal
    }

    /// The unknowns after a change, shortened as a whole and held within bounds.
    fn moved(&self, change: &[f64; UNKNOWNS]) -> [f64; UNKNOWNS] {
        let largest = change[..KNOTS].iter().fold(0.0_f64, |m, c| m.max(c.abs()));
        let factor = (MOST_CHANGE / largest).min(1.0);
        let [least, most] = H_RANGE.map(f64::ln);
        let mut next = self.at;
        for (x, change) in next.iter_mut().zip(change) {
            *x += factor * change;
        }
        for x in &mut next[..KNOTS] {
            *x = x.clamp(least, most);
        }
        next[KNOTS] = next[KNOTS].clamp(-0.5, 0.5);
        next
    }

    pub(super) fn medium_at(&self, at: &[f64; UNKNOWNS]) -> OwnMedium {
        let points = self
            .knots_c
            .iter()
            .zip(at)
            .map(|(t, ln_h)| [*t, ln_h.exp()]);
        OwnMedium {
            h_w_m2k: points.collect(),
            bath_c: self.bath_c,
            ..OwnMedium::default()
        }
    }

    fn run_at(&self, at: &[f64; UNKNOWNS]) -> Option<Run> {
        let medium = self.medium_at(at).resolve().ok()?;
        Some(self.forward.run(&medium))
    }

    /// The equations of the readings: each knot is moved a little and the steps repeated.
    pub(super) fn linearise(&self) -> Normal<UNKNOWNS> {
        let spots = self.run.spots(&self.points, self.at[KNOTS]);
        let mut rows = vec![[0.0; UNKNOWNS]; self.points.len()];
        for knot in 0..KNOTS {
            let mut beside = self.at;
            beside[knot] += SPACING;
            let Ok(medium) = self.medium_at(&beside).resolve() else {
                continue;
            };
            let below_c = self.knots_c.get(knot + 1).copied().unwrap_or(f64::MAX);
            let repeated = self.forward.repeat(&self.run, &medium, below_c);
            for (row, spot) in rows.iter_mut().zip(&spots) {
                row[knot] = self.run.change_k(&repeated, *spot) / SPACING;
            }
        }
        let mut normal = Normal::default();
        for (((mut row, spot), point), scatter) in rows
            .into_iter()
            .zip(spots)
            .zip(&self.points)
            .zip(&self.scatter_k)
        {
            let [temperature_c, rate_k_per_s] = self.run.at(spot);
            row[KNOTS] = -rate_k_per_s;
            normal.add(
                &row.map(|x| x / scatter),
                (temperature_c - point.temperature_c) / scatter,
            );
        }
        normal
    }
}

/// Temperature of the surface at the last reading, °C, by the parabola over the radius that steady
/// cooling makes.
fn last_surface_c(points: &[Point], last: &Point) -> f64 {
    let piece = probe_piece();
    let here_c = last.temperature_c;
    let rate = measured::rate_at_c(points, here_c + END_RATE_ABOVE_K).unwrap_or_default();
    let diffusivity =
        piece.material.conductivity_w_mk(here_c) / piece.material.capacity_j_m3k(here_c);
    here_c - rate * piece.size_m * piece.size_m / (4.0 * diffusivity)
}

/// Second difference of three neighbours.
fn bend(near: &[f64]) -> f64 {
    let weighted = near.iter().zip(SECOND_DIFFERENCE);
    weighted.map(|(value, weight)| value * weight).sum()
}

/// How many unknowns the readings determine against the prior.
fn determined_unknowns(
    readings: &Normal<UNKNOWNS>,
    covariance: &[[f64; UNKNOWNS]; UNKNOWNS],
) -> f64 {
    let shares = covariance
        .iter()
        .enumerate()
        .map(|(i, row)| readings.times(row)[i]);
    shares.sum()
}

/// Coefficients of a probe that has one temperature and cools at the rates of the readings.
fn start(points: &[Point], knots_c: &[f64; KNOTS], bath_c: f64) -> [f64; UNKNOWNS] {
    let [least, most] = H_RANGE;
    let piece = probe_piece();
    let mut at = [0.0; UNKNOWNS];
    let mut before = None;
    for (x, &knot_c) in at.iter_mut().zip(knots_c).rev() {
        // The rate there, or that of the knot before it where there are no readings.
        before = measured::rate_at_c(points, knot_c).or(before);
        let flux =
            0.5 * piece.size_m * piece.material.capacity_j_m3k(knot_c) * before.unwrap_or(30.0);
        *x = (flux / (knot_c - bath_c).max(5.0)).clamp(least, most).ln();
    }
    at
}

/// Standard deviation of each point, K.
fn scatter_k(points: &[Point], noise_k: f64) -> Vec<f64> {
    let rate = |i: usize| {
        let (before, after) = (points.get(i.saturating_sub(1))?, points.get(i + 1)?);
        Some((before.temperature_c - after.temperature_c) / (after.time_s - before.time_s))
    };
    let one = |(i, point): (usize, &Point)| {
        let clock_k = CLOCK_S * rate(i).unwrap_or_default();
        (noise_k * noise_k / point.readings + MODEL_K * MODEL_K + clock_k * clock_k).sqrt()
    };
    points.iter().enumerate().map(one).collect()
}
