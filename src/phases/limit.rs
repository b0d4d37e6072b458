//! What a soak tends to: austenite beside what carbide or ferrite remains at equilibrium, and
//! the carbide of the annealed steel from which it starts.

use super::critical::{AUSTENITE, Boundaries, CARBIDES, FERRITE, check};
use super::equilibrium::HeldBack;
use super::gibbs::Structure;
use super::{Equilibrium, EquilibriumError, PhaseAmount, PhaseError, PhaseName, equilibrium};
use crate::numeric::roots::{Crossing, falling_root};
use crate::steel::{Composition, Element};

/// Equilibrium at a soak temperature. Mass and volume fractions are of the whole piece.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct SoakLimit {
    /// Austenite, wt % of itself.
    pub austenite: Composition,
    /// Ferrite, wt % of itself; all zero where there is none.
    pub ferrite: Composition,
    /// All carbide together, wt % of itself; all zero where there is none.
    pub carbide: Composition,
    /// Mass fraction of austenite.
    pub austenite_mass_fraction: f64,
    /// Mass fraction of ferrite.
    pub ferrite_mass_fraction: f64,
    /// Mass fraction of carbide.
    pub carbide_mass_fraction: f64,
    /// Volume fraction of austenite.
    pub austenite_volume_fraction: f64,
    /// Volume fraction of ferrite.
    pub ferrite_volume_fraction: f64,
    /// Volume fraction of carbide.
    pub carbide_volume_fraction: f64,
    /// Carbon at which austenite with this alloy dissolved would be saturated, wt %: its own
    /// carbon while a carbide other than MC and M6C remains, more above Acm, 3 at most.
    pub carbon_saturation_wt: f64,
}

/// Carbide of the annealed steel: at equilibrium with ferrite below A1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Annealed {
    /// All carbide together, wt % of itself.
    pub carbide: Composition,
    /// Mass fraction of carbide.
    pub carbide_mass_fraction: f64,
    /// Volume fraction of carbide.
    pub carbide_volume_fraction: f64,
    /// The cementite among it, wt % of itself, where it holds most of the carbide's carbon.
    pub cementite: Option<Composition>,
}

/// Where carbide of an anneal is taken to have come to rest, °C: slow cooling from the usual
/// annealing temperatures leaves little to happen below. Austenite is held back for the steels
/// whose A1 is lower still.
const ANNEALED_C: f64 = 700.0;
/// Where it is taken instead when the search does not come to rest there, K above or below.
const NEAR_ANNEALED_K: f64 = 10.0;
/// Lowest temperature of single equilibria, °C.
const LOWEST_SOAK_C: f64 = 600.0;
/// Least carbon for which balance with ferrite is sought, wt %.
const LEAST_CARBON_WT: f64 = 1e-3;
/// Most carbon for which saturation is sought, wt %.
const MOST_SATURATION_WT: f64 = 3.0;

/// Equilibrium of a steel at a soak temperature.
///
/// Uncertainty of the carbon in austenite: 0.02 wt % for plain carbon steel, 0.04 for low alloy,
/// 0.05 for 5 to 18 % Cr. Phosphorus and sulphur are shared by austenite and ferrite alike.
///
/// # Errors
/// [`PhaseError::BelowA1`] or [`PhaseError::FerriteAgain`] where no austenite is stable; otherwise as [`super::equilibrium`].
pub fn soak_limit(steel: &Composition, temperature_c: f64) -> Result<SoakLimit, PhaseError> {
    check(steel)?;
    if temperature_c < LOWEST_SOAK_C {
        let a1_c = Boundaries::default().first_austenite_c(steel)?;
        if temperature_c < a1_c {
            return Err(no_austenite(temperature_c, a1_c));
        }
    }
    let found = equilibrium(steel, temperature_c)?;
    let Some(austenite) = found.phase(PhaseName::Austenite) else {
        let a1_c = Boundaries::default().first_austenite_c(steel)?;
        return Err(no_austenite(temperature_c, a1_c));
    };
    let ferrite = found.phase(PhaseName::Ferrite);
    let carbide = Together::of(&found);
    let matrix = 1.0 - carbide.mass_fraction;
    let with_traces = |of: &PhaseAmount| {
        let mut content = of.composition;
        content.p = steel.p / matrix;
        content.s = steel.s / matrix;
        content
    };
    let is_saturated = CARBIDES.iter().any(|name| found.phase(*name).is_some());
    let carbon_wt = austenite.composition.c;
    let carbon_saturation_wt = if is_saturated {
        carbon_wt
    } else {
        saturation_wt(&austenite.composition, temperature_c)?.max(carbon_wt)
    };
    Ok(SoakLimit {
        austenite: with_traces(austenite),
        ferrite: ferrite.map(with_traces).unwrap_or_default(),
        carbide: carbide.content,
        austenite_mass_fraction: austenite.mass_fraction,
        ferrite_mass_fraction: ferrite.map_or(0.0, |f| f.mass_fraction),
        carbide_mass_fraction: carbide.mass_fraction,
        austenite_volume_fraction: austenite.volume_fraction,
        ferrite_volume_fraction: ferrite.map_or(0.0, |f| f.volume_fraction),
        carbide_volume_fraction: carbide.volume_fraction,
        carbon_saturation_wt,
    })
}

const fn no_austenite(temperature_c: f64, a1_c: f64) -> PhaseError {
    // steels of much chromium or silicon are ferrite again when too hot
    if temperature_c > a1_c + 1.0 {
        PhaseError::FerriteAgain { temperature_c }
    } else {
        PhaseError::BelowA1 {
            temperature_c,
            a1_c,
        }
    }
}

