//! From figures of the standard tests to a heat-transfer curve.
//!
//! The shape of the curve is that of the medium of the list whose figures lie nearest, its level
//! is matched first, and then its six numbers move as far as the figures ask and the spread among
//! quenchants lets them: least squares with the template as prior. What the figures do not tell
//! stays as in the template, and the band says so.

use super::BATH_RANGE_C;
use super::band::{band_factor, mean_ln_h};
use super::figure_error::{FigureError, Limit};
use super::figures::{Compared, Figure, QuenchantFigures, within};
use super::shape::{BoilingShape, PARAMETERS};
use crate::heat::{
    Family, HeatError, HeatTransfer, Medium, OwnMedium, media, nickel_ball_s, probe,
};
use crate::numeric::least_squares::{Minimum, minimise};
use serde::Serialize;

/// Warmest bath in which the probe cools to 200 °C within an hour, °C.
const WARMEST_FOR_200C: f64 = 190.0;
/// Spacing of differences in the logarithm of heat transfer, and in the parameters of the shape.
const LEVEL_SPACING: f64 = 0.02;
const SPACING: [f64; PARAMETERS] = [0.02, 0.03, 3.0, 0.02, 0.03, 0.02];
/// A figure that the fit misses by more of its reproducibilities than this contradicts the others
/// (expert value: figures of one class from different books differ by up to five).
const CONTRADICTS_BEYOND: f64 = 6.0;

/// A curve found from figures.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FiguresFit {
    /// The curve and its bath, with its band and the figures given.
    pub medium: OwnMedium,
    /// Name of the medium of the list that it takes after.
    pub template: String,
    /// Each figure given, beside what the computed test says with this curve.
    pub compared: Vec<Compared>,
    /// The heat transfer that decides whether the pearlite nose is passed lies between the curve
    /// divided by this factor and the curve times it, nine times in ten.
    pub h_band_factor: f64,
}

/// Finds the heat-transfer curve with which the computed tests give the figures, in a still bath,
/// °C, -20 to 250.
///
/// With the nickel-ball time alone, or any other single figure, the curve is the template scaled
/// to give it; with the ball alone the template is an oil, for which that test is made. The more
/// figures, the more of the shape is their own; six of the probe determine it all. Figures of one
/// bath that disagree a little are balanced, and [`FiguresFit::compared`] tells which are not met.
///
/// # Errors
/// No figure that tells the speed; figures outside what liquid quenchants have, such as no cooling
/// curve has together, or far from what the others allow; a bath out of range.
pub fn fit_figures(figures: &QuenchantFigures, bath_c: f64) -> Result<FiguresFit, FigureError> {
    figures.check()?;
    if !(BATH_RANGE_C[0]..=BATH_RANGE_C[1]).contains(&bath_c) {
        return Err(FigureError::Bath { bath_c });
    }
    if figures.time_to_200c_s.is_some() && bath_c > WARMEST_FOR_200C {
        return Err(FigureError::BathTooWarm { bath_c });
    }
    let fit = fit(figures, bath_c)?;
    let worst = fit.compared.iter().max_by(|a, b| {
        let miss = |c: &Compared| c.figure.deviation(c.simulated, c.given).abs();
        miss(a).total_cmp(&miss(b))
    });
    if let Some(&Compared {
        figure,
        given,
        simulated,
        ..
    }) = worst
        && figure.deviation(simulated, given).abs() > CONTRADICTS_BEYOND
    {
        return Err(contradiction(figures, bath_c, figure, given, simulated));
    }
    Ok(fit)
}

/// What the other figures allow instead.
fn contradiction(
    figures: &QuenchantFigures,
    bath_c: f64,
    figure: Figure,
    given: f64,
    simulated: f64,
) -> FigureError {
    let expected = fit(&figures.with(figure, None), bath_c)
        .ok()
        .and_then(|others| QuenchantFigures::of(&others.medium.resolve().ok()?).ok())
        .and_then(|others| others.get(figure))
        .unwrap_or(simulated);
    let allowed = figure.around(expected, CONTRADICTS_BEYOND);
    within(figure, given, allowed, Limit::WithTheOthers)
        .err()
        // The others bend so far that they could meet it, but not all at once.
        .unwrap_or(FigureError::NotFound)
}

