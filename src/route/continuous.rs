//! The continuous-cooling diagram of what the soak dissolved, with the hardness that each cooling
//! gives, its martensite tempered on the way down, and the rates that matter.

use super::error::RouteError;
use super::hardening::Hardening;
use super::outcome::Outcome;
use super::plan::Route;
use crate::hardness::Hardness;
use crate::transform::{Continuous, CriticalCooling};

/// Parts that harden for which critical rates are told: martensite with the austenite it leaves, as
/// fractions of all but undissolved carbide.
pub const CRITICAL_HARDENED: [f64; 3] = [0.99, 0.95, 0.50];

/// The diagram with what is told beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct ContinuousDiagram {
    /// The coolings.
    pub diagram: Continuous,
    /// Hardness at the end of each; none outside of the hardness of mixtures.
    pub hardness: Vec<Option<Hardness>>,
    /// The slowest coolings that give the parts of [`CRITICAL_HARDENED`].
    pub critical: [CriticalCooling; 3],
}

/// The continuous-cooling diagram of a route whose outcome is known.
///
/// # Errors
/// Where the kinetics do not cover the dissolved composition.
pub fn continuous_diagram(
    route: &Route,
    outcome: &Outcome,
) -> Result<ContinuousDiagram, RouteError> {
    let hardening = Hardening::of_route(route, &outcome.soak.end, &outcome.soak.dissolved)?;
    let kinetics = hardening.kinetics();
    let diagram = kinetics.continuous()?;
    let hardness = diagram
        .coolings
        .iter()
        .map(|cooling| hardening.hardness_after(cooling))
        .collect();
    let [full, most, half] = CRITICAL_HARDENED;
    Ok(ContinuousDiagram {
        hardness,
        critical: [
            kinetics.critical_cooling(full)?,
            kinetics.critical_cooling(most)?,
            kinetics.critical_cooling(half)?,
        ],
        diagram,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::run;

    #[test]
    fn faster_coolings_are_harder_and_critical_rates_fall_with_martensite() {
        let mut route = Route::example();
        route.take_grade(crate::steel::find("4140").unwrap());
        let outcome = run(&route).unwrap();
        let found = continuous_diagram(&route, &outcome).unwrap();
        let hv: Vec<f64> = found.hardness.iter().flatten().map(|h| h.hv).collect();
        assert_eq!(hv.len(), found.diagram.coolings.len());
        assert!(hv[0] > 1.8 * hv.last().unwrap());
        let [full, most, half] = found.critical.map(|c| c.rate_k_per_s);
        assert!(full > most && most > half);
    }

    #[test]
    fn steel_outside_the_kinetics_is_refused() {
        let mut route = Route::example();
        route.take_grade(crate::steel::find("D2").unwrap());
        let outcome = run(&route).unwrap();
        assert!(continuous_diagram(&route, &outcome).is_err());
    }
}
