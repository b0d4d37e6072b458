//! The steps before hardening: the structure after each is where the next begins.

mod below;
mod cooling;
mod forging;
mod heated;
mod made;
mod state;
mod step;
mod words;

pub use forging::{ForgingWindow, LowerLimit, forging_window};
pub(in crate::route) use made::WHOLE_NETWORK;
pub use state::{PieceState, WorkedBy};
pub use step::{PriorStep, SlowCooling, Work};

pub(in crate::route) use words::cautions_by_step;
pub use words::{cooling_words, prior_line, prior_sentences, soft_hardness_words, step_cautions};

use super::error::RouteError;
use super::known::Known;
use super::plan::Route;
use crate::heat::CoolingCurve;
use crate::phases::critical_temperatures;
use crate::soak::{CarbideBalance, Skin, SoakError, Stock, Structure, skin};
use crate::sources::astm_e112::grain_number;
use serde::Serialize;
use state::Settled;

/// What a step before hardening does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PriorOutcome {
    /// What it does at its temperature; none below A1.
    pub heated: Option<PriorHeat>,
    /// The slowest place on its way down; none below A1.
    pub curve: Option<CoolingCurve>,
    /// What air does to the surface at temperature, unprotected.
    pub skin: Known<Skin>,
    /// The piece after it, or why no model tells it: the piece then counts as before the step.
    pub state: Known<PieceState>,
}

/// The piece at the temperature of a step above A1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PriorHeat {
    /// Carbon in solution, wt % of the austenite.
    pub carbon_wt: f64,
    /// Carbide that stays, volume fraction.
    pub carbide_volume_fraction: f64,
    /// Ferrite that stays, volume fraction.
    pub ferrite_volume_fraction: f64,
    /// Austenite grain, as mean intercept, µm.
    pub grain_um: f64,
    /// ASTM grain number.
    pub grain_astm: f64,
    /// Half thickness of the carbide films on its boundaries when it has cooled, µm.
    pub film_half_um: f64,
}

/// All steps before hardening.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Prior {
    /// The stock as it was bought.
    pub(super) stock: PieceState,
    /// What each step does, in order.
    pub(super) outcomes: Vec<PriorOutcome>,
    /// What the piece is as it goes into the soak.
    pub(super) structure: Structure,
}

impl Prior {
    /// Goes through the steps of a route, whose steel is in the structure of its stock.
    pub(super) fn of(route: &Route, stock: &Stock, a1_c: f64) -> Self {
        let settled = Settled {
            carbide_volume_fraction: stock.annealed().carbide_volume_fraction,
            eutectoid_carbon_wt: stock.eutectoid().carbon_wt,
            a1_c,
        };
        let bought = PieceState::of_stock(&route.composition, route.start, &settled);
        let is_hyper = route.composition.c > settled.eutectoid_carbon_wt;
        let balance = (is_hyper && !route.prior.is_empty())
            .then(|| stock.carbide_balance(a1_c).ok())
            .flatten();
        let mut now = bought.clone();
        let mut outcomes = Vec::with_capacity(route.prior.len());
        for step in &route.prior {
            let outcome = taken(route, step, stock, &now, &settled, balance.as_ref());
            if let Some(state) = outcome.state.given() {
                now = state.clone();
            }
            outcomes.push(outcome);
        }
        Self {
            stock: bought,
            outcomes,
            structure: now.structure,
        }
    }
}

/// The steel of a route as it goes into the soak.
pub(super) fn stock_before_soak(route: &Route) -> Result<Stock, RouteError> {
    let stock = Stock::new(&route.composition, route.start)?;
    if route.prior.is_empty() {
        return Ok(stock);
    }
    let a1_c = critical_temperatures(&route.composition)?.a1_c;
    let prior = Prior::of(route, &stock, a1_c);
    Ok(stock.restructured(prior.structure))
}

/// What one step makes of the piece before it.
fn taken(
    route: &Route,
    step: &PriorStep,
    stock: &Stock,
    before: &PieceState,
    settled: &Settled,
    balance: Option<&CarbideBalance>,
) -> PriorOutcome {
    let skin = Known::from(skin(step.temperature_c, 60.0 * total_min(step)));
    let stock = stock.restructured(before.structure);
    let none = |state| PriorOutcome {
        heated: None,
        curve: None,
        skin: skin.clone(),
        state,
    };
    match heated::heated(route, step, &stock, before.network, settled, balance) {
        Ok(done) => PriorOutcome {
            heated: Some(PriorHeat {
                carbon_wt: done.soaked.dissolved.c,
                carbide_volume_fraction: done.soaked.point.carbide_volume_fraction,
                ferrite_volume_fraction: done.soaked.point.ferrite_volume_fraction,
                grain_um: done.soaked.grain_um,
                grain_astm: grain_number(done.soaked.grain_um),
                film_half_um: done.films.half_thickness_um,
            }),
            curve: Some(done.curve),
            skin,
            state: Known::Given(done.state),
        },
        Err(RouteError::Soak(SoakError::BelowA1 { .. })) => {
            none(Known::from(below::held(route, step, before, settled)))
        }
        Err(error) => none(Known::Refused {
            refused: error.into(),
        }),
    }
}

/// Time in the fire, min: of all heats of a forging.
fn total_min(step: &PriorStep) -> f64 {
    match step.work {
        Work::Forge { heats, .. } => step.time_min * f64::from(heats.max(1)),
        _ => step.time_min,
    }
}
