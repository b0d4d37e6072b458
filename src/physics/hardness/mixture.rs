//! Hardness of a mixture of constituents, added in Vickers.

use super::Hardness;
use super::martensite::{as_quenched_martensite_hv, usual_austenite};
use super::mixing::{Mixed, Soft, beside, martensite_alone_hv, mixed_hv};
use super::soft;
use crate::steel::{Composition, OutOfRange};
use crate::transform::{Formed, FormedProduct, Fractions};
use recalesce_texts::hardness as texts;

const MODEL: &str = texts::OF_A_MIXTURE;

/// Checks that fractions are fractions of one piece.
fn check(parts: &Fractions) -> Result<(), OutOfRange> {
    for (quantity, fraction) in [
        (texts::FERRITE, parts.ferrite),
        (texts::PEARLITE, parts.pearlite),
        (texts::BAINITE, parts.bainite),
        (texts::MARTENSITE, parts.martensite),
        (texts::RETAINED_AUSTENITE, parts.austenite),
        (texts::CARBIDE, parts.carbide),
    ] {
        OutOfRange::check(
            MODEL,
            quantity,
            texts::VOLUME_FRACTION,
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
    OutOfRange::check(MODEL, texts::SUM_OF_FRACTIONS, "", sum, (0.999, 1.001))
}

/// Share of soft products up to which their hardness may be outside of its range: there an error
/// of some 200 HV costs less than 1 HRC. Above it the mixture is refused.
const HELD_SHARE: f64 = 0.015;

/// Temperatures at which a product may have formed, °C.
const FORMED_C: (f64, f64) = (0.0, 950.0);

/// Nothing in steel is softer than iron, HV.
const SOFTEST_HV: f64 = 80.0;

/// Hardness of a product that is not there: it does not count.
const NOTHING_HV: f64 = 0.0;

/// Vickers hardness of each constituent as quenched.
#[derive(Debug, Clone, Copy)]
pub(super) struct Parts {
    /// Martensite with the austenite that plain-carbon steel keeps.
    pub(super) quenched_hv: f64,
    /// That austenite, volume fraction.
    pub(super) usual_austenite: f64,
    pub(super) bainite_hv: f64,
    pub(super) pearlite_hv: f64,
    pub(super) ferrite_hv: f64,
}

impl Parts {
    pub(super) fn of(
        dissolved: &Composition,
        constituents: &Fractions,
        formed: &Formed,
    ) -> Result<Self, OutOfRange> {
        check(constituents)?;
        let quenched_hv = as_quenched_martensite_hv(dissolved.c)?;
        let soft = constituents.ferrite + constituents.pearlite + constituents.bainite;
        if soft > HELD_SHARE {
            soft::RANGE.check_dissolved(dissolved)?;
        }
        let product = |quantity, share: f64, formed: Option<FormedProduct>| {
            if share <= 0.0 {
                return Ok(NOTHING_HV);
            }
            let formed = formed.unwrap_or(FormedProduct {
                temperature_c: f64::NAN,
                carbon_wt: f64::NAN,
            });
            OutOfRange::check(MODEL, quantity, "°C", formed.temperature_c, FORMED_C)?;
            OutOfRange::check(
                MODEL,
                texts::CARBON_OF_A_PRODUCT,
                "wt %",
                formed.carbon_wt,
                (0.0, 7.0),
            )?;
            Ok(soft::aggregate_hv(dissolved, &formed).clamp(SOFTEST_HV, quenched_hv))
        };
        Ok(Self {
            quenched_hv,
            usual_austenite: usual_austenite(dissolved.c),
            bainite_hv: product(
                texts::WHERE_BAINITE_FORMED,
                constituents.bainite,
                formed.bainite,
            )?,
            pearlite_hv: product(
                texts::WHERE_PEARLITE_FORMED,
                constituents.pearlite,
                formed.pearlite,
            )?,
            ferrite_hv: soft::ferrite_hv(dissolved).clamp(SOFTEST_HV, quenched_hv),
        })
    }

    /// Ferrite, pearlite and bainite of a mixture, beside `fresh` martensite that the fractions do not
    /// hold; none is harder than `limit_hv`.
    pub(super) fn soft(&self, x: &Fractions, fresh: f64, limit_hv: f64) -> Soft<f64> {
        let parts = [x.bainite, x.pearlite, x.ferrite];
        let each = [self.bainite_hv, self.pearlite_hv, self.ferrite_hv];
        Soft::of(beside(x, fresh), parts, each, &limit_hv)
    }

    /// Hardness of the mixture as quenched.
    pub(super) fn mix(&self, x: &Fractions) -> Hardness {
        self.mix_at(x, self.quenched_hv)
    }

    /// Hardness of the mixture whose martensite has fallen by some HRC.
    pub(super) fn mix_after(&self, x: &Fractions, fall_hrc: f64) -> Hardness {
        if fall_hrc <= 0.0 {
            return self.mix(x);
        }
        let quenched = Hardness {
            hv: self.quenched_hv,
        };
        let fallen = Hardness::from_hrc_carried(quenched.hrc_carried() - fall_hrc);
        self.mix_at(x, fallen.hv.min(self.quenched_hv))
    }

    fn mix_at(&self, x: &Fractions, martensite_hv: f64) -> Hardness {
        let alone = martensite_alone_hv(martensite_hv, self.usual_austenite);
        Hardness {
            hv: mixed_hv(Mixed {
                martensite: x.martensite,
                alone_hv: alone,
                fresh: 0.0,
                fresh_hv: alone,
                austenite: x.austenite,
                carbide: x.carbide,
                soft: self.soft(x, 0.0, self.quenched_hv),
            }),
        }
    }
}

/// Hardness of a piece as quenched.
///
/// `dissolved` is what the austenite held, wt %; `formed` tells at which temperatures its products
/// formed. Martensite by its carbon, retained austenite as 300 HV, carbide as 1.2 times martensite;
/// pearlite and bainite by the eutectoid isothermal diagram at the temperature at which they
/// formed, less for less carbon, on ferrite hardened by what it dissolves; nothing harder than
/// martensite. Hard and soft mix by [`mixed_hv`]: half martensite comes out 1.3 HRC harder on average
/// than ASTM A255 has it, where a mean by volume makes it 4 to 5 HRC harder. Since the measured
/// hardness of martensite holds the austenite that plain-carbon steel keeps, only austenite beyond
/// that softens.
///
/// # Errors
/// Fractions that do not add up to 1, carbon outside 0.10 to 1.40 wt %, a product whose
/// temperature is not told, or more than 5 % ferrite, pearlite and bainite in a steel with more
/// than 2.1 % Mn, 2.2 % Si, 4 % Ni, 3 % Cr, 1 % Mo or 0.2 % V.
pub fn mixture(
    dissolved: &Composition,
    constituents: &Fractions,
    formed: &Formed,
) -> Result<Hardness, OutOfRange> {
    Ok(Parts::of(dissolved, constituents, formed)?.mix(constituents))
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
            let hv = mixture(
                &steel(carbon),
                &quenched(1.0 - usual, usual),
                &Formed::default(),
            )
            .unwrap()
            .hv;
            assert!((hv - as_quenched_martensite_hv(carbon).unwrap()).abs() < 1e-9);
        }
    }

    /// Rule of thumb (memory): 20 % austenite costs 1 to 2 HRC, 30 % 3 to 4, 50 % about 8.
    #[test]
    fn austenite_beyond_the_usual_softens_by_the_rule_of_thumb() {
        let hrc = |austenite: f64| {
            mixture(
                &steel(1.0),
                &quenched(1.0 - austenite, austenite),
                &Formed::default(),
            )
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

    fn formed(pearlite_c: f64, bainite_c: f64, carbon_wt: f64) -> Formed {
        let product = |temperature_c| {
            Some(FormedProduct {
                temperature_c,
                carbon_wt,
            })
        };
        Formed {
            pearlite: product(pearlite_c),
            bainite: product(bainite_c),
        }
    }

    #[test]
    fn constituents_stand_in_order_of_hardness() {
        let each = Fractions {
            ferrite: 0.25,
            pearlite: 0.25,
            bainite: 0.25,
            martensite: 0.25,
            ..Fractions::default()
        };
        for carbon in [0.1, 0.3, 0.5, 0.6, 0.77, 1.0] {
            for (pearlite_c, bainite_c) in [(710.0, 550.0), (650.0, 450.0), (540.0, 250.0)] {
                let formed = formed(pearlite_c, bainite_c, carbon);
                let parts = Parts::of(&steel(carbon), &each, &formed).unwrap();
                assert!(parts.ferrite_hv <= parts.pearlite_hv);
                assert!(parts.pearlite_hv <= parts.bainite_hv);
                assert!(parts.bainite_hv <= parts.quenched_hv);
            }
        }
    }

    /// Normalised (air-cooled bar, about 1 K/s) 0.8 % carbon steel 293 HB, 0.4 % carbon steel
    /// 170 HB (memory). The kinetics let pearlite of the former begin some 20 K too warm, which
    /// costs 3 HRC.
    #[test]
    fn normalised_bars() {
        for (carbon, hv, tolerance_hv) in [(0.8, 305.0, 45.0), (0.4, 178.0, 25.0)] {
            let austenite = crate::transform::Austenite {
                composition: steel(carbon),
                grain_astm: 7.0,
                undissolved_carbide_volume_fraction: 0.0,
            };
            let kinetics = crate::transform::Kinetics::new(&austenite).unwrap();
            let cooling = kinetics.cooling_at(1.0).unwrap();
            let found = mixture(&steel(carbon), &cooling.fractions, &cooling.formed).unwrap();
            assert!((found.hv - hv).abs() < tolerance_hv, "{carbon}: {found:?}");
        }
    }

    #[test]
    fn fractions_that_do_not_add_up_are_refused() {
        let none = Formed::default();
        assert!(mixture(&steel(0.5), &quenched(0.7, 0.1), &none).is_err());
        assert!(mixture(&steel(0.5), &quenched(f64::NAN, 0.1), &none).is_err());
    }

    #[test]
    fn soft_products_outside_their_range_are_refused() {
        let mut high = steel(0.6);
        high.cr = 5.0;
        let mostly = Fractions {
            martensite: 0.5,
            bainite: 0.5,
            ..Fractions::default()
        };
        let formed = formed(600.0, 400.0, 0.6);
        assert!(mixture(&steel(0.6), &mostly, &formed).is_ok());
        assert!(mixture(&high, &mostly, &formed).is_err());
        assert!(mixture(&high, &quenched(0.9, 0.1), &formed).is_ok());
    }

    #[test]
    fn a_product_of_unknown_origin_is_refused() {
        let mostly = Fractions {
            martensite: 0.5,
            pearlite: 0.5,
            ..Fractions::default()
        };
        assert!(mixture(&steel(0.6), &mostly, &Formed::default()).is_err());
        let never = formed(f64::NAN, 400.0, 0.6);
        assert!(mixture(&steel(0.6), &mostly, &never).is_err());
    }
}
