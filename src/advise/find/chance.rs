//! The chance that a route meets the target, over what is open.

use super::nearest::Limit;
use super::run::{Choice, FindRun};
use crate::advise::AdviseError;
use crate::advise::case::{Case, coordinates};
use crate::advise::inputs::{Input, Tolerances, open_inputs};
use crate::advise::law::NINE_IN_TEN;
use crate::advise::points::point;
use crate::advise::spread::{austenite, hrc, is_too_cold};
use crate::numeric::quantile::mean_and_sd;
use crate::route::{
    Deviation, QuenchedTrial, RouteError, TrialSteel, compared_section, finished_stage,
};
use statrs::distribution::{ContinuousCDF, Normal};
use std::cell::OnceCell;

/// Cases of the sample of a quench. The error of the tempering model, which is the widest part, is
/// not sampled but integrated, so that few are enough.
pub(super) const CASES: u32 = 32;

/// Least part of the cases that the models have to reach for a chance to be told (expert value): what
/// is left of a steel at their edge is no sample of it.
const LEAST_TOLD: f64 = 0.5;
/// Band of tempers for which the cases of a quench are sampled, K either way: every temper then has
/// its own of the oven that does it.
const SAMPLED_BAND_K: f64 = 1.0;

/// The heats of the cases: they are the same for all quenches, so that they are compared on the same
/// pieces.
pub(super) struct Heats {
    seed: u32,
    steels: Vec<OnceCell<Result<TrialSteel, RouteError>>>,
}

impl Heats {
    pub(super) fn new(seed: u32) -> Self {
        Self {
            seed,
            steels: (0..CASES).map(|_| OnceCell::new()).collect(),
        }
    }

    /// The steel of a case; it comes first in the coordinates of a case, so it does not depend on what
    /// else is open.
    fn steel(&self, number: usize, case: &Case, planned: &TrialSteel) -> Option<&TrialSteel> {
        let steel = self.steels.get(number)?;
        let found = steel.get_or_init(|| planned.another_heat(&case.steel));
        found
            .as_ref()
            .ok()
            .filter(|steel| *steel.composition() == case.steel)
    }
}

/// A choice with its chance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Weighed {
    pub(super) choice: Choice,
    /// Part of the cases that meet the target and keep to the limits: of those that the models
    /// tell, and those too cold to harden. None where a limit that is set cannot be checked, or the
    /// models reach less than half of the cases.
    pub(super) chance: Option<f64>,
    /// Hardness between which nine in ten lie, HRC.
    pub(super) band_hrc: [f64; 2],
}

/// The cases of a quench that the models reach.
#[derive(Default)]
pub(super) struct Cases {
    pub(super) quenched: Vec<Quenched>,
    /// Further ones that do not reach A1.
    pub(super) too_cold: u32,
}

/// A case after its quench.
pub(super) struct Quenched {
    grain_astm: f64,
    piece: QuenchedTrial,
    off: Deviation,
    /// What of the temperature of its tempers is the same in every piece, K.
    tempers_off_k: f64,
}

/// Weighs choices of one quench. A blade is sampled as the plate of its spine, where its deciding
/// place lies: the plate cools a little slower, so the chance is on the safe side.
pub(super) fn sample(
    run: &FindRun,
    choices: &[Choice],
    heats: &Heats,
) -> Result<Vec<Weighed>, AdviseError> {
    let Some(first) = choices.first() else {
        return Ok(Vec::new());
    };
    let cases = quenched_cases(run, first, heats)?;
    let weighed = choices
        .iter()
        .filter_map(|choice| weigh(run, choice, &cases));
    Ok(weighed.collect())
}

pub(super) fn quenched_cases(
    run: &FindRun,
    choice: &Choice,
    heats: &Heats,
) -> Result<Cases, AdviseError> {
    let Some(route) = run.route(choice) else {
        return Ok(Cases::default());
    };
    let tolerances = Tolerances {
        temper_band_k: Some(SAMPLED_BAND_K),
        ..run.tolerances
    };
    let upstream = run.upstreams.get(choice.upstream);
    let Some(planned) = upstream.map(|upstream| upstream.as_planned(&route)) else {
        return Ok(Cases::default());
    };
    let mut open = open_inputs(&route, &planned, &tolerances)?;
    open.retain(|open| open.input != Input::TemperedHardness);
    let coordinates = coordinates(&open);
    let mut found = Cases::default();
    for number in 0..CASES {
        let at = point(number, coordinates, heats.seed);
        let case = Case::at(&route, &open, |_| &at);
        let Some(steel) = heats.steel(number as usize, &case, &run.steel) else {
            continue;
        };
        let soak_c = route.soak.temperature_c + case.off.soak_k;
        let section = compared_section(route.section);
        let quenched = || -> Result<Quenched, RouteError> {
            let soaked = steel.at(soak_c)?.end(60.0 * route.soak.time_min)?;
            Ok(Quenched {
                grain_astm: soaked.point.grain_astm,
                piece: steel.quench(&soaked, soak_c, section, &route.quench, &case.off)?,
                off: case.off,
                tempers_off_k: route.taught().off.temper_k,
            })
        };
        match quenched() {
            Ok(quenched) => found.quenched.push(quenched),
            Err(refusal) => found.too_cold += u32::from(is_too_cold(&refusal)),
        }
    }
    Ok(found)
}

pub(super) fn weigh(run: &FindRun, choice: &Choice, cases: &Cases) -> Option<Weighed> {
    let limits = &run.sought.limits;
    let target = run.sought.target;
    let plan = run.tempers.get(choice.tempers)?;
    let tempers = plan.all();
    let cold = run.colds.get(choice.cold)?.as_ref();
    let upstream = run.upstreams.get(choice.upstream)?;
    let taught = upstream.taught_with(&tempers).unwrap_or_default();
    let model_sd = (choice.band_hrc / NINE_IN_TEN).max(f64::MIN_POSITIVE);
    let normal = Normal::standard();
    let (mut kept, mut all_hrc) = (0.0, Vec::new());
    for case in &cases.quenched {
        let off = Deviation {
            temper_k: case.tempers_off_k
                + (case.off.temper_k - case.tempers_off_k) * plan.band_k / SAMPLED_BAND_K,
            // The cases are those of one choice, and what was learnt goes by the temper.
            tempered_hrc: taught.off.tempered_hrc,
            ..case.off
        };
        let stages = case.piece.finish(cold, &tempers, &off);
        let Some((last, mean_hrc)) =
            finished_stage(&stages, cold, &tempers).and_then(|last| Some((last, hrc(last)?)))
        else {
            continue;
        };
        all_hrc.push(mean_hrc);
        let austenite = austenite(last);
        let keeps_to = limits
            .least_grain_astm
            .is_none_or(|least| case.grain_astm >= least)
            && limits
                .most_austenite
                .is_none_or(|most| austenite.is_some_and(|part| part <= most));
        if keeps_to {
            let below = |limit_hrc: f64| normal.cdf((limit_hrc - mean_hrc) / model_sd);
            kept += below(target.most_hrc) - below(target.least_hrc);
        }
    }
    let (mean, sd) = mean_and_sd(&all_hrc)?;
    let half = NINE_IN_TEN * sd.hypot(model_sd);
    let told = all_hrc.len() as f64 + f64::from(cases.too_cold);
    let is_checked = told >= LEAST_TOLD * f64::from(CASES)
        && !run.not_checked(choice).contains(&Limit::Austenite);
    Some(Weighed {
        choice: *choice,
        chance: is_checked.then(|| kept / told),
        band_hrc: [mean - half, mean + half],
    })
}
