//! Hardness of a mixture of constituents, added in Vickers.

use super::Hardness;
use super::martensite::{as_quenched_martensite_hv, usual_austenite};
use crate::numeric::interpolate::linear_held;
use crate::sources::eutectoid_isothermal::{BAINITE_HV, PEARLITE_HV_BY_RATE};
use crate::sources::krauss_1999::{REFRIGERATED_HV, RETAINED_AUSTENITE_HV};
use crate::sources::maynier_1978::{self, bainite_hv, ferrite_pearlite_hv};
use crate::steel::{Composition, OutOfRange};
use crate::transform::Fractions;

/// Checks that fractions are fractions of one piece.
fn check(parts: &Fractions) -> Result<(), OutOfRange> {
    const MODEL: &str = "Hardness of a mixture";
    for (quantity, fraction) in [
        ("ferrite", parts.ferrite),
        ("pearlite", parts.pearlite),
        ("bainite", parts.bainite),
        ("martensite", parts.martensite),
        ("retained austenite", parts.austenite),
        ("carbide", parts.carbide),
    ] {
        OutOfRange::check(
            MODEL,
            quantity,
            "volume fraction",
            fraction,
            (-1e-6, 1.000001),
        )?;
    }
    let sum = parts.ferrite
        + parts.pearlite
        + parts.bainite
        + parts.martensite
        + parts.austenite
        + parts.carbide;
    OutOfRange::check(MODEL, "sum of fractions", "", sum, (0.999, 1.001))
}

/// Martensite counts this much harder for each part of undissolved carbide in it: a hard particle
/// carries load as its matrix allows. Cementite has about 1000 to 1150 HV in martensite of 830 to
/// 900 HV (memory).
pub(super) const CARBIDE_FACTOR: f64 = 1.2;

/// Share of soft products up to which [`maynier_1978`] is held at the edge of its range: there
/// its error of some 200 HV costs less than 1 HRC. Above it the mixture is refused.
const HELD_SHARE: f64 = 0.05;

/// Cooling rates at 700 °C between which the formulae follow the rate, K/s; held outside.
const RATE_K_PER_S: (f64, f64) = (0.003, 300.0);

/// Carbon over which Maynier's formulae give way to the eutectoid rows, wt %.
const EUTECTOID_WT: f64 = 0.77;

/// Vickers hardness of each constituent as quenched.
#[derive(Debug, Clone, Copy)]
pub(super) struct Parts {
    /// Martensite with the austenite that plain-carbon steel keeps.
    pub(super) quenched_hv: f64,
    /// That austenite, volume fraction.
    pub(super) usual_austenite: f64,
    pub(super) bainite_hv: f64,
    /// Ferrite and pearlite: the published formula is for both together.
    pub(super) ferrite_pearlite_hv: f64,
}

impl Parts {
    pub(super) fn of(
        dissolved: &Composition,
        constituents: &Fractions,
        rate_at_700c_k_per_s: f64,
    ) -> Result<Self, OutOfRange> {
        check(constituents)?;
        let quenched_hv = as_quenched_martensite_hv(dissolved.c)?;
        OutOfRange::check(
            "Hardness of a mixture",
            "cooling rate at 700 °C",
            "K/s",
            rate_at_700c_k_per_s,
            (0.0, f64::MAX),
        )?;
        let soft = constituents.ferrite + constituents.pearlite + constituents.bainite;
        if soft > HELD_SHARE {
            maynier_1978::RANGE.check(dissolved)?;
        }
        let mut held = *dissolved;
        for &(element, least, largest) in maynier_1978::RANGE.limits_wt {
            held.set(element, dissolved.get(element).clamp(least, largest));
        }
        let (least_c, largest_c) = maynier_1978::CARBON_WT;
        held.c = dissolved.c.clamp(least_c, largest_c);
        let rate = rate_at_700c_k_per_s.clamp(RATE_K_PER_S.0, RATE_K_PER_S.1);
        let log_rate_c_per_h = (rate * 3600.0).log10();

        let eutectoid = ((dissolved.c - largest_c) / (EUTECTOID_WT - largest_c)).clamp(0.0, 1.0);
        let pearlite = linear_held(&PEARLITE_HV_BY_RATE, rate.log10()).unwrap_or(0.0);
        let below = ferrite_pearlite_hv(&held, log_rate_c_per_h);
        let ferrite_pearlite_hv = (below + eutectoid * (pearlite - below)).clamp(80.0, quenched_hv);

        let below = bainite_hv(&held, log_rate_c_per_h);
        let above = below.clamp(BAINITE_HV.0, BAINITE_HV.1);
        let bainite_hv =
            (below + eutectoid * (above - below)).clamp(ferrite_pearlite_hv, quenched_hv);
        Ok(Self {
            quenched_hv,
            usual_austenite: usual_austenite(dissolved.c),
            bainite_hv,
            ferrite_pearlite_hv,
        })
    }

    /// Hardness of the mixture as quenched.
    pub(super) fn mix(&self, x: &Fractions) -> Hardness {
        let alone = martensite_alone_hv(self.quenched_hv, self.usual_austenite);
        sum(x.martensite * alone
            + x.austenite * RETAINED_AUSTENITE_HV
            + x.carbide * CARBIDE_FACTOR * alone
            + x.bainite * self.bainite_hv
            + (x.ferrite + x.pearlite) * self.ferrite_pearlite_hv)
    }
}

