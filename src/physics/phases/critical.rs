//! A1, A3 and Acm of a steel, from the equilibrium of all its phases.

use super::equilibrium::HeldBack;
use super::search::Upwards;
use super::{EQUILIBRIUM_RANGE, EquilibriumError, PhaseError, PhaseName};
use crate::steel::Composition;

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
        /// Where the last carbide other than MC goes, °C.
        temperature_c: f64,
    },
}

/// The temperatures at which a steel turns into austenite, at equilibrium.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct CriticalTemperatures {
    /// Where austenite begins, °C: the lower end of A1.
    pub a1_c: f64,
    /// Where ferrite and carbide no longer stand beside austenite together, °C: the upper end of
    /// A1. The same as `a1_c` in plain iron and carbon.
    pub a1_upper_c: f64,
    /// Where the second phase ends.
    pub upper: UpperLimit,
    /// True where the second phase is still there at 1250 °C, the highest temperature of the
    /// model, which then stands in `upper`.
    pub upper_is_beyond: bool,
    /// Carbon at which the steel would be neither hypo- nor hypereutectoid, wt %: where the lines
    /// A3 and Acm of its alloy content meet.
    pub eutectoid_carbon_wt: f64,
}

/// Temperatures searched, °C.
pub(super) const LOWEST_C: f64 = 500.0;
pub(super) const HIGHEST_C: f64 = 1250.0;
/// Where the search for the first austenite begins, °C, near what most steels have.
const FIRST_C: f64 = 690.0;
/// Accuracy of each temperature, K.
pub(super) const TOLERANCE_K: f64 = 0.02;

pub(super) const FERRITE: &[PhaseName] = &[PhaseName::Ferrite];
pub(super) const AUSTENITE: &[PhaseName] = &[PhaseName::Austenite];
/// The carbides that end at Acm. MC and M6C are left out: what vanadium, tungsten and molybdenum
/// hold in them lasts far above.
pub(super) const CARBIDES: &[PhaseName] =
    &[PhaseName::Cementite, PhaseName::M7C3, PhaseName::M23C6];
const FERRITE_AND_CARBIDES: &[PhaseName] = &[
    PhaseName::Ferrite,
    PhaseName::Cementite,
    PhaseName::M7C3,
    PhaseName::M23C6,
];

/// A1 and A3 or Acm of a steel, at equilibrium.
///
/// On heating at a shop's rate the changes lie 10 to 40 K higher. Uncertainty: 5 K for plain
/// carbon steel, 10 K for low alloy, 20 K for 5 to 18 % Cr.
///
/// # Errors
/// [`PhaseError`] when the composition is no steel or outside [`EQUILIBRIUM_RANGE`], has no austenite between
/// 500 and 1250 °C, or the search does not come to rest.
pub fn critical_temperatures(steel: &Composition) -> Result<CriticalTemperatures, PhaseError> {
    check(steel)?;
    let mut boundaries = Boundaries::default();
    let a1_c = boundaries.first_austenite_c(steel)?;
    let ferrite_c = boundaries.last_ferrite_c(steel, a1_c)?;
    let carbide_c = boundaries.last_carbide_c(steel, a1_c)?;
    let eutectoid = boundaries.eutectoid(steel, a1_c)?;
    let (upper, is_beyond) = match (ferrite_c, carbide_c) {
        (Some(ferrite_c), Some(carbide_c)) if carbide_c > ferrite_c => (acm(carbide_c), false),
        (Some(temperature_c), Some(_)) => (UpperLimit::A3 { temperature_c }, false),
        (Some(_), None) => (acm(HIGHEST_C), true),
        (None, _) => (
            UpperLimit::A3 {
                temperature_c: HIGHEST_C,
            },
            true,
        ),
    };
    Ok(CriticalTemperatures {
        a1_c,
        a1_upper_c: ferrite_c
            .unwrap_or(HIGHEST_C)
            .min(carbide_c.unwrap_or(HIGHEST_C)),
        upper,
        upper_is_beyond: is_beyond,
        eutectoid_carbon_wt: eutectoid.carbon_wt,
    })
}

const fn acm(temperature_c: f64) -> UpperLimit {
    UpperLimit::Acm { temperature_c }
}

/// A temperature at which a phase comes or goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// The first austenite.
    A1,
    /// The last ferrite.
    A3,
    /// The last carbide other than MC.
    Acm,
}

