//! Why a question is not answered.

use super::LONGEST_LINE_BYTES;
use crate::advise::{AdviseError, CouponError};
use crate::heat::{CurveError, CurveFitError, FigureError, HeatError, MediumError};
use crate::phases::{EquilibriumError, PhaseError};
use crate::route::RouteError;
use crate::soak::SoakError;
use crate::steel::{CompositionError, OutOfRange, UnknownGrade};

#[derive(Debug, thiserror::Error)]
pub(super) enum Refusal {
    #[error("the line is longer than {LONGEST_LINE_BYTES} bytes")]
    LongLine,
    #[error("the line is not UTF-8 text")]
    NotText,
    #[error("the line is not JSON: {0}")]
    NotJson(String),
    #[error(
        "a question is a JSON object, such as {{\"question\":\"probe\",\"medium\":\"water20\"}}"
    )]
    NotAnObject,
    #[error("the field `question` is missing; it is one of {known}")]
    NoQuestion { known: String },
    #[error("{asked} is no question known here; it is one of {known}")]
    UnknownQuestion { asked: String, known: String },
    #[error("the field `{field}` is missing; `{question}` takes {takes}")]
    Missing {
        field: String,
        question: &'static str,
        takes: String,
    },
    #[error("unknown field `{field}`; `{question}` takes {takes}")]
    UnknownField {
        field: String,
        question: &'static str,
        takes: String,
    },
    #[error("`{field}`: {fault}")]
    Field { field: String, fault: String },
    #[error("`{field}`: {value} is outside {least} to {most}{unit}")]
    Outside {
        field: &'static str,
        value: f64,
        least: f64,
        most: f64,
        unit: &'static str,
    },
    #[error("`grade`: {0}")]
    Grade(#[from] UnknownGrade),
    #[error("`composition`: {0}")]
    Composition(#[from] CompositionError),
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    #[error("`route`: {0}")]
    Route(#[from] RouteError),
    #[error(transparent)]
    Phase(#[from] PhaseError),
    #[error(transparent)]
    Equilibrium(#[from] EquilibriumError),
    #[error(transparent)]
    Soak(#[from] SoakError),
    #[error("`medium`: {0}")]
    Medium(#[from] MediumError),
    #[error(transparent)]
    Heat(#[from] HeatError),
    #[error(transparent)]
    Coupon(#[from] CouponError),
    #[error(transparent)]
    Advise(#[from] AdviseError),
    #[error("`figures`: {0}")]
    Figures(#[from] FigureError),
    #[error("`curve_text`: {0}")]
    Curve(#[from] CurveError),
    #[error("`curve_text`: {0}")]
    CurveFit(#[from] CurveFitError),
    #[error("the answer cannot be written: {0}")]
    Unwritable(#[from] serde_json::Error),
}
