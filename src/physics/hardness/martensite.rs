//! Hardness of martensite against the carbon in it.

use super::Hardness;
use crate::numeric::interpolate::{linear_held, pchip};
use crate::sources::astm_a255_hardness::{FULL_MARTENSITE, HALF_MARTENSITE, hrc};
use crate::sources::hodge_orehoski_1946::SHARE;
use crate::sources::krauss_1999::{PLATEAU_HRC, USUAL_AUSTENITE};
use crate::steel::{Composition, OutOfRange};
use recalesce_texts::hardness as texts;

/// Carbon in austenite for which martensite hardness is known, wt %.
pub(super) const CARBON_WT: (f64, f64) = (0.10, 1.40);

/// Carbon up to which the polynomial of ASTM A255 is followed, wt %.
const FOOT_WT: f64 = 0.60;

/// Carbon above which the half-martensite curve is held: the end of its polynomial, wt %.
const HALF_END_WT: f64 = 0.70;

const MODEL: &str = texts::OF_MARTENSITE;

pub(super) fn check_carbon(carbon_wt: f64) -> Result<(), OutOfRange> {
    OutOfRange::check(
        MODEL,
        texts::CARBON_IN_AUSTENITE,
        "wt %",
        carbon_wt,
        CARBON_WT,
    )
}

/// Fully quenched hardness, HRC, of steel whose austenite held `carbon_wt` and was cooled to room
/// temperature: with the austenite that plain-carbon steel of that carbon keeps.
///
/// ASTM A255 to 0.60 % C, then a monotone curve to 65.5 HRC at 0.8 % and flat 66 from 0.9 %.
///
/// # Errors
/// Carbon outside 0.10 to 1.40 wt %.
pub fn as_quenched_martensite_hrc(carbon_wt: f64) -> Result<f64, OutOfRange> {
    check_carbon(carbon_wt)?;
    if carbon_wt <= FOOT_WT {
        return Ok(hrc(&FULL_MARTENSITE, carbon_wt));
    }
    let foot = [FOOT_WT, hrc(&FULL_MARTENSITE, FOOT_WT)];
    // The knot before the foot gives the curve the polynomial's slope there.
    let before = [0.50, hrc(&FULL_MARTENSITE, 0.50)];
    let [a, b, c, d] = PLATEAU_HRC;
    Ok(pchip(&[before, foot, a, b, c, d], carbon_wt).unwrap_or(d[1]))
}

/// [`as_quenched_martensite_hrc`] in Vickers, kgf/mm².
///
/// # Errors
/// Carbon outside 0.10 to 1.40 wt %.
pub fn as_quenched_martensite_hv(carbon_wt: f64) -> Result<f64, OutOfRange> {
    as_quenched_martensite_hrc(carbon_wt).map(|hrc| Hardness::from_hrc_carried(hrc).hv)
}

/// Hardness at 50 % martensite, HRC; held above 0.70 % C, where the published curve ends.
///
/// # Errors
/// Carbon outside 0.10 to 1.40 wt %.
pub fn half_martensite_hrc(carbon_wt: f64) -> Result<f64, OutOfRange> {
    check_carbon(carbon_wt)?;
    Ok(hrc(&HALF_MARTENSITE, carbon_wt.min(HALF_END_WT)))
}

/// Volume fraction of austenite that plain-carbon steel of this carbon keeps at 20 °C and that the
/// as-quenched curve therefore holds already.
#[must_use]
pub fn usual_austenite(carbon_wt: f64) -> f64 {
    linear_held(&USUAL_AUSTENITE, carbon_wt).unwrap_or(0.0)
}

/// As-quenched hardness of steel with its carbon dissolved and the given volume fraction of
/// martensite, the rest softer products of cooling; 0.99 and 1 mean fully quenched, with the
/// usual retained austenite. Alloying does not count: as-quenched hardness follows carbon alone.
///
/// # Errors
/// Carbon outside 0.10 to 1.40 wt %, martensite outside 0.5 to 1.
pub fn as_quenched(steel: &Composition, martensite_fraction: f64) -> Result<Hardness, OutOfRange> {
    OutOfRange::check(
        texts::BY_MARTENSITE_CONTENT,
        texts::MARTENSITE,
        texts::VOLUME_FRACTION,
        martensite_fraction,
        (0.5, 1.0),
    )?;
    let full = as_quenched_martensite_hrc(steel.c)?;
    let half = half_martensite_hrc(steel.c)?;
    let share = pchip(&SHARE, martensite_fraction).unwrap_or(1.0);
    Ok(Hardness::from_hrc_carried(half + share * (full - half)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rises_with_carbon_and_levels_off() {
        let mut last = 0.0;
        for i in 10..=140 {
            let hrc = as_quenched_martensite_hrc(f64::from(i) / 100.0).unwrap();
            assert!(hrc >= last, "falls at {i}");
            last = hrc;
        }
        // Common practice, no source: from 0.6 to 0.8 % gain under 2 HRC.
        let gain =
            as_quenched_martensite_hrc(0.8).unwrap() - as_quenched_martensite_hrc(0.6).unwrap();
        assert!(gain > 0.0 && gain < 2.0);
    }

    #[test]
    fn rises_with_martensite() {
        for carbon in [0.15, 0.4, 0.7, 1.0] {
            let steel = Composition::default().with_carbon(carbon);
            let mut last = 0.0;
            for percent in 50..=100 {
                let hv = as_quenched(&steel, f64::from(percent) / 100.0).unwrap().hv;
                assert!(hv >= last);
                last = hv;
            }
        }
    }

    #[test]
    fn refuses_outside() {
        let steel = Composition::default().with_carbon(0.05);
        assert!(as_quenched(&steel, 1.0).is_err());
        assert!(as_quenched(&steel.with_carbon(0.5), 0.4).is_err());
        assert!(as_quenched(&steel.with_carbon(0.5), f64::NAN).is_err());
    }
}
