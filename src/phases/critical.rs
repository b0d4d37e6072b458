//! A1, A3 and Acm of a steel, and the two lines that bound its austenite, in closed form.

use super::PhaseError;
use crate::sources::{closed_form_2026, grange_1961};
use crate::steel::{Composition, CompositionRange, Element, OutOfRange};

/// What bounds single-phase austenite from below in this steel.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum UpperLimit {
    /// Ferrite, in hypoeutectoid steel.
    A3 {
        /// Where the last ferrite goes, °C.
        temperature_c: f64,
    },
    /// Carbide, in hypereutectoid steel.
    Acm {
        /// Where the last cementite goes, °C.
        temperature_c: f64,
    },
}

/// The temperatures at which a steel turns into austenite, at equilibrium.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct CriticalTemperatures {
    /// Where austenite begins, °C.
    pub a1_c: f64,
    /// Where the second phase ends.
    pub upper: UpperLimit,
    /// Carbon at which the steel would be neither hypo- nor hypereutectoid, wt %.
    pub eutectoid_carbon_wt: f64,
}

/// Compositions for which the closed forms hold.
pub(super) const RANGE: CompositionRange = CompositionRange {
    model: "the closed form of the phase boundaries",
    limits_wt: &[
        (Element::C, 0.05, 1.6),
        (Element::Mn, 0.0, 2.3),
        (Element::Si, 0.0, 2.3),
        (Element::Cr, 0.0, 1.8),
        (Element::Ni, 0.0, 3.0),
        (Element::Mo, 0.0, 0.6),
        (Element::V, 0.0, 0.35),
        (Element::W, 0.0, 0.7),
    ],
};

/// Highest temperature for which the closed forms hold, °C.
pub(super) const HIGHEST_C: f64 = 1147.0;

/// A1 and A3 or Acm of a steel, at equilibrium.
///
/// A1 is Grange's regression; the lines are fits to computed equilibria, shifted so that they
/// meet at A1. On heating at a shop's rate the changes lie 10 to 40 K higher. Measured error
/// against producers' heating points: see `tests/soak.rs`.
///
/// # Errors
/// [`PhaseError`] when the composition is no steel or outside the range of the closed forms
/// (C 0.05-1.6, Mn and Si to 2.3, Cr to 1.8, Ni to 3, Mo to 0.6, V to 0.35, W to 0.7 wt %).
pub fn critical_temperatures(steel: &Composition) -> Result<CriticalTemperatures, PhaseError> {
    steel.validate()?;
    RANGE.check(steel)?;
    let lines = Lines::of(steel);
    Ok(CriticalTemperatures {
        a1_c: lines.a1_c,
        upper: if steel.c < lines.eutectoid_carbon_wt {
            UpperLimit::A3 {
                temperature_c: lines.a3_c(steel.c),
            }
        } else {
            let temperature_c = lines.acm_c(steel.c);
            OutOfRange::check(
                RANGE.model,
                "Acm",
                "°C",
                temperature_c,
                (lines.a1_c, HIGHEST_C),
            )?;
            UpperLimit::Acm { temperature_c }
        },
        eutectoid_carbon_wt: lines.eutectoid_carbon_wt,
    })
}

/// The lines of one alloy content, whatever its carbon.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lines {
    alloy: Composition,
    pub(super) a1_c: f64,
    pub(super) eutectoid_carbon_wt: f64,
    /// Shift of A3 by the alloy at low carbon and at the eutectoid, K.
    shift_k: (f64, f64),
}

impl Lines {
    /// The composition must have passed [`RANGE`].
    pub(super) fn of(steel: &Composition) -> Self {
        let a1_c = grange_1961::ae1_c(steel);
        let eutectoid_carbon_wt =
            saturation_wt(a1_c, steel) + carbon_in_vanadium_carbide_wt(a1_c, steel);
        let iron = Composition::default().with_carbon(steel.c);
        // Grange gives Mn, Si, Cr and Ni; Mo, V and W are Andrews's.
        let low = grange_1961::ae3_c(steel) - grange_1961::ae3_c(&iron)
            + 31.5 * steel.mo
            + 104.0 * steel.v
            + 13.1 * steel.w;
        let eutectoid = a1_c - a3_of_iron_c(eutectoid_carbon_wt);
        Self {
            alloy: *steel,
            a1_c,
            eutectoid_carbon_wt,
            shift_k: (low, eutectoid),
        }
    }

