//! Hardness of ferrite with carbide spread in it, from the size and the amount of the carbide.
//!
//! Slip in ferrite is stopped at carbides, so strength goes with the inverse square root of the
//! free path between them: `HV = ferrite + k / √λ`, `λ = 4/3 r (1 - f) / f`
//! ([`crate::sources::annealed_fit`]).

use super::soft::ferrite_hv;
use super::{Hardness, mixing::sum};
use crate::sources::annealed_fit::GAIN_HV_SQRT_UM;
use crate::steel::{Composition, OutOfRange};
use recalesce_texts::hardness as texts;

/// How far steel of the list lies off, HV.
pub use crate::sources::annealed_fit::BAND_HV as ANNEALED_BAND_HV;
/// Alloy in solution in ferrite is what carbide has left over: at most so much of each counts,
/// wt %.
const MOST_IN_FERRITE_WT: f64 = 3.0;

/// Vickers hardness of ferrite with `carbide_volume_fraction` of carbide, of the radius that halves
/// its volume, µm. Uncertainty [`ANNEALED_BAND_HV`].
///
/// # Errors
/// A fraction outside 0 to 0.6, or a radius that is not above zero.
pub fn annealed(
    steel: &Composition,
    carbide_volume_fraction: f64,
    carbide_radius_um: f64,
) -> Result<Hardness, OutOfRange> {
    const MODEL: &str = texts::ANNEALED;
    OutOfRange::check(
        MODEL,
        texts::CARBIDE,
        texts::VOLUME_FRACTION,
        carbide_volume_fraction,
        (0.0, 0.6),
    )?;
    OutOfRange::check(
        MODEL,
        texts::RADIUS_OF_CARBIDE,
        "µm",
        carbide_radius_um,
        (0.005, 50.0),
    )?;
    let fraction = carbide_volume_fraction;
    let gain_hv = if fraction > 0.0 {
        let path_um = 4.0 / 3.0 * carbide_radius_um * (1.0 - fraction) / fraction;
        GAIN_HV_SQRT_UM / path_um.sqrt()
    } else {
        0.0
    };
    Ok(sum(ferrite_hv(&in_ferrite(steel)) + gain_hv))
}

/// What of the steel's alloy ferrite holds beside carbide: all of what makes no carbide, and less
/// and less of what does.
fn in_ferrite(steel: &Composition) -> Composition {
    let held = |wt: f64| wt / (1.0 + wt / MOST_IN_FERRITE_WT);
    Composition {
        cr: held(steel.cr),
        mo: 0.0,
        v: 0.0,
        w: 0.0,
        ..*steel
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fine_carbide_and_much_of_it_harden() {
        let steel = Composition::default().with_carbon(0.8);
        let hv = |fraction, um| annealed(&steel, fraction, um).unwrap().hv;
        assert!(hv(0.12, 0.1) > hv(0.12, 0.4));
        assert!(hv(0.15, 0.4) > hv(0.10, 0.4));
        assert!((hv(0.0, 0.4) - ferrite_hv(&steel)).abs() < 1e-9);
        assert!(annealed(&steel, f64::NAN, 0.4).is_err());
        assert!(annealed(&steel, 0.1, 0.0).is_err());
    }
}
