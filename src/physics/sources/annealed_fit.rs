//! Hardness of ferrite with round carbide in it: this project's own fit.
//!
//! Form: `HV = ferrite + k / √λ`, with the free path between carbides `λ = 4/3 r (1 - f) / f` in µm;
//! of ferrite, [`super::pickering_1978`]. Slip in ferrite is stopped at carbides, so strength goes
//! with the inverse square root of the way between them.
//!
//! Data: the usual hardness of steel annealed at the mill, from memory: three grades, with the carbide of
//! the annealed structure and its usual size. Method: least squares of the one constant k.
//!
//! Error with each steel left out in turn: see [`LEFT_OUT`]. Three steels say little: what is shown
//! beside the number is the wider [`BAND_HV`].

use super::{LeftOut, Source, Standing};
use crate::steel::Composition;

/// The fit.
pub const SOURCE: Source = Source {
    key: "annealed_fit",
    authors: "This project",
    year: 2026,
    title: "Hardness of annealed steel fitted to the usual hardness of three grades",
    venue: "Fitted here; method, data and error in the source file",
    link: None,
    used_for: "hardness of ferrite with round carbide",
    standing: Standing::FittedHere,
};

/// Gain over ferrite for a free path of 1 µm, HV √µm.
pub const GAIN_HV_SQRT_UM: f64 = 128.0;

/// How far steel of the list lies off, HV: grades differ by more than the fit does, as mills anneal
/// them to different sizes of carbide.
pub const BAND_HV: f64 = 35.0;

/// Error on what was left out.
pub const LEFT_OUT: LeftOut = LeftOut {
    fold: "steel",
    folds: 3,
    error: 3.5,
    unit: "HV",
};

/// A steel annealed at the mill.
#[derive(Debug, Clone, Copy)]
pub struct AnnealedSteel {
    /// Composition, wt %.
    pub composition: Composition,
    /// Volume fraction of carbide.
    pub carbide_volume_fraction: f64,
    /// Vickers hardness: 192, 187 and 175 HB by the conversion tables.
    pub hv: f64,
}

/// Radius of the carbide that halves its volume, µm: spheroids of 0.5 µm mean diameter.
pub const RADIUS_UM: f64 = 0.373;

/// The steels: 1C-1.5Cr, 0.95C and 0.6C-0.8Cr.
pub const STEELS: [AnnealedSteel; 3] = [
    annealed([1.0, 0.35, 0.25, 1.45], 0.15, 202.0),
    annealed([0.95, 0.4, 0.2, 0.0], 0.143, 197.0),
    annealed([0.6, 0.88, 0.25, 0.8], 0.09, 184.0),
];

const fn annealed(
    [c, mn, si, cr]: [f64; 4],
    carbide_volume_fraction: f64,
    hv: f64,
) -> AnnealedSteel {
    AnnealedSteel {
        composition: Composition {
            c,
            mn,
            si,
            cr,
            mo: 0.0,
            ni: 0.0,
            v: 0.0,
            w: 0.0,
            p: 0.0,
            s: 0.0,
        },
        carbide_volume_fraction,
        hv,
    }
}