    /// Where the last ferrite goes, °C, up to the eutectoid carbon.
    pub(super) fn a3_c(&self, carbon_wt: f64) -> f64 {
        let way = (carbon_wt / self.eutectoid_carbon_wt).clamp(0.0, 1.0);
        let (low, eutectoid) = self.shift_k;
        a3_of_iron_c(carbon_wt) + low + (eutectoid - low) * way * way * way
    }

    /// Carbon of austenite beside ferrite, wt %, between A1 and the top of A3.
    pub(super) fn a3_carbon_wt(&self, temperature_c: f64) -> f64 {
        bisect(0.0, self.eutectoid_carbon_wt, |carbon_wt| {
            self.a3_c(carbon_wt) - temperature_c
        })
    }

    /// Where the last cementite goes, °C; [`HIGHEST_C`] and more where it does not.
    pub(super) fn acm_c(&self, carbon_wt: f64) -> f64 {
        let short = |temperature_c: f64| carbon_wt - self.acm_carbon_wt(temperature_c);
        if short(HIGHEST_C) > 0.0 {
            return HIGHEST_C + 1.0;
        }
        bisect(self.a1_c, HIGHEST_C, short)
    }

    /// Carbon of the steel at which the last cementite goes at this temperature, wt %.
    pub(super) fn acm_carbon_wt(&self, temperature_c: f64) -> f64 {
        saturation_wt(temperature_c, &self.alloy)
            + carbon_in_vanadium_carbide_wt(temperature_c, &self.alloy)
    }
}

/// Carbon of austenite beside cementite, wt %, with this alloy dissolved.
pub(super) fn saturation_wt(temperature_c: f64, dissolved: &Composition) -> f64 {
    let x = (temperature_c - 900.0) / 100.0;
    let [a, b, c, d] = closed_form_2026::ACM_CARBON_WT;
    let binary_wt = a + x * (b + x * (c + x * d));
    let inverse = 1000.0 / (temperature_c + 273.15) - 0.93;
    let shift: f64 = closed_form_2026::ACM_SHIFT
        .iter()
        .map(|&(element, at, slope)| dissolved.get(element) * (at + slope * inverse).max(0.0))
        .sum();
    binary_wt * (-shift).exp()
}

/// Carbon bound in vanadium carbide beside saturated austenite, wt % of the steel.
fn carbon_in_vanadium_carbide_wt(temperature_c: f64, steel: &Composition) -> f64 {
    let carbon_wt = saturation_wt(temperature_c, steel);
    let dissolved_wt = vanadium_carbide_product(temperature_c) / carbon_wt.max(0.05);
    closed_form_2026::VANADIUM_CARBIDE_CARBON * (steel.v - dissolved_wt).max(0.0)
}

/// Product of dissolved vanadium and carbon beside vanadium carbide, wt % squared.
pub(super) fn vanadium_carbide_product(temperature_c: f64) -> f64 {
    let [at, slope] = closed_form_2026::VANADIUM_CARBIDE_PRODUCT;
    ((at + slope * 1000.0 / (temperature_c + 273.15)) * std::f64::consts::LN_10).exp()
}

fn a3_of_iron_c(carbon_wt: f64) -> f64 {
    let [a, b, c, d] = closed_form_2026::A3_C;
    a + carbon_wt * (b + carbon_wt * (c + carbon_wt * d))
}

/// Where a falling function passes zero, to a 1e-12 part of the interval; an end where it does not.
pub(super) fn bisect(mut low: f64, mut high: f64, falling: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if falling(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}
