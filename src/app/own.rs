//! A quenchant of the user's own as the page shows it, whichever way it was found. The fits are
//! errands: they run in the second thread.

use super::errand::{OnScales, on_scales};
use recalesce::advise::{Coupon, ReadingFit, fit_coupon};
use recalesce::heat::{
    Compared, CurveFit, CurveFitProgress, CurveNote, CurveOptions, Figure, FigureError, FittedKnot,
    Medium, OwnMedium, ProbeCurve, QuenchantFigures, fit_figures, medium,
};
use recalesce::route::inside_a_sentence;
use recalesce::units::{TemperatureScale, format_kelvin};
use recalesce_texts::page as texts;
use serde::{Deserialize, Serialize};

/// What was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct Found {
    /// The curve, its bath, its band and its figures.
    pub(crate) medium: OwnMedium,
    /// Its figures as given and as computed.
    pub(crate) compared: Vec<Compared>,
    /// From a probe curve: how well each point of the curve is known.
    pub(crate) knots: Vec<FittedKnot>,
    /// From a probe curve: time since entry, s, measured and computed temperature, °C.
    pub(crate) points: Vec<[f64; 3]>,
    /// From a coupon: its readings as given and as computed.
    pub(crate) readings: Vec<ReadingFit>,
    /// What was assumed and what is left open, in words.
    pub(crate) notes: Vec<OnScales>,
}

/// What comes of a fit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Fitted {
    /// How far it is; more comes.
    Progress(CurveFitProgress),
    /// A quenchant.
    Quenchant(Box<Found>),
    /// No quenchant, and why; the figure that is to blame if there is one.
    Refused {
        figure: Option<Figure>,
        why: OnScales,
    },
}

impl Found {
    /// What is still known of a quenchant that is kept with a route.
    pub(crate) fn kept(own: &OwnMedium) -> Option<Self> {
        let medium = own.resolve().ok()?;
        let compared = if own.figures.is_empty() {
            Vec::new()
        } else {
            own.figures.beside(&QuenchantFigures::of(&medium).ok()?)
        };
        Some(Self {
            medium: own.clone(),
            compared,
            knots: Vec::new(),
            points: Vec::new(),
            readings: Vec::new(),
            notes: vec![band_words(medium.h_band_factor)],
        })
    }
}

fn band_words(factor: f64) -> OnScales {
    on_scales(|_| texts::own::nose_within(factor))
}

/// Finds it from its figures, in a bath, °C.
pub(super) fn from_figures(figures: &QuenchantFigures, bath_c: f64) -> Fitted {
    match fit_figures(figures, bath_c) {
        Ok(fit) => {
            let like = medium(&fit.template).map(|known: &Medium| {
                on_scales(|scale| {
                    texts::own::left_open(&inside_a_sentence(&known.title.words(scale)))
                })
            });
            Fitted::Quenchant(Box::new(Found {
                medium: fit.medium,
                compared: fit.compared,
                knots: Vec::new(),
                points: Vec::new(),
                readings: Vec::new(),
                notes: like
                    .into_iter()
                    .chain([band_words(fit.h_band_factor)])
                    .collect(),
            }))
        }
        Err(error) => Fitted::Refused {
            figure: figure_of(&error),
            why: on_scales(|scale| error.words(scale)),
        },
    }
}

/// The figure that an error is about.
const fn figure_of(error: &FigureError) -> Option<Figure> {
    match error {
        FigureError::Outside { figure, .. } => Some(*figure),
        _ => None,
    }
}

/// Finds it from a measured curve of the probe, in a bath, °C, and tells how far it is.
pub(super) fn from_curve(
    text: &str,
    scale: Option<TemperatureScale>,
    bath_c: f64,
    mut tell: impl FnMut(CurveFitProgress),
) -> Fitted {
    let options = CurveOptions {
        scale,
        ..CurveOptions::default()
    };
    let refused = |why: OnScales| Fitted::Refused { figure: None, why };
    let curve = match ProbeCurve::read(text, &options) {
        Ok(curve) => curve,
        Err(error) => return refused(on_scales(|scale| error.words(scale))),
    };
    let found = CurveFit::new(&curve, bath_c).and_then(|mut fit| {
        loop {
            let progress = fit.step();
            tell(progress);
            if progress.is_done {
                return fit.fitted();
            }
        }
    });
    match found {
        Ok(fit) => {
            let of_text = |note: &CurveNote| on_scales(|scale| note.words(scale));
            let mut notes: Vec<OnScales> = curve.notes.iter().map(of_text).collect();
            notes.push(on_scales(|scale| {
                let [rms, scatter] =
                    [fit.rms_k, fit.expected_rms_k].map(|k| format_kelvin(k, 1, scale));
                texts::own::misses_readings(&rms, &scatter)
            }));
            notes.push(band_words(fit.h_band_factor));
            Fitted::Quenchant(Box::new(Found {
                medium: fit.medium,
                compared: fit.compared,
                knots: fit.knots,
                points: fit.points,
                readings: Vec::new(),
                notes,
            }))
        }
        Err(error) => refused(on_scales(|scale| error.words(scale))),
    }
}

/// Finds it from a test coupon.
pub(super) fn from_coupon(coupon: &Coupon) -> Fitted {
    match fit_coupon(coupon) {
        Ok(fit) => {
            let ball = fit.figures.nickel_ball_s;
            let ball = ball.map(|s| on_scales(|_| texts::own::nickel_ball(s)));
            let notes = fit.notes.iter().map(|note| on_scales(|_| note.to_string()));
            Fitted::Quenchant(Box::new(Found {
                medium: fit.medium,
                compared: Vec::new(),
                knots: Vec::new(),
                points: Vec::new(),
                readings: fit.readings,
                notes: notes.chain(ball).collect(),
            }))
        }
        Err(error) => Fitted::Refused {
            figure: None,
            why: on_scales(|scale| error.words(scale)),
        },
    }
}