/// Martensite without the austenite that its measured hardness `hv` holds.
pub(super) fn martensite_alone_hv(hv: f64, austenite: f64) -> f64 {
    (hv - austenite * RETAINED_AUSTENITE_HV) / (1.0 - austenite)
}

/// A sum of shares as a hardness: no mixture exceeds refrigerated high-carbon martensite.
pub(super) fn sum(hv: f64) -> Hardness {
    Hardness {
        hv: hv.min(REFRIGERATED_HV),
    }
}

/// Hardness of a piece as quenched.
///
/// `dissolved` is what the austenite held, wt %; `rate_at_700c_k_per_s` the cooling rate at 700 °C.
/// Martensite by its carbon, retained austenite as 300 HV, carbide as 1.2 times martensite; bainite
/// and ferrite with pearlite after Maynier 1978 up to 0.5 % C, by rows of the eutectoid isothermal
/// diagram from 0.77 % C, a straight blend between; bainite never softer than pearlite nor harder
/// than martensite. Since the measured hardness of martensite holds the austenite that plain-carbon
/// steel keeps, only austenite beyond that softens.
///
/// # Errors
/// Fractions that do not add up to 1, carbon outside 0.10 to 1.40 wt %, a rate that is negative
/// or not a number, or more than 5 % ferrite, pearlite and bainite in a steel outside Maynier's
/// range.
pub fn mixture(
    dissolved: &Composition,
    constituents: &Fractions,
    rate_at_700c_k_per_s: f64,
) -> Result<Hardness, OutOfRange> {
    Ok(Parts::of(dissolved, constituents, rate_at_700c_k_per_s)?.mix(constituents))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steel(carbon_wt: f64) -> Composition {
        Composition {
            c: carbon_wt,
            mn: 0.7,
            si: 0.25,
            ..Composition::default()
        }
    }

    fn quenched(martensite: f64, austenite: f64) -> Fractions {
        Fractions {
            martensite,
            austenite,
            ..Fractions::default()
        }
    }

    #[test]
    fn usual_austenite_gives_the_as_quenched_curve() {
        for carbon in [0.2, 0.5, 0.8, 1.0] {
            let usual = usual_austenite(carbon);
            let hv = mixture(&steel(carbon), &quenched(1.0 - usual, usual), 50.0)
                .unwrap()
                .hv;
            assert!((hv - as_quenched_martensite_hv(carbon).unwrap()).abs() < 1e-9);
        }
    }

    /// Rule of thumb (memory): 20 % austenite costs 1 to 2 HRC, 30 % 3 to 4, 50 % about 8.
    #[test]
    fn austenite_beyond_the_usual_softens_by_the_rule_of_thumb() {
        let hrc = |austenite: f64| {
            mixture(&steel(1.0), &quenched(1.0 - austenite, austenite), 50.0)
                .unwrap()
                .hrc()
                .unwrap()
        };
        assert!((66.0 - hrc(0.20) - 1.5).abs() < 1.0, "{}", hrc(0.20));
        assert!((66.0 - hrc(0.30) - 3.5).abs() < 1.0, "{}", hrc(0.30));
        assert!((66.0 - hrc(0.50) - 8.0).abs() < 1.5, "{}", hrc(0.50));
        // Common practice, no source: a cold treatment never lowers hardness.
        assert!(hrc(0.02) >= hrc(0.12));
    }

    #[test]
    fn constituents_stand_in_order_of_hardness() {
        for carbon in [0.1, 0.3, 0.5, 0.6, 0.77, 1.0] {
            for rate in [0.001, 0.1, 3.0, 100.0, 1e5] {
                let parts = Parts::of(&steel(carbon), &quenched(1.0, 0.0), rate).unwrap();
                assert!(parts.ferrite_pearlite_hv <= parts.bainite_hv);
                assert!(parts.bainite_hv <= parts.quenched_hv);
            }
        }
    }

    /// Normalised (air-cooled bar) 0.8 % carbon steel 293 HB, 0.4 % carbon steel 170 HB (memory).
    #[test]
    fn normalised_bars() {
        let pearlite = Fractions {
            pearlite: 1.0,
            ..Fractions::default()
        };
        let hv = mixture(&steel(0.8), &pearlite, 1.0).unwrap().hv;
        assert!((hv - 305.0).abs() < 30.0, "{hv}");
        let hv = mixture(&steel(0.4), &pearlite, 1.0).unwrap().hv;
        assert!((hv - 178.0).abs() < 25.0, "{hv}");
    }

    #[test]
    fn fractions_that_do_not_add_up_are_refused() {
        assert!(mixture(&steel(0.5), &quenched(0.7, 0.1), 10.0).is_err());
        assert!(mixture(&steel(0.5), &quenched(f64::NAN, 0.1), 10.0).is_err());
        assert!(mixture(&steel(0.5), &quenched(1.0, 0.0), f64::NAN).is_err());
    }

    #[test]
    fn soft_products_outside_the_published_range_are_refused() {
        let mut high = steel(0.6);
        high.cr = 5.0;
        let mostly = Fractions {
            martensite: 0.5,
            bainite: 0.5,
            ..Fractions::default()
        };
        assert!(mixture(&high, &mostly, 1.0).is_err());
        assert!(mixture(&high, &quenched(0.9, 0.1), 1.0).is_ok());
    }
}