/// How far the phase that comes or goes at a bound lies above the equilibrium of all others, in units of RT
/// per mole of atoms: zero at the bound, negative where the phase is stable.
///
/// # Errors
/// As [`critical_temperatures`], at that temperature alone.
pub fn height_at_bound(
    steel: &Composition,
    bound: Bound,
    temperature_c: f64,
) -> Result<f64, PhaseError> {
    check(steel)?;
    let phase = match bound {
        Bound::A1 => AUSTENITE,
        Bound::A3 => FERRITE,
        Bound::Acm => CARBIDES,
    };
    Ok(HeldBack::new(phase).height(steel, temperature_c)?)
}

/// Where the lines A3 and Acm of a steel's alloy content meet; its own carbon does not matter.
///
/// # Errors
/// As [`critical_temperatures`].
pub fn eutectoid(steel: &Composition) -> Result<Eutectoid, PhaseError> {
    check(steel)?;
    Ok(Boundaries::default().eutectoid(steel, 730.0)?)
}

/// Refuses what the model does not hold for.
pub(super) fn check(steel: &Composition) -> Result<(), PhaseError> {
    steel.validate()?;
    EQUILIBRIUM_RANGE.check(steel)?;
    Ok(())
}

/// The lowest point of single-phase austenite over carbon.
#[derive(Debug, Clone, Copy)]
pub struct Eutectoid {
    /// Its carbon, wt %.
    pub carbon_wt: f64,
    /// Its temperature, °C; 1250 where the lines meet above.
    pub temperature_c: f64,
}

/// Searches for the boundaries of austenite, with what they remember.
#[derive(Debug, Clone)]
pub(super) struct Boundaries {
    without_austenite: HeldBack,
    without_ferrite: HeldBack,
    without_carbides: HeldBack,
    alone: HeldBack,
}

impl Default for Boundaries {
    fn default() -> Self {
        Self {
            without_austenite: HeldBack::new(AUSTENITE),
            without_ferrite: HeldBack::new(FERRITE),
            without_carbides: HeldBack::new(CARBIDES),
            alone: HeldBack::new(FERRITE_AND_CARBIDES),
        }
    }
}

impl Boundaries {
    /// Where austenite begins, °C.
    pub(super) fn first_austenite_c(&mut self, steel: &Composition) -> Result<f64, PhaseError> {
        let found = self.austenite_from_c(steel)?;
        found.ok_or(PhaseError::NoAustenite {
            least_c: LOWEST_C,
            most_c: HIGHEST_C,
        })
    }

    /// Where austenite begins, °C; `None` when there is none at any temperature.
    pub(super) fn austenite_from_c(
        &mut self,
        steel: &Composition,
    ) -> Result<Option<f64>, EquilibriumError> {
        let mut height = |t_c| self.without_austenite.height(steel, t_c);
        // austenite may begin lower in steels of much nickel or manganese
        let from = if height(FIRST_C)? > 0.0 {
            FIRST_C
        } else {
            LOWEST_C
        };
        upwards(from, 20.0).first_change(height)
    }

    /// Where the last ferrite goes, °C; `None` when it is there at the highest temperature.
    pub(super) fn last_ferrite_c(
        &mut self,
        steel: &Composition,
        a1_c: f64,
    ) -> Result<Option<f64>, EquilibriumError> {
        last_c(a1_c, |t_c| self.without_ferrite.height(steel, t_c))
    }

    /// Where the last carbide other than MC goes, °C; `None` when it is there at the highest
    /// temperature.
    pub(super) fn last_carbide_c(
        &mut self,
        steel: &Composition,
        a1_c: f64,
    ) -> Result<Option<f64>, EquilibriumError> {
        last_c(a1_c, |t_c| self.without_carbides.height(steel, t_c))
    }

    /// Where A3 and Acm meet. When that is not below 1250 °C: at that temperature, where both
    /// phases are as far from forming.
    pub(super) fn eutectoid(
        &mut self,
        steel: &Composition,
        from_c: f64,
    ) -> Result<Eutectoid, EquilibriumError> {
        let found = match self.meeting(steel, from_c) {
            // once more from elsewhere
            Err(_) => self.meeting(steel, from_c + 40.0)?,
            Ok(found) => found,
        };
        if let Some(found) = found {
            return Ok(found);
        }
        let search = Upwards {
            from: 0.02_f64.ln(),
            to: 2.5_f64.ln(),
            step: 0.2,
            longest: 1.0,
            tolerance: 1e-4,
        };
        let found = search.first_change(|log_carbon| {
            let here = steel.with_carbon(log_carbon.exp());
            let [ferrite, carbide] = self.alone.heights(&here, HIGHEST_C, [FERRITE, CARBIDES])?;
            Ok::<_, EquilibriumError>(carbide - ferrite)
        })?;
        found
            .map(|log_carbon| Eutectoid {
                carbon_wt: log_carbon.exp(),
                temperature_c: HIGHEST_C,
            })
            .ok_or(EquilibriumError::NotConverged {
                temperature_c: HIGHEST_C,
            })
    }