/// Carbide of the steel after a long anneal, beside ferrite at 700 °C.
///
/// # Errors
/// As [`super::equilibrium`].
pub fn annealed(steel: &Composition) -> Result<Annealed, PhaseError> {
    check(steel)?;
    let at = |temperature_c| HeldBack::new(AUSTENITE).at(steel, temperature_c);
    let found = at(ANNEALED_C)
        .or_else(|_| at(ANNEALED_C + NEAR_ANNEALED_K))
        .or_else(|_| at(ANNEALED_C - NEAR_ANNEALED_K))?;
    let carbide = Together::of(&found);
    let carbon_wt = carbide.mass_fraction * carbide.content.c;
    let cementite = found
        .phase(PhaseName::Cementite)
        .filter(|c| c.mass_fraction * c.composition.c > 0.5 * carbon_wt)
        .map(|c| c.composition);
    Ok(Annealed {
        carbide: carbide.content,
        carbide_mass_fraction: carbide.mass_fraction,
        carbide_volume_fraction: carbide.volume_fraction,
        cementite,
    })
}

/// All carbides of an equilibrium as one.
struct Together {
    content: Composition,
    mass_fraction: f64,
    volume_fraction: f64,
}

impl Together {
    fn of(found: &Equilibrium) -> Self {
        let carbides = || found.phases.iter().filter(|phase| phase.name.is_carbide());
        let mass_fraction: f64 = carbides()
            .map(|c| c.mass_fraction)
            .fold(0.0, |sum, part| sum + part);
        let mut content = Composition::default();
        if mass_fraction > 0.0 {
            for element in Element::ALL {
                let sum: f64 = carbides()
                    .map(|c| c.mass_fraction * c.composition.get(element))
                    .sum();
                content.set(element, sum / mass_fraction);
            }
        }
        Self {
            content,
            mass_fraction,
            volume_fraction: carbides()
                .map(|c| c.volume_fraction)
                .fold(0.0, |sum, part| sum + part),
        }
    }
}

/// Carbon of austenite that ferrite stands beside, with the alloy of the austenite at the limit,
/// wt %: the austenite's own while ferrite remains at equilibrium, less above, and none where no
/// ferrite would form without carbon either. The search begins at `near_wt`.
///
/// # Errors
/// When the search does not come to rest.
pub fn carbon_beside_ferrite_wt(
    limit: &SoakLimit,
    temperature_c: f64,
    near_wt: f64,
) -> Result<f64, EquilibriumError> {
    const STRUCTURES: &[Structure] = &[Structure::Fcc, Structure::Bcc, Structure::M6C];
    /// Usual rise of the height of ferrite, in units of RT per wt % carbon of austenite.
    const USUAL_RISE: f64 = 0.06;
    let austenite = &limit.austenite;
    if limit.ferrite_mass_fraction > 0.0 || austenite.c <= LEAST_CARBON_WT {
        return Ok(austenite.c);
    }
    let mut without = HeldBack::among(STRUCTURES, FERRITE);
    // carbon is counted downwards, as the height rises with it
    let found = crossing(
        |less_wt| without.height(&austenite.with_carbon(-less_wt), temperature_c),
        -near_wt,
        (-austenite.c, -LEAST_CARBON_WT),
        -USUAL_RISE,
    )?;
    match found {
        Some(Crossing::At(less_wt)) => Ok(-less_wt),
        Some(Crossing::Before) => Ok(austenite.c),
        Some(Crossing::Beyond) => Ok(0.0),
        None => Err(EquilibriumError::NotConverged { temperature_c }),
    }
}

/// Carbon at which austenite with this alloy would be in balance with carbide, wt %.
fn saturation_wt(austenite: &Composition, temperature_c: f64) -> Result<f64, EquilibriumError> {
    const STRUCTURES: &[Structure] = &[
        Structure::Fcc,
        Structure::Cementite,
        Structure::M7C3,
        Structure::M23C6,
        Structure::M6C,
    ];
    /// Usual fall of the height of carbide, in units of RT, for the logarithm of carbon.
    const USUAL_FALL: f64 = 0.3;
    let mut without = HeldBack::among(STRUCTURES, CARBIDES);
    let least_wt = austenite.c.max(0.01);
    let found = crossing(
        |ln_wt| without.height(&austenite.with_carbon(ln_wt.exp()), temperature_c),
        least_wt.ln(),
        (least_wt.ln(), MOST_SATURATION_WT.ln()),
        -USUAL_FALL,
    )?;
    match found {
        Some(Crossing::At(ln_wt)) => Ok(ln_wt.exp()),
        Some(Crossing::Before) => Ok(least_wt),
        Some(Crossing::Beyond) => Ok(MOST_SATURATION_WT),
        None => Err(EquilibriumError::NotConverged { temperature_c }),
    }
}

/// Crossing of a falling function as [`falling_root`] finds it; its first error, if it has one.
fn crossing(
    mut height: impl FnMut(f64) -> Result<f64, EquilibriumError>,
    guess: f64,
    range: (f64, f64),
    usual_slope: f64,
) -> Result<Option<Crossing>, EquilibriumError> {
    /// Of the argument: of the last step, whose error is far smaller.
    const TOLERANCE: f64 = 5e-5;
    let mut fault = None;
    let value = |x| height(x).map_err(|error| fault = Some(error)).ok();
    let found = falling_root(value, guess, range, usual_slope, TOLERANCE);
    fault.map_or(Ok(found), Err)
}