fn fit(figures: &QuenchantFigures, bath_c: f64) -> Result<FiguresFit, FigureError> {
    let (template, start) = nearest(figures, bath_c)?;
    let level = minimise([0.0], [LEVEL_SPACING], |[ln_factor]| {
        deviations(figures, &start.scaled(*ln_factor), bath_c)
    })
    .ok_or(FigureError::NotFound)?;
    let scaled = start.scaled(level.at[0]);
    let prior = scaled.parameters();
    let mut residuals = |x: &[f64; PARAMETERS]| {
        let mut all = deviations(figures, &scaled.with(x), bath_c)?;
        all.extend(
            x.iter()
                .zip(&prior)
                .zip(BoilingShape::SPREAD)
                .map(|((x, p), spread)| (x - p) / spread),
        );
        Some(all)
    };
    let Minimum { at, covariance, .. } =
        minimise(prior, SPACING, &mut residuals).ok_or(FigureError::NotFound)?;
    let shape = scaled.with(&at);
    let h_band_factor = band(&scaled, &at, &covariance).ok_or(FigureError::NotFound)?;
    let medium = OwnMedium {
        h_band_factor: Some(h_band_factor),
        figures: *figures,
        ..shape.medium(bath_c)
    };
    let resolved = medium.resolve().map_err(|_| FigureError::NotFound)?;
    let simulated = simulate(figures, &resolved)?;
    Ok(FiguresFit {
        medium,
        template,
        compared: figures.beside(&simulated),
        h_band_factor,
    })
}

/// The medium of the list whose figures lie nearest, and its shape.
fn nearest(figures: &QuenchantFigures, bath_c: f64) -> Result<(String, BoilingShape), FigureError> {
    let ball_alone = figures.is_ball_alone();
    let like = |medium: &&Medium| match medium.family {
        Family::Oil => true,
        // With the ball alone nothing would tell them from an oil.
        Family::Brine | Family::Water | Family::Polymer | Family::VegetableOil => !ball_alone,
        _ => false,
    };
    let mut best: Option<(f64, String, BoilingShape)> = None;
    for medium in media().iter().filter(like) {
        let Some(shape) = BoilingShape::of(medium) else {
            continue;
        };
        let Some(deviations) = deviations(figures, &shape, bath_c) else {
            continue;
        };
        let sum: f64 = deviations.iter().map(|d| d * d).sum();
        if best.as_ref().is_none_or(|(least, ..)| sum < *least) {
            best = Some((sum, medium.name.clone(), shape));
        }
    }
    best.map(|(_, name, shape)| (name, shape))
        .ok_or(FigureError::NotFound)
}

/// By how many reproducibilities each computed figure lies above the given one; nothing where one
/// cannot be computed.
fn deviations(figures: &QuenchantFigures, shape: &BoilingShape, bath_c: f64) -> Option<Vec<f64>> {
    let medium = shape.medium(bath_c).resolve().ok()?;
    let simulated = simulate(figures, &medium).ok()?;
    figures
        .known()
        .map(|(figure, given)| Some(figure.deviation(simulated.get(figure)?, given)))
        .collect()
}

/// Computes the tests that the figures are of.
fn simulate(figures: &QuenchantFigures, medium: &Medium) -> Result<QuenchantFigures, HeatError> {
    let mut simulated = if figures.is_ball_alone() {
        QuenchantFigures::default()
    } else {
        QuenchantFigures::from(&probe(medium)?)
    };
    if figures.nickel_ball_s.is_some() {
        simulated.nickel_ball_s = nickel_ball_s(medium)?;
    }
    Ok(simulated)
}

/// Factor either way within which the mean of the heat transfer that decides lies, nine times in ten.
fn band(
    shape: &BoilingShape,
    at: &[f64; PARAMETERS],
    covariance: &[[f64; PARAMETERS]; PARAMETERS],
) -> Option<f64> {
    let level = |x: &[f64; PARAMETERS]| {
        // The bath has no part in the curve.
        let curve = HeatTransfer::new(&shape.with(x).points()).ok()?;
        Some(mean_ln_h(&curve))
    };
    let here = level(at)?;
    let mut slopes = [0.0; PARAMETERS];
    for (i, (slope, width)) in slopes.iter_mut().zip(SPACING).enumerate() {
        let mut beside = *at;
        *beside.get_mut(i)? += width;
        *slope = (level(&beside)? - here) / width;
    }
    let variance: f64 = covariance
        .iter()
        .zip(&slopes)
        .map(|(row, a)| a * row.iter().zip(&slopes).map(|(c, b)| c * b).sum::<f64>())
        .sum();
    Some(band_factor(variance))
}