    /// Where A3 and Acm meet, by Broyden's method on the logarithm of carbon and on temperature;
    /// `None` when they do not within the model.
    fn meeting(
        &mut self,
        steel: &Composition,
        from_c: f64,
    ) -> Result<Option<Eutectoid>, EquilibriumError> {
        const STEPS: usize = 40;
        /// Units of the unknowns, of like effect: of ln carbon, and K.
        const UNITS: [f64; 2] = [0.05, 10.0];
        /// Longest and settled step, in those units.
        const LONGEST: f64 = 6.0;
        const SETTLED: f64 = 2e-3;
        let mut heights = |at: [f64; 2]| {
            let carbon_wt = (at[0] * UNITS[0]).exp().min(2.5);
            let here = steel.with_carbon(carbon_wt);
            self.alone
                .heights(&here, at[1] * UNITS[1], [FERRITE, CARBIDES])
        };
        let mut at = [first_eutectoid_wt(steel).ln() / UNITS[0], from_c / UNITS[1]];
        let mut here = heights(at)?;
        let mut slopes = [[0.0; 2]; 2];
        for k in 0..2 {
            let mut beside = at;
            beside[k] += 0.5;
            let there = heights(beside)?;
            for i in 0..2 {
                slopes[i][k] = (there[i] - here[i]) / 0.5;
            }
        }
        for _ in 0..STEPS {
            let [[a, b], [c, d]] = slopes;
            let determinant = a * d - b * c;
            let step = [
                (b * here[1] - d * here[0]) / determinant,
                (c * here[0] - a * here[1]) / determinant,
            ];
            let size = step[0].hypot(step[1]);
            if !size.is_finite() {
                return Ok(None);
            }
            let part = (LONGEST / size).min(1.0);
            let next = [at[0] + part * step[0], at[1] + part * step[1]];
            let (log_carbon, temperature_c) = (next[0] * UNITS[0], next[1] * UNITS[1]);
            if !(0.005_f64.ln()..2.5_f64.ln()).contains(&log_carbon)
                || !(LOWEST_C..HIGHEST_C).contains(&temperature_c)
            {
                return Ok(None);
            }
            if size < SETTLED {
                return Ok(Some(Eutectoid {
                    carbon_wt: log_carbon.exp(),
                    temperature_c,
                }));
            }
            let there = heights(next)?;
            let step = step.map(|s| s * part);
            let square = step[0] * step[0] + step[1] * step[1];
            for i in 0..2 {
                let foreseen = slopes[i][0] * step[0] + slopes[i][1] * step[1];
                let amiss = (there[i] - here[i] - foreseen) / square;
                for k in 0..2 {
                    slopes[i][k] += amiss * step[k];
                }
            }
            (at, here) = (next, there);
        }
        Ok(None)
    }
}

/// Where the search for the eutectoid begins, wt %: alloying lowers its carbon.
fn first_eutectoid_wt(steel: &Composition) -> f64 {
    0.76 * (-0.065 * steel.cr - 0.1 * (steel.si + steel.mo) - 0.05 * (steel.mn + steel.ni)).exp()
}

/// Where a phase that is there at A1 goes, °C.
fn last_c(
    a1_c: f64,
    mut height: impl FnMut(f64) -> Result<f64, EquilibriumError>,
) -> Result<Option<f64>, EquilibriumError> {
    const SKIPPED_K: f64 = 25.0;
    let start_c = a1_c + TOLERANCE_K;
    let mut from_c = start_c;
    let mut found = height(from_c);
    // without its main carbide, a steel of much carbon may have no equilibrium at A1; a phase that
    // is wanting higher up is wanting at A1 too
    while found.is_err() && from_c < start_c + 6.0 * SKIPPED_K {
        from_c += SKIPPED_K;
        found = height(from_c);
    }
    let is_gone = found? >= 0.0;
    if is_gone && from_c > start_c {
        return Err(EquilibriumError::NotConverged {
            temperature_c: start_c,
        });
    }
    if is_gone {
        // plain iron and carbon, or a steel that never had it
        return Ok(Some(a1_c));
    }
    upwards(from_c, 5.0).first_change(height)
}

/// A search for a temperature, °C.
const fn upwards(from: f64, step: f64) -> Upwards {
    Upwards {
        from,
        to: HIGHEST_C,
        step,
        longest: 80.0,
        tolerance: TOLERANCE_K,
    }
}
