//! Hardness of ferrite, pearlite and bainite as they formed.
//!
//! Aggregates of ferrite and carbide are the finer the colder they form. Eutectoid carbon steel
//! tells how hard each temperature makes them; other steels have less carbide in between and a
//! ferrite of another hardness: HV = ferrite + (eutectoid - its ferrite) (C / 0.77)^m.

use super::Hardness;
use crate::numeric::formula::Number;
use crate::numeric::interpolate::linear_held;
use crate::sources::eutectoid_isothermal::{self, HRC_BY_TEMPERATURE};
use crate::sources::grange_1961::ae1_c;
use crate::sources::maynier_1978::{VANADIUM_HV, dissolved_in_ferrite_hv_of};
use crate::sources::pickering_1978::ferrite_strength_mpa_of;
use crate::steel::{Composition, CompositionRange, Element};
use crate::transform::FormedProduct;
use recalesce_texts::hardness as texts;

/// Alloying for which this is used: that of Maynier's formulae, with which it is compared, and
/// silicon up to the spring steel whose end-quench band was compared as well.
pub(super) const RANGE: CompositionRange = CompositionRange {
    model: texts::OF_SOFT_PRODUCTS,
    limits_wt: &[
        (Element::Mn, 0.0, 2.1),
        (Element::Si, 0.0, 2.2),
        (Element::Ni, 0.0, 4.0),
        (Element::Cr, 0.0, 3.0),
        (Element::Mo, 0.0, 1.0),
        (Element::V, 0.0, 0.2),
    ],
};

/// Grain of ferrite, mm: ASTM 8.
const FERRITE_GRAIN_MM: f64 = 0.02;
/// Tensile strength to hardness of soft steel, MPa for each HV (conversion tables, from memory).
const MPA_PER_HV: f64 = 3.2;
/// Cooling in air, decimal logarithm of °C/h.
const AIR_LOG_C_PER_H: f64 = 3.556;

/// Carbon of pearlite without free ferrite or carbide, wt %.
const EUTECTOID_WT: f64 = 0.77;
/// Exponent m of bainite: with it bainite of 0.2 to 0.5 % C is as hard as Maynier's formula has it.
const BAINITE_EXPONENT: f64 = 0.5;
/// Exponent m of pearlite that formed before free ferrite could: with it patented wire of 0.45 to
/// 0.8 % C has the strength that its trade counts on, 100 C + 53 kgf/mm² (from memory).
const PEARLITE_EXPONENT: f64 = 0.72;
/// Temperatures between which bainite passes into pearlite, °C, below all and above all of which
/// one exponent holds.
const PASSING_C: (f64, f64) = (500.0, 600.0);

/// Hardness of ferrite, HV: manganese and silicon in solution after Pickering; nickel, chromium
/// and molybdenum by the terms of Maynier's formula that do not follow the rate; vanadium, whose
/// carbide precipitates in it, by its term for cooling in air.
pub(super) fn ferrite_hv(steel: &Composition) -> f64 {
    ferrite_hv_of(|element| steel.get(element))
}

/// The law of the hardness of ferrite, HV, over contents in wt %.
pub fn ferrite_hv_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    ferrite_strength_mpa_of(&content, FERRITE_GRAIN_MM) / n(MPA_PER_HV)
        + dissolved_in_ferrite_hv_of(&content)
        + n(VANADIUM_HV * AIR_LOG_C_PER_H) * content(Element::V)
}

/// Hardness of pearlite or bainite of a steel, HV, as it formed. What counts for pearlite is how
/// far below A1 it formed, since that sets its spacing.
pub(super) fn aggregate_hv(steel: &Composition, formed: &FormedProduct) -> f64 {
    aggregate_hv_of(
        Aggregate {
            ferrite_hv: ferrite_hv(steel),
            formed_c: formed.temperature_c,
            carbon_wt: formed.carbon_wt,
            a1_c: ae1_c(steel),
        },
        Some(pearlite_part_of(formed.temperature_c)),
        eutectoid_over_ferrite_hv,
    )
}

/// What an aggregate of ferrite and carbide is made of.
pub struct Aggregate<N> {
    /// Hardness of its ferrite, HV.
    pub ferrite_hv: N,
    /// Mean temperature at which it formed, °C.
    pub formed_c: N,
    /// Carbon of the austenite from which it formed, wt %.
    pub carbon_wt: N,
    /// A1 of its steel by Grange's closed form, °C.
    pub a1_c: N,
}

/// How far an aggregate is pearlite by the temperature at which it formed, °C: 0 for bainite.
pub fn pearlite_part_of<N: Number>(formed_c: N) -> N {
    let n = N::constant;
    let (bainite_c, pearlite_c) = PASSING_C;
    ((formed_c - n(bainite_c)) / n(pearlite_c - bainite_c))
        .max(n(0.0))
        .min(n(1.0))
}

/// Whether an aggregate that formed at a temperature, °C, is bainite alone.
pub fn is_bainite_alone(formed_c: f64) -> bool {
    formed_c <= PASSING_C.0
}

