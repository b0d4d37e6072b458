//! What a soak tends to: austenite beside what carbide or ferrite remains at equilibrium, and
//! the carbide of the annealed steel from which it starts.

use super::critical::{AUSTENITE, Boundaries, CARBIDES, FERRITE, check};
use super::equilibrium::HeldBack;
use super::gibbs::Structure;
use super::{Equilibrium, EquilibriumError, EquilibriumSeries, PhaseAmount, PhaseError, PhaseName};
use crate::numeric::roots::{Crossing, falling_root};
use crate::steel::{Composition, Element};
use std::sync::OnceLock;

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

/// What soaks of one steel tend to, each found from equilibria at an anchor nearby: the same
/// whatever was asked before, and many times faster than from nothing.
#[derive(Debug, Clone)]
pub struct SoakLimits {
    steel: Composition,
    /// Off the stack: one anchor has kilobytes of solver state, and a browser's stack is small.
    anchors: Box<[OnceLock<Anchor>]>,
}

/// Distance between anchors, K; the first is at the lowest temperature.
const BETWEEN_ANCHORS_K: f64 = 40.0;
const ANCHORS: usize = 17;

impl SoakLimits {
    /// Of a steel.
    ///
    /// # Errors
    /// When the composition is no steel or outside [`super::EQUILIBRIUM_RANGE`].
    pub fn of(steel: &Composition) -> Result<Self, PhaseError> {
        check(steel)?;
        Ok(Self {
            steel: *steel,
            anchors: (0..ANCHORS).map(|_| OnceLock::new()).collect(),
        })
    }

    /// Equilibrium at a soak temperature.
    ///
    /// Uncertainty of the carbon in austenite: 0.02 wt % for plain carbon steel, 0.04 for low
    /// alloy, 0.05 for 5 to 18 % Cr. Phosphorus and sulphur are shared by austenite and ferrite
    /// alike.
    ///
    /// # Errors
    /// [`PhaseError::BelowA1`] or [`PhaseError::FerriteAgain`] where no austenite is stable;
    /// otherwise as [`super::equilibrium`].
    pub fn at(&self, temperature_c: f64) -> Result<SoakLimit, PhaseError> {
        let steel = &self.steel;
        if temperature_c < LOWEST_SOAK_C {
            let a1_c = Boundaries::default().first_austenite_c(steel)?;
            if temperature_c < a1_c {
                return Err(no_austenite(temperature_c, a1_c));
            }
        }
        let mut near = self.anchor(temperature_c).clone();
        if let Some(limit) = near.limit(steel, temperature_c)? {
            return Ok(limit);
        }
        let a1_c = Boundaries::default().first_austenite_c(steel)?;
        Err(no_austenite(temperature_c, a1_c))
    }

    /// Carbon of austenite that ferrite stands beside, with the alloy of the austenite at the
    /// limit, wt %: the austenite's own while ferrite remains at equilibrium, less above, and none
    /// where no ferrite would form without carbon either.
    ///
    /// # Errors
    /// When the search does not come to rest.
    pub fn carbon_beside_ferrite_wt(
        &self,
        limit: &SoakLimit,
        temperature_c: f64,
    ) -> Result<f64, EquilibriumError> {
        let mut ferrite = self.anchor(temperature_c).ferrite.clone();
        beside_ferrite_wt(&mut ferrite, limit, temperature_c)
    }

    /// The anchor nearest to a temperature.
    fn anchor(&self, temperature_c: f64) -> &Anchor {
        let steps = ((temperature_c - LOWEST_SOAK_C) / BETWEEN_ANCHORS_K).round();
        let place = (steps.max(0.0) as usize).min(ANCHORS - 1);
        self.anchors[place].get_or_init(|| {
            let anchor_c = LOWEST_SOAK_C + BETWEEN_ANCHORS_K * place as f64;
            Anchor::at(&self.steel, anchor_c)
        })
    }
}

/// Equilibrium of a steel at a soak temperature, as [`SoakLimits::at`] gives it.
///
/// # Errors
/// As there.
pub fn soak_limit(steel: &Composition, temperature_c: f64) -> Result<SoakLimit, PhaseError> {
    SoakLimits::of(steel)?.at(temperature_c)
}

/// Searches with what they remember of one temperature.
#[derive(Debug, Clone)]
struct Anchor {
    all: EquilibriumSeries,
    saturation: Search,
    ferrite: Search,
}

impl Anchor {
    fn at(steel: &Composition, temperature_c: f64) -> Self {
        let mut anchor = Self {
            all: EquilibriumSeries::default(),
            saturation: Search::new(HeldBack::among(BESIDE_CARBIDE, CARBIDES)),
            ferrite: Search::new(HeldBack::among(BESIDE_FERRITE, FERRITE)),
        };
        // what is not found here is sought from nothing nearby
        if let Ok(Some(limit)) = anchor.limit(steel, temperature_c) {
            let _ = beside_ferrite_wt(&mut anchor.ferrite, &limit, temperature_c);
        }
        anchor
    }

    /// The limit at a temperature; none where there is no austenite.
    fn limit(
        &mut self,
        steel: &Composition,
        temperature_c: f64,
    ) -> Result<Option<SoakLimit>, EquilibriumError> {
        let found = self.all.at(steel, temperature_c)?;
        let Some(austenite) = found.phase(PhaseName::Austenite) else {
            return Ok(None);
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
            saturation_wt(&mut self.saturation, &austenite.composition, temperature_c)?
                .max(carbon_wt)
        };
        Ok(Some(SoakLimit {
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
        }))
    }
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

/// Structures that may be there where austenite begins to turn into ferrite, and into carbide.
const BESIDE_FERRITE: &[Structure] = &[Structure::Fcc, Structure::Bcc, Structure::M6C];
const BESIDE_CARBIDE: &[Structure] = &[
    Structure::Fcc,
    Structure::Cementite,
    Structure::M7C3,
    Structure::M23C6,
    Structure::M6C,
];

/// As [`SoakLimits::carbon_beside_ferrite_wt`].
fn beside_ferrite_wt(
    search: &mut Search,
    limit: &SoakLimit,
    temperature_c: f64,
) -> Result<f64, EquilibriumError> {
    /// Usual rise of the height of ferrite, in units of RT per wt % carbon of austenite.
    const USUAL_RISE: f64 = 0.06;
    let austenite = &limit.austenite;
    if limit.ferrite_mass_fraction > 0.0 || austenite.c <= LEAST_CARBON_WT {
        return Ok(austenite.c);
    }
    // carbon is counted downwards, as the height rises with it
    let found = search.crossing(
        |less_wt| austenite.with_carbon(-less_wt),
        temperature_c,
        (-austenite.c, -LEAST_CARBON_WT),
        -USUAL_RISE,
    )?;
    Ok(match found {
        Crossing::At(less_wt) => -less_wt,
        Crossing::Before => austenite.c,
        Crossing::Beyond => 0.0,
    })
}

/// Carbon at which austenite with this alloy would be in balance with carbide, wt %.
fn saturation_wt(
    search: &mut Search,
    austenite: &Composition,
    temperature_c: f64,
) -> Result<f64, EquilibriumError> {
    /// Usual fall of the height of carbide, in units of RT, for the logarithm of carbon.
    const USUAL_FALL: f64 = 0.3;
    let least_wt = austenite.c.max(0.01);
    let found = search.crossing(
        |ln_wt| austenite.with_carbon(ln_wt.exp()),
        temperature_c,
        (least_wt.ln(), MOST_SATURATION_WT.ln()),
        -USUAL_FALL,
    )?;
    Ok(match found {
        Crossing::At(ln_wt) => ln_wt.exp(),
        Crossing::Before => least_wt,
        Crossing::Beyond => MOST_SATURATION_WT,
    })
}

/// A search for where the height of phases that are held back passes zero over carbon.
#[derive(Debug, Clone)]
struct Search {
    without: HeldBack,
    last: Option<f64>,
}

impl Search {
    const fn new(without: HeldBack) -> Self {
        Self {
            without,
            last: None,
        }
    }

    /// Crossing within a range of what `steel_of` takes, over which the height falls; sought from
    /// the last one, or from the lower end.
    fn crossing(
        &mut self,
        steel_of: impl Fn(f64) -> Composition,
        temperature_c: f64,
        range: (f64, f64),
        usual_slope: f64,
    ) -> Result<Crossing, EquilibriumError> {
        /// Of the last step, whose error is far smaller.
        const TOLERANCE: f64 = 5e-5;
        let mut fault = None;
        let height = |x| {
            let found = self.without.height(&steel_of(x), temperature_c);
            found.map_err(|error| fault = Some(error)).ok()
        };
        let guess = self.last.unwrap_or(range.0);
        let found = falling_root(height, guess, range, usual_slope, TOLERANCE);
        let found = found.ok_or(EquilibriumError::NotConverged { temperature_c });
        let found = fault.map_or(found, Err)?;
        if let Crossing::At(x) = found {
            self.last = Some(x);
        }
        Ok(found)
    }
}