/// How much harder the aggregate of eutectoid steel is than its ferrite, HV, by the temperature at which it
/// formed, °C.
pub fn eutectoid_over_ferrite_hv(formed_c: f64) -> f64 {
    let hrc = linear_held(&HRC_BY_TEMPERATURE, formed_c).unwrap_or(0.0);
    Hardness::from_hrc_carried(hrc).hv - ferrite_hv(&eutectoid_isothermal::steel())
}

/// The law of the hardness of an aggregate, HV: `pearlite` is how far it is pearlite, none where it is
/// bainite alone.
pub fn aggregate_hv_of<N: Number>(
    x: Aggregate<N>,
    pearlite: Option<N>,
    over_ferrite_hv: impl Fn(N) -> N,
) -> N {
    let n = N::constant;
    let (shifted_c, exponent) = match pearlite {
        None => (x.formed_c, n(BAINITE_EXPONENT)),
        Some(part) => {
            let shift_k = part.clone() * (x.a1_c - n(ae1_c(&eutectoid_isothermal::steel())));
            let exponent = n(BAINITE_EXPONENT) + part * n(PEARLITE_EXPONENT - BAINITE_EXPONENT);
            (x.formed_c - shift_k, exponent)
        }
    };
    let share = (x.carbon_wt / n(EUTECTOID_WT)).max(n(0.0)).min(n(1.0));
    x.ferrite_hv + over_ferrite_hv(shifted_c) * (exponent * share.ln()).exp()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sources::maynier_1978::bainite_hv;
    use crate::transform::{Austenite, Kinetics};

    fn steel(c: f64, alloys: [f64; 4]) -> Composition {
        let [mn, ni, cr, mo] = alloys;
        Composition {
            c,
            mn,
            si: 0.25,
            ni,
            cr,
            mo,
            ..Composition::default()
        }
    }

    /// What forms at a rate at 700 °C, K/s.
    fn cooled(steel: &Composition, rate_k_per_s: f64) -> crate::transform::ContinuousCooling {
        let austenite = Austenite {
            composition: *steel,
            grain_astm: 7.0,
            undissolved_carbide_volume_fraction: 0.0,
        };
        let kinetics = Kinetics::new(&austenite).unwrap();
        kinetics.cooling_at(rate_k_per_s).unwrap()
    }

    /// Two ways to the same hardness: Maynier's regression on cooling rates and alloying, and the
    /// temperature at which the kinetics let bainite form. Coolings of which at least a fifth
    /// becomes bainite.
    #[test]
    fn bainite_is_as_hard_as_maynier_has_it() {
        let mut errors = Vec::new();
        for (c, alloys) in [
            (0.20, [0.8, 0.55, 0.5, 0.2]),
            (0.30, [0.5, 0.1, 0.95, 0.2]),
            (0.40, [0.85, 0.1, 0.95, 0.2]),
            (0.40, [0.85, 0.55, 0.5, 0.2]),
            (0.40, [0.7, 1.8, 0.8, 0.25]),
            (0.50, [0.85, 0.1, 0.95, 0.2]),
            (0.50, [0.85, 0.55, 0.5, 0.2]),
        ] {
            let steel = steel(c, alloys);
            for rate_k_per_s in [1.0, 2.0, 5.0, 10.0, 20.0, 50.0] {
                let cooling = cooled(&steel, rate_k_per_s);
                if cooling.fractions.bainite > 0.2 {
                    let ours = aggregate_hv(&steel, &cooling.formed.bainite.unwrap());
                    let log_rate = (3600.0 * rate_k_per_s).log10();
                    errors.push(ours - bainite_hv(&steel, log_rate));
                }
            }
        }
        assert!(errors.len() >= 5);
        assert!(errors.iter().all(|e| e.abs() < 40.0), "{errors:.0?}");
    }

    /// 100 C + 53 kgf/mm² near 560 °C (from memory), 100 kgf/mm² as 305 HV (conversion tables).
    #[test]
    fn patented_wire() {
        for c in [0.45, 0.6, 0.8] {
            let formed = FormedProduct {
                temperature_c: 560.0,
                carbon_wt: c,
            };
            let hv = aggregate_hv(&steel(c, [0.6, 0.0, 0.0, 0.0]), &formed);
            let wire_hv = (100.0 * c + 53.0) * 9.807 / MPA_PER_HV;
            assert!((hv / wire_hv - 1.0).abs() < 0.06, "{c}: {hv} {wire_hv}");
        }
    }

    #[test]
    fn what_forms_colder_or_with_more_carbon_is_harder() {
        for alloys in [
            [0.7, 0.0, 0.0, 0.0],
            [0.9, 0.0, 2.0, 0.3],
            [1.9, 3.5, 0.0, 0.0],
        ] {
            for c in [0.1, 0.4, 0.77, 1.0] {
                let steel = steel(c, alloys);
                let hv = |temperature_c: f64, carbon_wt: f64| {
                    aggregate_hv(
                        &steel,
                        &FormedProduct {
                            temperature_c,
                            carbon_wt,
                        },
                    )
                };
                for t in 20..75 {
                    let t = 10.0 * f64::from(t);
                    assert!(hv(t, c) >= hv(t + 10.0, c));
                    assert!(hv(t, c + 0.1) >= hv(t, c));
                    assert!(hv(t, c) >= ferrite_hv(&steel));
                }
            }
        }
    }
}
